import {readFileSync} from "node:fs";
import {describe, expect, test} from "vitest";
import {startingAsModule} from "../../datasets/tools/tabulate-starting.ts";
import {
  balance,
  pantryOf,
  type MixReport,
  quantityOf,
  type Quantity,
  type Recipe,
  recipeOf,
  weighable,
} from "../../lib/index.ts";
import {baseComponent, cautionsFor, makeProduct} from "../../lib/kitchen.ts";
import {nutritionOf} from "../../lib/label.ts";
import {recipeComposition} from "../../lib/pantry/recipe.ts";
import {avoidedIn} from "../../lib/kitchen/begin/avoided.ts";
import {flavoursOf} from "../../lib/kitchen/begin/flavours.ts";
import {startingBrief, startingLimits, startingPoint} from "../../lib/kitchen/begin/starting-brief.ts";
import {STARTING_KEYS, type StartingKey} from "../../lib/kitchen/begin/starting-keys.ts";
import {STARTING_POINTS} from "../../lib/kitchen/begin/starting-points.ts";
import {kindOf} from "../../lib/kitchen/reading/kind.ts";
import {normsOf} from "../../lib/kitchen/reading/norms.ts";
import {realPantry as pantry} from "../support/pantry.ts";

interface Made {
  readonly recipe: Recipe;
  readonly mix: MixReport;
  readonly missed: readonly unknown[];
}

/** A starting point as it is weighed, or its conflict. */
function made(key: StartingKey, flavour?: string): Made {
  const answer = balance(startingBrief(key, pantry, flavour === undefined ? {} : {flavour}), {
    pantry,
    candidates: false,
  });
  if (answer.status !== "optimal") throw new Error(`${key}, ${flavour ?? "as it is"}: ${answer.status}`);
  const mix = weighable(answer, answer.amounts);
  return {recipe: recipeOf(answer, mix.amounts), mix, missed: mix.missed};
}

/** Norms of its kind beyond which a starting point lies on purpose, with the reason. */
const BEYOND: Readonly<Partial<Record<StartingKey, Readonly<Record<string, string>>>>> = {
  white: {
    freezingPoint:
      "dextrose and syrup, so that a tub softens soon; the industry's mixes are dipped at -12 °C",
  },
  spirit: {scoopTemperature: "alcohol: it scoops straight from a freezer at -18 °C"},
  "no added sugar": {
    sugars: "none goes in",
    msnf: "more milk solids stand in for the solids of sugar",
    scoopTemperature: "sugar alcohols stay below the tenth from which a packet has to warn",
  },
  "high protein": {
    msnf: "the protein is milk's",
    sugars: "as gelato, not as light ice cream",
    freezingPoint: "as gelato, not as light ice cream",
  },
};

const beyond = (key: StartingKey, recipe: Recipe) =>
  normsOf(recipe, startingPoint(key).kind, {})
    .filter(({lies}) => lies !== "within")
    .map(({property}) => property as string);

test("the table is what datasets/starting_points.csv says", async () => {
  expect(await startingAsModule()).toBe(
    readFileSync(new URL("../../lib/kitchen/begin/starting-table.ts", import.meta.url), "utf8"),
  );
  expect(STARTING_POINTS.map(({key}) => key)).toEqual([...STARTING_KEYS]);
});

describe.each(STARTING_KEYS)("%s", (key) => {
  const {recipe, mix, missed} = made(key);
  const composition = recipeComposition(recipe);
  const grams = (name: string) => recipe.lines.find(({ingredient}) => ingredient.name === name)?.grams ?? 0;

  test("balances in amounts that a scale can show, within its own limits and the customary doses", () => {
    expect(missed).toEqual([]);
    expect(mix.beyondDoses).toBeUndefined();
    for (const {of, name, min = -Infinity, max = Infinity} of startingLimits(key)) {
      if (of === "flavour" || name === "scoopTemperature") continue;
      const value = of === "ingredient" ? grams(name) / 10 : quantityOf(composition, name as Quantity);
      // To a gram of the batch, or as printed.
      expect(value, name).toBeGreaterThan(min - 0.11);
      expect(value, name).toBeLessThan(max + 0.11);
    }
  });

  test("is of its kind, and as the codes, laws and books of that kind have it, but for what is meant", () => {
    expect(kindOf(recipe, -18).name).toBe(startingPoint(key).kind);
    expect(beyond(key, recipe).sort()).toEqual(Object.keys(BEYOND[key] ?? {}).sort());
  });

  // Hard ice cream is dipped at -14 to -12 °C, gelato and sorbet served at -14 to -11 °C (common practice, no source).
  test("scoops where its class does: firm at -18 °C, unless it is made of plants, fruit or sugar alcohols", () => {
    const hard: readonly StartingKey[] = ["sorbet", "oat", "coconut", "no added sugar", "high protein"];
    const verdict = hard.includes(key) ? "hard" : key === "spirit" ? "scoops" : "firm";
    expect(mix.scoop.verdict).toBe(verdict);
    expect(mix.scoop.temperature).toBeLessThan(key === "no added sugar" ? -9.9 : -12.2);
  });
});

// French, German and Italian codes of practice: 25 % fruit, 15 % of sour fruit, 5 % nuts.
test("every fruit, nut and spirit of the pantry that is offered makes one, with the fruit that codes of practice ask for", () => {
  for (const {key, flavour} of STARTING_POINTS) {
    if (!flavour) continue;
    const offered = flavoursOf(flavour.kind, pantry);
    expect(offered.length, key).toBeGreaterThan(4);
    for (const {name} of offered) {
      const {recipe, mix, missed} = made(key, name);
      expect(missed, name).toEqual([]);
      expect(mix.beyondDoses, name).toBeUndefined();
      const kind = key === "sorbet" ? kindOf(recipe, -18).name : startingPoint(key).kind;
      const outside = normsOf(recipe, kind, {}).filter(({lies}) => lies !== "within");
      expect(
        outside.map(({property}) => property),
        name,
      ).toEqual(key === "spirit" ? ["scoopTemperature"] : []);
    }
  }
});

test("what is offered as a fruit is a purée or a juice: nothing dried, sugared, starchy or fat", () => {
  const names = flavoursOf("fruit", pantry).map(({name}) => name);
  for (const name of ["raspberry", "mango", "lemon juice", "passion fruit juice", "ripe banana"])
    expect(names).toContain(name);
  for (const name of [
    "raisins",
    "strawberry jam",
    "avocado",
    "sweet potato",
    "candied orange peel",
    "dried figs",
  ])
    expect(names).not.toContain(name);
});

// Regulation (EC) No 1924/2006, annex: "with no added sugars" only where the product does not contain any added mono- or
// disaccharides or any other food used for its sweetening properties.
test("no added sugar: no mono- or disaccharide goes in but those that milk and yolk have by nature", () => {
  const {recipe} = made("no added sugar");
  const sweeteners = recipe.lines.filter(({ingredient}) => ingredient.group === "sugar");
  for (const {ingredient} of sweeteners)
    expect(quantityOf(ingredient.composition, "totalSugars"), ingredient.name).toBe(0);
  for (const {ingredient} of recipe.lines) {
    expect(["dairy", "egg", "stabiliser", "sugar"], ingredient.name).toContain(ingredient.group);
    expect(ingredient.nutrients?.addedSugars ?? 0, ingredient.name).toBe(0);
  }
  const composition = recipeComposition(recipe);
  expect(quantityOf(composition, "totalSugars") - (composition.lactose ?? 0)).toBeLessThan(0.1);
  // Regulation (EU) 1169/2011, annex III, 2.4: above 10 % a packet has to warn of laxative effects.
  expect(quantityOf(composition, "polyols")).toBeLessThanOrEqual(10);
});

// The same annex: "high protein" where at least 20 % of the energy is provided by protein; 17 kJ and 4 kcal per g (1169/2011, annex XIV).
test("high protein: at least a fifth of the energy is protein's", () => {
  const {recipe} = made("high protein");
  const {protein, kilocalories} = nutritionOf(makeProduct("high protein", [baseComponent(recipe)]));
  expect((4 * protein) / kilocalories).toBeGreaterThan(0.2);
});

// 21 CFR 135.110: frozen custard has at least 1.4 % egg-yolk solids.
test("custards have the yolk that US law asks of a frozen custard", () => {
  for (const key of ["custard", "spirit"] as const)
    expect(quantityOf(recipeComposition(made(key).recipe), "eggYolkSolids")).toBeGreaterThan(1.4);
});

test("cautions are named where they are due", () => {
  const topics = (key: StartingKey) =>
    cautionsFor(makeProduct(key, [baseComponent(made(key).recipe)]), undefined, -18)
      .map(({text}) => text)
      .join("\n");
  expect(topics("custard")).toMatch(/egg yolk: goes through no published pair/);
  expect(topics("spirit")).toMatch(/alcohol.*keep it from children/);
  expect(topics("oat")).toMatch(/Contains oats/);
  expect(topics("nut")).toMatch(/hazelnuts/);
});

// Allergens by Regulation (EU) 1169/2011, Annex II: oats count as cereals containing gluten.
test("what a cook may avoid follows from the ingredients", () => {
  const held = Object.fromEntries(STARTING_POINTS.map((point) => [point.key, avoidedIn(point, pantry)]));
  expect(held).toEqual({
    custard: ["milk", "eggs"],
    white: ["milk"],
    gelato: ["milk"],
    sorbet: [],
    oat: ["gluten"],
    coconut: [],
    chocolate: ["milk"],
    nut: ["milk", "nuts"],
    spirit: ["milk", "eggs"],
    "no added sugar": ["milk", "eggs"],
    "high protein": ["milk"],
  });
  const nutty = pantry.ingredients.map((one) =>
    one.name === "sunflower oil" ? {...one, allergens: ["nuts" as const]} : one,
  );
  expect(avoidedIn(startingPoint("oat"), pantryOf(nutty))).toEqual(["nuts", "gluten"]);
});

test("another amount is the same mix, and what cannot be is refused in a line", () => {
  const {recipe} = made("custard");
  const answer = balance(startingBrief("custard", pantry, {grams: 5000}), {pantry, candidates: false});
  if (answer.status !== "optimal") throw new Error(answer.status);
  for (const {ingredient, grams} of answer.amounts)
    expect(
      Math.abs(grams / 5 - (recipe.lines.find((line) => line.ingredient.name === ingredient)?.grams ?? 0)),
      ingredient,
    ).toBeLessThan(12);
  expect(() => startingBrief("sorbet", pantry, {flavour: "whole milk"})).toThrow(/no fruit for Fruit sorbet/);
  expect(() => startingBrief("sorbet", pantry, {flavour: "mangoo"})).toThrow(/did you mean mango/);
  expect(() => startingBrief("custard", pantry, {flavour: "mango"})).toThrow(/has no flavour to choose/);
  expect(() => startingBrief("custard", pantry, {grams: 0})).toThrow(/options.grams/);
  expect(() => startingBrief("custrad" as StartingKey, pantry)).toThrow(/did you mean custard/);
});
