import {InputError} from "../../core/errors.ts";
import {nearestNames} from "../../core/nearest.ts";
import {finite, sum} from "../../core/numbers.ts";
import {expectList, expectOptions, expectRecord} from "../../core/shape.ts";
import {expectComposition} from "../../pantry/expect.ts";
import {blend, type Weighted} from "../../pantry/mix.ts";
import type {Composition} from "../../pantry/parts.ts";
import type {Recipe} from "../../pantry/recipe.ts";
import {expectRecipe} from "../../pantry/recipe.ts";
import {brix, solubleSolids} from "../sugar/brix.ts";
import {invert} from "../sugar/inversion.ts";

/** End of boiling: at a mass in g, at a °Brix, or when so many per cent of the mass have boiled off. */
export type CookTo =
  | {readonly cookedGrams: number}
  | {readonly brix: number}
  | {readonly reductionPercent: number};

/** Loss in the sieve: stones, seeds, skins. */
export interface Sieved {
  /** Name of the ingredient that loses it. */
  readonly ingredient: string;
  /** g lost per 100 g of the ingredient. */
  readonly percent: number;
  /** Composition of the loss, g per 100 g; the ingredient's own by default, as for peel and pulp. */
  readonly composition?: Composition;
}

/** Steps of a sauce besides boiling. */
export interface CookOptions {
  /** Losses in the sieve before the sauce is boiled down. */
  readonly sieved?: readonly Sieved[];
  /** Share of the sucrose that splits into dextrose and fructose, 0 (default) to 1; see {@link invert}. */
  readonly inversion?: number;
}

/** A cooked sauce. */
export interface Cooked {
  /** g per 100 g of the finished sauce. */
  readonly composition: Composition;
  /** Mass of the finished sauce, g. */
  readonly grams: number;
  /** g */
  readonly waterBoiledOff: number;
  /** g */
  readonly sievedOut: number;
  /** °Brix of the finished sauce. */
  readonly brix: number;
}

/**
 * Boils a sauce down: water goes, all solids stay, except those sieved out first.
 *
 * Mass balance only: aroma and the little acid that steam carries off are left out.
 *
 * @param recipe contents of the pot, g
 * @param to end of boiling: `cookedGrams` g, `brix` in °Brix (above 0, below 100), or `reductionPercent` of the mass in the pot
 * @throws InputError when the pot is empty, holds alcohol (which boils off in no known share), cannot reach the goal by
 *   losing water, has too little water for its inversion, or loses more of something in the sieve than it holds
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = [
 *   {ingredient: findIngredient(pantry, "water"), grams: 500},
 *   {ingredient: findIngredient(pantry, "sucrose"), grams: 500},
 * ];
 * cookDown({name: "syrup", lines}, {brix: 65}); // => {grams: 769.2, waterBoiledOff: 230.8, brix: 65}
 * ```
 */
export function cookDown(recipe: Recipe, to: CookTo, options: CookOptions = {}): Cooked {
  expectRecipe(recipe);
  expectGoal(to);
  expectOptions(options, ["sieved", "inversion"]);
  const pot = sieve(recipe, options.sieved ?? []);
  const mass = sum(pot.map((portion) => portion.mass));
  if (!(mass > 0))
    throw new InputError(recipe.name, "the pot is empty", mass, "give every ingredient its grams");
  const raw = invert(blend(pot), options.inversion ?? 0);
  if (raw.alcohol) {
    throw new InputError(
      recipe.name,
      "alcohol boils off with the water in no known share",
      Number(raw.alcohol.toFixed(2)),
      "cook without the spirit or extract, and stir it in afterwards",
    );
  }
  const water = ((raw.water ?? 0) * mass) / 100;
  const wanted = waterToBoil(to, mass, water, (solubleSolids(raw) * mass) / 100);
  const boiled = Math.min(Math.max(wanted, 0), water);
  if (Math.abs(wanted - boiled) > 1e-7 * mass) {
    throw new InputError(
      `${recipe.name}: cook to`,
      wanted < 0
        ? "the pot is further down than that before it boils"
        : `the pot holds only ${water.toFixed(1)} g of water`,
      to,
      wanted < 0 ? "add water or fruit, or ask for less" : "ask for less, or add sugar instead",
    );
  }
  const composition = blend([
    {composition: raw, mass},
    {composition: {water: 100}, mass: -boiled},
  ]);
  return {
    composition,
    grams: mass - boiled,
    waterBoiledOff: boiled,
    sievedOut: sum(recipe.lines.map((line) => line.grams)) - mass,
    brix: brix(composition),
  };
}

/** Goals that a sauce may be cooked to. */
const GOALS = ["cookedGrams", "brix", "reductionPercent"] as const;

function expectGoal(to: CookTo): void {
  const advice = `give one of {cookedGrams} in g, {brix} in °Brix and {reductionPercent} of the mass`;
  expectRecord(to, "to", advice);
  if (GOALS.filter((goal) => goal in to).length !== 1)
    throw new InputError("to", "not one goal of cooking", to, advice);
}

function waterToBoil(to: CookTo, mass: number, water: number, soluble: number): number {
  if ("cookedGrams" in to) return mass - finite(to.cookedGrams, "cookedGrams", {min: 0.1}, "g");
  if ("brix" in to) {
    const goal = finite(to.brix, "brix", {min: 1, max: 99}, "°Brix");
    if (soluble <= 0)
      throw new InputError("brix", "nothing in the pot dissolves", goal, "add fruit or sugar");
    return water - soluble * (100 / goal - 1);
  }
  return (mass * finite(to.reductionPercent, "reductionPercent", {min: 0, max: 99}, "% of the mass")) / 100;
}

/** Contents of the pot after sieving: the lines, and the losses as negative masses. */
function sieve(recipe: Recipe, losses: readonly Sieved[]): Weighted[] {
  const portions: Weighted[] = recipe.lines.map(({ingredient, grams}) => ({
    composition: ingredient.composition,
    mass: finite(grams, `${recipe.name}: ${ingredient.name}`, {min: 0}, "g"),
  }));
  expectList(losses, {ingredient: "text", percent: "number"}, "sieved", "give {ingredient, percent} of each");
  for (const loss of losses) {
    const place = `${recipe.name}: sieved "${loss.ingredient}"`;
    const line = recipe.lines.find(({ingredient}) => ingredient.name === loss.ingredient);
    if (!line) {
      const near = nearestNames(
        loss.ingredient,
        recipe.lines.map(({ingredient}) => ingredient.name),
      );
      throw new InputError(
        place,
        "not in the recipe",
        undefined,
        near.length ? `did you mean ${near.join(" or ")}` : "name an ingredient of the recipe",
      );
    }
    finite(loss.percent, `${place}: percent`, {min: 0, max: 99}, "% of the ingredient");
    const composition = loss.composition ?? line.ingredient.composition;
    expectComposition(composition);
    for (const [part, share] of Object.entries(composition)) {
      const has = line.ingredient.composition[part as keyof Composition] ?? 0;
      if (part !== "dextroseEquivalent" && (share * loss.percent) / 100 > has + 1e-9) {
        throw new InputError(
          place,
          `loses more ${part} than the ingredient holds`,
          share,
          "give a smaller loss",
        );
      }
    }
    portions.push({composition, mass: (-line.grams * loss.percent) / 100});
  }
  return portions;
}
