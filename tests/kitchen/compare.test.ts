import {csvParse} from "d3-dsv";
import {describe, expect, test} from "vitest";
import {findIngredient, type Ingredient, readComposition, type Recipe} from "../../lib/index.ts";
import {compareRecipes, describeRecipe} from "../../lib/substitute.ts";
import {dataset, realPantry} from "../support/pantry.ts";

const recipe = (
  name: string,
  grams: Readonly<Record<string, number>>,
  prices: Readonly<Record<string, number>> = {},
): Recipe => ({
  name,
  lines: Object.entries(grams).map(([one, amount]) => {
    const ingredient = findIngredient(realPantry, one);
    return {ingredient: one in prices ? {...ingredient, price: prices[one]!} : ingredient, grams: amount};
  }),
});

// University of Guelph, ice cream technology e-book: suggested mixes for hard ice cream.
const HARD: Recipe[] = csvParse(dataset("hard_mixes.csv")).map((row) => {
  const parts: Readonly<Record<string, number>> = {
    milkFat: Number(row.milk_fat_percent),
    msnf: Number(row.msnf_percent),
    sucrose: Number(row.sucrose_percent),
    glucoseSyrupSolids: Number(row.glucose_syrup_solids_percent),
    stabiliser: Number(row.stabiliser_percent),
    emulsifier: Number(row.emulsifier_percent),
  };
  const solids = Object.values(parts).reduce((a, b) => a + b, 0);
  const lines = Object.entries({...parts, water: 100 - solids}).map(([part, grams]) => {
    const syrup = part === "glucoseSyrupSolids" ? {dextroseEquivalent: 42} : {};
    const ingredient: Ingredient = {name: part, composition: readComposition({[part]: 100, ...syrup}, part)};
    return {ingredient, grams};
  });
  return {name: `mix ${row.mix!}`, lines: lines.filter(({grams}) => grams > 0), overrun: 100};
});

const CUSTARD = recipe("Custard", {"whole milk": 500, "cream 36 %": 250, "egg yolk": 80, sucrose: 170});
const WHITE = recipe("White", {"whole milk": 1000, "cream 36 %": 660, sucrose: 340});
const SORBET = recipe("Sorbet", {raspberry: 500, water: 250, sucrose: 250});

describe("two published mixes", () => {
  const {differences, recipes, amounts} = compareRecipes([HARD[0]!, HARD[6]!]);
  const [first, last] = recipes.map(({name}) => name);

  // The table prints 10 and 16 % fat, and 36.5 and 40.75 % total solids in sum.
  test("differ as their table has it, the most noticed first", () => {
    expect(differences).toContain(`${last} is richer in fat: 16.0 %, ${first} 10.0 %.`);
    const solids = differences.find((words) => words.includes("denser"))!;
    expect(solids).toMatch(new RegExp(`^${last} is denser: 40.[78] % solids, ${first} 36.5 % solids\\.$`));
    expect(differences.findIndex((words) => words.includes("richer in fat"))).toBeLessThan(
      differences.indexOf(solids),
    );
  });

  // 5 % glucose syrup solids in the first, none in the last; 10 and 15 % sucrose.
  test("list the amounts that differ, per kilogram", () => {
    expect(amounts.find(({ingredient}) => ingredient === "glucoseSyrupSolids")!.perKilogram).toEqual([50, 0]);
    expect(amounts.find(({ingredient}) => ingredient === "sucrose")!.perKilogram).toEqual([100, 150]);
    const by = amounts.map(({perKilogram}) => Math.abs(perKilogram[0]! - perKilogram[1]!));
    expect(by).toEqual([...by].sort((a, b) => b - a));
  });
});

test("another batch of the same recipe is alike in all, and nothing is told", () => {
  const twice = {...CUSTARD, lines: CUSTARD.lines.map((line) => ({...line, grams: 2.5 * line.grams}))};
  const {differences, alike, amounts, same, recipes} = compareRecipes([CUSTARD, twice]);
  expect(differences).toEqual([]);
  expect(amounts).toEqual([]);
  expect(same).toEqual(["whole milk", "cream 36 %", "egg yolk", "sucrose"]);
  expect(alike).toBe("Alike in firmness, sweetness, fat, total solids, protein, lactose and egg yolk.");
  expect(recipes.map(({name}) => name)).toEqual(["Custard", "Custard (2)"]);
});

test("kinds come first, and an allergen of Annex II that only some hold is told (Regulation (EU) 1169/2011)", () => {
  const {differences} = compareRecipes([CUSTARD, WHITE, SORBET]);
  expect(differences[0]).toBe(
    "Custard is an egg custard ice cream, White is an ice cream and Sorbet is a sorbet.",
  );
  expect(differences).toContain("Eggs: in Custard, not in White and Sorbet.");
  expect(differences).toContain("Milk: in Custard and White, not in Sorbet.");
  const fat = differences.find((words) => words.includes("fat"))!;
  expect(fat).toMatch(/^\w+ is the richest in fat: [\d.]+ %, \w+ [\d.]+ % and Sorbet 0\.\d %\.$/);
});

test("firmness is said as where each scoops, as when each is read alone", () => {
  const {differences, recipes} = compareRecipes([WHITE, SORBET], {freezer: -18});
  for (const [i, one] of [WHITE, SORBET].entries())
    expect(recipes[i]!.scoop).toEqual(describeRecipe(one, {freezer: -18}).scoop);
  expect(differences.filter((words) => words.includes("scoops at"))).toHaveLength(1);
});

test("a cost is told where every price is known, and to a cook only then", () => {
  const prices = {"whole milk": 1, "cream 36 %": 5, "egg yolk": 10, sucrose: 1.2};
  // By hand: (0.5 + 1.25 + 0.8 + 0.204) for 1 kg; (1 + 3.3 + 0.408) for 2 kg.
  const grams = {"whole milk": 500, "cream 36 %": 250, "egg yolk": 80, sucrose: 170};
  const dear = recipe("Custard", grams, prices);
  const cheap = recipe("White", {"whole milk": 1000, "cream 36 %": 660, sucrose: 340}, prices);
  expect(compareRecipes([dear, cheap]).differences).toContain(
    "Custard is dearer: 2.75 a kilogram, White 2.35 a kilogram.",
  );
  expect(compareRecipes([dear, WHITE]).differences.join(" ")).not.toMatch(/kilogram/);
});

test("one recipe or five are refused in a line", () => {
  expect(() => compareRecipes([CUSTARD])).toThrow(/recipes.length.*2 to 4/);
  expect(() => compareRecipes([CUSTARD, WHITE, SORBET, CUSTARD, WHITE])).toThrow(/recipes.length.*2 to 4/);
  expect(() => compareRecipes("two" as never)).toThrow(/not a list/);
  expect(() => compareRecipes([CUSTARD, {name: "none", lines: []}])).toThrow(/recipes\[1\]/);
});
