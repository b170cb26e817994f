import {InputError} from "../../../lib/core/errors.ts";
import {readIngredient} from "../../../lib/io/json/ingredient-json.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {IngredientClass} from "../../../lib/pantry/from-label.ts";
import type {Label} from "../../../lib/pantry/read-label.ts";
import {keeping} from "./database.ts";

/** An ingredient of the cook's own as it is kept: from its packet, or with a composition from a file. */
export interface OwnEntry {
  readonly name: string;
  readonly aliases?: readonly string[];
  readonly label?: Omit<Label, "name"> & {readonly class: IngredientClass};
  readonly composition?: Ingredient["composition"];
  readonly allergens?: Ingredient["allergens"];
  /** g/ml */
  readonly density?: number;
  readonly [further: string]: unknown;
}

/** An ingredient of the cook's own, with how it is kept. */
export interface Own {
  readonly entry: OwnEntry;
  readonly ingredient: Ingredient;
}

/** An entry as the browser kept it, whoever wrote it; nothing where it is no ingredient. */
export function parseOwn(value: unknown): Own | undefined {
  try {
    // Prices and amounts stand on the shelf, and nowhere else.
    const {price: _, stock: __, ...ingredient} = readIngredient(value, "your ingredients");
    return {entry: value as OwnEntry, ingredient};
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

/** All ingredients of the cook's own that can be read. */
export async function readOwn(): Promise<Own[]> {
  const all = await (await keeping()).drawer("ingredients").all();
  return [...all].flatMap(([key, value]) => {
    const own = parseOwn(value);
    return own?.ingredient.name === key ? [own] : [];
  });
}

/**
 * Keeps ingredients, each in place of one of its name; `undefined` takes one out.
 *
 * @returns takes the change back, but for those that were changed again since
 * @throws Error in words of the page where the browser refuses
 */
export async function changeOwn(
  entries: ReadonlyMap<string, OwnEntry | undefined>,
): Promise<() => Promise<void>> {
  const drawer = (await keeping()).drawer("ingredients");
  const done: {name: string; before: unknown; after: OwnEntry | undefined}[] = [];
  for (const [name, after] of entries)
    await drawer.change(name, (before) => {
      done.push({name, before, after});
      return after;
    });
  return async () => {
    for (const {name, before, after} of done.toReversed())
      await drawer.change(name, (present) =>
        JSON.stringify(present) === JSON.stringify(after) ? before : present,
      );
  };
}
