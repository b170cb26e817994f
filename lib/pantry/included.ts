import {INCLUDED_TABLE} from "./included-table.ts";
import {unpacked} from "./packed.ts";
import {type Pantry, pantryOf} from "./pantry.ts";

let pantry: Pantry | undefined;

/**
 * The pantry that comes with the library: the ingredients of `datasets/ingredients.csv`, g per 100 g, without prices. It is part
 * of the code, so it works wherever the code does, and only a program that calls this carries it (30 kB gzip). Prices and stock
 * come on top with `stockedPantry`, further ingredients with `pantryOf([...includedPantry().ingredients, mine])`.
 *
 * Sources and grades: `source` and `grade` of each ingredient, and `datasets/sources.csv`.
 *
 * @example
 * ```ts
 * findIngredient(includedPantry(), "skimmed milk powder").composition.lactose; // => 51.98
 * ```
 */
export function includedPantry(): Pantry {
  return (pantry ??= pantryOf(unpacked(INCLUDED_TABLE)));
}
