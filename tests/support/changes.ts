import {seededRandom} from "../../lib/core/random.ts";
import {firmness, firmnessReference} from "../../lib/freezing/firmness.ts";
import {isFlavour} from "../../lib/pantry/flavour-groups.ts";
import {initialFreezingPoint} from "../../lib/freezing/ice.ts";
import {scoopTemperature, verdictAt, verdictBands} from "../../lib/freezing/scoop.ts";
import {type Change, SIMILARITY_TRAITS, staplesIn, SUBSTITUTION_WEIGHTS} from "../../lib/substitute.ts";
import {
  dosesOver,
  findIngredient,
  type Ingredient,
  quantityOf,
  type Recipe,
  recipeComposition,
} from "../../lib/index.ts";
import {isIngredientTrait} from "../../lib/balance/substitute/ingredient-traits.ts";
import {kindIn} from "./kinds.ts";
import {demoPantry} from "./pantry.ts";

const recipe = (name: string, grams: Readonly<Record<string, number>>): Recipe => ({
  name,
  lines: Object.entries(grams).map(([one, amount]) => ({
    ingredient: findIngredient(demoPantry, one),
    grams: amount,
  })),
});

/** Recipes as cooks have them. */
export const COOKS = {
  custard: recipe("custard", {"whole milk": 515, "cream 48 %": 300, "egg yolk": 108, sucrose: 150}),
  lemon: recipe("lemon", {water: 500, sucrose: 300, "lemon juice": 200}),
  chocolate: recipe("chocolate", {
    "whole milk": 500,
    "cream 36 %": 200,
    sucrose: 130,
    "cocoa powder 14 %": 40,
    "dark chocolate 70-85 %": 80,
    "skimmed milk powder": 30,
  }),
  oat: recipe("oat", {"oat drink": 750, "coconut oil": 80, sucrose: 150, "dextrose monohydrate": 20}),
  granita: recipe("granita", {water: 650, sucrose: 130, "lemon juice": 220}),
  shop: recipe("shop", {
    "whole milk": 620,
    "cream 36 %": 180,
    "skimmed milk powder": 35,
    sucrose: 110,
    "dextrose monohydrate": 40,
    "stabiliser blend": 5,
  }),
  strawberry: recipe("strawberry", {strawberry: 500, water: 150, sucrose: 250, "dextrose monohydrate": 100}),
  tooSoft: recipe("too soft", {
    strawberry: 450,
    water: 120,
    sucrose: 250,
    "dextrose monohydrate": 100,
    "glucose syrup 42 DE": 80,
  }),
} as const;

export const STAPLES = staplesIn(demoPantry);

/** What is noticed of one mix against another, written down anew: the weights of `SUBSTITUTION_WEIGHTS` on what is measured. */
export function noticed(change: Change, before: Recipe, after: Recipe, freezer: number): number {
  const sought = {
    softer: ["firmness", "freezingPoint"],
    firmer: ["firmness", "freezingPoint"],
    cheaper: ["cost"],
    "less sweet": ["sweetness"],
  }[change.towards];
  const [was, is] = [recipeComposition(before), recipeComposition(after)];
  const compared = new Set<string>(change.changes.map(({what}) => what));
  let score = 0;
  for (const what of SIMILARITY_TRAITS) {
    if (sought.includes(what) || !compared.has(what)) continue;
    const of = (one: typeof was, made: Recipe) =>
      what === "firmness"
        ? firmness(one, freezer)
        : what === "freezingPoint"
          ? initialFreezingPoint(one)!
          : what === "cost"
            ? costOf(made)
            : isIngredientTrait(what)
              ? kindIn(what, made)
              : quantityOf(one, what);
    score += SUBSTITUTION_WEIGHTS[what] * Math.abs(of(is, after) - of(was, before));
  }
  const grams = gramsIn(before);
  const batch = [...grams.values()].reduce((a, b) => a + b, 0);
  let moved = 0;
  for (const {ingredient, grams: amount} of after.lines) {
    const had = grams.get(ingredient.name) ?? 0;
    const by = Math.abs(amount - had);
    if (by < 1e-6 * batch) continue;
    moved += by;
    // A line weighed anew counts 0.5; a newcomer 1 and its own weight besides.
    score += 0.5 + (had === 0 ? 1 + SUBSTITUTION_WEIGHTS.newIngredient : 0);
  }
  return score + (SUBSTITUTION_WEIGHTS.moved * 100 * moved) / 2 / batch;
}

const gramsIn = ({lines}: Recipe) => new Map(lines.map((line) => [line.ingredient.name, line.grams]));

/** Money per kg. */
function costOf({lines}: Recipe): number {
  let [money, mass] = [0, 0];
  for (const {ingredient, grams} of lines) {
    money += grams * (ingredient.price ?? NaN);
    mass += grams;
  }
  return money / mass;
}

/** The limit that a changed recipe breaks, of those that every change keeps as the documentation says them; nothing where it keeps all and reaches what it is for. */
export function broken(change: Change, before: Recipe, after: Recipe, freezer: number): string {
  const [was, is] = [recipeComposition(before), recipeComposition(after)];
  const batch = before.lines.reduce((total, line) => total + line.grams, 0);
  const mass = after.lines.reduce((total, line) => total + line.grams, 0);
  if (Math.abs(mass - batch) > 1e-6) return "mass";
  const had = gramsIn(before);
  const has = gramsIn(after);
  const sugars = (quantityOf(was, "sugars") * batch) / 100;
  for (const [name, grams] of had) {
    const now = has.get(name) ?? 0;
    if (now < grams / 3 - 1e-9 || now > Math.max(2 * grams, grams + 0.1 * batch) + 1e-9) return name;
  }
  const newcomers = after.lines.filter(({ingredient, grams}) => grams > 0 && !had.has(ingredient.name));
  if (newcomers.length > 2) return "newcomers";
  for (const {ingredient, grams} of newcomers)
    if (grams > Math.min(0.12 * batch, ingredient.group === "sugar" ? sugars / 2 : Infinity) + 1e-6)
      return ingredient.name;
  for (const [quantity, room] of [
    ["sweetness", 2],
    ["fat", 2],
    ["totalSolids", 4],
    ["protein", 1],
    ["lactose", 0.5],
  ] as const) {
    const [old, now] = [quantityOf(was, quantity), quantityOf(is, quantity)];
    const give = Math.max(0.25 * old, room);
    const most = quantity === "totalSolids" ? Math.max(43, old + 3) : old + give;
    if (now < old - give - 0.1 || now > most + 0.1) return quantity;
  }
  const over = dosesOver(after.lines).filter(({dose, has: now}) => {
    const there = dosesOver(before.lines).find((one) => one.dose === dose);
    return now > (there?.has ?? 0) + 1e-6;
  });
  if (over.length) return over[0]!.name;
  const order = ["never hardens", "soft", "scoops", "firm", "hard"];
  const place = (one: typeof was) => order.indexOf(verdictAt(one, freezer));
  const [old, now] = [place(was), place(is)];
  const scoops = order.indexOf("scoops");
  if (now < Math.min(old, scoops) || now > Math.max(old, scoops)) return "verdict";
  return reaches(change, before, after, freezer) ? "" : change.wanted;
}

/** Whether a changed recipe reaches what a change is for. */
export function reaches({towards}: Change, before: Recipe, after: Recipe, freezer: number): boolean {
  const [was, is] = [recipeComposition(before), recipeComposition(after)];
  const band = verdictBands().find(({verdict}) => verdict === "scoops")!;
  const hard = (one: typeof was) => firmness(one, freezer);
  const at = scoopTemperature(was).temperature;
  switch (towards) {
    case "softer":
      return verdictAt(was, freezer) === "scoops"
        ? firmness(is, at! - 2) <= firmnessReference() + 1e-6
        : hard(is) <= band.to + 1e-6;
    case "firmer":
      return hard(is) >= band.from - 1e-6;
    case "cheaper":
      return costOf(after) <= 0.9 * costOf(before) + 1e-6 && hard(is) <= Math.max(hard(was), band.to) + 1e-6;
    case "less sweet": {
      const soft = ["soft", "never hardens"].includes(verdictAt(was, freezer));
      return (
        quantityOf(is, "sweetness") <= 0.9 * quantityOf(was, "sweetness") + 1e-6 &&
        hard(is) <= Math.max(hard(was), soft ? band.to : 0) + 1e-6 &&
        (at === undefined || soft || firmness(is, at) <= firmnessReference() + 1e-6)
      );
    }
  }
}

/**
 * The least noticed of some random changes that hold: those near a given one, where some grams of one ingredient go and as many of another
 * come, and such steps from the recipe itself.
 *
 * @param start what the first draws are near to
 */
export function bestOfRandom(
  change: Change,
  before: Recipe,
  start: Recipe,
  freezer: number,
  draws: number,
  seed: number,
): {readonly score: number; readonly held: number} {
  const next = seededRandom(seed);
  const kept = new Set(
    before.lines
      .filter(({ingredient: {name}}) => change.amounts.some((a) => a.ingredient === name && a.change === 0))
      .filter(({ingredient}) => isFlavour(ingredient) || ingredient.group === "egg")
      .map(({ingredient}) => ingredient.name),
  );
  const shelf = new Map<string, Ingredient>();
  for (const {ingredient} of [...before.lines, ...start.lines]) shelf.set(ingredient.name, ingredient);
  for (const staple of STAPLES)
    if (
      (staple.allergens ?? []).every((one) => before.lines.some((l) => l.ingredient.allergens?.includes(one)))
    )
      shelf.set(staple.name, staple);
  const names = [...shelf.keys()].filter((name) => !kept.has(name) && !/stabiliser/.test(name));
  let [score, held] = [Infinity, 0];
  for (let draw = 0; draw < draws; draw++) {
    const grams = gramsIn(draw % 3 === 2 ? before : start);
    const steps = 1 + Math.floor(3 * next());
    for (let step = 0; step < steps; step++) {
      const [from, to] = [
        names[Math.floor(next() * names.length)]!,
        names[Math.floor(next() * names.length)]!,
      ];
      const by = Math.min(grams.get(from) ?? 0, 60 * next() ** 2);
      grams.set(from, (grams.get(from) ?? 0) - by);
      grams.set(to, (grams.get(to) ?? 0) + by);
    }
    const after: Recipe = {
      name: "drawn",
      lines: [...grams].map(([name, amount]) => ({ingredient: shelf.get(name)!, grams: amount})),
    };
    if (broken(change, before, after, freezer)) continue;
    held++;
    score = Math.min(score, noticed(change, before, after, freezer));
  }
  return {score, held};
}
