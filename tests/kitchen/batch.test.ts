import {describe, expect, test} from "vitest";
import {mixDensity, mixDensityAt} from "../../lib/kitchen/size/density.ts";
import {gramsOf, measuresOf} from "../../lib/kitchen/size/measures.ts";
import {finishedDensity, overrunFromWeights, targetWeight} from "../../lib/kitchen/size/overrun.ts";
import {scale} from "../../lib/kitchen/size/scale.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import {recipeMass} from "../../lib/pantry/recipe.ts";

// H. D. Goff, Ice Cream Technology, University of Guelph e-book: mix density; figuring package overrun and target weights.
describe("density and overrun against the Guelph e-book", () => {
  test("a mix of 12 % fat and 38.3 % solids has 1.0959 kg/l", () => {
    expect(mixDensity({milkFat: 12, sucrose: 26.3, water: 61.7})).toBeCloseTo(1.0959, 4);
  });
  test("1 l of ice cream of 560 g from mix of 1.09 kg/l has 94.6 % overrun", () => {
    expect(overrunFromWeights(1090, 560)).toBeCloseTo(94.6, 1);
    expect(targetWeight(1000, 1.09, 94.642857)).toBeCloseTo(560, 3);
  });
  test("with 9 % candy of 0.748 kg/l at 100 % overrun, 100 kg fill 177.4 l", () => {
    const candy = [{density: 0.748, percent: 9}];
    expect(100 / finishedDensity(1.1, 100, candy)).toBeCloseTo(177.4, 0);
    // Printed as 564 g/l, rounded upwards; the exact quotient is 563.4.
    expect(targetWeight(1000, 1.1, 100, candy)).toBeCloseTo(563.4, 1);
  });
  test("ordinary mixes come to 1.09 to 1.10 kg/l", () => {
    // First and last of the suggested hard ice-cream mixes of the same e-book.
    const first = mixDensity({milkFat: 10, milkProtein: 11, sucrose: 15, stabiliser: 0.5, water: 63.5});
    const last = mixDensity({milkFat: 16, milkProtein: 9.5, sucrose: 15, stabiliser: 0.25, water: 59.25});
    expect(first).toBeGreaterThan(1.08);
    expect(first).toBeLessThan(1.105);
    expect(last).toBeGreaterThan(1.08);
    expect(last).toBeLessThan(1.105);
  });
  test("by components it agrees within 1 %, and ice makes it lighter", () => {
    const composition = {milkFat: 12, milkProtein: 4, lactose: 6, sucrose: 16.3, water: 61.7};
    expect(Math.abs(mixDensityAt(composition, 20) / mixDensity(composition) - 1)).toBeLessThan(0.01);
    expect(mixDensityAt(composition, -18)).toBeLessThan(mixDensityAt(composition, 0));
    // CRC Handbook, 102nd ed. (2021): sucrose at 20 °C, 40 % by mass 1.1765 g/ml.
    expect(Math.abs(mixDensity({sucrose: 40, water: 60}) - 1.1765)).toBeLessThan(0.006);
  });
  test("bad input says where and what", () => {
    expect(() => targetWeight(0, 1.1, 50)).toThrow(
      "tub: out of range (got 0); give a number of at least 1 ml",
    );
    expect(() => overrunFromWeights(500, 600)).toThrow("heavier than a cup of mix");
    expect(() =>
      finishedDensity(1.1, 50, [
        {density: 1, percent: 60},
        {density: 1, percent: 40},
      ]),
    ).toThrow("no mix left");
  });
});

const cream: Ingredient = {name: "cream", composition: {water: 60, milkFat: 35, milkProtein: 5}, density: 1};
const sugar: Ingredient = {name: "sugar", composition: {sucrose: 100}, portions: {cup: 200, tsp: 4.2}};
const recipe = {
  name: "base",
  lines: [
    {ingredient: cream, grams: 800},
    {ingredient: sugar, grams: 200},
  ],
};

describe("scale", () => {
  test("to a mass, a volume, tubs and full runs; shares stay", () => {
    expect(scale(recipe, {grams: 5000}).factor).toBeCloseTo(5, 12);
    const litre = scale(recipe, {mixMillilitres: 1000});
    expect(litre.grams).toBeCloseTo(1000 * litre.density, 9);
    const tubs = scale(recipe, {tubs: 12, tubMillilitres: 500, overrun: 40, loss: 5});
    // 12 tubs of 0.5 l hold 6 l / 1.4 of mix, of which 5 % stay in the machine.
    expect(tubs.millilitres).toBeCloseTo(6000 / 1.4 / 0.95, 6);
    const runs = scale(recipe, {runs: 3, machine: {fillLimit: 1500}});
    expect(runs.millilitres).toBeCloseTo(4500, 6);
    expect(runs.runs).toBe(3);
    for (const {recipe: scaled, grams} of [litre, tubs, runs]) {
      expect(recipeMass(scaled)).toBeCloseTo(grams, 6);
      expect(scaled.lines[0]!.grams / scaled.lines[1]!.grams).toBeCloseTo(4, 12);
    }
  });
  test("splits into equal runs below the fill limit", () => {
    const split = scale(recipe, {mixMillilitres: 5000}, {fillLimit: 1500});
    expect(split.runs).toBe(4);
    expect(split.gramsPerRun * 4).toBeCloseTo(split.grams, 9);
  });
  test("bad input says where and what", () => {
    expect(() => scale(recipe, {tubs: 4, tubMillilitres: 0, overrun: 30})).toThrow(
      "tubMillilitres: out of range (got 0)",
    );
    expect(() => scale(recipe, {tubs: 2.5, tubMillilitres: 500, overrun: 30})).toThrow(
      "tubs: not a whole number",
    );
    expect(() => scale({name: "none", lines: []}, {grams: 10})).toThrow("none: nothing to scale");
    expect(() => scale(recipe, {grams: 10}, {fillLimit: 0})).toThrow("machine.fillLimit: out of range");
    expect(() => scale(recipe, {grams: Number.NaN})).toThrow("grams: not a finite number");
  });
});

describe("kitchen measures of an ingredient", () => {
  const egg: Ingredient = {
    name: "egg, whole",
    composition: {water: 100},
    unit: 50,
    portions: {large: 50, medium: 44},
  };
  test.each([
    [egg, "3", 150],
    [egg, "2 eggs", 100],
    [egg, "2 large eggs", 100],
    [egg, "2 medium", 88],
    [sugar, "1 cup", 200],
    [sugar, "2 teaspoons", 8.4],
    // USDA SR28 NDB 19335: 1 cup of granulated sugar is 200 g, so a tablespoon of 15 ml holds 15/236.588 of it.
    [sugar, "1 tablespoon", 12.68],
    [cream, "1 cup", 236.588],
    [cream, "2 oz", 56.699],
  ])("%o: %s", async (ingredient, text, grams) => {
    expect(await gramsOf(ingredient, text)).toBeCloseTo(grams, 2);
  });
  test("and back again", async () => {
    for (const {amount, unit} of await measuresOf(egg, 125)) {
      expect(await gramsOf(egg, `${amount} ${unit}`)).toBeCloseTo(125, 6);
    }
    const cups = (await measuresOf(cream, 473.176)).find(({unit}) => unit === "cup");
    expect(cups?.amount).toBeCloseTo(2, 4);
    expect(await measuresOf({name: "x", composition: {water: 100}}, 5)).toEqual([]);
  });
  test("what is unknown says what to give", async () => {
    const plain: Ingredient = {name: "hazelnut paste", composition: {otherFat: 100}};
    await expect(gramsOf(plain, "2 tablespoons")).rejects.toThrow(
      /density unknown; give its density in g\/ml/,
    );
    await expect(gramsOf(plain, "2")).rejects.toThrow("mass unknown; give the mass of one");
    await expect(gramsOf({...egg, unit: 5000}, "2 eggs")).rejects.toThrow(
      "egg, whole: unit: out of range (got 5000); give a number from 3 to 250 g",
    );
    await expect(gramsOf(egg, "2 sacks")).rejects.toThrow(
      "mass unknown; use a number alone for whole ones of 50 g, large, medium, or grams",
    );
  });
});
