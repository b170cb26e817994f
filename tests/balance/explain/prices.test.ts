import {describe, expect, test} from "vitest";
import {balance} from "../../../lib/balance/balance.ts";
import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import {pricesOf} from "../../../lib/balance/explain/prices.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {pantryOf} from "../../../lib/pantry/pantry.ts";
import {within} from "../../support/within.ts";

// Prices and their ranges, by hand.

const milk = {name: "milk", composition: {water: 91, milkFat: 4, lactose: 5}, price: 1};
const cream = {name: "cream", composition: {water: 57, milkFat: 40, lactose: 3}, price: 4};
const butter = {name: "butter", composition: {water: 20, milkFat: 80}, price: 9};
const water = {name: "water", composition: {water: 100}, price: 0};
const sugar = {name: "sugar", composition: {sucrose: 100}, price: 1};

const prices = (brief: BriefInput) => pricesOf(readBrief(brief, pantryOf([])));
/** The only limit that holds a mix. */
const limit = (brief: BriefInput) => {
  const {limits} = prices(brief);
  expect(limits).toHaveLength(1);
  return limits[0]!;
};

describe("the price of a target", () => {
  test("at least: milk with 4 % and cream with 40 % fat, from all milk to all cream", () => {
    const fat = limit({ingredients: [milk, cream], targets: {fat: {min: 10}}});
    expect(fat).toMatchObject({path: "targets.fat", bound: "min", limit: 10});
    // One point is 1/36 of the mix, at 4 - 1 a kg.
    within(fat.price, 3 / 36, 1e-9, "a point of fat");
    within(fat.from, 4, 1e-6, "all milk");
    within(fat.to, 40, 1e-6, "all cream");
  });

  test("at most: sugar in place of cream", () => {
    const sugars = limit({ingredients: [cream, sugar], targets: {sucrose: {max: 20}}});
    expect(sugars).toMatchObject({path: "targets.sucrose", bound: "max", limit: 20});
    within(sugars.price, (1 - 4) / 100, 1e-9, "a point of sucrose");
    within(sugars.from, 0, 1e-6, "all cream");
    within(sugars.to, 100, 1e-6, "all sugar");
  });

  test.each<[string, BriefInput["targets"], Partial<BriefInput>]>([
    ["at most", {freezingPoint: {max: -2}}, {}],
    ["at least", {freezingPoint: {min: -2}, sucrose: {max: 60}}, {maximise: "sucrose"}],
  ])("of a temperature, %s, is what a nearby limit changes, and has no range", (_, targets, more) => {
    const brief = {ingredients: [water, sugar], targets, ...more};
    const [price] = prices(brief).limits;
    expect(price).not.toHaveProperty("from");
    expect(price).not.toHaveProperty("to");
    const at = (by: number) => {
      const [side, degrees] = Object.entries(targets!.freezingPoint!)[0] as ["min" | "max", number];
      const moved = {...targets, freezingPoint: {[side]: degrees + by}};
      const answer = balance({...brief, targets: moved});
      return answer.status === "optimal" ? answer.objective!.value : NaN;
    };
    within(price!.price, (at(1e-3) - at(-1e-3)) / 2e-3, 1e-3 * Math.abs(price!.price!), "per K");
  });
});

test("the price of a dose: erythritol for sugar, from none to the dose of all sugar alcohols", () => {
  const erythritol = {name: "erythritol", composition: {erythritol: 100}, price: 0.1};
  const {limits} = prices({ingredients: [water, sugar, erythritol], targets: {totalSolids: {equal: 30}}});
  const dose = limits.find(({of}) => of === "dose")!;
  expect(dose).toMatchObject({path: "doses.erythritol", bound: "max"});
  within(dose.price, (0.1 - 1) / 100, 1e-9, "a point of erythritol");
  within(dose.from, 0, 1e-6, "none");
  // Regulation (EU) 1169/2011, annex III, 2.4: above 10 % a packet has to warn.
  within(dose.to, 10, 1e-6, "all sugar alcohols");
});

describe("the price of a limit on an amount, per gram of a batch of 2 kg", () => {
  test.each<["min" | "max" | "equal", object, number]>([
    ["min", {min: 500}, 3 / 2000],
    ["equal", {min: 500, max: 500}, 3 / 2000],
    ["max", {price: 0.4, max: 500}, (0.4 - 1) / 2000],
  ])("%s", (bound, more, price) => {
    const found = limit({batch: 2000, ingredients: [milk, {...cream, ...more}]});
    expect(found).toMatchObject({path: "ingredients[1]", bound, limit: 500});
    within(found.price, price, 1e-12, "per g");
    within(found.from, 0, 1e-6, "none");
    within(found.to, 2000, 1e-6, "the whole batch");
  });

  test("holds until another limit does: cream for which fat is from 9 to 30 %", () => {
    const most = {...cream, price: 0.4, max: 500};
    const found = limit({batch: 2000, ingredients: [milk, most], targets: {fat: {min: 9, max: 30}}});
    // 4 + 36 c = 9 and = 30.
    within(found.from, (2000 * 5) / 36, 1e-6, "least cream, g");
    within(found.to, (2000 * 26) / 36, 1e-6, "most cream, g");
  });

  test("is told in per cent, where it was given so", () => {
    expect(limit({ingredients: [milk, {...cream, min: "20 %"}]})).toMatchObject({limit: 200, percent: 20});
    const most = {...cream, price: 0.4, max: "20 %"};
    expect(limit({ingredients: [milk, most]})).toMatchObject({limit: 200, percent: 20});
  });
});

describe("the range of an ingredient's own price", () => {
  test("is where the amounts stay: milk no dearer than cream, and butter enters below what its fat is worth", () => {
    const {ingredients, limits} = prices({
      ingredients: [milk, cream, butter],
      targets: {fat: {min: 10}},
    });
    // That no amount is below 0 is no limit that a cook could move.
    expect(limits.map(({path}) => path)).toEqual(["targets.fat"]);
    expect(ingredients.map(({ingredient, used, price}) => [ingredient, used, price])).toEqual([
      ["milk", true, 1],
      ["cream", true, 4],
      ["butter", false, 9],
    ]);
    within(ingredients[0]!.to, 4, 1e-6, "milk at most as dear as cream");
    within(ingredients[1]!.from, 1, 1e-6, "cream at least as dear as milk");
    // A point of fat is worth 1/12; milk without its fat 1 - 4/12.
    within(ingredients[2]!.from, 8 / 12 + 80 / 12, 1e-6, "butter");
    expect(ingredients[2]!.to).toBe(Infinity);
  });

  test("is not told where the cost is not made smallest", () => {
    const brief = {ingredients: [milk, cream], targets: {fat: {min: 10, max: 20}}};
    expect(prices({...brief, minimise: "fat"}).ingredients).toEqual([]);
    expect(prices({...brief, maximise: "cost"}).ingredients).toEqual([]);
    const unpriced = brief.ingredients.map(({price: _price, ...rest}) => rest);
    expect(prices({...brief, ingredients: unpriced}).ingredients).toEqual([]);
  });
});

test("a brief that cannot be met has no prices", () => {
  expect(() => prices({name: "rich", ingredients: [milk], targets: {fat: {min: 10}}})).toThrow(
    /^rich: no mix meets the brief \(got "infeasible"\); balance it first/,
  );
});
