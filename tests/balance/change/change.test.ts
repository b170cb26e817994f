import {describe, expect, test} from "vitest";
import {findIngredient, inChunks, type Recipe, recipeComposition, recipeMass} from "../../../lib/index.ts";
import {staplesIn, suggestChanges, suggestChangesSteps} from "../../../lib/substitute.ts";
import {bestOfRandom, broken, COOKS, noticed, STAPLES} from "../../support/changes.ts";
import {realPantry} from "../../support/pantry.ts";

const CASES = Object.entries(COOKS).flatMap(([name, recipe]) =>
  [-18, -12].flatMap((freezer) =>
    suggestChanges(recipe, {from: STAPLES, freezer}).changes.map(
      (change) => [`${name} ${change.towards} at ${freezer} °C`, change, recipe, freezer] as const,
    ),
  ),
);
const REACHED = CASES.filter(([, {reached}]) => reached);

describe.each(CASES)("%s", (_name, change, recipe, freezer) => {
  test("keeps the mass, the flavours, the eggs and what is a pinch", () => {
    expect(recipeMass(change.recipe)).toBeCloseTo(recipeMass(recipe), 6);
    const stays = recipe.lines.filter(
      ({ingredient: {group = ""}, grams}) =>
        ["fruit", "juice", "cocoa", "egg"].includes(group) || grams < recipeMass(recipe) / 100,
    );
    for (const {ingredient, grams} of stays)
      expect(change.recipe.lines.find((line) => line.ingredient.name === ingredient.name)?.grams).toBe(grams);
  });

  test("says what it does: the amounts are the recipe's, and the words their changes", () => {
    const after = new Map(change.recipe.lines.map((line) => [line.ingredient.name, line.grams]));
    expect(change.amounts.some(({change: by}) => by !== 0)).toBe(true);
    for (const {ingredient, before, after: grams, change: by} of change.amounts) {
      expect(after.get(ingredient) ?? 0).toBeCloseTo(grams, 9);
      expect(grams - before).toBeCloseTo(by, 9);
      expect(change.words.includes(ingredient)).toBe(Math.abs(by) >= 0.005);
    }
    expect(change.newcomers.length).toBeLessThanOrEqual(2);
  });

  test("brings no new allergen, and its verdict is no worse", () => {
    const had = new Set(recipe.lines.flatMap(({ingredient}) => ingredient.allergens ?? []));
    const has = change.recipe.lines.flatMap(({ingredient}) => ingredient.allergens ?? []);
    expect(has.filter((allergen) => !had.has(allergen))).toEqual([]);
    const verdicts = ["soft", "scoops", "firm", "hard"];
    const place = (verdict: string) => Math.max(0, verdicts.indexOf(verdict) - 1);
    expect(place(change.scoop.after.verdict)).toBeLessThanOrEqual(place(change.scoop.before.verdict));
    expect(change.scoop.after.freezer).toBe(freezer);
  });
});

describe.each(REACHED)("%s", (_name, change, recipe, freezer) => {
  test("reaches what it is for and keeps every limit, measured on what is weighed", () => {
    expect(broken(change, recipe, change.recipe, freezer)).toBe("");
  });

  test("is noticed less than any of some random changes that reach it too", () => {
    const own = noticed(change, recipe, change.recipe, freezer);
    expect(change.score).toBeCloseTo(own, 6);
    // Weighing to whole grams and few lines instead of many cost a little.
    const {score} = bestOfRandom(change, recipe, change.recipe, freezer, 150, 1);
    expect(score).toBeGreaterThan(own - 0.05 * own - 0.25);
  });
});

test("random changes find what is noticed less where a change does more than it needs to", () => {
  const [, change, recipe, freezer] = REACHED.find(([name]) => name === "shop cheaper at -18 °C")!;
  const twice: Recipe = {
    ...change.recipe,
    lines: change.recipe.lines.map((line) => {
      const by = change.amounts.find(({ingredient}) => ingredient === line.ingredient.name)?.change ?? 0;
      return {...line, grams: line.grams + 0.15 * by};
    }),
  };
  expect(broken(change, recipe, twice, freezer)).toBe("");
  const wasteful = noticed(change, recipe, twice, freezer);
  const {score, held} = bestOfRandom(change, recipe, twice, freezer, 2000, 3);
  expect(held).toBeGreaterThan(10);
  expect(score).toBeLessThan(wasteful - 0.02 * wasteful);
});

test("most changes of usual recipes are reached", () => {
  expect(REACHED.length).toBeGreaterThan(CASES.length / 2);
});

describe("what is asked for", () => {
  test("hard tubs scoop in the freezer; one that scoops does so 2 °C colder; one too soft gets firmer", () => {
    const towards = (recipe: Recipe, freezer: number) =>
      suggestChanges(recipe, {from: STAPLES, freezer}).changes.map((change) => change.towards);
    const [softer] = suggestChanges(COOKS.shop, {from: STAPLES}).changes;
    expect([softer!.towards, softer!.scoop.before.verdict, softer!.scoop.after.verdict]).toEqual([
      "softer",
      "hard",
      "scoops",
    ]);
    const [colder] = suggestChanges(COOKS.strawberry, {from: STAPLES}).changes;
    const {before, after} = colder!.scoop;
    expect(before.verdict).toBe("scoops");
    expect(after.temperature!).toBeCloseTo(before.temperature! - 2, 1);
    expect(towards(COOKS.tooSoft, -12)).toEqual(["firmer", "cheaper", "less sweet"]);
  });

  test("less sweet takes a tenth of the sweetness away and leaves the tub no harder", () => {
    const change = suggestChanges(COOKS.lemon, {from: STAPLES}).changes.at(-1)!;
    expect(change.wanted).toBe("tastes 10 % less sweet");
    expect(change.sweetness.after).toBeLessThanOrEqual(0.9 * change.sweetness.before);
    expect(change.sweetness.after).toBeGreaterThan(0.88 * change.sweetness.before);
    expect(change.scoop.after.temperature!).toBeLessThanOrEqual(change.scoop.before.temperature! + 1e-6);
  });

  test("cheaper takes a tenth of the cost away, and is not asked where a price is missing", () => {
    const {changes, unpriced} = suggestChanges(COOKS.custard, {from: STAPLES});
    const {before, after} = changes.find(({towards}) => towards === "cheaper")!.cost!;
    expect(after).toBeLessThanOrEqual(0.9 * before + 1e-9);
    // Of the whole recipe, at a price per kg.
    const costs = COOKS.custard.lines.map(({grams, ingredient}) => (grams / 1000) * ingredient.price!);
    expect(before).toBeCloseTo(
      costs.reduce((sum, one) => sum + one, 0),
      9,
    );
    expect(unpriced).toEqual([]);
    const without = suggestChanges(COOKS.chocolate, {from: STAPLES});
    expect(without.unpriced).toEqual(["dark chocolate 70-85 %"]);
    expect(without.changes.map(({towards}) => towards)).toEqual(["softer", "less sweet"]);
    expect(without.changes.filter((change) => "cost" in change)).toEqual([]);
  });

  test("the recipe's own ingredients alone, where there is no shelf", () => {
    for (const recipe of Object.values(COOKS))
      expect(suggestChanges(recipe).changes.flatMap(({newcomers}) => newcomers)).toEqual([]);
  });

  test("neither oil into a custard, nor honey, maltodextrin, salt or alcohol into a lemon sorbet: of a whole pantry", () => {
    const names = [COOKS.custard, COOKS.lemon].flatMap((recipe) =>
      suggestChanges(recipe, {from: realPantry}).changes.flatMap(({newcomers}) => newcomers),
    );
    expect(names.length).toBeGreaterThan(0);
    expect(names.filter((name) => /oil|honey|maltodextrin|salt|spirit|sorbitol|molasses/.test(name))).toEqual(
      [],
    );
  });

  test("what is locked stays, by any of its names", () => {
    for (const {amounts} of suggestChanges(COOKS.shop, {from: STAPLES, locked: ["sugar", "milk"]}).changes)
      for (const name of ["sucrose", "whole milk"])
        expect(amounts.find(({ingredient}) => ingredient === name)?.change).toBe(0);
  });

  test("a change can be taken, and the next one starts from it", () => {
    const [softer] = suggestChanges(COOKS.custard, {from: STAPLES}).changes;
    const next = suggestChanges(softer!.recipe, {from: STAPLES});
    expect(recipeComposition(next.before)).toEqual(recipeComposition(softer!.recipe));
    expect(next.changes[0]!.scoop.before).toEqual(softer!.scoop.after);
  });

  test("a goal that nothing gets nearer is no change, and says so", () => {
    const grams = {banana: 472, "whole milk": 515, "cream 36 %": 200, sucrose: 120};
    const lines = Object.entries(grams).map(([name, amount]) => ({
      ingredient: findIngredient(realPantry, name),
      grams: amount,
    }));
    const {changes, nothingFor} = suggestChanges({name: "banana", lines}, {from: staplesIn(realPantry)});
    expect(changes.map(({towards}) => towards)).toEqual(["less sweet"]);
    expect(nothingFor).toEqual([
      {
        towards: "softer",
        wanted: "scoops at −18 °C",
        words: "nothing gets it to where it scoops at −18 °C without being noticed more than that is worth",
      },
    ]);
  });

  test("two lines of one ingredient are one", () => {
    const [milk, ...rest] = COOKS.custard.lines;
    const half = {...milk!, grams: milk!.grams / 2};
    const {changes} = suggestChanges({...COOKS.custard, lines: [half, half, ...rest]}, {from: STAPLES});
    expect(changes.map(({words}) => words)).toEqual(
      suggestChanges(COOKS.custard, {from: STAPLES}).changes.map(({words}) => words),
    );
  });
});

test("in steps it comes to the same, and a deadline that is over says so", async () => {
  const whole = suggestChanges(COOKS.oat, {from: STAPLES});
  expect(await inChunks(suggestChangesSteps(COOKS.oat, {from: STAPLES}))).toEqual(whole);
  let time = 0;
  const late = suggestChanges(COOKS.oat, {from: STAPLES, deadline: 5, now: () => (time += 1)});
  expect(late.cutShort).toBe(true);
  expect(late.changes.length).toBeLessThanOrEqual(whole.changes.length);
});

describe("mistakes are told in a line", () => {
  test.each([
    ["nothing in it", () => suggestChanges({name: "x", lines: []}), /has no ingredients/],
    [
      "no mass",
      () => suggestChanges({name: "x", lines: COOKS.oat.lines.map((line) => ({...line, grams: 0}))}),
      /has no mass/,
    ],
    ["a warm freezer", () => suggestChanges(COOKS.oat, {freezer: 4}), /freezer: out of range \(got 4\)/],
    ["too much air", () => suggestChanges(COOKS.oat, {overrun: 300}), /overrun: out of range/],
    [
      "an unknown lock",
      () => suggestChanges(COOKS.oat, {locked: ["chalk"]}),
      /locked\[0\]: not in the recipe/,
    ],
    [
      "an unknown weight",
      () => suggestChanges(COOKS.oat, {weights: {sweet: 1} as never}),
      /weights\.sweet: unknown weight/,
    ],
    ["an unknown option", () => suggestChanges(COOKS.oat, {frezer: -18} as never), /did you mean freezer/],
  ])("%s", (_what, ask, says) => {
    expect(ask).toThrow(says);
  });
});
