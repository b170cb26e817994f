import type {BrowserContext, Page} from "playwright-core";
import {expect} from "vitest";
import {leave, visit} from "./visit.ts";

const SOON = {timeout: 20_000};

/** Text as a reader has it: any blank is one blank. */
export const plain = (text: string) => text.replaceAll(/[\u00a0\s]+/g, " ").trim();

/** A cook at the pages, in a profile of their own; what they do is counted, and what the pages complain of is kept. */
export class Cook {
  /** Since the job began. */
  actions = 0;
  readonly trouble: string[] = [];
  readonly page: Page;
  readonly profile: BrowserContext;
  private readonly address: string;

  private constructor(page: Page, profile: BrowserContext, address: string) {
    this.page = page;
    this.profile = profile;
    this.address = address;
  }

  /** In front of the first page. */
  static async at(profile: BrowserContext, address: string): Promise<Cook> {
    const {origin} = new URL(address);
    const {page} = await visit(profile.browser()!, address, origin, {folds: "as they are"});
    const cook = new Cook(page, profile, address);
    await page.setViewportSize({width: 1280, height: 800});
    cook.listenTo(page);
    return cook;
  }

  private listenTo(page: Page): void {
    page.on("console", (message) => message.type() === "error" && this.trouble.push(message.text()));
    page.on("pageerror", (error) => this.trouble.push(String(error)));
    page.on("dialog", (dialog) => {
      this.trouble.push(`dialog: ${dialog.message()}`);
      return dialog.dismiss();
    });
  }

  private async act(doing: Promise<unknown>): Promise<void> {
    this.actions++;
    await doing;
  }

  /** To another page, by the links in the head of this one. */
  async goesTo(name: string): Promise<void> {
    await this.act(
      this.page.locator(".masthead nav").getByRole("link", {name, exact: true}).click({timeout: 20_000}),
    );
    await this.page.waitForLoadState("domcontentloaded");
  }

  types(label: string | RegExp, text: string, within = "main"): Promise<void> {
    return this.act(this.page.locator(within).getByLabel(label, {exact: true}).fill(text));
  }

  chooses(label: string, option: string): Promise<void> {
    return this.act(this.page.locator("main").getByLabel(label).selectOption(option));
  }

  ticks(label: string): Promise<void> {
    return this.act(this.page.getByLabel(label, {exact: true}).check());
  }

  picks(name: RegExp): Promise<void> {
    return this.act(this.page.getByRole("radio", {name}).check());
  }

  presses(name: string, within = "body"): Promise<void> {
    return this.act(this.page.locator(within).getByRole("button", {name, exact: true}).click());
  }

  follows(name: string | RegExp): Promise<void> {
    return this.act(this.page.getByRole("link", {name}).first().click());
  }

  unfolds(text: string | RegExp, within = "main"): Promise<void> {
    return this.act(this.page.locator(within).locator("summary", {hasText: text}).first().click());
  }

  /** A look at the answer: in sight, without a scroll. */
  async looks(selector: string, words: string | RegExp): Promise<void> {
    this.actions++;
    await this.reads(selector, words);
    await expectInSight(this.page, selector);
  }

  /** What stands there in the end. */
  async reads(selector: string, words: string | RegExp): Promise<void> {
    await expectSaid(() => this.textOf(selector), words);
  }

  async textOf(selector: string): Promise<string> {
    return plain((await this.page.locator(selector).allInnerTexts()).join(" "));
  }

  /** Beside the page at work, another one of the same profile: to see what it shows, not to work in it. */
  async glances<T>(name: string, hash: string, see: (page: Page) => Promise<T>): Promise<T> {
    const {page, trouble} = await visit(
      this.profile.browser()!,
      `${this.address}${name}.html${hash}`,
      new URL(this.address).origin,
      {folds: "as they are"},
    );
    const seen = await see(page);
    this.trouble.push(...trouble);
    await leave(page);
    return seen;
  }
}

async function expectSaid(said: () => Promise<string>, words: string | RegExp): Promise<void> {
  if (typeof words === "string") await expect.poll(said, SOON).toContain(words);
  else await expect.poll(said, SOON).toMatch(words);
}

/** Above the fold of the page as it opens; redrawn while it is looked at, it has no place for a moment. */
async function expectInSight(page: Page, selector: string): Promise<void> {
  const place = async () => (await page.locator(selector).first().boundingBox())?.y ?? Infinity;
  const fromTop = async () => (await page.evaluate<number>("scrollY")) + (await place());
  const {height} = page.viewportSize()!;
  await expect.poll(fromTop, {...SOON, message: `${selector}, px from the top`}).toBeLessThan(height);
}
