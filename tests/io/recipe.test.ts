import {describe, expect, test} from "vitest";
import {InputError} from "../../lib/core/errors.ts";
import {columnKey} from "../../lib/io/csv/columns.ts";
import {pantryJson, readIngredient, readPantryJson} from "../../lib/io/json/ingredient-json.ts";
import {readPantryCsv} from "../../lib/io/csv/pantry-csv.ts";
import {readPricesCsv} from "../../lib/io/csv/prices-csv.ts";
import {readRecipeCsv, recipeCsv} from "../../lib/io/csv/recipe-csv.ts";
import {readRecipeJson, recipeJson} from "../../lib/io/json/recipe-json.ts";
import {pantryOf} from "../../lib/pantry/pantry.ts";
import {realPantry} from "../support/pantry.ts";

/** The message of the InputError that the call throws. */
async function complaint(call: () => unknown): Promise<string> {
  try {
    await call();
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  throw new Error("nothing was thrown");
}

const grams = (recipe: {lines: readonly {ingredient: {name: string}; grams: number}[]}) =>
  recipe.lines.map((line) => [line.ingredient.name, line.grams]);

describe("headers as people write them", () => {
  test.each([
    ["price_per_kg", "price_per_kg"],
    ["Price (€/kg)", "price_per_kg"],
    ["Price (EUR/kg)", "price_per_kg"],
    ["PRICE per kg", "price_per_kg"],
    ["Milk fat (g)", "milk_fat_g"],
    ["milkFat_g", "milk_fat_g"],
    ["  g ", "g"],
    ["price/100g", "price_per_100_g"],
    ["EUR/kg", "per_kg"],
  ])("%s is %s", (header, key) => {
    expect(columnKey(header)).toBe(key);
  });

  test("reads a spreadsheet's export: byte-order mark, semicolons, decimal commas, units in brackets", () => {
    expect(
      readPricesCsv("\uFEFFIngredient;Price (€/100 g);Stock (kg)\r\nmilk;0,11;2,5\r\n", "p.csv"),
    ).toEqual([{name: "milk", price: 1.1, stock: 2500, place: "p.csv, row 2"}]);
    const [cream] = readPantryCsv("Name;Milk fat (g);MSNF (g/100 g);Water [g]\ncream;40,0;5,4;54,6\n");
    expect(cream?.composition.milkFat).toBe(40);
  });

  test.each(["EUR/kg", "€/kg", "cost per kg"])("reads a price under %s", (header) => {
    expect(readPricesCsv(`name;${header}\nmilk;1,1\n`)[0]?.price).toBe(1.1);
  });

  test("names a mistake in row 37 by row, the column as it is written, value and what was expected", async () => {
    const rows = Array.from({length: 40}, (_, i) => `thing ${i + 2};${i + 2 === 37 ? "1,5 €" : "1,5"}`);
    expect(await complaint(() => readPricesCsv(`name;Price (€/kg)\n${rows.join("\n")}`, "prices.csv"))).toBe(
      'prices.csv, row 37, Price (€/kg): more than a number (got "1,5 €"); write the number alone: 1,5 (money per kg)',
    );
  });

  test.each([
    ["price;price_per_kg\n", "p.csv, row 1, price: unknown column"],
    ["name,price per kg,Price (€/kg)\n", "p.csv, row 1, Price (€/kg): the column price per kg again"],
    [
      "name,price_per_kg,price_per_100_g\nmilk,1,0.1\n",
      'p.csv, row 2, price_per_100_g: given beside price_per_kg (got "0.1")',
    ],
    [
      "name;price_per_kg\nmilk;1.250\n",
      'p.csv, row 2, price_per_kg: a point before three digits may mean thousands (got "1.250"); write 1250',
    ],
  ])("refuses what is unclear: %j", async (text, says) => {
    expect(await complaint(() => readPricesCsv(text, "p.csv"))).toContain(says);
  });
});

describe("a recipe from CSV", () => {
  test("reads grams, kilograms and kitchen measures", async () => {
    const recipe = await readRecipeCsv(
      "Ingredient;Weight (g);kg;Amount\nWhole Milk;;1,5;\nsucrose;250,5;;\nmilk;;;2 cups\negg yolk;;;4\n",
      realPantry,
      "recipes/Plain base.csv",
    );
    expect(recipe.name).toBe("Plain base");
    const yolk = realPantry.ingredients.find(({name}) => name === "egg yolk")!.unit!;
    // 2 cups of milk at 244 g: USDA SR28, NDB 01077.
    expect(grams(recipe)).toEqual([
      ["whole milk", 1500],
      ["sucrose", 250.5],
      ["whole milk", 488],
      ["egg yolk", 4 * yolk],
    ]);
  });

  test("is written as CSV that is read back to the same", async () => {
    const recipe = {
      name: '=our +1 custard, "cold"',
      lines: [
        {ingredient: {name: "=1+1", composition: {water: 100}}, grams: 0.3},
        {ingredient: {name: '-5 °C "mix", cold', composition: {water: 100}}, grams: 1000},
      ],
    };
    const pantry = pantryOf(recipe.lines.map(({ingredient}) => ingredient));
    expect(recipeCsv(recipe)).toContain("'=1+1");
    // 0.3 g of 1000.3 g is 0.03 %.
    expect(recipeCsv(recipe)).toMatch(/,0\.03,.*\r\n.*,99\.97,$/);
    expect(await readRecipeCsv(recipeCsv(recipe), pantry, "another.csv")).toEqual(recipe);
  });

  test("is written to what a scale shows: 0.1 g, below 10 g 0.01 g", () => {
    const milk = {name: "milk", composition: {water: 100}};
    const lines = [1234.5678, 12.3456, 9.87654].map((grams) => ({ingredient: milk, grams}));
    const rows = recipeCsv({name: "milk", lines}).split("\r\n").slice(1);
    expect(rows.map((row) => row.split(",")[1])).toEqual(["1234.6", "12.3", "9.88"]);
  });

  test("is called as the file where it has no name of its own", async () => {
    expect((await readRecipeCsv("ingredient,g\nmilk,1\n", realPantry, "a/plum base.csv")).name).toBe(
      "plum base",
    );
    expect(
      (await readRecipeCsv("ingredient,g,Recipe\nmilk,1,\nmilk,1,plum\n", realPantry, "a.csv")).name,
    ).toBe("plum");
  });

  test.each([
    [
      "ingredient,g\nwhole mlik,5\n",
      'r.csv, row 2, ingredient: unknown ingredient (got "whole mlik"); did you mean',
    ],
    ["ingredient,g\nmilk,\n", "r.csv, row 2, g: no amount"],
    [
      "ingredient,g,recipe\nmilk,1,plum\nmilk,1,pear\n",
      'r.csv, row 3, recipe: another recipe\'s name (got "pear"); give one recipe a file, here plum',
    ],
    ["ingredient,g\nmilk,-5\n", "r.csv, row 2, g: out of range (got -5)"],
    ["ingredient,g,amount\nmilk,5,1 cup\n", 'r.csv, row 2, amount: given beside grams (got "1 cup")'],
    [
      "ingredient,amount\nmilk,1 cup\nmilk,a lot\n",
      'r.csv, row 3, amount: not a kitchen measure (got "a lot")',
    ],
    ["ingredient,grms\nmilk,5\n", "r.csv, row 1, grms: unknown column"],
    ["ingredient,g\n", "r.csv, row 2: no ingredients"],
  ])("says where a mistake is: %j", async (text, says) => {
    expect(await complaint(() => readRecipeCsv(text, realPantry, "r.csv"))).toContain(says);
  });
});

describe("recipes and ingredients as JSON", () => {
  test("reads names of the pantry, ingredients of one's own, grams and measures", async () => {
    const recipe = await readRecipeJson(
      `{"name": "custard", "ingredients": [{"name": "Milk", "measure": "250 ml", "price": 1},
        {"name": "own syrup", "composition": {"water": 50, "sucrose": 50}, "grams": 20}]}`,
      realPantry,
    );
    // Density of whole milk from its fluid ounce of 30.5 g: USDA SR28, NDB 01077.
    expect(recipe.lines[0]?.ingredient).toMatchObject({name: "whole milk", price: 1});
    expect(recipe.lines[0]?.grams).toBeCloseTo((250 * 30.5) / 29.5735, 0);
    expect(recipe.lines[1]).toEqual({
      ingredient: {name: "own syrup", composition: {water: 50, sucrose: 50}},
      grams: 20,
    });
  });

  test("reads back what it writes, for every ingredient of the pantry", async () => {
    const {ingredients} = realPantry;
    expect(readPantryJson(pantryJson(ingredients))).toEqual(ingredients);
    const recipe = {name: "all", lines: ingredients.map((ingredient, i) => ({ingredient, grams: i / 3}))};
    expect(await readRecipeJson(recipeJson(recipe), pantryOf([]))).toEqual(recipe);
  });

  test.each<[string, () => unknown, string]>([
    ["no list", () => readPantryJson("{}", "p.json"), "p.json: not a list"],
    [
      "an entry",
      () => readPantryJson('[{"name": "a"}]', "p.json"),
      "p.json[0]: not said, or said twice, what is in it; give either composition or label",
    ],
    [
      "a sum",
      () => readPantryJson('[{"name": "a", "composition": {"water": 9}}]', "p.json"),
      'p.json[0] "a": composition: the parts do not sum to 100 g (got 9)',
    ],
    ["a key", () => readIngredient({name: "a", composition: {}, prise: 1}), "did you mean price"],
    [
      "no amount",
      () => readRecipeJson('{"name": "r", "ingredients": [{"name": "milk"}]}', realPantry, "r.json"),
      'r.json.ingredients[0] "whole milk": no amount',
    ],
    [
      "two amounts",
      () =>
        readRecipeJson(
          '{"name": "r", "ingredients": [{"name": "milk", "grams": 1, "measure": "1 cup"}]}',
          realPantry,
        ),
      "recipe.ingredients[0].measure: given beside grams",
    ],
    [
      "a comma",
      () => readRecipeJson('{"name": "r",\n}', realPantry, "r.json"),
      "r.json, line 2, column 1: not valid JSON",
    ],
  ])("names the mistake: %s", async (_, call, says) => {
    expect(await complaint(call)).toContain(says);
  });
});

describe("the overrun of a recipe", () => {
  const said = {name: "airy", overrun: 60, lines: [{ingredient: realPantry.ingredients[0]!, grams: 100}]};

  test("comes back from both kinds of file, and is not written where it is not said", async () => {
    const {overrun: _, ...unsaid} = said;
    expect(await readRecipeJson(recipeJson(said), pantryOf([]))).toEqual(said);
    expect(await readRecipeCsv(recipeCsv(said), realPantry)).toEqual(said);
    expect(recipeJson(unsaid)).not.toContain("overrun");
    expect(recipeCsv(unsaid)).not.toContain("overrun");
    expect(await readRecipeCsv(recipeCsv(unsaid), realPantry)).toEqual(unsaid);
  });

  test("is read from whichever row has it, in words of a spreadsheet", async () => {
    const {overrun} = await readRecipeCsv("name,g,Overrun (%)\nmilk,9,\nsugar,1,45\n", realPantry);
    expect(overrun).toBe(45);
  });

  test.each([
    [
      "two that differ",
      "name,g,overrun\nmilk,9,30\nsugar,1,45\n",
      "row 3, overrun: another overrun (got 45); give one, here 30",
    ],
    ["one out of range", "name,g,overrun\nmilk,9,250\n", "row 2, overrun: out of range (got 250)"],
    ["no number", "name,g,overrun\nmilk,9,airy\n", 'row 2, overrun: not a finite number (got "airy")'],
  ])("%s is refused", async (_, text, says) => {
    expect(await complaint(() => readRecipeCsv(text, realPantry, "r.csv"))).toContain(says);
  });

  test("out of range in JSON is refused with its place", async () => {
    const text = '{"name": "r", "overrun": -5, "ingredients": [{"name": "milk", "grams": 1}]}';
    expect(await complaint(() => readRecipeJson(text, realPantry, "r.json"))).toMatch(/^r\.json\.overrun: /);
  });
});
