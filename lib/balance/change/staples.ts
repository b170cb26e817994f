import type {Ingredient} from "../../pantry/ingredient.ts";
import {type Pantry, expectPantry, nameKey} from "../../pantry/pantry.ts";

/** What nearly every frozen-dessert kitchen has or can buy round the corner (common practice, no source). */
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

/**
 * What nearly every kitchen has of a pantry, as it stands there: water, milk, cream, milk powder, sugar, dextrose and glucose
 * syrup. For the `from` of `suggestChanges` where nobody says what is on the shelf.
 *
 * @throws InputError for what is no pantry
 *
 * @example
 * ```ts
 * staplesIn(includedPantry()).length; // => 7
 * ```
 */
export function staplesIn(pantry: Pantry): Ingredient[] {
  expectPantry(pantry);
  return pantry.ingredients.filter(({name}) => STAPLES.has(nameKey(name)));
}
