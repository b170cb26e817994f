import {describe, expect, test} from "vitest";
import {balance} from "../../../lib/balance/balance.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {requireKnown} from "../../../lib/balance/read/read-subject.ts";
import {InputError} from "../../../lib/core/errors.ts";
import {parseJson} from "../../../lib/io/json/json.ts";
import {pantryOf} from "../../../lib/pantry/pantry.ts";
import {within} from "../../support/within.ts";

const milk = {name: "milk", composition: {water: 87.5, milkFat: 3.5, msnf: 9}, price: 1};
const sugar = {name: "sugar", composition: {sucrose: 100}, price: 1.2};
const pantry = pantryOf([
  {name: "whole milk", composition: {water: 88, milkFat: 3.5, lactose: 8.5}, price: 1},
]);

/** The error that a brief meets. */
function mistakeIn(brief: unknown): InputError {
  try {
    readBrief(brief, pantry, "brief.json");
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error("no error");
}

const good = {ingredients: [milk, sugar], targets: {sugars: {equal: 15}}};

describe("a mistake in a brief is one line that names place, value and next step", () => {
  test.each<[what: string, brief: unknown, place: string, says: RegExp]>([
    ["nothing", null, "brief.json", /give an object/],
    ["no object", 5, "brief.json", /give an object/],
    ["a list", [], "brief.json", /give an object/],
    ["no ingredients", {targets: {}}, "brief.json.ingredients", /missing.*give a list/],
    ["an empty list", {ingredients: []}, "brief.json.ingredients", /at least 1/],
    ["an unknown key", {...good, tragets: {}}, "brief.json", /unknown key "tragets".*did you mean targets/],
    [
      "an unknown key of an ingredient",
      {ingredients: [{...milk, prise: 2}]},
      "brief.json.ingredients[0]",
      /did you mean price/,
    ],
    ["a batch of 0", {...good, batch: 0}, "brief.json.batch", /got 0.*above 0/],
    ["a negative batch", {...good, batch: -5}, "brief.json.batch", /got -5/],
    ["a batch with a unit", {...good, batch: "5 kg"}, "brief.json.batch", /got "5 kg".*finite number/],
    ["an infinite number", {...good, batch: Infinity}, "brief.json.batch", /finite number/],
    ["no number", {...good, targets: {fat: {min: NaN}}}, "brief.json.targets.fat.min", /finite number/],
    [
      "a negative price",
      {ingredients: [{...milk, price: -1}]},
      "brief.json.ingredients[0].price",
      /got -1.*at least 0/,
    ],
    [
      "min over max",
      {...good, targets: {fat: {min: 9, max: 8}}},
      "brief.json: targets.fat.min",
      /above max.*at most 8/,
    ],
    [
      "more than is in stock",
      {ingredients: [{...milk, stock: 100, min: 300, max: 420}]},
      'brief.json: ingredients[0] "milk": min',
      /more than is in stock \(got 300\); give at most 100 g/,
    ],
    [
      "a negative target",
      {...good, targets: {fat: {min: -1}}},
      "brief.json: targets.fat.min",
      /got -1.*from 0 to 100/,
    ],
    [
      "a target over 100",
      {...good, targets: {fat: {max: 120}}},
      "brief.json: targets.fat.max",
      /from 0 to 100/,
    ],
    [
      "a target without a limit",
      {...good, targets: {fat: {}}},
      "brief.json: targets.fat",
      /give min, max or equal/,
    ],
    [
      "equal beside max",
      {...good, targets: {fat: {equal: 5, max: 6}}},
      "brief.json: targets.fat",
      /either equal/,
    ],
    ["a bare number as target", {...good, targets: {fat: 8}}, "brief.json.targets.fat", /got 8.*object/],
    [
      "an unknown quantity",
      {...good, targets: {fatt: {max: 8}}},
      "brief.json: targets.fatt",
      /did you mean fat/,
    ],
    [
      "ice without a temperature",
      {...good, targets: {ice: [{max: 40}]}},
      "brief.json.targets.ice[0].at",
      /missing/,
    ],
    [
      "ice above freezing",
      {...good, targets: {ice: [{at: 5, max: 40}]}},
      "brief.json.targets.ice[0].at",
      /got 5.*at most -0.01/,
    ],
    [
      "an exact value over 100",
      {...good, targets: {fat: {equal: 120}}},
      "brief.json: targets.fat.equal",
      /from 0 to 100 g per 100 g/,
    ],
    [
      "a name that is like none",
      {...good, targets: {zzzzzzzzzz: {max: 8}}},
      "brief.json: targets.zzzzzzzzzz",
      /use cost, .*fat, .*saturates/,
    ],
    [
      "a freezing point above 0",
      {...good, targets: {freezingPoint: {max: 3}}},
      "brief.json: targets.freezingPoint.max",
      /from -40 to -0.01 °C/,
    ],
    [
      "parts that do not sum",
      {ingredients: [{...milk, composition: {water: 50}}]},
      'brief.json: ingredients[0] "milk": composition',
      /sum to 100.*got 50/,
    ],
    [
      "an unknown part",
      {ingredients: [{...milk, composition: {watr: 50}}]},
      "brief.json.ingredients[0].composition",
      /did you mean water/,
    ],
    [
      "a part over 100",
      {ingredients: [{...milk, composition: {water: 150}}]},
      "brief.json.ingredients[0].composition.water",
      /got 150.*from 0 to 100 g per 100 g; is its decimal point missing \(15\)/,
    ],
    [
      "syrup without its DE",
      {ingredients: [{name: "syrup", price: 1, composition: {water: 20, glucoseSyrupSolids: 80}}]},
      'brief.json: ingredients[0] "syrup": composition.dextroseEquivalent',
      /give the DE/,
    ],
    [
      "a duplicate name",
      {ingredients: [milk, {...milk, name: " MILK "}]},
      "brief.json: ingredients[1]",
      /same name as ingredients\[0\]/,
    ],
    [
      "an unknown ingredient",
      {ingredients: ["whole mlik"]},
      "brief.json: ingredients[0]",
      /did you mean "whole milk"/,
    ],
    [
      "an ingredient min over max",
      {ingredients: [{...milk, min: 9, max: 8}]},
      'brief.json: ingredients[0] "milk": min',
      /above max/,
    ],
    [
      "a min over the batch",
      {...good, batch: 100, ingredients: [{...milk, min: 200}]},
      'brief.json: ingredients[0] "milk": min',
      /whole batch/,
    ],
    [
      "a unit over the batch",
      {batch: 100, ingredients: [{...milk, unit: 5000}]},
      'brief.json: ingredients[0] "milk": unit',
      /whole batch/,
    ],
    [
      "step beside unit",
      {ingredients: [{...milk, unit: 50, step: 5}]},
      'brief.json: ingredients[0] "milk": step',
      /either step or unit/,
    ],
    [
      "a missing price",
      {ingredients: [milk, {name: "sugar", composition: {sucrose: 100}}]},
      "brief.json: ingredients",
      /no price for sugar/,
    ],
    ["two aims", {...good, minimise: "cost", maximise: "fat"}, "brief.json: maximise", /give one of them/],
    ["an unknown aim", {...good, minimise: "costs"}, "brief.json: minimise", /did you mean cost/],
    ["an aim without its temperature", {...good, minimise: "ice"}, "brief.json: minimise", /"at": -18/],
    [
      "an aim that is a temperature",
      {...good, minimise: "scoopTemperature"},
      "brief.json: minimise",
      /no weighted sum.*use \{"hardPhase": \{"at": -18\}\}/,
    ],
    [
      "a margin for no spread",
      {...good, margin: true},
      "brief.json: margin",
      /without a spread \(got true\); say how far the kitchen may be off/,
    ],
    ["an empty recipe to stay near", {...good, near: {milk: 0}}, "brief.json: near", /an empty recipe/],
    [
      "a ratio to itself",
      {ingredients: [{...milk, ratio: {to: "milk", grams: 2}}]},
      'brief.json: ingredients[0] "milk": ratio.to',
      /the ingredient itself/,
    ],
    [
      "a property that not all have",
      {ingredients: [{...milk, properties: {co2: 120}}, sugar], targets: {co2: {max: 90}}},
      'brief.json: targets.co2: ingredient "sugar"',
      /has no co2/,
    ],
    [
      "a key of the prototype",
      JSON.parse('{"ingredients": ["whole milk"], "targets": {"__proto__": {"min": 1}}}'),
      "brief.json.targets",
      /unknown key/,
    ],
    [
      "an unknown allergen",
      {ingredients: [{...milk, allergens: ["lactose"]}]},
      "brief.json.ingredients[0].allergens[0]",
      /use gluten, crustaceans/,
    ],
  ])("%s", (_what, brief, place, says) => {
    const error = mistakeIn(brief);
    expect(error.place).toBe(place);
    expect(error.message).toMatch(says);
    expect(error.message).not.toMatch(/\n/);
    expect(error.message.startsWith(place)).toBe(true);
  });

  test("and says by which keys it is reached, whatever stands in them", () => {
    const many = Array.from({length: 11}, (_, j) => ({...milk, name: `milk ${j}`}));
    const last = {...milk, name: 'the "best": milk', min: 9, max: 8};
    expect(mistakeIn({ingredients: [...many, last]}).path).toEqual(["ingredients", 11, "min"]);
    const targets = {oat: {max: 1}, "oat fibre. all of it": {min: 2, max: 1}};
    const properties = {oat: 0, "oat fibre. all of it": 0};
    const place = ["targets", "oat fibre. all of it", "min"];
    expect(mistakeIn({ingredients: [{...milk, properties}], targets}).path).toEqual(place);
    expect(mistakeIn({ingredients: [{...milk, properties: {oat: 0}}], targets}).path).toEqual(
      place.slice(0, 2),
    );
  });

  test("names from outside cannot break the line", () => {
    const error = mistakeIn({ingredients: [{name: "a\n\u001b[31mb", composition: {water: 1}}]});
    expect(error.message).toMatch(/a b|\[31mb/);
    // oxlint-disable-next-line no-control-regex -- looking for control characters is the point
    expect(error.message).not.toMatch(/[\u0000-\u001f]/);
  });
});

describe("odd names get a right answer", () => {
  test.each([
    "result",
    "feasible",
    "bounded",
    "isIntegral",
    "constructor",
    "toString",
    "__proto__",
    "<img src=x onerror=alert(1)>",
    "batch",
    "x0",
    "💧",
  ])("%s", (name) => {
    const answer = balance({ingredients: [{...milk, name}, sugar], targets: {sugars: {equal: 15}}});
    if (answer.status !== "optimal") throw new Error(answer.status);
    expect(answer.amounts[0]!.ingredient).toBe(name);
    within(answer.amounts[0]!.percent, 85, 1e-9, name);
    within(answer.amounts[1]!.percent, 15, 1e-9, "sugar");
  });
});

test("whatever a measure cannot know of an ingredient is refused, of a measure to come too", () => {
  const choices = [
    {ingredient: {...milk, properties: {co2: 120}}, min: 0, max: Infinity},
    {ingredient: sugar, min: 0, max: Infinity},
  ];
  const subject = {kind: "property", property: "co2"} as const;
  expect(() => requireKnown(subject, choices, "brief")).toThrow(
    "brief: ingredients: co2 not known of sugar; say what each has of it, leave those ingredients out, or drop co2",
  );
  expect(() => requireKnown(subject, choices.slice(0, 1), "brief")).not.toThrow();
  const many = Array.from({length: 6}, (_, j) => ({...choices[1]!, ingredient: {...sugar, name: `s${j}`}}));
  expect(() => requireKnown(subject, many.slice(1), "brief")).toThrow("not known of s1, s2, s3, s4, s5;");
  expect(() => requireKnown(subject, many, "brief")).toThrow("not known of s0, s1, s2, s3, s4 …;");
  // A quantity follows from every composition.
  expect(() => requireKnown({kind: "quantity", quantity: "fat"}, choices, "brief")).not.toThrow();
});

describe("text that is no JSON", () => {
  test.each([
    ['{"a": 1,}', /brief.json, line 1, column \d+: not valid JSON/],
    ['{\n  "a": 1\n  "b": 2\n}', /brief.json, line 3, column \d+/],
    ["", /line 1, column 1/],
    ['{"a": [1, 2', /not valid JSON/],
  ])("%j names line and column", (text, says) => {
    expect(() => parseJson(text, "brief.json")).toThrow(says);
  });

  test("a byte order mark is forgiven", () => {
    expect(parseJson('\uFEFF{"a": 1}', "brief.json")).toEqual({a: 1});
  });
});
