import {nameKey, type Pantry} from "../pantry/pantry.ts";
import type {ShelfEntry} from "../pantry/stocked.ts";

/**
 * Prices and stock for the ingredients that a brief or a recipe describes itself, which the pantry may not know.
 *
 * What the brief or recipe says goes before what the price list says.
 *
 * @param input a brief or a recipe as plain data, not checked yet: what is not understood stays as it is
 * @param shelf a price list
 * @returns the input with its prices, and the entries for the pantry: all but those that only the input knows
 */
export function ownPrices(
  input: unknown,
  shelf: readonly ShelfEntry[],
  pantry: Pantry,
): {input: unknown; left: readonly ShelfEntry[]} {
  if (!isObject(input) || !Array.isArray(input.ingredients)) return {input, left: shelf};
  const entryOf = new Map(shelf.map((entry) => [nameKey(entry.name), entry]));
  const used = new Set<ShelfEntry>();
  const ingredients = input.ingredients.map((ingredient: unknown) => {
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
  });
  const knows = (key: string) => pantry.byName.has(key) || pantry.byAlias.has(key);
  const left = shelf.filter((entry) => !used.has(entry) || knows(nameKey(entry.name)));
  return {input: {...input, ingredients}, left};
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
