import {describe, expect, test} from "vitest";
import {findIngredient, quantityOf, type Recipe, recipeComposition} from "../../../lib/index.ts";
import {pullsOf} from "../../../lib/substitute.ts";
import {COOKS} from "../../support/changes.ts";
import {realPantry} from "../../support/pantry.ts";

const [water, sugar] = ["water", "sucrose"].map((name) => findIngredient(realPantry, name));

test("by hand: in 30 g sugar and 70 g water the sugar pulls the sweetness up by 0.3 (100 - 30), the water down by 0.7 (0 - 30)", () => {
  const lines = [
    {ingredient: water!, grams: 70},
    {ingredient: sugar!, grams: 30},
  ];
  const pulls = pullsOf({name: "syrup", lines}).find(({what}) => what === "sweetness")!;
  expect(pulls.mean).toBeCloseTo(30, 9);
  expect(pulls.by).toEqual([
    {ingredient: "sucrose", share: 0.3, pull: expect.closeTo(21, 9), without: expect.closeTo(30, 9)},
    {ingredient: "water", share: 0.7, pull: expect.closeTo(-21, 9), without: expect.closeTo(-70, 9)},
  ]);
});

describe.each(Object.entries(COOKS))("%s", (_name, recipe) => {
  test("all pulls at a thing sum to nothing, the strongest upward first", () => {
    for (const {by} of pullsOf(recipe)) {
      expect(by.reduce((total, {pull}) => total + pull, 0)).toBeCloseTo(0, 9);
      expect(by.map(({pull}) => pull)).toEqual(by.map(({pull}) => pull).toSorted((a, b) => b - a));
    }
  });

  test("without an ingredient, the rest in its place, the mix has so much less", () => {
    for (const {what, by} of pullsOf(recipe).filter((one) => one.what === "sweetness" || one.what === "fat"))
      for (const {ingredient, without} of by) {
        const rest: Recipe = {
          ...recipe,
          lines: recipe.lines.filter((line) => line.ingredient.name !== ingredient),
        };
        const quantity = what as "sweetness" | "fat";
        const has = (one: Recipe) => quantityOf(recipeComposition(one), quantity);
        expect(without).toBeCloseTo(has(recipe) - has(rest), 9);
      }
  });
});

test("the cost has pulls only where every price is known", () => {
  const things = (recipe: Recipe) => pullsOf(recipe).map(({what}) => what);
  expect(things(COOKS.custard)).toContain("cost");
  expect(things(COOKS.chocolate)).not.toContain("cost");
});

test("what freezes pulls the ice up, and sugar down, more so where it is warmer", () => {
  const of = (name: string, freezer: number) =>
    pullsOf(COOKS.lemon, {freezer})
      .find(({what}) => what === "ice")!
      .by.find(({ingredient}) => ingredient === name)!.pull;
  expect(of("water", -18)).toBeGreaterThan(0);
  expect(of("sucrose", -18)).toBeLessThan(0);
  expect(of("sucrose", -10)).toBeLessThan(of("sucrose", -18));
});
