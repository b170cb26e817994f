import {describe, expect, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import {candidatesOf} from "../../lib/balance/explain/candidates.ts";
import {pricesOf} from "../../lib/balance/explain/prices.ts";
import {recipeOf} from "../../lib/balance/mix/recipe-of.ts";
import {formulate} from "../../lib/balance/program/formulate.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {substitute} from "../../lib/balance/substitute/substitute.ts";
import {feasibleRegion} from "../../lib/balance/trade-off/feasible-region.ts";
import {tradeOff} from "../../lib/balance/trade-off/trade-off.ts";
import {reliability} from "../../lib/balance/weigh/reliability.ts";
import {weighable} from "../../lib/balance/weigh/weighable.ts";
import {textReport} from "../../lib/io/report/report.ts";
import {pantryOf} from "../../lib/pantry/pantry.ts";

// A sugar syrup whose figures can be worked in the head.
const written = {
  ingredients: [
    {name: "sugar", price: 1, composition: {sucrose: 100}},
    {name: "dextrose", price: 2, composition: {dextrose: 100}},
    {name: "water", price: 0, composition: {water: 100}},
  ],
  targets: {totalSolids: {min: 30, max: 40}, sweetness: {max: 38}},
};
const checked = readBrief(written, pantryOf([]));
const answer = balance(written);
if (answer.status !== "optimal") throw new Error(answer.status);
const {amounts} = answer;

describe("a brief is taken as it was written, checked, or with its answer", () => {
  test.each([
    ["what limits cost", pricesOf],
    ["a front", (source: typeof written) => tradeOff(source, {x: "cost", y: "sweetness"})],
    ["a region", (source: typeof written) => feasibleRegion(source, {x: "cost", y: "sweetness"})],
    ["other candidates", (source: typeof written) => candidatesOf(source, answer)],
    ["weighable amounts", (source: typeof written) => weighable(source, amounts)],
    ["reliability", (source: typeof written) => reliability(source, amounts, {weighing: 1}, {batches: 20})],
    ["a recipe", (source: typeof written) => recipeOf(source, amounts)],
    ["a report", (source: typeof written) => textReport(answer, source)],
  ] as const)("%s", (_, of) => {
    const ask = of as (source: unknown) => unknown;
    expect(ask(answer)).toEqual(ask(checked));
    expect(ask(written)).toEqual(ask(checked));
  });

  test("a report finds the brief in its answer, whatever that is", () => {
    expect(textReport(answer)).toBe(textReport(answer, checked));
    const torn = {...written, targets: {totalSolids: {min: 30}, sugars: {max: 20}}};
    expect(textReport(balance(torn))).toContain("sugars");
  });
});

test.each<[object, RegExp]>([
  [{ingredients: "sugar"}, /^brief.*readBrief/],
  [{targets: undefined}, /^brief.*readBrief/],
  [{name: 5}, /^brief.*readBrief/],
  [{batch: "1000"}, /^brief.*readBrief/],
  [{ingredients: [{ingredient: "sugar", min: 0, max: 1}]}, /^ingredients\[0\]/],
  [{ingredients: [{ingredient: {name: "sugar"}, min: 0, max: 1}]}, /composition/],
  [{targets: [{min: 5}]}, /^targets\[0\]/],
  [{aim: {sense: "minimise"}}, /^aim/],
  [{batch: 0}, /^brief\.batch: .*got 0/],
  [{freezer: 0}, /^brief\.freezer: .*-40 to -0.01 °C/],
  [{freezer: -41}, /^brief\.freezer: .*-40 to -0.01 °C/],
  [{overrun: -1}, /^brief\.overrun: .*0 to 200 %/],
  [{overrun: 201}, /^brief\.overrun: .*0 to 200 %/],
])("a checked brief that was changed to what none can be is refused: %j", (change, says) => {
  expect(() => pricesOf({...checked, ...change})).toThrow(says);
});

test("a balanced mix is replaced in as its recipe is, in the freezer of its brief", () => {
  const from = pantryOf([{name: "honey", composition: {dextrose: 40, fructose: 40, water: 20}, price: 3}]);
  const colder = balance({...written, freezer: -14});
  if (colder.status !== "optimal") throw new Error(colder.status);
  const recipe = recipeOf(colder, colder.amounts);
  const options = {without: "sugar", from};
  expect(substitute(colder, options)).toEqual(substitute(recipe, {...options, freezer: -14}));
  expect(substitute(colder, {...options, freezer: -18})).toEqual(substitute(recipe, options));
  expect(() => substitute({...colder}, options)).toThrow(/^brief: a copy of an answer/);
});

test("what a kitchen has learned of its tubs goes with a balanced mix to its replacement", () => {
  const learned = {reports: 4, shift: 10, narrowing: 0, scatter: 1};
  const mix = balance({...written, learned});
  if (mix.status !== "optimal") throw new Error(mix.status);
  const from = pantryOf([{name: "honey", composition: {dextrose: 40, fructose: 40, water: 20}, price: 3}]);
  const options = {without: "sugar", from};
  expect(substitute(mix, options)).toEqual(substitute(recipeOf(mix, mix.amounts), {...options, learned}));
  expect(substitute(mix, options)).not.toEqual(substitute(answer, options));
});

describe("the recipe of a mix", () => {
  test("has what is used of it, and the air where that is not the usual", () => {
    const {name, lines, ...rest} = recipeOf(answer, [300, 0, 700]);
    expect(name).toBe("mix");
    expect(lines.map(({ingredient, grams}) => [ingredient.name, grams])).toEqual([
      ["sugar", 300],
      ["water", 700],
    ]);
    expect(rest).toEqual({});
    expect(recipeOf(readBrief({...written, overrun: 60}, pantryOf([])), [300, 0, 700]).overrun).toBe(60);
  });

  test.each<[unknown, RegExp]>([
    ["300 g", /^amounts: not a list of amounts \(got "300 g"\)/],
    [[300, 700], /^amounts: not one mass for each of the brief's ingredients \(got 2\)/],
    [[300, -1, 700], /^amounts\[1\]: .*\(got -1\).*at least 0/],
    [[300, {ingredient: "water", grams: 700}], /^amounts\[0\]/],
    [[{ingredient: "water"}], /^amounts\[0\]: not an entry of amounts/],
    [[{ingredient: "water", grams: -1}], /^amounts\[0\]\.grams: .*at least 0/],
    [[{ingredient: "watr", grams: 1}], /^amounts\[0\]\.ingredient: .*did you mean water/],
    [
      [
        {ingredient: "water", grams: 1},
        {ingredient: "water", grams: 2},
      ],
      /^amounts\[1\]\.ingredient: named twice/,
    ],
  ])("is refused of %j", (given, says) => {
    expect(() => recipeOf(answer, given as never)).toThrow(says);
  });
});

describe("an answer holds its brief", () => {
  test("and shows it neither in JSON nor in a copy, which then is refused in words", () => {
    expect(answer.brief).toEqual(checked);
    expect(Object.keys(answer)).not.toContain("brief");
    expect(JSON.stringify(answer)).not.toContain('"brief"');
    expect(() => pricesOf({...answer})).toThrow(/^brief: a copy of an answer, without the brief/);
  });

  test("with the program that it came from: it is written once", () => {
    expect(formulate(answer.brief!)).toBe(formulate(answer.brief!));
    const other = {...answer.brief!, targets: []};
    expect(formulate(other)).not.toBe(formulate(answer.brief!));
    expect(formulate(answer.brief!, {sense: "maximise", subject: {kind: "cost"}})).not.toBe(
      formulate(answer.brief!),
    );
  });
});
