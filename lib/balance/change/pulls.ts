import {finite, sum} from "../../core/numbers.ts";
import {expectOptions} from "../../core/shape.ts";
import {expectRecipe, type Recipe} from "../../pantry/recipe.ts";
import {coefficientOf} from "../measure/of-subject.ts";
import type {Subject} from "../measure/measures.ts";
import {scaledLines} from "../substitute/substitution-problem.ts";

/** Properties at which the ingredients of a recipe pull, by their names in an answer. */
export const PULLED = ["ice", "firmness", "sweetness", "fat", "cost"] as const;

/** One of the properties that ingredients pull at. */
export type Pulled = (typeof PULLED)[number];

/** Pulls of all ingredients of a recipe at one property. */
export interface Pulls {
  readonly what: Pulled;
  /** `g/100 g`; `points` of firmness; `sucrose = 100`; `money per kg`. */
  readonly unit: string;
  /** Value of the mix, the weighted mean of its ingredients, in that unit. */
  readonly mean: number;
  /** Each ingredient once, the strongest upward pull first. */
  readonly by: readonly Pull[];
}

/** Pull of one ingredient. */
export interface Pull {
  readonly ingredient: string;
  /** Share of the mix, 0 to 1. */
  readonly share: number;
  /** Share x (value of the ingredient - value of the mix): above 0 it raises the mix. The pulls of a mix sum to 0. */
  readonly pull: number;
  /** Value of the mix less its value without the ingredient, the rest in its place in proportion: pull / (1 - share). Absent where nothing is left. */
  readonly without?: number;
}

const UNITS: Readonly<Record<Pulled, string>> = {
  ice: "g/100 g",
  firmness: "points",
  sweetness: "sucrose = 100",
  fat: "g/100 g",
  cost: "money per kg",
};

/**
 * Pulls of the ingredients of a recipe, up or down: at ice and firmness in the freezer, sweetness, fat and, where every price is
 * known, the cost.
 *
 * Each of these is the mean m of the ingredients' values c, weighted by their shares s. The pull of one is s (c - m): the loss of
 * the mix if the same mass of the mix itself stood in its place. All pulls sum to 0: those upwards are as strong as those downwards.
 * With an ingredient left out, and the rest in its place in proportion, the mix would have pull / (1 - s) less: that is `without`.
 *
 * Ice and firmness are those with everything dissolved and before ice is cut off at zero: a mix that does not freeze there has a
 * negative amount of ice, and sweeteners that crystallise make the tub firmer without a pull.
 *
 * @param options with `freezer`, °C, from -40 to below 0; -18 by default
 * @throws InputError for no recipe, one without mass, and a temperature out of range
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = [
 *   {ingredient: findIngredient(pantry, "water"), grams: 700},
 *   {ingredient: findIngredient(pantry, "sucrose"), grams: 300},
 * ];
 * const sweetness = pullsOf({name: "syrup", lines}).find(({what}) => what === "sweetness");
 * sweetness?.by.map(({ingredient, pull}) => `${ingredient} ${pull.toFixed(0)}`); // => ["sucrose 21", "water -21"]
 * ```
 */
export function pullsOf(recipe: Recipe, options: {readonly freezer?: number} = {}): Pulls[] {
  expectRecipe(recipe);
  expectOptions(options, ["freezer"]);
  const at = finite(options.freezer ?? -18, "freezer", {min: -40, max: -0.01}, "°C");
  const {lines, batch} = scaledLines(recipe, undefined);
  const priced = lines.every(({ingredient}) => ingredient.price !== undefined);
  return PULLED.flatMap((what): Pulls[] => {
    if (what === "cost" && !priced) return [];
    const subject = subjectOf(what, at);
    const has = lines.map(({ingredient}) => coefficientOf(subject, ingredient));
    const mean = sum(lines.map(({before}, j) => (before / batch) * has[j]!));
    const by = lines.map(({ingredient, before}, j): Pull => {
      const share = before / batch;
      const pull = share * (has[j]! - mean);
      return {
        ingredient: ingredient.name,
        share,
        pull,
        ...(lines.length > 1 && {without: pull / (1 - share)}),
      };
    });
    return [{what, unit: UNITS[what], mean, by: by.sort((a, b) => b.pull - a.pull)}];
  });
}

function subjectOf(what: Pulled, at: number): Subject {
  if (what === "cost") return {kind: what};
  return what === "ice" || what === "firmness" ? {kind: what, at} : {kind: "quantity", quantity: what};
}
