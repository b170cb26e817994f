import {expectList} from "../core/shape.ts";
import {expectPantry, findIngredient, type Pantry, pantryOf} from "./pantry.ts";

/** Price and stock of one ingredient on the shelf. */
export interface ShelfEntry {
  /** Name or alias of an ingredient of the pantry. */
  readonly name: string;
  /** Money per kg. */
  readonly price?: number;
  /** Mass there is, g. */
  readonly stock?: number;
  /** Place of the entry, for errors. */
  readonly place: string;
}

/**
 * A pantry with the prices and stocks of a shelf; ingredients that the shelf does not list keep their own.
 *
 * @throws InputError for a name that the pantry does not have
 *
 * @example
 * ```ts
 * const pantry = stockedPantry(includedPantry(), [
 *   {name: "sugar", price: 1.1, stock: 5000, place: "my list"},
 * ]);
 * findIngredient(pantry, "sugar").price; // => 1.1
 * ```
 */
export function stockedPantry(pantry: Pantry, shelf: readonly ShelfEntry[]): Pantry {
  expectPantry(pantry);
  expectList(shelf, {name: "text", place: "text"}, "shelf", "give {name, price, stock, place} of each");
  const entries = new Map(
    shelf.map((entry) => {
      const ingredient = findIngredient(pantry, entry.name, entry.place);
      return [ingredient.name, {ingredient, entry}];
    }),
  );
  const known = new Set(pantry.ingredients.map(({name}) => name));
  // An ingredient made from the number in its name (cream 45 %) joins the shelf.
  const made = [...entries.values()].flatMap(({ingredient}) =>
    known.has(ingredient.name) ? [] : [ingredient],
  );
  return pantryOf(
    [...pantry.ingredients, ...made].map((ingredient) => {
      const {price, stock} = entries.get(ingredient.name)?.entry ?? {};
      return {...ingredient, ...(price !== undefined && {price}), ...(stock !== undefined && {stock})};
    }),
  );
}
