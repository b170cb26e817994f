import {expectList} from "../core/shape.ts";
import type {Recipe} from "../pantry/recipe.ts";
import type {Amount} from "./answer.ts";
import type {Brief} from "./brief.ts";
import {expectBrief} from "./expect-brief.ts";

/**
 * The recipe of an answer: its amounts with the ingredients themselves, for scaling, a batch sheet or a substitution. What is
 * not used is left out.
 *
 * @param brief the checked brief, from `readBrief`
 * @param amounts g of each ingredient in the brief's order: those of an answer, of a candidate or of `weighable`
 * @throws InputError for anything else
 */
export function recipeOf(brief: Brief, amounts: readonly Amount[]): Recipe {
  expectBrief(brief);
  expectList(amounts, {ingredient: "text", grams: "number"}, "amounts", "give answer.amounts");
  return {
    name: brief.name,
    lines: brief.ingredients.flatMap(({ingredient}, j) => {
      const {grams = 0} = amounts[j] ?? {};
      return grams > 0 ? [{ingredient, grams}] : [];
    }),
  };
}
