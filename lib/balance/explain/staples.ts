import type {Ingredient} from "../../pantry/ingredient.ts";
import {type Pantry, expectPantry, nameKey} from "../../pantry/pantry.ts";

/** Ingredients that nearly every frozen-dessert kitchen has or can buy round the corner (common practice, no source). */
const STAPLES = new Set(
  [
    "water",
    "whole milk",
    "skimmed milk powder",
    "cream 36 %",
    "sucrose",
    "dextrose monohydrate",
    "glucose syrup 42 DE",
  ].map(nameKey),
);

/** Whether an ingredient is one of those. */
export function isStaple({name}: Ingredient): boolean {
  return STAPLES.has(nameKey(name));
}

/**
 * The ingredients of a pantry that nearly every kitchen has: water, milk, cream, milk powder, sugar, dextrose and glucose
 * syrup. For the `from` of `suggestChanges` where the shelf is not known.
 *
 * @throws InputError for anything but a pantry
 *
 * @example
 * ```ts
 * staplesIn(includedPantry()).length; // => 7
 * ```
 */
export function staplesIn(pantry: Pantry): Ingredient[] {
  expectPantry(pantry);
  return pantry.ingredients.filter(isStaple);
}
