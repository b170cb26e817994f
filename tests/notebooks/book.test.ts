import {readFileSync} from "node:fs";
import type {Browser, BrowserContext, Page} from "playwright-core";
import {describe, expect, inject, test} from "vitest";
import {bookText} from "../../notebooks/kit/keep/book-file.ts";
import {blankProfile, leave, visit} from "../support/visit.ts";

const {address} = inject("site");
const SOON = {timeout: 20_000};
const MILK = "Milk ice\n600 g whole milk\n200 g cream 36 %\n150 g sugar";

/** A profile, and what its pages complain of. */
interface Profile {
  readonly context: BrowserContext;
  readonly trouble: string[];
}

function listenedTo(context: BrowserContext): Profile {
  const trouble: string[] = [];
  context.on("page", (page) => {
    page.on("console", (message) => message.type() === "error" && trouble.push(message.text()));
    page.on("pageerror", (error) => trouble.push(String(error)));
  });
  return {context, trouble};
}

const mine = async () => listenedTo(await blankProfile(new URL(address).origin));

/** The profile of another person, at their own machine. */
const someones = async (browser: Browser) =>
  listenedTo(await browser.newContext({viewport: {width: 1280, height: 900}}));

async function open(context: BrowserContext, name: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${address}${name}.html`);
  return page;
}

/** A page in a tab that was left, or a new one. */
const visited = (context: BrowserContext, name: string) =>
  visit(context.browser()!, `${address}${name}.html`, new URL(address).origin, {folds: "as they are"});

const boxOf = (page: Page) => page.getByLabel("The recipe, one ingredient a line");
const headOf = async (page: Page) =>
  (await page.locator(".open-recipe").innerText()).replaceAll(/\s+/g, " ").trim();
const namesIn = (page: Page) => page.locator(".book h3 a").allTextContents();
const mainOf = async (page: Page) => (await page.locator("main").innerText()).replaceAll(/[\s\u00a0]+/g, " ");

/** The link for another person that the page copies. */
async function linkOf(page: Page): Promise<string> {
  await page.getByRole("button", {name: "Copy a link"}).waitFor();
  return page.evaluate<string>(`new Promise((copied) => {
    navigator.clipboard.writeText = async (text) => copied(text);
    [...document.querySelectorAll("button")].find((one) => one.textContent === "Copy a link").click();
  })`);
}

describe("the book", () => {
  test("what was typed a second ago outlives the tab, goes along to every page, steps back, and is shared by two tabs", async () => {
    const {context, trouble} = await mine();
    const page = await open(context, "read-a-recipe");
    await boxOf(page).waitFor();
    // The demonstration is nobody's: it is in no book.
    expect(await boxOf(page).inputValue()).toContain("(invented demo)");
    await expect.poll(() => headOf(page), SOON).toContain("No recipe of yours is open");
    await boxOf(page).fill(MILK);
    await boxOf(page).pressSequentially("\n3 g salt");
    await page.waitForTimeout(1000);
    // Killed: neither unload nor pagehide runs.
    const killed = page.waitForEvent("crash");
    void (await context.newCDPSession(page)).send("Page.crash").catch(() => undefined);
    await killed;
    const {page: again, trouble: complaints} = await visited(context, "read-a-recipe");
    await boxOf(again).waitFor();
    expect(await boxOf(again).inputValue()).toBe(`${MILK}\n3 g salt`);
    expect(await headOf(again)).toBe("Open: Milk ice kept in this browser Undo Redo");

    // A second tab has it too, and takes over what the first types; undo in the head goes back in both.
    const {page: other, trouble: others} = await visited(context, "my-recipes");
    await expect.poll(() => namesIn(other), SOON).toEqual(["Milk ice"]);
    await boxOf(again).fill(`${MILK}\n4 g salt`);
    await expect.poll(() => headOf(again), SOON).toContain("kept in this browser");
    await other.locator(".book h3 a").click();
    await boxOf(other).waitFor();
    expect(await boxOf(other).inputValue()).toBe(`${MILK}\n4 g salt`);
    await boxOf(other).pressSequentially(" ");
    await expect.poll(() => boxOf(again).inputValue(), SOON).toBe(`${MILK}\n4 g salt `);
    await again.getByRole("button", {name: "Undo", exact: true}).click();
    expect(await boxOf(again).inputValue()).toBe(`${MILK}\n3 g salt`);
    await expect.poll(() => boxOf(other).inputValue(), SOON).toBe(`${MILK}\n3 g salt`);
    await again.locator("h1").click();
    await again.keyboard.press("Control+y");
    expect(await boxOf(again).inputValue()).toBe(`${MILK}\n4 g salt `);

    // Typed, and gone by a link before it was written; Batch day and Replace begin with it, Home and Back lose nothing.
    await boxOf(again).fill(`${MILK}\n5 g salt`);
    await again.locator(".masthead nav").getByRole("link", {name: "Batch day"}).click();
    const base = again.getByLabel("The base, one ingredient a line");
    await expect.poll(() => base.inputValue(), SOON).toBe(`${MILK}\n5 g salt`);
    expect(await again.getByLabel("Name", {exact: true}).inputValue()).toBe("Milk ice");
    await again.getByLabel(/^Tubs/).fill("7");
    const day = await linkOf(again);
    await again.locator(".masthead nav").getByRole("link", {name: "Replace"}).click();
    await expect.poll(() => again.locator("select").first().inputValue(), SOON).toBe("open");
    // A link from here carries it to another person, who can keep it.
    const link = await linkOf(again);
    const blank = await someones(context.browser()!);
    const theirs = await blank.context.newPage();
    // The batch day as it stands: the recipe with its name, the tubs, and no ripple of the demonstration.
    await theirs.goto(day);
    await expect.poll(() => headOf(theirs), SOON).toContain("From a link: Milk ice");
    const carries: [string | RegExp, string][] = [
      ["The base, one ingredient a line", `${MILK}\n5 g salt`],
      [/^Tubs/, "7"],
      [/^What goes into the ripple/, ""],
      [/^Ripple in the tub/, "0"],
    ];
    for (const [label, value] of carries) expect(await theirs.getByLabel(label).inputValue()).toBe(value);
    await theirs.goto(link);
    await expect.poll(() => headOf(theirs), SOON).toBe("From a link: Milk ice Keep this recipe in my book");
    expect(await theirs.locator("select option:checked").first().innerText()).toBe("Milk ice");
    await theirs.getByRole("button", {name: "Keep this recipe in my book"}).click();
    await expect.poll(() => headOf(theirs), SOON).toContain("Open: Milk ice kept in this browser");
    expect(blank.trouble).toEqual([]);
    await blank.context.close();
    await again.goBack();
    await expect.poll(() => again.getByLabel(/^Tubs/).inputValue(), SOON).toBe("7");
    await again.locator(".masthead > a").click();
    await again.getByRole("link", {name: "How do I make it, and what do I charge?"}).click();
    await expect.poll(() => again.getByLabel(/^Tubs/).inputValue(), SOON).toBe("7");
    expect(await base.inputValue()).toBe(`${MILK}\n5 g salt`);

    // What a link carries wins on its page, stays out of the book until it is wanted, and leaves the open one open.
    const carried = other;
    // By a hash alone a page that is open would go on.
    await carried.goto("about:blank");
    const lemon = {recipe: "Lemon ice\n500 g water\n150 g sugar", freezer: "-12"};
    await carried.goto(`${address}read-a-recipe.html#${new URLSearchParams(lemon)}`);
    await boxOf(carried).waitFor();
    expect(await boxOf(carried).inputValue()).toContain("500 g water");
    await expect
      .poll(() => headOf(carried), SOON)
      .toBe("From a link: Lemon ice Keep this recipe in my book “Milk ice” stays open on the other pages.");
    await carried.getByRole("button", {name: "Keep this recipe in my book"}).click();
    await expect.poll(() => headOf(carried), SOON).toContain("Open: Lemon ice kept in this browser");
    await expect.poll(() => carried.url(), SOON).not.toContain("water");
    await carried.reload();
    await boxOf(carried).waitFor();
    expect(await boxOf(carried).inputValue()).toBe("Lemon ice\n500 g water\n150 g sugar");
    expect(await carried.getByLabel("Freezer", {exact: false}).last().inputValue()).toBe("-12");
    expect([...trouble, ...complaints, ...others]).toEqual([]);
    await leave(again);
    await leave(other);
  }, 120_000);

  test("recipes are found, renamed, noted, copied, deleted and brought back, saved as a file and taken into another profile", async () => {
    const {context} = await mine();
    const {page, trouble} = await visited(context, "read-a-recipe");
    await boxOf(page).fill(MILK);
    await expect.poll(() => headOf(page), SOON).toContain("kept in this browser");
    await page.locator(".masthead nav").getByRole("link", {name: "My recipes"}).click();
    await expect
      .poll(() => page.locator(".summary").innerText(), SOON)
      .toMatch(/^Ice cream: scoops at −\d+\.\d\s°C; at −18\s°C it is hard\.$/);
    await page.getByRole("button", {name: "Duplicate"}).click();
    await expect.poll(() => namesIn(page), SOON).toEqual(["Milk ice (copy)", "Milk ice"]);
    const second = page.locator(".book > li").nth(1);
    await second.locator("summary").first().click();
    await second.getByLabel("Name", {exact: true}).fill("Ice of the <b>fair</b>");
    await second.getByLabel("Name", {exact: true}).press("Tab");
    await expect
      .poll(() => headOf(page), SOON)
      .toContain("Open: Ice of the <b>fair</b> kept in this browser");
    // What is changed comes first.
    await page.locator(".book > li", {hasText: "fair"}).getByLabel("Notes").fill("Less sugar next time.");
    await page.getByLabel("Search").fill("fair LESS milk");
    await expect.poll(() => namesIn(page), SOON).toEqual(["Ice of the <b>fair</b>"]);
    // What it was can be read, and restored.
    const fair = page.locator(".book > li").first();
    await expect.poll(() => fair.locator(".versions summary").allInnerTexts(), SOON).toHaveLength(1);
    await expect
      .poll(
        async () => (await fair.locator(".versions summary").innerText()).replaceAll(/[\s\u00a0]+/g, " "),
        SOON,
      )
      .toContain("Since then: name “Milk ice” → “Ice of the <b>fair</b>”; notes changed.");
    await fair.locator(".versions summary").click();
    // It stays unfolded while what is typed beside it is kept, a moment later.
    await fair.getByLabel("Notes").fill("Less sugar next time!");
    await page.waitForTimeout(1000);
    await fair.getByLabel("Notes").fill("Less sugar next time.");
    await page.waitForTimeout(1000);
    expect(await fair.locator(".versions details[open]").count()).toBe(1);
    await fair.getByRole("button", {name: "Restore"}).click({timeout: 2000});
    await expect.poll(() => headOf(page), SOON).toContain("Open: Milk ice kept");
    await page.getByRole("button", {name: "Undo", exact: true}).click();
    await expect.poll(() => headOf(page), SOON).toContain("Open: Ice of the <b>fair</b> kept");
    await page.getByLabel("Search").fill("");
    // Deleted and back, the open one too.
    await page.locator(".book > li", {hasText: "fair"}).getByRole("button", {name: "Delete"}).click();
    await expect.poll(() => namesIn(page), SOON).toEqual(["Milk ice (copy)"]);
    expect(await headOf(page)).toContain("No recipe of yours is open");
    await page.locator(".told").getByRole("button", {name: "Bring it back"}).click();
    await expect.poll(() => namesIn(page), SOON).toEqual(["Ice of the <b>fair</b>", "Milk ice (copy)"]);

    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", {name: "Save all as a file"}).click(),
    ]);
    const file = await download.path();
    const blank = await someones(context.browser()!);
    const theirs = await open(blank.context, "my-recipes");
    const take = (name: string, text: string) =>
      theirs
        .getByLabel("Add the recipes of a file")
        .setInputFiles({name, mimeType: "application/json", buffer: Buffer.from(text)});
    await expect.poll(() => mainOf(theirs), SOON).toContain("Your book is empty.");
    await take("broken.json", '{"format": "mixwright recipes", "recipes": [');
    await expect.poll(() => mainOf(theirs), SOON).toContain("broken.json, line 1, column 45: not valid JSON");
    await take("mine.json", readFileSync(file, "utf8"));
    await expect.poll(() => namesIn(theirs), SOON).toEqual(["Ice of the <b>fair</b>", "Milk ice (copy)"]);
    expect(await mainOf(theirs)).toContain("2 recipes are new in your book.");
    await take("mine.json", readFileSync(file, "utf8"));
    await expect.poll(() => mainOf(theirs), SOON).toContain("2 recipes were there already.");
    await theirs.locator(".book summary").first().click();
    expect(await theirs.getByLabel("Notes", {exact: true}).inputValue()).toBe("Less sugar next time.");
    expect([...trouble, ...blank.trouble]).toEqual([]);
    await leave(page);
    await blank.context.close();
  });

  test("a thousand recipes are listed and searched by drawing forty and reading those in sight", async () => {
    const {context} = await mine();
    const {page, trouble} = await visited(context, "my-recipes");
    await expect.poll(() => mainOf(page), SOON).toContain("Your book is empty.");
    const thousand = Array.from({length: 1000}, (_, i) => ({
      id: `number-${i}`,
      name: `Ice number ${i}`,
      text: `Ice\n600 g whole milk\n200 g cream 36 %\n${100 + (i % 90)} g sugar\n${i} g water`,
      notes: "",
      changed: new Date(Date.UTC(2026, 0, 1, 0, i)).toISOString(),
      revision: 2,
      earlier: [1, 2, 3, 4, 5].map((n) => ({
        name: "Before",
        text: `${n} g sugar`,
        notes: "",
        changed: "2026-01-01T00:00:00Z",
      })),
    }));
    await page.getByLabel("Add the recipes of a file").setInputFiles({
      name: "many.json",
      mimeType: "application/json",
      buffer: Buffer.from(bookText(thousand, new Date(0))),
    });
    await expect.poll(() => mainOf(page), SOON).toContain("1000 recipes, the latest changed first");
    await page.reload();
    await expect.poll(() => mainOf(page), SOON).toContain("1000 recipes, the latest changed first");
    const drawn = () => page.locator(".book > li").count();
    const read = () => page.locator(".summary:not(:empty)").count();
    await expect.poll(read, SOON).toBeGreaterThan(0);
    await page.waitForTimeout(500);
    expect(await drawn()).toBeLessThanOrEqual(80);
    expect(await read()).toBeLessThanOrEqual(20);
    expect((await namesIn(page))[0]).toBe("Ice number 999");
    // Work of the page for a search of all, in seconds of its own time: a list that drew or read them all would need many.
    const session = await context.newCDPSession(page);
    await session.send("Performance.enable", {timeDomain: "threadTicks"});
    const worked = async () => {
      const {metrics} = await session.send("Performance.getMetrics");
      return metrics.find(({name}) => name === "TaskDuration")!.value;
    };
    const before = await worked();
    await page.getByLabel("Search").fill("number 77");
    const found = thousand.filter(({name, text}) => `${name}\n${text}`.includes("77"));
    expect(found.length).toBeLessThan(40);
    await expect
      .poll(() => mainOf(page), SOON)
      .toContain(`${found.length} recipes with “number 77”, of 1000`);
    expect(await drawn()).toBe(found.length);
    expect((await worked()) - before).toBeLessThan(3);
    await expect.poll(() => namesIn(page), SOON).toContain("Ice number 77");
    // Down the whole list by the button alone.
    await page.getByLabel("Search").fill("");
    await page.getByRole("button", {name: "Show more"}).click();
    expect(await drawn()).toBeGreaterThan(40);
    expect(await read()).toBeLessThanOrEqual(60);
    expect(trouble).toEqual([]);
    await leave(page);
  });

  test("a storage that refuses is said with the next step, and what was typed stays", async () => {
    const {context, trouble} = await mine();
    const page = await context.newPage();
    await page.addInitScript(() => {
      Object.defineProperty(globalThis, "indexedDB", {
        value: {
          open: () => {
            throw new DOMException("denied", "SecurityError");
          },
        },
      });
    });
    await page.goto(`${address}read-a-recipe.html`);
    await boxOf(page).fill(MILK);
    await expect.poll(() => headOf(page), SOON).toContain("save your recipes as a file before you close it.");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", {name: "Save it as a file"}).click(),
    ]);
    expect(download.suggestedFilename()).toBe("milk-ice.json");
    expect(readFileSync(await download.path(), "utf8")).toContain("600 g whole milk");
    // The address carries it, since nothing else does.
    await expect.poll(() => decodeURIComponent(page.url()), SOON).toContain("whole+milk");
    await page.reload();
    await boxOf(page).waitFor();
    expect(await boxOf(page).inputValue()).toBe(MILK);
    expect(trouble).toEqual([]);
  });

  test("a disk that is full is said, and nothing is lost: it is kept by itself once there is room", async () => {
    const {context, trouble} = await mine();
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    const {origin} = new URL(address);
    await session.send("Storage.overrideQuotaForOrigin", {origin, quotaSize: 1000});
    await page.goto(`${address}read-a-recipe.html`);
    // A recipe of 5 kB where there is room for 1.
    const long = `${MILK}\n${"# beat well\n".repeat(400)}3 g salt`;
    await boxOf(page).fill(long);
    await expect.poll(() => headOf(page), SOON).toMatch(/storage is full.* Save your recipes as a file/);
    await session.send("Storage.overrideQuotaForOrigin", {origin});
    await page.reload();
    await boxOf(page).waitFor();
    expect(await boxOf(page).inputValue()).toBe(long);
    // The browser counts its room every half minute.
    await expect.poll(() => headOf(page), {timeout: 45_000}).toContain("kept in this browser");
    await page.reload();
    await boxOf(page).waitFor();
    expect(await boxOf(page).inputValue()).toBe(long);
    expect(trouble).toEqual([]);
  }, 90_000);
});
