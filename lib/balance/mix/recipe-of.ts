import {USUAL_OVERRUN} from "../../freezing/firmness.ts";
import type {Learned} from "../../freezing/learned.ts";
import {expectRecipe, type Recipe} from "../../pantry/recipe.ts";
import {type AmountsInput, gramsOf} from "./amounts.ts";
import {briefOf, type BriefSource} from "../read/brief-of.ts";
import type {Balanced} from "./answer.ts";

/** A recipe where one is asked for: itself, or a balanced mix as `balance` returned it or lists among its candidates. */
export type RecipeSource = Recipe | Balanced;

/**
 * The recipe of an answer: its amounts with the ingredients themselves, for scaling, a batch sheet or a substitution. What is
 * not used is left out.
 *
 * @param source the checked brief, from `readBrief`, or its answer
 * @param amounts those of an answer, of a candidate or of `weighable`, or g of each ingredient in the brief's order
 * @throws InputError for anything else
 *
 * @example
 * ```ts
 * const brief = {batch: 1000, ingredients: ["whole milk", "sucrose"], targets: {sugars: {equal: 12}}};
 * const answer = balance(brief, {pantry: includedPantry()});
 * answer.status === "optimal" && recipeOf(answer, answer.amounts).lines.map(({ingredient, grams}) => `${grams} g ${ingredient.name}`); // => ["880 g whole milk", "120 g sucrose"]
 * ```
 */
export function recipeOf(source: BriefSource, amounts: AmountsInput): Recipe {
  const brief = briefOf(source);
  const masses = gramsOf(brief, amounts);
  return {
    name: brief.name,
    ...(brief.overrun !== USUAL_OVERRUN && {overrun: brief.overrun}),
    lines: brief.ingredients.flatMap(({ingredient}, j) => {
      const grams = masses[j]!;
      return grams > 0 ? [{ingredient, grams}] : [];
    }),
  };
}

/**
 * The recipe of a source, with what the brief of a balanced mix says of the kitchen.
 *
 * @throws InputError for what is neither, and for an answer that has lost its brief in a copy
 */
export function recipeIn(source: RecipeSource): {
  readonly recipe: Recipe;
  readonly freezer?: number;
  readonly learned?: Learned;
} {
  if (typeof source !== "object" || source === null || !("amounts" in source)) {
    expectRecipe(source);
    return {recipe: source};
  }
  const {freezer, learned} = briefOf(source);
  return {recipe: recipeOf(source, source.amounts), freezer, ...(learned && {learned})};
}
