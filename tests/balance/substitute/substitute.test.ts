import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import {equivalents, equivalentsTable} from "../../../lib/balance/substitute/equivalents.ts";
import {inChunks} from "../../../lib/core/in-chunks.ts";
import {INGREDIENT_TRAITS} from "../../../lib/balance/substitute/ingredient-traits.ts";
import {SUBSTITUTION_WEIGHTS} from "../../../lib/balance/substitute/similarity-traits.ts";
import {splitInto} from "../../../lib/balance/substitute/split.ts";
import {substitute, substituteSteps} from "../../../lib/balance/substitute/substitute.ts";
import type {Alternative, Substitution} from "../../../lib/balance/substitute/substitution-types.ts";
import {firmness} from "../../../lib/freezing/firmness.ts";
import {hardPhase, initialFreezingPoint} from "../../../lib/freezing/ice.ts";
import {scoopTemperature} from "../../../lib/freezing/scoop.ts";
import {substitutionText} from "../../../lib/io/report/report-substitution.ts";
import {readComposition} from "../../../lib/pantry/composition.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {findIngredient} from "../../../lib/pantry/pantry.ts";
import {type Quantity, quantityOf} from "../../../lib/pantry/quantities.ts";
import type {Composition} from "../../../lib/pantry/parts.ts";
import {type Recipe, recipeComposition, recipeMass} from "../../../lib/pantry/recipe.ts";
import {kindIn} from "../../support/kinds.ts";
import {demoPantry, realPantry} from "../../support/pantry.ts";
import {within} from "../../support/within.ts";

const named = (name: string) => findIngredient(demoPantry, name, "test");
const recipeOf = (grams: Readonly<Record<string, number>>): Recipe => ({
  name: "invented",
  lines: Object.entries(grams).map(([name, mass]) => ({ingredient: named(name), grams: mass})),
});
const shelf = demoPantry.ingredients.filter(({stock}) => stock !== undefined);

/** Invented for the tests. */
const vanilla = recipeOf({
  "whole milk": 560,
  "cream 36 %": 200,
  "skimmed milk powder": 40,
  sucrose: 130,
  "dextrose monohydrate": 30,
  "egg yolk": 36,
  "vanilla extract": 2,
  "locust bean gum": 2,
});

const gramsIn = (of: Alternative, name: string) =>
  of.amounts.find(({ingredient}) => ingredient === name)?.after ?? 0;

const SCORED: readonly (Quantity & keyof typeof SUBSTITUTION_WEIGHTS)[] = [
  "sweetness",
  "fat",
  "totalSolids",
  "lactose",
  "protein",
  "eggYolkSolids",
  "polyols",
  "starch",
  "fibre",
  "stabiliser",
  "gelatine",
  "emulsifier",
  "salt",
  "alcohol",
  "organicAcids",
];

/** Terms of a score: how far two recipes lie apart in each, those that are quickly reckoned first. */
const TERMS: readonly ((composition: Composition, recipe: Recipe) => number)[] = [
  ...INGREDIENT_TRAITS.map(
    (name) => (_: Composition, recipe: Recipe) => SUBSTITUTION_WEIGHTS[name] * kindIn(name, recipe),
  ),
  ...SCORED.map((name) => (mix: Composition) => SUBSTITUTION_WEIGHTS[name] * quantityOf(mix, name)),
  (mix) => SUBSTITUTION_WEIGHTS.firmness * firmness(mix, -18),
  (mix) => SUBSTITUTION_WEIGHTS.freezingPoint * initialFreezingPoint(mix)!,
];

/** The terms of a recipe that thousands are compared with. */
const known = new WeakMap<Recipe, readonly number[]>();

function termsOf(recipe: Recipe): readonly number[] {
  const terms = known.get(recipe) ?? TERMS.map((term) => term(recipeComposition(recipe), recipe));
  known.set(recipe, terms);
  return terms;
}

/** Score of a recipe against another, computed here from the compositions alone; `Infinity` as soon as it is beyond a limit. */
function scoreOf(before: Recipe, after: Recipe, limit = Infinity): number {
  const cost = ({lines}: Recipe) =>
    lines.reduce((sum, {ingredient, grams}) => sum + ingredient.price! * grams, 0) /
    recipeMass({name: "", lines});
  let score = SUBSTITUTION_WEIGHTS.cost * Math.abs(cost(after) - cost(before));
  const grams = ({lines}: Recipe, name: string) =>
    lines.reduce((sum, {ingredient, grams}) => sum + (ingredient.name === name ? grams : 0), 0);
  const mass = recipeMass(before);
  const names = new Set([...before.lines, ...after.lines].map(({ingredient}) => ingredient.name));
  for (const name of names) {
    const moved = (Math.abs(grams(after, name) - grams(before, name)) * 50) / mass;
    score += SUBSTITUTION_WEIGHTS.moved * moved;
    if (grams(before, name) === 0 && grams(after, name) > 0) score += SUBSTITUTION_WEIGHTS.newIngredient;
  }
  if (score > limit) return Infinity;
  const [old, composition] = [termsOf(before), recipeComposition(after)];
  for (const [i, term] of TERMS.entries()) {
    if (score > limit) return Infinity;
    score += Math.abs(term(composition, after) - old[i]!);
  }
  return score;
}

describe("the skim-portion rule: MSNF = 0.09 (100 - fat), H. D. Goff, Ice Cream Technology, University of Guelph e-book", () => {
  const ruled = (name: string, fat: number): Ingredient => {
    const msnf = 0.09 * (100 - fat);
    return {name, composition: readComposition({milkFat: fat, msnf, water: 100 - fat - msnf}, name)};
  };

  test("the e-book's butter of 80 % fat has 1.8 % MSNF by it, cream of 40 % 5.4 %", () => {
    within(quantityOf(ruled("butter", 80).composition, "msnf"), 1.8, 1e-12, "butter");
    within(quantityOf(ruled("cream", 40).composition, "msnf"), 5.4, 1e-12, "cream");
  });

  test("milk and butter replace any cream exactly in fat, MSNF and water", () => {
    const fats = fc.tuple(
      fc.double({min: 0, max: 10, noNaN: true}),
      fc.double({min: 12, max: 60, noNaN: true}),
      fc.double({min: 62, max: 85, noNaN: true}),
    );
    fc.assert(
      fc.property(fats, ([milk, cream, butter]) => {
        const split = splitInto(ruled("cream", cream), [ruled("milk", milk), ruled("butter", butter)])!;
        within(split.grams[0] + split.grams[1], 100, 1e-9, "mass");
        within(split.grams[0] * milk + split.grams[1] * butter, 100 * cream, 1e-6, "fat");
        expect(split.differs).toEqual({});
      }),
      {seed: 1},
    );
  });

  test("cream 40 % of milk 3.5 % and butter 80 %: 52.29 g and 47.71 g, by hand: (80 - 40) / (80 - 3.5)", () => {
    const split = splitInto(ruled("cream", 40), [ruled("milk", 3.5), ruled("butter", 80)])!;
    within(split.grams[0], 52.2876, 1e-4, "milk");
    within(split.grams[1], 47.7124, 1e-4, "butter");
  });

  test("the food tables' cream, milk and butter follow it within 1 g MSNF per 100 g; the difference is told", () => {
    const split = splitInto(named("cream 36 %"), [named("whole milk"), named("unsalted butter")])!;
    expect(Math.abs(split.differs.msnf!)).toBeLessThan(1);
    within(split.differs.water, -split.differs.msnf!, 1e-6, "water makes up for MSNF");
    expect(split.differs.fat).toBeUndefined();
  });

  test("what does not lie between has no split; the same twice is a mistake", () => {
    expect(splitInto(named("unsalted butter"), [named("whole milk"), named("cream 36 %")])).toBeUndefined();
    expect(() => splitInto(named("cream 36 %"), [named("whole milk"), named("whole milk")])).toThrow(
      expect.objectContaining({name: "InputError", place: "parts"}),
    );
  });
});

describe("like for like", () => {
  const row = (x: string, y: string, equalIn: string) =>
    equivalents(named(x), named(y)).find((found) => found.equalIn === equalIn)!;

  /** A mix with 100 g of sucrose per kg swapped as a row says, its water made up. */
  function swapped(take: string, {grams, water}: {grams: number; water: number}): Recipe {
    const [milk, ...rest] = recipeOf({"whole milk": 640, "cream 36 %": 200, sucrose: 60}).lines;
    return {
      name: "swapped",
      lines: [
        milk!,
        ...rest,
        {ingredient: named(take), grams},
        // Milk is the mix's water here: taking water away is taking that much less of pure water.
        {ingredient: named("water"), grams: 150 + water},
      ],
    };
  }
  const sugared = swapped("sucrose", {grams: 100, water: 0});

  // Common practice, no source.
  test.each(["glucose syrup 42 DE", "dried glucose syrup 38 DE"])(
    "%s for sugar: of the same sweetness softer at -18 °C, of the same solids harder",
    (syrup) => {
      const sweet = row("sucrose", syrup, "sweetness");
      const solid = row("sucrose", syrup, "totalSolids");
      expect(sweet.change.ice).toBeLessThan(0);
      expect(solid.change.ice).toBeGreaterThan(0);
      const soft = recipeComposition(swapped(syrup, sweet));
      const hard = recipeComposition(swapped(syrup, solid));
      const before = recipeComposition(sugared);
      expect(hardPhase(soft, -18)).toBeLessThan(hardPhase(before, -18));
      expect(hardPhase(hard, -18)).toBeGreaterThan(hardPhase(before, -18));
      expect(scoopTemperature(soft).temperature).toBeLessThan(scoopTemperature(before).temperature!);
      expect(scoopTemperature(hard).temperature).toBeGreaterThan(scoopTemperature(before).temperature!);
    },
  );

  // Common practice, no source: about a quarter less honey than sugar for the same softness, dextrose nearly doubles the effect.
  test("dextrose and honey do more than sugar of the same mass", () => {
    expect(row("sucrose", "dextrose monohydrate", "mass").change.ice).toBeLessThan(0);
    expect(row("sucrose", "honey", "mass").change.ice).toBeLessThan(0);
  });

  test("equal is equal in the mix: what is held, the water stays, and the ice changes by what is told", () => {
    for (const take of [
      "glucose syrup 42 DE",
      "dextrose monohydrate",
      "honey",
      "invert syrup",
      "sweetened condensed milk",
    ]) {
      for (const found of equivalents(named("sucrose"), named(take))) {
        const {equalIn, change} = found;
        const mix = swapped(take, found);
        const total = (of: Recipe, quantity: Quantity) =>
          (quantityOf(recipeComposition(of), quantity) * recipeMass(of)) / 100;
        within(total(mix, "water"), total(sugared, "water"), 1e-9, `${take} at equal ${equalIn}: water`);
        within(recipeMass(mix) - recipeMass(sugared), change.mass, 1e-9, "mass");
        for (const quantity of ["totalSolids", "sweetness", "fat"] as const)
          within(total(mix, quantity) - total(sugared, quantity), change[quantity], 1e-9, quantity);
        const frozen = (of: Recipe) => (hardPhase(recipeComposition(of), -18) * recipeMass(of)) / 100;
        // Solid fat comes along only with condensed milk's fat.
        if (Math.abs(change.fat) < 1e-9) within(frozen(mix) - frozen(sugared), change.ice, 1e-9, "ice");
        if (equalIn !== "mass" && equalIn !== "freezing") within(change[equalIn], 0, 1e-9, equalIn);
        if (equalIn === "freezing") within(change.ice, 0, 1e-9, "ice");
        if (equalIn === "mass") within(found.grams, 100, 1e-12, "grams");
      }
    }
  });

  test("there and back is 100 g, and the table has every pair both ways", () => {
    const sugars = ["sucrose", "dextrose monohydrate", "honey", "invert syrup", "glucose syrup 42 DE"].map(
      named,
    );
    const table = equivalentsTable(sugars);
    for (const {instead, take, equalIn, grams} of table) {
      const back = table.find(
        (row) => row.instead === take && row.take === instead && row.equalIn === equalIn,
      )!;
      within((grams * back.grams) / 100, 100, 1e-9, `${instead} and ${take} at equal ${equalIn}`);
    }
    expect(new Set(table.map(({instead, take}) => `${instead}/${take}`)).size).toBe(20);
  });

  test("fats compare by fat, and what neither has is left out", () => {
    const found = equivalents(named("cream 36 %"), named("unsalted butter"));
    expect(found.map(({equalIn}) => equalIn)).toContain("fat");
    expect(found.map(({equalIn}) => equalIn)).not.toContain("sweetness");
    expect(() => equivalents(named("sucrose"), named("honey"), {freezer: 4})).toThrow(/^freezer/);
    expect(() => equivalentsTable([named("sucrose")])).toThrow(/^ingredients/);
    const many = Array.from({length: 201}, (_, i) => ({...named("sucrose"), name: `sugar ${i}`}));
    expect(() => equivalentsTable(many)).toThrow(
      "ingredients: more than 200 (got 201); give at most 200, such as those of one group",
    );
    expect(() => equivalentsTable([named("sucrose"), named("honey")], {freezer: 4})).toThrow(
      /^freezer: out of range/,
    );
  });
});

describe("a substitute that may not be sold everywhere", () => {
  test("is told so with the way that brings it, and with no other", () => {
    const from = [named("allulose"), named("dextrose monohydrate")];
    // So much is left that allulose within its dose can take the place of the rest.
    const result = substitute(vanilla, {without: "sucrose", left: 90, from});
    const ways = substitutionText(result, 99).split(/\n\n(?=\d|!!)/);
    const [brings, others] = [true, false].map((has) =>
      ways.filter((way) => /-> /.test(way) && /^ +allulose/m.test(way) === has),
    ) as [string[], string[]];
    expect(Math.min(brings.length, others.length)).toBeGreaterThan(0);
    for (const way of brings) expect(way.replaceAll(/\s+/g, " ")).toContain("ask your authority");
    for (const way of others) expect(way.replaceAll(/\s+/g, " ")).not.toContain("authority");
  });
});

describe("a substitution", () => {
  const forCream = substitute(vanilla, {without: "cream 36 %", from: shelf});

  test("holds the mass, empties what is out, keeps the flavour, and is ranked", () => {
    expect(forCream.alternatives.length).toBeGreaterThan(5);
    for (const alternative of forCream.alternatives) {
      within(recipeMass(alternative.recipe), 1000, 0.2, "mass");
      expect(gramsIn(alternative, "cream 36 %")).toBe(0);
      expect(gramsIn(alternative, "vanilla extract")).toBe(2);
      expect(alternative.flavours).toEqual({lost: [], gained: []});
      for (const {before, after, change} of [...alternative.amounts, ...alternative.changes])
        within(after - before, change, 1e-9, "change");
    }
    const scores = forCream.alternatives.map(({score}) => score);
    expect(scores).toEqual(scores.toSorted((a, b) => a - b));
    expect(forCream.notCompared).toEqual([]);
  });

  test("milk and butter, and the other creams, stand in for cream; a lone powder does not lead", () => {
    const leads = forCream.alternatives.slice(0, 8).flatMap(({by}) => by);
    expect(leads).toContain("unsalted butter");
    expect(leads).toContain("cream 48 %");
    const butter = forCream.alternatives.find(({by}) => by.join() === "unsalted butter")!;
    expect(gramsIn(butter, "whole milk")).toBeGreaterThan(560);
    // A fifth of what an eater may just notice: for firmness, in which fat counts about half of what ice does, some is given.
    for (const {what, change} of butter.changes) if (what === "fat") within(change, 0, 0.2, "fat");
  });

  test("scores as computed here from the recipes alone", () => {
    for (const {recipe, score, newAllergens} of forCream.alternatives) {
      expect(newAllergens).toEqual([]);
      within(
        score,
        scoreOf(vanilla, recipe),
        0.02,
        `score of ${recipe.lines.map((l) => l.ingredient.name).join()}`,
      );
    }
  });

  test.each(["cream 48 %", "unsalted butter", "mascarpone"])(
    "one for one by %s: no amounts on a fine grid score less",
    (other) => {
      const small = ["water", other].map(named);
      const {alternatives} = substitute(vanilla, {without: "cream 36 %", from: small});
      const found = alternatives.find(({kind}) => kind === "one for one")!;
      const milk = named("whole milk");
      const kept = vanilla.lines.filter(
        ({ingredient}) => !["cream 36 %", "whole milk"].includes(ingredient.name),
      );
      let least = Infinity;
      // 140 x 61 recipes: so much of the other, so much water, the rest of the mass milk.
      for (let grams = 60; grams < 200; grams++) {
        for (let water = 0; water <= 120; water += 2) {
          const recipe = {
            name: "grid",
            lines: [
              ...kept,
              {ingredient: milk, grams: 760 - grams - water},
              {ingredient: small[1]!, grams},
              ...(water > 0 ? [{ingredient: small[0]!, grams: water}] : []),
            ],
          };
          least = Math.min(least, scoreOf(vanilla, recipe, Math.min(least, found.score + 1)));
        }
      }
      // The freezing point is kept to first order, so the best may be missed by a little; the grid's steps cost it more.
      expect(found.score).toBeLessThanOrEqual(least + 0.02);
      expect(found.score).toBeGreaterThan(least - 0.3);
    },
  );

  test("the same thing under another name takes its place gram for gram", () => {
    const twin = {...named("dextrose monohydrate"), name: "dextrose of another maker"};
    const [best] = substitute(vanilla, {
      without: "dextrose monohydrate",
      from: [...shelf, twin],
    }).alternatives;
    expect(best!.kind).toBe("one for one");
    expect(best!.by).toEqual([twin.name]);
    within(gramsIn(best!, twin.name), 30, 1e-6, "grams");
    // A gram of dextrose in the 1000 moves the firmness by 0.11: what rounding leaves of the grams, below 1e-7, is below this.
    for (const {counts} of best!.changes) within(counts, 0, 1e-8, "noticed");
    within(
      best!.score,
      SUBSTITUTION_WEIGHTS.newIngredient + SUBSTITUTION_WEIGHTS.moved * 3,
      1e-8,
      "one more name, 3 g per 100 g moved",
    );
  });

  test("only so much left: as much of it is used as helps, and no more than there is", () => {
    const {alternatives} = substitute(vanilla, {without: "sucrose", left: 90, from: shelf});
    for (const alternative of alternatives)
      expect(gramsIn(alternative, "sucrose")).toBeLessThanOrEqual(90 + 1e-6);
    within(gramsIn(alternatives[0]!, "sucrose"), 90, 1e-6, "sucrose");
    const none = substitute(vanilla, {without: "sucrose", from: shelf});
    expect(alternatives[0]!.score).toBeLessThan(none.alternatives[0]!.score);
  });

  test("stock limits what comes in, and a batch scales all", () => {
    const scarce = shelf.map((ingredient) =>
      ingredient.name === "unsalted butter" ? {...ingredient, stock: 100} : ingredient,
    );
    const {before, alternatives} = substitute(vanilla, {without: "cream 36 %", from: scarce, batch: 5000});
    within(recipeMass(before), 5000, 1e-9, "batch");
    for (const alternative of alternatives) {
      within(recipeMass(alternative.recipe), 5000, 1, "batch");
      expect(gramsIn(alternative, "unsalted butter")).toBeLessThanOrEqual(100 + 1e-6);
    }
  });

  test("the re-balance of the whole shelf scores no worse than leaving out", () => {
    const score = (kind: Alternative["kind"], {alternatives}: Substitution) =>
      Math.min(...alternatives.flatMap((found) => (found.kind === kind ? [found.score] : [])));
    for (const without of ["cream 36 %", "dextrose monohydrate", "sucrose"]) {
      const found = substitute(vanilla, {without, from: shelf});
      expect(score("re-balanced", found)).toBeLessThan(score("left out", found));
    }
  });

  test("several out at once, and what is not to be offered, are in no way; one in a list is as one alone", () => {
    const creams = shelf.filter(({name}) => /^cream \d/.test(name)).map(({name}) => name);
    expect(creams.length).toBeGreaterThan(1);
    const out = ["dextrose monohydrate", ...creams];
    const {alternatives, without, out: named, before} = substitute(vanilla, {without: out, from: shelf});
    expect(named).toEqual(
      before.lines.map(({ingredient}) => ingredient.name).filter((name) => out.includes(name)),
    );
    expect(named).toHaveLength(2);
    expect(without).toBe(named.join(" and "));
    expect(alternatives.length).toBeGreaterThan(3);
    for (const {recipe} of alternatives) {
      expect(recipe.lines.filter(({ingredient}) => out.includes(ingredient.name))).toEqual([]);
      within(recipeMass(recipe), 1000, 0.2, "mass");
    }
    // With more out, the best way is noticed no less.
    const [one] = substitute(vanilla, {without: "cream 36 %", from: shelf}).alternatives;
    expect(alternatives[0]!.score).toBeGreaterThanOrEqual(one!.score - 1e-9);
    expect(substitute(vanilla, {without: ["cream 36 %"], from: shelf}).alternatives[0]).toEqual(one);
  });

  test("a new allergen is called out and counts; without one there is another way", () => {
    const oat = recipeOf({
      "oat drink": 700,
      "coconut oil": 90,
      sucrose: 140,
      "maltodextrin 18 DE": 60,
      "guar gum": 3,
    });
    const {alternatives} = substitute(oat, {without: "coconut oil", from: shelf});
    const had = new Set(oat.lines.flatMap(({ingredient}) => ingredient.allergens ?? []));
    for (const {recipe, newAllergens} of alternatives) {
      const has = new Set(recipe.lines.flatMap(({ingredient}) => ingredient.allergens ?? []));
      expect(newAllergens).toEqual([...has].filter((allergen) => !had.has(allergen)));
    }
    const butter = alternatives.find(({by}) => by.join() === "unsalted butter")!;
    expect(butter.newAllergens).toEqual(["milk"]);
    expect(alternatives[0]!.newAllergens).toEqual([]);
    const careless = substitute(oat, {without: "coconut oil", from: shelf, weights: {newAllergen: 0}});
    within(
      careless.alternatives.find(({by}) => by.join() === "unsalted butter")!.score,
      butter.score - SUBSTITUTION_WEIGHTS.newAllergen,
      1e-9,
      "score of butter",
    );
  });

  test("an allergen is said to be gone only where no line holds it any more", () => {
    const buttered = recipeOf({
      "oat drink": 700,
      "unsalted butter": 90,
      sucrose: 140,
      "maltodextrin 18 DE": 60,
      "guar gum": 3,
    });
    const {alternatives} = substitute(buttered, {without: "unsalted butter", from: shelf});
    for (const {recipe, goneAllergens, newAllergens} of alternatives) {
      const milk = recipe.lines.some(({ingredient}) => ingredient.allergens?.includes("milk"));
      expect(goneAllergens).toEqual(milk ? [] : ["milk"]);
      expect(newAllergens).toEqual([]);
    }
    const kinds = new Set(alternatives.map(({goneAllergens}) => goneAllergens.join()));
    expect([...kinds].sort()).toEqual(["", "milk"]);
  });

  test("a legal name with a most is said to be lost above it", () => {
    // 21 CFR 135.140(a): sherbet has 1 to 2 % milk fat.
    const legalName = {name: "US sherbet", targets: {milkFat: {min: 1, max: 2}}};
    const sides = [
      {without: "whole milk", of: {"whole milk": 400, water: 300, sucrose: 240, "lemon juice": 60}},
      // What gives the flavour stays, and has too much.
      {without: "sucrose", of: {"milk chocolate": 450, water: 450, sucrose: 100}},
    ].flatMap(({without, of}) => {
      const from = ["cream 36 %", "skimmed milk", "dextrose"].map((name) => findIngredient(realPantry, name));
      return substitute(recipeOf(of), {without, from, legalName}).alternatives.map(
        ({recipe, legalName: standing}) => {
          const milkFat = quantityOf(recipeComposition(recipe), "milkFat");
          const side = milkFat < 1 - 1e-6 ? "min" : milkFat > 2 + 1e-6 ? "max" : "";
          const told = standing!.broken.map(({bound, limit, value}) => [bound, limit, value!.toFixed(6)]);
          expect(told).toEqual(side ? [[side, side === "min" ? 1 : 2, milkFat.toFixed(6)]] : []);
          return side;
        },
      );
    });
    expect([...new Set(sides)].sort()).toEqual(["", "max", "min"]);
  });

  test("a legal name is kept where it can be and said to be lost where not", () => {
    // 21 CFR 135.110(a)(2): at least 10 % milk fat.
    const legalName = {name: "US ice cream", targets: {milkFat: {min: 10}}};
    const rich = recipeOf({
      "whole milk": 520,
      "cream 36 %": 260,
      "skimmed milk powder": 45,
      sucrose: 130,
      "dextrose monohydrate": 40,
      "egg yolk": 20,
    });
    const {alternatives} = substitute(rich, {without: "cream 36 %", from: shelf, legalName});
    const standings = alternatives.map((found) => found.legalName!.kept);
    expect(standings[0]).toBe(true);
    expect(standings).toContain(false);
    expect(standings).toEqual([...standings].sort((a, b) => Number(b) - Number(a)));
    for (const {recipe, legalName: standing} of alternatives) {
      const milkFat = quantityOf(recipeComposition(recipe), "milkFat");
      expect(standing!.kept).toBe(milkFat >= 10 - 1e-6);
      const told = standing!.broken.map(({target, bound, limit, value}) => [
        target,
        bound,
        limit,
        value!.toFixed(3),
      ]);
      expect(told).toEqual(standing!.kept ? [] : [["milkFat", "min", 10, milkFat.toFixed(3)]]);
    }
  });

  test("what gives the flavour stays, and may be replaced only by its kind", () => {
    const pear = recipeOf({
      "whole milk": 450,
      "cream 40 %": 170,
      sucrose: 130,
      "skimmed milk powder": 40,
      pear: 200,
      "fresh ginger": 10,
    });
    for (const {recipe} of substitute(pear, {without: "cream 40 %", from: shelf}).alternatives) {
      for (const name of ["pear", "fresh ginger"]) {
        const line = recipe.lines.find(({ingredient}) => ingredient.name === name)!;
        within(line.grams, name === "pear" ? 200 : 10, 1e-9, name);
      }
    }
    const fruit = substitute(pear, {without: "pear", from: shelf}).alternatives;
    expect(fruit.some(({by}) => by.includes("plum") || by.includes("apple"))).toBe(true);
    expect(fruit.every(({flavours}) => flavours.lost.includes("pear"))).toBe(true);
    expect(fruit.every(({by}) => !by.includes("dark chocolate 60-69 %"))).toBe(true);
    const held = substitute(pear, {without: "cream 40 %", from: shelf, keep: ["sucrose"]}).alternatives;
    for (const alternative of held) within(gramsIn(alternative, "sucrose"), 130, 1e-9, "sucrose kept");
  });

  test("without a price the cost is not compared, and says so", () => {
    const {price: _price, ...free} = named("unsalted butter");
    const {notCompared, alternatives} = substitute(vanilla, {
      without: "cream 36 %",
      from: [free, named("water")],
    });
    expect(notCompared).toEqual(["cost"]);
    expect(alternatives.flatMap(({changes}) => changes.map(({what}) => what))).not.toContain("cost");
  });

  test("in chunks comes to the same, and can be cancelled", async () => {
    const options = {without: "dextrose monohydrate", from: shelf.slice(0, 20)};
    expect(await inChunks(substituteSteps(vanilla, options))).toEqual(substitute(vanilla, options));
    const controller = new AbortController();
    const run = inChunks(substituteSteps(vanilla, options), {
      signal: controller.signal,
      onProgress: () => controller.abort(),
    });
    await expect(run).rejects.toThrow(expect.objectContaining({name: "AbortError"}));
  });

  const mistakes: [string, () => unknown, RegExp][] = [
    [
      "an unknown ingredient",
      () => substitute(vanilla, {without: "creme 36 %", from: shelf}),
      /^without: not in the recipe \(got "creme 36 %"\); give cream 36 %/,
    ],
    [
      "no name among none",
      () => substitute(vanilla, {without: [], from: shelf}),
      /^without: names nothing; name the ingredient/,
    ],
    [
      "several of which none is in the recipe",
      () => substitute(vanilla, {without: ["cream 40 %", "honey"], from: shelf}),
      /^without\[0\]: not in the recipe \(got "cream 40 %"\)/,
    ],
    [
      "several of which one is known nowhere",
      () => substitute(vanilla, {without: ["sucrose", "moon paste"], from: shelf}),
      /^without\[1\]: not in the recipe \(got "moon paste"\)/,
    ],
    [
      "a rest of several",
      () => substitute(vanilla, {without: ["sucrose", "dextrose monohydrate"], left: 5, from: shelf}),
      /^left: of several ingredients \(got 5\); give it where one is out/,
    ],
    [
      "enough left",
      () => substitute(vanilla, {without: "sucrose", left: 130, from: shelf}),
      /^left: enough for the recipe \(got 130\)/,
    ],
    [
      "less than nothing left",
      () => substitute(vanilla, {without: "sucrose", left: -1, from: shelf}),
      /^left/,
    ],
    [
      "keeping what is out",
      () => substitute(vanilla, {without: "sucrose", keep: ["sucrose"], from: shelf}),
      /^keep: what is out/,
    ],
    [
      "keeping what is not there",
      () => substitute(vanilla, {without: "sucrose", keep: ["honey"], from: shelf}),
      /^keep\[0\]: not in the recipe/,
    ],
    [
      "an unknown weight",
      () => substitute(vanilla, {without: "sucrose", from: shelf, weights: {sweetnes: 1} as never}),
      /^weights\.sweetnes: unknown weight \(got 1\); use sweetness/,
    ],
    [
      "a weight below 0",
      () => substitute(vanilla, {without: "sucrose", from: shelf, weights: {fat: -1}}),
      /^weights\.fat/,
    ],
    ["a warm freezer", () => substitute(vanilla, {without: "sucrose", from: shelf, freezer: 4}), /^freezer/],
    ["no batch", () => substitute(vanilla, {without: "sucrose", from: shelf, batch: 0}), /^batch/],
    [
      "an empty recipe",
      () => substitute({name: "none", lines: []}, {without: "sucrose", from: shelf}),
      /^recipe: has no ingredients/,
    ],
    [
      "an unknown demand of a name",
      () =>
        substitute(vanilla, {
          without: "sucrose",
          from: shelf,
          // @ts-expect-error no quantity is called so: who writes JavaScript is told when it runs
          legalName: {name: "ice", targets: {milkfat: {min: 10}}},
        }),
      /^legalName: targets\.milkfat: unknown quantity.*did you mean milkFat/,
    ],
  ];
  test.each(mistakes)("mistake: %s", (_, run, message) => {
    expect(run).toThrow(message);
    expect(run).toThrow(expect.objectContaining({name: "InputError"}));
  });
});
