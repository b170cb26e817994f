import {describe, expect, test} from "vitest";
import {readTypedRecipe} from "../../lib/io/typed/read-typed.ts";
import {STARTING_POINTS} from "../../lib/kitchen/begin/starting-points.ts";
import {startingPoint} from "../../lib/kitchen/begin/starting-brief.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {recipeMass} from "../../lib/pantry/recipe.ts";
import {beginScene} from "../../notebooks/kit/begin/scene.ts";
import {compareScene, readAll} from "../../notebooks/kit/compare/scene.ts";
import {asKept} from "../../notebooks/kit/page/make-mine.ts";

const pantry = includedPantry();
const FROZEN = {freezer: -18, overrun: 30};

describe("a starting point", () => {
  test("goes into the book as a text that reads back as the same recipe, all of its grams there", async () => {
    for (const point of STARTING_POINTS) {
      const scene = beginScene({point, flavour: point.flavour?.first, grams: 2000, freezer: -18}, pantry);
      if ("mistake" in scene) throw new Error(scene.mistake);
      const {recipe} = scene.value.description;
      const kept = asKept(recipe, {freezer: -18});
      const read = await readTypedRecipe(kept.text, pantry);
      expect(read.lines.filter((line) => "question" in line)).toEqual([]);
      expect(kept.name).toBe(recipe.name);
      expect(read.recipe.lines.map(({ingredient}) => ingredient.name).sort()).toEqual(
        recipe.lines.map(({ingredient}) => ingredient.name).sort(),
      );
      expect(Math.abs(recipeMass(read.recipe) - 2000), point.key).toBeLessThan(12);
    }
  });

  test("that cannot be balanced says so in words, and nothing is thrown", () => {
    const scene = beginScene(
      {point: startingPoint("sorbet"), flavour: "whole milk", grams: 1000, freezer: -18},
      pantry,
    );
    expect(scene).toEqual({mistake: expect.stringContaining("no fruit for Fruit sorbet") as string});
  });
});

describe("recipes side by side", () => {
  const custard = {name: "Custard", text: "500 g whole milk\n250 g cream 36 %\n80 g egg yolk\n170 g sugar"};

  test("are called as in the book, and lines that ask something are told", async () => {
    const other = {text: "Mine\n600 g whole milk\n200 g sugar\n30 g unobtainium"};
    const scene = compareScene(await readAll([custard, other], pantry), FROZEN);
    if ("mistake" in scene) throw new Error(scene.mistake);
    expect(scene.value.comparison.recipes.map(({name}) => name)).toEqual(["Custard", "Mine"]);
    expect(scene.value.gaps).toEqual(["Mine"]);
    expect(scene.value.mixes.map(({mix}) => mix.scoop.temperature)).toEqual(
      scene.value.comparison.recipes.map(({scoop}) => scoop.temperature),
    );
  });

  test("are not compared where there is one alone, in a sentence that says what to do", async () => {
    for (const chosen of [[], [custard], [custard, {text: "  "}]])
      expect(compareScene(await readAll(chosen, pantry), FROZEN)).toEqual({
        mistake: expect.stringMatching(/choose two recipes of the book, or paste two/) as string,
      });
  });
});
