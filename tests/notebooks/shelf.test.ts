import type {Browser, Page} from "playwright-core";
import {beforeAll, describe, expect, inject, test} from "vitest";
import {decimal} from "../../lib/core/format.ts";
import {gramsOf} from "../../lib/kitchen/size/measures.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import {leave, type Opened, sharedBrowser, visit} from "../support/visit.ts";

const {address} = inject("site");
const RECIPE = "600 g whole milk\n150 g caster sugar";
const SOON = {timeout: 20_000};

let browser: Browser;
const troubles: string[][] = [];
beforeAll(async () => {
  browser = await sharedBrowser(new URL(address).origin);
});

async function open(name: string, state: Record<string, string> = {}): Promise<Page> {
  const {page, trouble}: Opened = await visit(
    browser,
    `${address}${name}.html#${new URLSearchParams(state)}`,
    new URL(address).origin,
  );
  troubles.push(trouble);
  return page;
}

const textOf = async (page: Page, selector: string) =>
  (await page.locator(selector).allInnerTexts()).join(" ").replaceAll(/[\u00a0\s]+/g, " ");

/** Finds an ingredient on the open shelf and says what it costs. */
async function price(page: Page, search: string, name: string, paid: string): Promise<void> {
  await page.getByRole("searchbox").fill(search);
  await page.getByRole("searchbox").press("Enter");
  const line = page.locator(`li[data-name="${name}"]`);
  await line.getByLabel("You pay, for how much").fill(paid);
  await line.getByRole("button", {name: "Keep"}).click();
  await expect.poll(() => textOf(page, ".done"), SOON).toContain(`${name}:`);
}

/** Money per kg of the recipe at a price of milk for a litre and of sugar for a kg. */
async function perKilogram(milk: number, sugar: number): Promise<string> {
  const litre = await gramsOf(findIngredient(includedPantry(), "whole milk"), "1 l");
  return decimal(((600 * milk) / litre + (150 * sugar) / 1000) / 0.75, 2);
}

describe("a cook's shelf", () => {
  test("a price set once is seen in every tab; what is out, only what I own, a slip and a file", async () => {
    const shelf = await open("my-shelf");
    await price(shelf, "milk", "whole milk", "2.40 for 1 l");
    await price(shelf, "caster", "sucrose", "1,37/kg");
    expect(await textOf(shelf, ".verdict h2")).toBe("2 things on your shelf, each at your price");

    const replacing = await open("replace-an-ingredient");
    // No cream at all: none of another fat is offered, nor with the sugar that is out too.
    await replacing.getByLabel("What is out?").selectOption("cream 40 %");
    await replacing.getByLabel("Nothing like it either").check();
    await replacing.locator("summary", {hasText: "Something else is out too"}).click();
    await replacing.locator(".also-out").getByLabel("dextrose monohydrate", {exact: true}).check();
    await expect
      .poll(() => textOf(replacing, ".verdict h2"), SOON)
      .toContain("Instead of cream 40 % and dextrose monohydrate");
    const ways = await textOf(replacing, ".ways");
    expect(ways.length).toBeGreaterThan(100);
    expect(ways).not.toMatch(/add [^.]*(?:cream \d|dextrose mono)/);
    await leave(replacing);
    const design = await open("design-a-flavour");
    await design.locator("summary", {hasText: "What may go in?"}).click();
    const line = design.locator(".chosen li", {hasText: "whole milk"});
    expect(await line.locator("a").innerText()).toBe("from your shelf");
    expect(await line.getByLabel("price, per kg").getAttribute("placeholder")).toBe("2.328");
    await design.getByLabel("Take from").selectOption("own");
    await expect
      .poll(() => textOf(design, ".verdict"), SOON)
      .toMatch(/Not on your shelf, so left out: .*cream/);
    await leave(design);
    const reading = await open("read-a-recipe", {recipe: RECIPE});
    const before = await perKilogram(2.4, 1.37);
    await expect.poll(() => textOf(reading, ".verdict"), SOON).toContain(`It costs ${before} per kg`);
    // Another price: the page in the other tab follows.
    await price(shelf, "whole milk", "whole milk", "3.10 for 1 l");
    const after = await perKilogram(3.1, 1.37);
    await expect.poll(() => textOf(reading, ".verdict"), SOON).toContain(`It costs ${after} per kg`);
    await shelf.getByRole("button", {name: "Undo"}).click();
    await expect.poll(() => textOf(reading, ".verdict"), SOON).toContain(`It costs ${before} per kg`);

    await leave(reading);

    // A price of nothing, a past date, a file.
    const milk = shelf.locator('li[data-name="whole milk"]');
    await milk.getByRole("button", {name: "Change"}).click();
    await milk.getByLabel("You pay, for how much").fill("a fortune");
    await milk.getByLabel("Best before").fill("2020-01-31");
    await milk.getByRole("button", {name: "Keep"}).click();
    await expect.poll(() => milk.locator(".note").innerText()).toContain("not a price (it is “a fortune”)");
    await milk.getByLabel("You pay, for how much").fill("2.40 for 1 l");
    await milk.getByRole("button", {name: "Keep"}).click();
    await expect.poll(() => textOf(shelf, ".verdict h2")).toContain("1 past its date");
    expect(await milk.getAttribute("data-due")).toBe("past");
    await shelf.locator("summary", {hasText: "To and from files"}).click();
    await shelf.getByLabel("Add a price list or your own ingredients, CSV").setInputFiles({
      name: "list.csv",
      mimeType: "text/csv",
      buffer: Buffer.from("name,price per kg\nwhole milk,0.99\nbutter,8\n"),
    });
    await expect
      .poll(() => textOf(shelf, ".done"), SOON)
      .toContain("whole milk: 2.40 for 1 l is now 0.99 for 1 kg.");
    expect(await textOf(shelf, '[data-name="sucrose"]')).toContain("1.37");
    expect(troubles.flat()).toEqual([]);
    await leave(shelf);
  }, 120_000);
});
