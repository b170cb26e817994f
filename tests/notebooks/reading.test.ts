import type {Browser, Page} from "playwright-core";
import {afterAll, beforeAll, describe, expect, inject, test} from "vitest";
import {staplesIn} from "../../lib/balance/change/staples.ts";
import {suggestChanges} from "../../lib/balance/change/suggest-changes.ts";
import {readTypedRecipe} from "../../lib/io/typed/read-typed.ts";
import {describeRecipe} from "../../lib/kitchen/reading/describe-recipe.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {launchBrowser} from "../support/browser.ts";
import {type Opened, visit} from "../support/visit.ts";

const {address} = inject("site");
const pantry = includedPantry();

// Invented: nine lines in as many habits.
const NINE = [
  "Chocolate, my way",
  "500 ml whole milk",
  "Double cream 250g",
  "• 4 large egg yolks",
  "110 g caster sugar",
  "glucose syrup\t40",
  "60 g dark chocolate 70 %, chopped",
  "25 g cocoa powder 14 %",
  "a pinch of salt",
].join("\n");

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

function open(recipe?: string): Promise<Opened> {
  const hash = recipe === undefined ? "" : `#${new URLSearchParams({recipe})}`;
  return visit(browser, `${address}read-a-recipe.html${hash}`, new URL(address).origin);
}

const plain = (text: string) => text.replaceAll("\u00a0", " ").replaceAll(/\s+/g, " ");
const textOf = async (page: Page, selector: string) =>
  plain((await page.locator(selector).allInnerTexts()).join(" "));

describe("read a recipe", () => {
  test("a paste and a look: nine lines are read, and the sentence and the changes are the library's", async () => {
    const {page, trouble} = await open();
    const box = page.getByLabel("The recipe, one ingredient a line");
    // What is no recipe of one's own yet goes to the batch day as it stands in the box.
    const onward = await page.getByRole("link", {name: "Make it: batch day"}).getAttribute("href");
    expect(new URLSearchParams(onward!.split("#")[1]).get("base")).toBe(await box.inputValue());
    await box.fill(NINE);
    const {recipe, lines} = await readTypedRecipe(NINE, pantry);
    expect(lines.filter((line) => "question" in line)).toEqual([]);
    const {sentence, kind} = describeRecipe(recipe);
    await expect.poll(() => textOf(page, ".verdict h2")).toBe(sentence);
    expect((await textOf(page, ".verdict p")).toLowerCase()).toContain(kind.name);
    const {changes} = suggestChanges(recipe, {from: staplesIn(pantry)});
    expect(changes.map(({towards}) => towards)).toContain("softer");
    await expect
      .poll(() => textOf(page, ".changes li p"))
      .toBe(changes.map(({words}) => `${words[0]!.toUpperCase()}${words.slice(1)}.`).join(" "));
    // On paper there is nothing to press.
    await page.emulateMedia({media: "print"});
    expect(await page.locator("button:visible, input:visible").count()).toBe(0);
    await page.emulateMedia({media: "screen"});
    // Softer by one press, and back by another.
    const [softer] = changes;
    await page.getByRole("button", {name: "Take it: softer"}).click();
    const taken = describeRecipe((await readTypedRecipe(await box.inputValue(), pantry)).recipe);
    expect(taken.scoop.temperature!).toBeLessThan(describeRecipe(recipe).scoop.temperature! - 0.5);
    expect(taken.scoop.temperature!).toBeCloseTo(softer!.scoop.after.temperature!, 1);
    await expect.poll(() => textOf(page, ".verdict h2")).toBe(taken.sentence);
    await page.getByRole("button", {name: "Undo", exact: true}).click();
    expect(await box.inputValue()).toBe(NINE);
    await expect.poll(() => textOf(page, ".verdict h2")).toBe(sentence);
    await page.getByRole("button", {name: "Redo", exact: true}).click();
    await expect.poll(() => textOf(page, ".verdict h2")).toBe(taken.sentence);
    // The book keeps it, and no longer the address: a reload shows the same.
    await expect.poll(() => textOf(page, ".open-recipe")).toContain("kept in this browser");
    expect(page.url()).not.toContain("milk");
    await page.reload({waitUntil: "networkidle"});
    await expect.poll(() => textOf(page, ".verdict h2")).toBe(taken.sentence);
    expect(trouble).toEqual([]);
    await page.close();
  });

  describe("what is typed over what stood there, one visit", () => {
    let page: Page;
    let trouble: string[];

    beforeAll(async () => {
      ({page, trouble} = await open(""));
    });

    afterAll(() => page?.close());

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

    test("what is locked stays in every change, and what it costs is only of prices that were written", async () => {
      const box = page.getByLabel("The recipe, one ingredient a line");
      await box.fill("600 g whole milk @ 1.1\n200 g cream 36 % @ 5\n150 g sugar @ 1.2");
      await expect.poll(() => textOf(page, ".verdict")).toContain("It costs 1.94 per kg");
      await expect.poll(() => textOf(page, ".changes h3")).toContain("Cheaper");
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
});
