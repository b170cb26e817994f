import {InputError, printable, show} from "../../core/errors.ts";
import {findIngredient, nameKey, type Pantry} from "../../pantry/pantry.ts";
import type {ShelfEntry} from "../../pantry/stocked.ts";

/**
 * Prices and stock for the ingredients that a brief or a recipe describes itself, which the pantry may not know.
 *
 * Prices in the brief or recipe have priority over the price list.
 *
 * @param input a brief or a recipe as plain data, not checked yet; anything not understood stays as it is
 * @param shelf a price list
 * @returns the input with its prices, the entries for the pantry, and a sentence for each that neither knows: one price list
 *   serves several briefs
 */
export function ownPrices(
  input: unknown,
  shelf: readonly ShelfEntry[],
  pantry: Pantry,
): {input: unknown; left: readonly ShelfEntry[]; passedOver: readonly string[]} {
  const entryOf = new Map(shelf.map((entry) => [nameKey(entry.name), entry]));
  const used = new Set<ShelfEntry>();
  const priced = (ingredient: unknown) => {
    if (!isObject(ingredient) || typeof ingredient.name !== "string") return ingredient;
    if (ingredient.composition === undefined && ingredient.label === undefined) return ingredient;
    const {aliases} = ingredient;
    const names = [ingredient.name, ...(Array.isArray(aliases) ? aliases : [])].map((name) =>
      nameKey(String(name)),
    );
    const entry = names.map((name) => entryOf.get(name)).find(Boolean);
    if (!entry) return ingredient;
    used.add(entry);
    const {price, stock} = entry;
    return {...(price !== undefined && {price}), ...(stock !== undefined && {stock}), ...ingredient};
  };
  const own =
    isObject(input) && Array.isArray(input.ingredients)
      ? {...input, ingredients: input.ingredients.map(priced)}
      : input;
  const owners = ({name}: ShelfEntry) => {
    const key = nameKey(name);
    const others = pantry.byName.has(key) ? 1 : (pantry.byAlias.get(key)?.length ?? 0);
    return others || (isFound(name, pantry) ? 1 : 0);
  };
  return {
    input: own,
    // An entry that was used already may be the pantry's too; an alias of several ingredients there then needs no choice.
    left: shelf.filter((entry) => (used.has(entry) ? owners(entry) === 1 : owners(entry) > 0)),
    passedOver: shelf
      .filter((entry) => !used.has(entry) && owners(entry) === 0)
      .map((entry) => passingOver(entry, pantry)),
  };
}

/** Note that an entry has no use here, with the names that it may have meant. */
function passingOver({name, place}: ShelfEntry, pantry: Pantry): string {
  const [near] = /^did you mean [^?]+\?/.exec(adviceFor(name, pantry)) ?? [];
  return `${printable(place)}, ${show(name)}: no such ingredient here; ignored${near ? `; ${near}` : ""}`;
}

/** True for a name that is understood, if only by its number. */
function isFound(name: string, pantry: Pantry): boolean {
  return adviceFor(name, pantry) === "";
}

function adviceFor(name: string, pantry: Pantry): string {
  try {
    findIngredient(pantry, name, "price list");
    return "";
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return error.advice;
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
