import type {Browser, Page} from "playwright-core";
import {afterAll, beforeAll, describe, expect, inject, test} from "vitest";
import {leave, type Opened, sharedBrowser, visit} from "../support/visit.ts";

const {address} = inject("site");

let browser: Browser;
beforeAll(async () => {
  browser = await sharedBrowser(new URL(address).origin);
});

function open(recipe: string): Promise<Opened> {
  const hash = `#${new URLSearchParams({recipe})}`;
  return visit(browser, `${address}read-a-recipe.html${hash}`, new URL(address).origin);
}

const plain = (text: string) => text.replaceAll("\u00a0", " ").replaceAll(/\s+/g, " ");
const textOf = async (page: Page, selector: string) =>
  plain((await page.locator(selector).allInnerTexts()).join(" "));

describe("read a recipe", () => {
  describe("what is typed over what stood there, one visit", () => {
    let page: Page;
    let trouble: string[];

    beforeAll(async () => {
      ({page, trouble} = await open(""));
    });

    afterAll(() => leave(page));

    test("nothing, nonsense and a text too long are answered in words", async () => {
      await expect.poll(() => textOf(page, "main")).toContain("Nothing to read yet");
      const box = page.getByLabel("The recipe, one ingredient a line");
      await box.fill("<img src=x onerror=alert(1)> 500 g\n\u202e12 g sugar");
      await expect.poll(() => textOf(page, ".asking")).toContain("onerror");
      await box.fill("x".repeat(200_001));
      await expect.poll(() => textOf(page, "main")).toContain("too long");
      await box.fill("100 g water");
      await expect.poll(() => textOf(page, ".verdict h2")).toContain("Hard at −18 °C");
    });

    test("a line that could be several things is asked about, blanks nothing, and is settled by a press", async () => {
      const box = page.getByLabel("The recipe, one ingredient a line");
      await box.fill("600 g milk\n200 g cream\n150 g sugar\n3 g xyzzy");
      await expect.poll(() => textOf(page, ".asking")).toContain("Which cream is it?");
      expect(await textOf(page, ".asking")).toMatch(/no ingredient called “xyzzy”/i);
      await expect
        .poll(() => textOf(page, ".verdict"))
        .toContain("2 lines are left out below until you answer");
      await page.getByRole("button", {name: "cream 36 %", exact: true}).click();
      expect(await box.inputValue()).toContain("200 g cream 36 %");
      await expect.poll(() => textOf(page, ".verdict")).toContain("One line is left out");
    });

    test("only what changes something is counted and can be taken", async () => {
      const box = page.getByLabel("The recipe, one ingredient a line");
      await box.fill("472 g banana\n500 ml milk\n200 g cream 36 %\n120 g sugar");
      await expect.poll(() => textOf(page, ".changes h2")).toBe("One change, the least noticed of its kind");
      expect(await textOf(page, ".changes h3")).toMatch(/^Less sweet/);
      expect(await page.getByRole("button", {name: /^Take it/}).count()).toBe(1);
      expect(await textOf(page, ".changes .aside")).toContain(
        "Softer: nothing gets it to where it scoops at −18 °C without being noticed more than that is worth.",
      );
    });

    test("what is locked stays in every change, and what it costs is only of prices that were written", async () => {
      const box = page.getByLabel("The recipe, one ingredient a line");
      await box.fill("600 g whole milk @ 1.1\n200 g cream 36 % @ 5\n150 g sugar @ 1.2");
      await expect.poll(() => textOf(page, ".verdict")).toContain("It costs 1.94 per kg");
      await expect.poll(() => textOf(page, ".changes h3")).toContain("Cheaper");
      // In the unit of the verdict above it.
      expect(await textOf(page, ".changes dl")).toMatch(/cost per kg 1\.94 → 1\.7\d/);
      await page.locator("summary", {hasText: "What may change?"}).click();
      await page.getByLabel("sucrose", {exact: true}).check();
      await page.getByLabel("whole milk", {exact: true}).check();
      await expect.poll(() => textOf(page, ".changes li p")).not.toContain("sucrose");
      expect(await textOf(page, ".changes li p")).not.toContain("whole milk");
      await box.fill("600 g whole milk\n150 g sugar @ 1.2");
      await expect.poll(() => textOf(page, ".verdict")).not.toContain("It costs");
      await expect.poll(() => textOf(page, ".changes")).toContain("No price is known of whole milk");
      expect(trouble).toEqual([]);
    });
  });

  test("a link's recipe goes on to Replace as it was typed, with its air and what is not known in it", async () => {
    const text = "Lemon ice\n600 g whole milk\n200 g cream 36 %\n150 g sugar\n3 g xyzzy";
    const hash = new URLSearchParams({recipe: text, freezer: "-14", overrun: "55"}).toString();
    const {page, trouble} = await visit(
      browser,
      `${address}read-a-recipe.html#${hash}`,
      new URL(address).origin,
    );
    await page.getByRole("link", {name: "Replace something in it"}).click();
    await expect.poll(() => textOf(page, ".open-recipe")).toContain("From a link: Lemon ice");
    await expect.poll(() => textOf(page, "main")).toContain("One line of it is not understood and left out");
    const carried = new URLSearchParams(new URL(page.url()).hash.slice(1));
    expect(carried.getAll("recipeFile")).toEqual(["Lemon ice", text]);
    expect([carried.get("freezer"), carried.get("overrun")]).toEqual(["-14", "55"]);
    expect(trouble).toEqual([]);
    await leave(page);
  });
});
