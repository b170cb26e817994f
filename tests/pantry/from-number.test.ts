import {describe, expect, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import {readRecipeCsv} from "../../lib/io/csv/recipe-csv.ts";
import {ingredientFromNumber} from "../../lib/pantry/from-number.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {nutrientOf} from "../../lib/pantry/nutrients.ts";
import {findIngredient, nameKey, pantryOf} from "../../lib/pantry/pantry.ts";
import {PARTS} from "../../lib/pantry/parts.ts";
import {quantityOf} from "../../lib/pantry/quantities.ts";
import {stockedPantry} from "../../lib/pantry/stocked.ts";
import {within} from "../support/within.ts";

const pantry = includedPantry();
const find = (name: string) => findIngredient(pantry, name);
const made = (name: string) => ingredientFromNumber(name, (known) => pantry.byName.get(nameKey(known)));

describe("an ingredient from the number in its name", () => {
  test.each([
    ["cream 45 %", "cream 45 %"],
    ["45% cream", "cream 45 %"],
    ["cream 45 % fat", "cream 45 %"],
    ["milk 1.5%", "milk 1.5 %"],
    ["dark chocolate 72 %", "dark chocolate 72 %"],
    ["dark couverture 72% cocoa", "dark chocolate 72 %"],
    ["milk chocolate 38 %", "milk chocolate 38 %"],
    ["white chocolate 30%", "white chocolate 30 %"],
    ["cocoa powder 16 %", "cocoa powder 16 %"],
    ["glucose syrup 48 DE", "glucose syrup 48 DE"],
    ["DE 48 glucose syrup 84 %", "glucose syrup 48 DE 84 %"],
    ["dried glucose syrup 27 DE", "dried glucose syrup 27 DE"],
    ["maltodextrin 15 DE", "maltodextrin 15 DE"],
    ["sugar syrup 60 °Brix", "sugar syrup 60 %"],
    ["raspberry purée 10 % sugar", "raspberry purée 10 % sugar"],
    ["mango purée with 12.5 % sugar", "mango purée 12.5 % sugar"],
  ])("%j is %j", (typed, name) => {
    const ingredient = find(typed);
    expect(ingredient.name).toBe(name);
    expect(pantry.byName.has(nameKey(name))).toBe(false);
    within(
      PARTS.reduce((sum, part) => sum + (ingredient.composition[part] ?? 0), 0),
      100,
      0.01,
      name,
    );
    expect(made(typed)!.uncertainty).not.toEqual({});
  });

  test("a row that is there stays that row", () => {
    for (const name of [
      "cream 48 %",
      "glucose syrup 42 DE",
      "cocoa powder 21 %",
      "milk 3.25 %",
      "dark chocolate 64 %",
    ])
      expect(find(name).grade).not.toBe("estimated");
  });

  test("cream is what the skim portion leaves (H. D. Goff: MSNF = 0.09 x (100 - fat))", () => {
    const {composition} = find("cream 45 %");
    within(quantityOf(composition, "fat"), 45, 0.001, "fat");
    within(quantityOf(composition, "msnf"), 0.09 * 55, 0.01, "MSNF");
  });

  test.each([
    // USDA SR28 (2015): mean cocoa of the range that the table gives; fat, sugars as printed.
    ["dark chocolate 52 %", 31.28, 47.9],
    ["dark chocolate 65 %", 38.31, 36.71],
    ["dark chocolate 77 %", 42.63, 23.99],
  ] as const)("%s has the fat and sugars of its class within its uncertainty", (name, fat, sugars) => {
    const {ingredient, uncertainty} = made(name)!;
    within(quantityOf(ingredient.composition, "fat"), fat, uncertainty.cocoaButter!, "fat");
    within(quantityOf(ingredient.composition, "totalSugars"), sugars, uncertainty.sucrose! + 0.5, "sugars");
  });

  test("milk chocolate is that of the table (USDA SR28, 19120: 29.66 g fat, 7.65 g protein) at its 32 % of cocoa", () => {
    const {ingredient, uncertainty} = made("milk chocolate 32 %")!;
    const most = uncertainty.cocoaButter! + uncertainty.milkFat!;
    within(quantityOf(ingredient.composition, "fat"), 29.66, most, "fat");
    within(quantityOf(ingredient.composition, "protein"), 7.65, 2, "protein");
    expect(ingredient.allergens).toContain("milk");
  });

  test("cocoa powder has the fat in its name, and the fatter row's protein (USDA SR28, 19859: 23.71 g fat, 16.8 protein)", () => {
    const {composition} = find("cocoa powder 23.7 %");
    within(quantityOf(composition, "fat"), 23.7, 0.05, "fat");
    within(quantityOf(composition, "protein"), 16.8, 1, "protein");
  });

  test("nutrients are those of what it is made of", () => {
    within(nutrientOf(find("cream 45 %"), "saturates")!, 45 * 0.64, 2, "64 % of milk fat (USDA SR28, 01053)");
    expect(nutrientOf(find("sugar syrup 60 Brix"), "addedSugars")).toBe(60);
  });

  test("what no rule reads, or is out of its range, is unknown as before, with the nearest names", () => {
    for (const name of [
      "cream 90 %",
      "dark chocolate 20 %",
      "glucose syrup 90 DE",
      "cream 45",
      "hazelnuts 20 %",
    ])
      expect(() => find(name), name).toThrow(/unknown ingredient/);
    const [water] = pantry.ingredients;
    expect(() => findIngredient(pantryOf([water!]), "cream 45 %")).toThrow(/unknown ingredient/);
  });

  test("is understood in a brief, in a recipe and in a price list", async () => {
    const brief = {
      ingredients: ["milk 1.5 %", "cream 45 %", "sugar"],
      targets: {fat: {equal: 10}, sugars: {equal: 12}},
    };
    const answer = balance({...brief, minimise: "fat"}, {pantry});
    expect(answer.status).toBe("optimal");
    const recipe = await readRecipeCsv("ingredient,g\ncream 45 %,100\nsugar,20\n", pantry);
    expect(recipe.lines.map(({ingredient}) => ingredient.name)).toEqual(["cream 45 %", "sucrose"]);
    const stocked = stockedPantry(pantry, [{name: "cream 45%", price: 5, place: "list"}]);
    expect(findIngredient(stocked, "cream 45 %").price).toBe(5);
  });
});
