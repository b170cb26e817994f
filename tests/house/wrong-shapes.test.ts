import ts from "typescript";
import {describe, expect, test} from "vitest";
import {InputError} from "../../lib/core/errors.ts";
import {library} from "../support/library.ts";
import {milk, sugar} from "../support/custard.ts";
import {realPantry} from "../support/pantry.ts";
import {publicFunctions} from "../support/public-api.ts";

/** What a caller without types might mistake for each other, and plain nonsense. */
const asked = {
  ingredients: [
    {name: "whole milk", price: 1},
    {name: "sugar", price: 1},
  ],
  targets: {},
};
const recipe = {name: "syrup", lines: [milk, sugar].map((ingredient) => ({ingredient, grams: 100}))};
const THINGS = {
  nothing: undefined,
  null: null,
  "a number": 5,
  "an object of another make": {when: "today"},
  "a list of numbers": [1, 2],
  "a brief as a cook writes it": asked,
  "a brief": library.readBrief(asked, realPantry),
  "an answer": library.balance(asked, {pantry: realPantry}),
  "a recipe": recipe,
  "a pantry": realPantry,
  "an ingredient": milk,
  "a composition": milk.composition,
  "a product": library.makeProduct("custard", [library.baseComponent(recipe)]),
};
type Thing = keyof typeof THINGS;

/** By the type of a function's first parameter: what it takes. Anything else must be refused in words. */
const TAKES: Readonly<Record<string, readonly Thing[]>> = {
  Composition: ["a composition"],
  Recipe: ["a recipe"],
  Product: ["a product"],
  Pantry: ["a pantry"],
  BriefSource: ["a brief", "a brief as a cook writes it", "an answer"],
  LinearProgram: [],
  Ingredient: ["an ingredient"],
  Answer: ["an answer"],
  BatchSheet: [],
  BriefInput: ["a brief as a cook writes it"],
  "readonly Ingredient[]": [],
  "readonly RecipeLine[]": [],
  "readonly Portion[]": [],
  "readonly Reading[]": [],
  "readonly Component[]": [],
  "readonly CurvePoint[]": [],
  ScaleTo: [],
  Tubs: [],
};

/** Further arguments that are right, by the type of the parameter. */
const FURTHER: Readonly<Record<string, unknown>> = {
  number: -18,
  "readonly number[]": [1, 1],
  string: "milk",
  ScaleTo: {grams: 1000},
  TradeOffAxes: {x: "cost", y: "sugars"},
  RegionAxes: {x: "cost", y: "sugars"},
  Grid: {columns: 2, rows: 2},
};

/** First arguments that are right, by the type of the parameter. */
const FIRST: Readonly<Record<string, unknown>> = {
  Recipe: THINGS["a recipe"],
  Product: THINGS["a product"],
  BriefSource: THINGS["a brief"],
};

/** Types of a second parameter that nothing above is of. */
const SECOND = ["ScaleTo", "TradeOffAxes", "RegionAxes"];

const functions = publicFunctions.flatMap(({name, declaration: {parameters}}) => {
  // What has a default instead of a type is a number or a text.
  const types = parameters.map(
    ({type, initializer}) =>
      type?.getText() ?? (initializer && ts.isStringLiteral(initializer) ? "string" : "number"),
  );
  return Object.hasOwn(TAKES, types[0] ?? "") ? [{name, types}] : [];
});

/** Calls a function and runs whatever it returns to its end. */
async function run(name: string, args: readonly unknown[]): Promise<void> {
  const made: unknown = (library as unknown as Record<string, (...args: readonly unknown[]) => unknown>)[
    name
  ]!(...args);
  if (typeof made === "object" && made !== null && "next" in made)
    Array.from(made as unknown as Iterable<unknown>);
  else await made;
}

describe("a value of another make is refused in words, not by an error from inside", () => {
  test("of nearly all functions that take one of the library's own", () => {
    expect(functions.length).toBeGreaterThan(60);
  });

  test.each(functions)("$name", async ({name, types}) => {
    const further = types.slice(1).map((type) => FURTHER[type] ?? {});
    const taken = TAKES[types[0]!]!;
    for (const [thing, value] of Object.entries(THINGS)) {
      if (taken.includes(thing as Thing)) continue;
      let error: unknown;
      try {
        await run(name, [value, ...further]);
      } catch (thrown) {
        error = thrown;
      }
      expect(error, `${name}(${thing})`).toBeInstanceOf(InputError);
    }
  });

  const ofTwo = functions.filter(({types}) => SECOND.includes(types[1] ?? ""));

  test("as a second argument too, of all functions that take an amount to make or two axes", () => {
    expect(ofTwo.map(({name}) => name).toSorted()).toEqual(
      "batchSheet costMap costMapSteps feasibleRegion feasibleRegionSteps madeSheet scale scaleProduct tradeOff tradeOffSteps".split(
        " ",
      ),
    );
  });

  test.each(ofTwo)("$name, second argument", async ({name, types}) => {
    const first = FIRST[types[0]!];
    const further = types.slice(2).map((type) => FURTHER[type]);
    await run(name, [first, FURTHER[types[1]!], ...further]);
    const place = types[1] === "ScaleTo" ? "to" : "axes";
    for (const [thing, value] of Object.entries({...THINGS, "a list of texts": ["cost", "sweetness"]})) {
      let error: unknown;
      try {
        await run(name, [first, value, ...further]);
      } catch (thrown) {
        error = thrown;
      }
      expect(error, `${name}(…, ${thing})`).toBeInstanceOf(InputError);
      expect(error).toMatchObject({place});
    }
  });
});

describe("the words of a refusal", () => {
  const brief = library.readBrief(asked, realPantry);
  const syrup = library.makeProduct("custard", [library.baseComponent(recipe)]);
  const HARD = 'e.g. {"hardPhase": {"at": -18}}';
  const loosely = library as unknown as Record<string, (...args: readonly unknown[]) => unknown>;

  test.each<[name: string, args: readonly unknown[], says: string | RegExp]>([
    ["scale", [recipe, 500], "to: does not say how much to make (got 500); give {grams: 500}"],
    ["mixGrams", [5], "to: does not say how much to make (got 5); give {grams: 5}"],
    [
      "batchSheet",
      [syrup],
      "to: does not say how much to make; give {grams}, {mixMillilitres}, {tubs, tubMillilitres, overrun} or {runs, machine}",
    ],
    ["scaleProduct", [syrup, {runs: 2}], "machine: not a machine; give {runs, machine: {fillLimit}}"],
    ["scale", [recipe, NaN], /^to: .* \(got NaN\); give \{grams\}, /],
    ["tradeOff", [brief], 'axes: not two axes; give {x, y}, e.g. {x: "cost", y: "sweetness"}'],
    ["tradeOff", [brief, ["cost", "sweetness"]], /^axes: not two axes \(got \["cost","sweetness"\]\); give/],
    ["costMap", [brief, {x: "cost", y: "sugars"}], "grid: not a grid; give {columns, rows}, e.g. 20 of each"],
    [
      "feasibleRegion",
      [brief, {x: 5, y: "cost"}],
      `x: names nothing to show (got 5); name a quantity, e.g. "cost" or "sweetness", or one at a temperature, ${HARD}`,
    ],
    [
      "tradeOff",
      [brief, {x: "cost", y: {minimise: {minimise: "fat"}}}],
      /^y\.minimise: names nothing to show/,
    ],
    ["tradeOff", [brief, {x: "cost", y: {maximise: {}}}], /^y\.maximise: names nothing to show/],
    [
      "tradeOff",
      [brief, {x: "cost", y: {minimise: "fat", maximise: "water"}}],
      /^y: names more than one thing .*; keep minimise or maximise$/,
    ],
    [
      "tradeOff",
      [brief, {x: {hardPhase: -18}, y: "cost"}],
      'x.hardPhase: needs a temperature (got -18); write {"hardPhase": {"at": -18}}',
    ],
    [
      "tradeOff",
      [brief, {x: {heatShock: {from: -18}}, y: "cost"}],
      /^x\.heatShock: needs two temperatures .*; write \{"heatShock": \{"from": -18, "to": -14\}\}$/,
    ],
    [
      "balance",
      [{...asked, minimise: {hardPhase: -18}}, {pantry: realPantry}],
      "brief.minimise.hardPhase: not an object {…} (got -18); give an object {…}",
    ],
    [
      "balance",
      [asked, realPantry],
      "options: not an object of options; give {pantry}: balance(brief, {pantry})",
    ],
    [
      "balance",
      [asked, [milk]],
      "options: a list; give {pantry}: balance(brief, {pantry: pantryOf(ingredients)})",
    ],
    ["balance", [asked, null], /^options: not an object of options; give/],
    [
      "balance",
      [brief],
      "brief: already checked; pass it to tradeOff, feasibleRegion and their like, or give the brief as it was written",
    ],
    ["readBrief", [brief, realPantry, "b.json"], /^b\.json: already checked; /],
    ["pantryOf", [[milk, {name: "x"}]], /^ingredients\[1\]: not an entry of ingredients \(got /],
    ["makeProduct", ["x", [5]], /^components\[0\]: not an entry of components \(got 5\); make each with/],
    ["answerMarkdown", [5], /^answer: not an answer \(got 5\); /],
    ["recipeMass", [5], /^recipe: not a recipe \(got 5\); /],
    [
      "fromLabel",
      [{name: "paste", class: "nut", fat: 60, carbohydrate: 17, sugars: 5, protein: 15, salt: 0}],
      'label "paste": the class among the figures (got "nut"); give it as the second argument: fromLabel(label, "dairy")',
    ],
    [
      "fromLabel",
      // The class guesses some 0.15 g of minerals to a gram of protein: 3.6 g, and 58 + 18 + 24 + 2 g are on the label.
      [{name: "paste", fat: 58, carbohydrate: 18, sugars: 5, protein: 24, fibre: 2, salt: 0}, "nut"],
      'label "paste": the figures do not sum to 100 g with 3.6 g of minerals, a guess of the class nut (got 105.6); check them and the class; carbohydrate is without fibre, alcohol in g',
    ],
    [
      "fromLabel",
      [{name: "x", fat: 100, carbohydrate: 0, sugars: 0, protein: 0, salt: 0, water: 10}, "oil"],
      /^label "x": the figures do not sum to 100 g \(got 110\); check/,
    ],
  ])("%s %#", (name, args, says) => {
    const call = () => loosely[name]!(...args);
    expect(call).toThrow(InputError);
    expect(call).toThrow(says);
    expect(call).not.toThrow(/\n/);
  });
});
