import {beforeAll, describe, expect, inject, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import {staplesIn} from "../../lib/balance/explain/staples.ts";
import {suggestChanges} from "../../lib/balance/change/suggest-changes.ts";
import {recipeOf} from "../../lib/balance/mix/recipe-of.ts";
import {weighable} from "../../lib/balance/weigh/weighable.ts";
import {readTypedRecipe} from "../../lib/io/typed/read-typed.ts";
import {startingBrief} from "../../lib/kitchen/begin/starting-brief.ts";
import {compareRecipes} from "../../lib/kitchen/reading/compare-recipes.ts";
import {describeRecipe} from "../../lib/kitchen/reading/describe-recipe.ts";
import {gramsOf} from "../../lib/kitchen/size/measures.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import {Cook, plain} from "../support/cook.ts";
import {blankProfile} from "../support/visit.ts";

const pantry = includedPantry();
const SOON = {timeout: 20_000};
const BOX = "The recipe, one ingredient a line";

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

let cook: Cook;

beforeAll(async () => {
  const {address} = inject("site");
  cook = await Cook.at(await blankProfile(new URL(address).origin), address);
});

const described = async (text: string) => describeRecipe((await readTypedRecipe(text, pantry)).recipe);
const boxed = () => cook.page.getByLabel(BOX).inputValue();

// Each after those before it, in the same profile; what it takes to do is counted.
describe("a cook's ten jobs, from a blank profile", () => {
  test("what my recipe of nine lines is like, once its page is open: at most 2 actions", async () => {
    await cook.goesTo("Read");
    cook.actions = 0;
    const {recipe, lines} = await readTypedRecipe(NINE, pantry);
    expect(lines.filter((line) => "question" in line)).toEqual([]);
    const {sentence, kind} = describeRecipe(recipe);
    // What is no recipe of one's own yet goes to the batch day as it stands in the box.
    const onward = cook.page.getByRole("link", {name: "Make it: batch day"});
    const base = async () =>
      new URLSearchParams((await onward.getAttribute("href"))!.split("#")[1]).get("base");
    expect(await base()).toBe(await boxed());
    await cook.types(BOX, NINE);
    await cook.looks(".verdict h2", sentence);
    expect((await cook.textOf(".verdict p")).toLowerCase()).toContain(kind.name);
    const {changes} = suggestChanges(recipe, {from: staplesIn(pantry)});
    expect(changes.map(({towards}) => towards)).toContain("softer");
    await cook.reads(
      ".changes li p",
      changes.map(({words}) => `${words[0]!.toUpperCase()}${words.slice(1)}.`).join(" "),
    );
    // On paper there is nothing to press.
    await cook.page.emulateMedia({media: "print"});
    expect(await cook.page.locator("button:visible, input:visible").count()).toBe(0);
    await cook.page.emulateMedia({media: "screen"});
    expect(cook.actions).toBeLessThanOrEqual(2);
    expect(cook.trouble).toEqual([]);
  });

  test("make it softer: at most 1 actions", async () => {
    cook.actions = 0;
    const before = await described(NINE);
    const [softer] = suggestChanges(before.recipe, {from: staplesIn(pantry)}).changes;
    await cook.presses("Take it: softer");
    const taken = await described(await boxed());
    expect(taken.scoop.temperature!).toBeLessThan(before.scoop.temperature! - 0.5);
    expect(taken.scoop.temperature!).toBeCloseTo(softer!.scoop.after.temperature!, 1);
    await cook.reads(".verdict h2", taken.sentence);
    const {actions} = cook;
    // Back by a press, and again; the book keeps it, and no longer the address: a reload shows the same.
    await cook.presses("Undo");
    expect(await boxed()).toBe(NINE);
    await cook.reads(".verdict h2", before.sentence);
    await cook.presses("Redo");
    await cook.reads(".verdict h2", taken.sentence);
    await cook.reads(".open-recipe", "kept in this browser");
    expect(cook.page.url()).not.toContain("milk");
    await cook.page.reload();
    await cook.reads(".verdict h2", taken.sentence);
    cook.actions = actions;
    expect(cook.actions).toBeLessThanOrEqual(1);
    expect(cook.trouble).toEqual([]);
  });

  test("write down what I thought of it, and find what it was before: at most 5 actions", async () => {
    cook.actions = 0;
    await cook.goesTo("My recipes");
    await cook.unfolds("Name", ".book > li");
    await cook.types("Notes", "Less bitter next time.", ".book > li");
    await cook.reads(".open-recipe", "kept in this browser");
    await cook.page.locator(".versions summary").last().click();
    cook.actions++;
    await cook.reads(".versions pre", "4 large egg yolks");
    expect(cook.actions).toBeLessThanOrEqual(5);
    expect(cook.trouble).toEqual([]);
  });

  test("say once what milk costs, and see it on four pages: at most 5 actions", async () => {
    cook.actions = 0;
    await cook.goesTo("Shelf");
    const search = cook.page.getByRole("searchbox");
    await search.fill("milk");
    await search.press("Enter");
    cook.actions += 2;
    const line = 'li[data-name="whole milk"]';
    await cook.types("You pay, for how much", "2.40 for 1 l", line);
    await cook.presses("Keep", line);
    await cook.reads(".verdict h2", "1 thing on your shelf");
    // Read knows it, and asks for the others alone.
    await cook.glances("read-a-recipe", "", async (reading) => {
      const changes = async () => plain((await reading.locator(".changes").allInnerTexts()).join(" "));
      await expect.poll(changes, SOON).toMatch(/No price is known of/);
      expect(await changes()).not.toMatch(/No price is known of[^.]*whole milk/);
    });
    // So do the pages with invented prices.
    for (const page of ["replace-an-ingredient", "design-a-flavour"]) {
      const asked = await cook.glances(
        page,
        page.startsWith("replace") ? "#recipe=pear" : "",
        async (opened) => {
          const link = opened.locator(".ask-prices").first();
          await expect.poll(() => link.count(), SOON).toBe(1);
          return new URLSearchParams((await link.getAttribute("href"))!.split("#")[1]).getAll("price");
        },
      );
      expect(asked.length).toBeGreaterThan(3);
      expect(asked).not.toContain("whole milk");
    }
    const [grams, money] = await cook.glances("batch-day", "", async (day) => {
      const row = day.locator('table[aria-label="Where the money goes"] tbody tr', {hasText: "whole milk"});
      await expect.poll(() => row.count(), SOON).toBe(1);
      expect(await row.locator(".invented").count()).toBe(0);
      return (await row.locator("td").allInnerTexts()).map((text) => Number(text.replaceAll(/\s/g, "")));
    });
    const litre = await gramsOf(findIngredient(pantry, "whole milk"), "1 l");
    expect(money).toBeCloseTo((grams! * 2.4) / litre, 2);
    expect(cook.actions).toBeLessThanOrEqual(5);
    expect(cook.trouble).toEqual([]);
  });

  test("use what nobody knows: from the packet: at most 16 actions", async () => {
    cook.actions = 0;
    await cook.goesTo("Read");
    const before = await boxed();
    await cook.types(BOX, `${before}\n50 g moon paste`);
    await cook.reads(".asking", "moon paste");
    await cook.follows("Add “moon paste” from its packet");
    await cook.page.waitForURL(/add-from-its-packet/);
    await cook.reads(".verdict", "What is it like?");
    expect(await cook.page.getByLabel("What it is called").inputValue()).toBe("moon paste");
    await cook.chooses("What it is like", "nut");
    await cook.reads(".verdict", "Still to read off: fat, carbohydrate, sugars, protein, salt");
    for (const [label, value] of [
      ["Fat, g", "620"],
      ["Carbohydrate, g", "9.5"],
      ["of which sugars, g", "4.5"],
      ["Fibre, g", "8"],
      ["Protein, g", "14"],
      ["Salt, g", "0.01"],
    ] as const)
      await cook.types(label, value);
    await cook.reads('[data-slip="fat"]', "is its decimal point missing (62)?");
    await cook.types("Fat, g", "62");
    await cook.reads(".verdict", /100 g of moon paste keep as much water unfrozen as \d+ g of sugar/);
    await cook.ticks("nuts");
    await cook.presses("Keep it on my shelf");
    await cook.reads(".packet .amiss", "Which nuts?");
    await cook.ticks("hazelnuts");
    await cook.types("What you pay, if you know", "22 for 1 kg");
    await cook.presses("Keep it on my shelf");
    // Back where the line asked, and the line is understood.
    await cook.page.waitForURL(/read-a-recipe/);
    await expect.poll(boxed, SOON).toContain("moon paste");
    await cook.reads(".verdict", /°C/);
    expect(await cook.page.locator(".asking").count()).toBe(0);
    expect(cook.actions).toBeLessThanOrEqual(16);
    expect(cook.trouble).toEqual([]);
  });

  test("replace what ran out in it: at most 4 actions", async () => {
    cook.actions = 0;
    const before = await boxed();
    await cook.goesTo("Replace");
    await cook.reads(".verdict h2", /Instead of|Without/);
    await cook.chooses("What is out?", "glucose syrup 42 DE");
    await cook.reads(".verdict h2", "glucose syrup 42 DE");
    await cook.presses("Change my open recipe to this");
    await cook.page.waitForURL(/read-a-recipe/);
    await expect.poll(boxed, SOON).not.toContain("glucose syrup 42");
    const now = await boxed();
    expect(now.split("\n")[0]).toBe("Chocolate, my way");
    const [was, is] = [
      await described(before.replace(/\n.*moon paste/, "")),
      await described(now.replace(/\n.*moon paste/, "")),
    ];
    // The least noticed way: as soft, as sweet, as rich.
    expect(Math.abs(is.scoop.temperature! - was.scoop.temperature!)).toBeLessThan(1);
    await cook.reads(".open-recipe", "Chocolate, my way");
    expect(cook.actions).toBeLessThanOrEqual(4);
    expect(cook.trouble).toEqual([]);
  });

  test("an own sorbet: at most 8 actions", async () => {
    cook.actions = 0;
    await cook.goesTo("Begin");
    // What a cook avoids goes out of sight.
    const shown = cook.page.locator(".starts label:visible");
    await expect.poll(() => shown.count(), SOON).toBe(11);
    for (const avoided of ["no milk", "no gluten"])
      await cook.page.getByLabel(avoided, {exact: true}).check();
    expect(await cook.textOf(".starts b:visible")).toBe("Fruit sorbet Coconut base");
    for (const avoided of ["no milk", "no gluten"])
      await cook.page.getByLabel(avoided, {exact: true}).uncheck();
    await cook.picks(/^Fruit sorbet/);
    await cook.chooses("Which fruit?", "mango");
    const answer = balance(startingBrief("sorbet", pantry, {flavour: "mango"}), {pantry, candidates: false});
    if (answer.status !== "optimal") throw new Error(answer.status);
    const {amounts} = weighable(answer, answer.amounts);
    await cook.reads(".verdict h2", "Mango sorbet");
    const listed = await cook.textOf(".amounts li");
    for (const {ingredient, grams} of amounts.filter((one) => one.grams > 0))
      expect(listed).toContain(`${Number(grams.toFixed(1))} g ${ingredient}`);
    // No price of these is the cook's own: no cost is told.
    expect(await cook.textOf(".verdict")).not.toMatch(/per kg/);
    const targets = cook.page.getByRole("link", {name: "Change its targets"});
    expect(decodeURIComponent((await targets.getAttribute("href"))!)).toContain("mango");
    await cook.presses("Keep as my recipe");
    await cook.page.waitForURL(/read-a-recipe/);
    await cook.reads(".verdict h2", describeRecipe(recipeOf(answer, amounts), {freezer: -18}).sentence);
    expect(await boxed()).toMatch(/^500 g mango\n/);
    expect(cook.actions).toBeLessThanOrEqual(8);
    expect(cook.trouble).toEqual([]);
  });

  test("compare it with the chocolate: at most 3 actions", async () => {
    cook.actions = 0;
    await cook.goesTo("Compare");
    await cook.looks(".differences h2", /./);
    expect(await cook.page.getByRole("checkbox", {checked: true}).count()).toBe(2);
    await cook.reads(".differences", /Eggs: in Chocolate, my way, not in mango sorbet/);
    // The paste is on the cook's shelf alone: two that the library knows are compared by it too, and printed on one leaf.
    const typed = "Custard\n500 g whole milk\n250 g cream 36 %\n80 g egg yolk\n170 g sugar";
    const two = await Promise.all(
      [typed, "Lemon ice\n500 g water\n150 g sugar"].map(
        async (text, i) => (await readTypedRecipe(text, pantry, {name: `Recipe ${i + 1}`})).recipe,
      ),
    );
    const {differences, alike, amounts: apart} = compareRecipes(two, {freezer: -18});
    const link = `#${new URLSearchParams({paste: typed})}&${new URLSearchParams({paste: "Lemon ice\n500 g water\n150 g sugar"})}`;
    await cook.glances("compare-recipes", link, async (beside) => {
      const said = async () =>
        plain(
          (await beside.locator(".differences h2, .differences > ul:first-of-type li").allInnerTexts()).join(
            " ",
          ),
        );
      await expect
        .poll(said, SOON)
        .toBe(plain([...differences, ...(alike === undefined ? [] : [alike])].join(" ")));
      expect(await beside.locator(".amounts-apart .what").allInnerTexts()).toEqual(
        apart.map(({ingredient}) => ingredient),
      );
      await beside.emulateMedia({media: "print"});
      const pdf = (await beside.pdf({format: "A4"})).toString("latin1");
      expect(
        /\/Type \/Pages\b[^>]*\/Count (\d+)|\/Count (\d+)[^>]*\/Type \/Pages\b/.exec(pdf)?.slice(1),
      ).toContain("1");
    });
    expect(cook.actions).toBeLessThanOrEqual(3);
    expect(cook.trouble).toEqual([]);
  });

  test("a ripple for it that stays soft and in its place: at most 3 actions", async () => {
    cook.actions = 0;
    await cook.goesTo("Ripple");
    await cook.looks(".verdict h2", /soft and in its place/);
    expect(await cook.page.getByLabel(/^The base, one/).inputValue()).toContain("mango");
    // In the freezer of its base, not in that of the page's own example.
    expect(await cook.page.getByRole("spinbutton", {name: "Freezer, °C"}).inputValue()).toBe("-18");
    await cook.follows("Take it to the batch day");
    await cook.page.waitForURL(/batch-day/);
    expect(cook.actions).toBeLessThanOrEqual(3);
    expect(cook.trouble).toEqual([]);
  });

  test("make it: scaled to my tubs, with its price and its cautions, on paper: at most 3 actions", async () => {
    cook.actions = 0;
    await cook.reads(".verdict", "10 tubs");
    await cook.types(/^Tubs/, "12");
    await cook.reads(".verdict", "12 tubs");
    const leaf = cook.page.frameLocator(".leaf iframe").locator("body");
    await expect.poll(() => leaf.innerText().then(plain), SOON).toContain("mango");
    expect(plain(await leaf.innerText())).toContain("Follow your local code; this is not licensed advice.");
    expect(await cook.textOf(".minding")).toContain("hot sugar");
    await cook.page.evaluate("window.print = () => (window.printed = true)");
    await cook.unfolds("The batch sheet");
    await cook.presses("Print the sheet");
    expect(await cook.page.evaluate("window.printed")).toBe(true);
    expect(cook.actions).toBeLessThanOrEqual(3);
    expect(cook.trouble).toEqual([]);
  });
});
