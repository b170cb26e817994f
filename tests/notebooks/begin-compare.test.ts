import type {Browser, Page} from "playwright-core";
import {afterAll, beforeAll, expect, inject, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import {recipeOf} from "../../lib/balance/mix/recipe-of.ts";
import {weighable} from "../../lib/balance/weigh/weighable.ts";
import {readTypedRecipe} from "../../lib/io/typed/read-typed.ts";
import {startingBrief} from "../../lib/kitchen/begin/starting-brief.ts";
import {compareRecipes} from "../../lib/kitchen/reading/compare-recipes.ts";
import {describeRecipe} from "../../lib/kitchen/reading/describe-recipe.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {launchBrowser} from "../support/browser.ts";
import {type Opened, visit} from "../support/visit.ts";

const {address} = inject("site");
const pantry = includedPantry();

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const open = (name: string): Promise<Opened> =>
  visit(browser, `${address}${name}`, new URL(address).origin, {folds: "as they are"});
const plain = (text: string) => text.replaceAll("\u00a0", " ").replaceAll(/\s+/g, " ").trim();
const textOf = async (page: Page, selector: string) =>
  plain((await page.locator(selector).allInnerTexts()).join(" "));
const SOON = {timeout: 20_000};

test("an own sorbet from a blank profile in at most eight actions, then compared with another, on one leaf", async () => {
  const {page, trouble} = await open("begin-a-recipe.html");
  // What a cook avoids goes out of sight.
  await page.getByLabel("no milk", {exact: true}).check();
  await page.getByLabel("no gluten", {exact: true}).check();
  expect(await textOf(page, ".starts b:visible")).toBe("Fruit sorbet Coconut base");
  await page.getByLabel("no gluten", {exact: true}).uncheck();
  await page.getByLabel("no milk", {exact: true}).uncheck();
  expect(await page.locator(".starts label:visible").count()).toBe(11);

  let actions = 0;
  const act = async (doing: Promise<unknown>) => {
    actions++;
    await doing;
  };
  await act(page.getByRole("radio", {name: /^Fruit sorbet/}).check());
  await act(page.getByLabel("Which fruit?").selectOption("mango"));
  const answer = balance(startingBrief("sorbet", pantry, {flavour: "mango"}), {pantry, candidates: false});
  if (answer.status !== "optimal") throw new Error(answer.status);
  const {amounts} = weighable(answer, answer.amounts);
  const described = describeRecipe(recipeOf(answer, amounts), {freezer: -18});
  await expect.poll(() => textOf(page, ".verdict h2"), SOON).toContain("Mango sorbet");
  const listed = await textOf(page, ".amounts li");
  for (const {ingredient, grams} of amounts.filter((one) => one.grams > 0))
    expect(listed).toContain(`${Number(grams.toFixed(1))} g ${ingredient}`);
  // No price is the cook's own: no cost is told.
  expect(await textOf(page, ".verdict")).not.toMatch(/per kg/);
  expect(
    decodeURIComponent((await page.getByRole("link", {name: "Change its targets"}).getAttribute("href"))!),
  ).toContain("mango");
  await act(page.getByRole("button", {name: "Keep as my recipe"}).click());
  await page.waitForURL(/read-a-recipe/);
  await expect.poll(() => textOf(page, ".verdict h2"), SOON).toBe(described.sentence);
  expect(await page.getByLabel("The recipe, one ingredient a line").inputValue()).toMatch(/^500 g mango\n/);
  expect(actions).toBeLessThanOrEqual(8);

  // Beside it the page's own, since the book has one alone.
  await page.goto(`${address}compare-recipes.html`, {waitUntil: "networkidle"});
  const box = page.getByLabel("The pasted recipe");
  const typed = "Custard\n500 g whole milk\n250 g cream 36 %\n80 g egg yolk\n170 g sugar";
  await box.fill(typed);
  const {recipe} = await readTypedRecipe(typed, pantry, {name: "Recipe 2"});
  const {differences, alike, amounts: apart} = compareRecipes([described.recipe, recipe], {freezer: -18});
  await expect
    .poll(() => textOf(page, ".differences h2, .differences > ul:first-of-type li"), SOON)
    .toBe(plain([...differences, ...(alike === undefined ? [] : [alike])].join(" ")));
  expect(await page.locator(".amounts-apart .what").allInnerTexts()).toEqual(
    apart.map(({ingredient}) => ingredient),
  );
  await page.emulateMedia({media: "print"});
  const pdf = (await page.pdf({format: "A4"})).toString("latin1");
  expect(
    /\/Type \/Pages\b[^>]*\/Count (\d+)|\/Count (\d+)[^>]*\/Type \/Pages\b/.exec(pdf)?.slice(1),
  ).toContain("1");
  await page.emulateMedia({media: "screen"});

  // Design holds an ingredient by one tick, and leaves it as it is when another limit moves.
  await page.goto(`${address}design-a-flavour.html`, {waitUntil: "networkidle"});
  await page.locator("summary", {hasText: "What may go in?"}).click();
  const least = page.getByLabel("whole milk, at least, %");
  await page.getByLabel("Lock whole milk as it is").check();
  const held = await least.inputValue();
  expect(Number(held)).toBeGreaterThan(10);
  expect(await page.getByLabel("whole milk, at most, %").inputValue()).toBe(held);
  await page.getByLabel("Lock whole milk as it is").uncheck();
  expect(await least.inputValue()).toBe("");
  expect(trouble).toEqual([]);
  await page.close();
});
