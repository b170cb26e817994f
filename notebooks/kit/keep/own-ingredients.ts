import {InputError} from "../../../lib/core/errors.ts";
import {readIngredient} from "../../../lib/io/json/ingredient-json.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {IngredientClass} from "../../../lib/pantry/from-label.ts";
import type {Label} from "../../../lib/pantry/read-label.ts";
import {objectIn} from "../words/object-in.ts";
import {keeping} from "./database.ts";
import {changeUndoably} from "./undoable.ts";

/** Figures as the cook read them off a packet, for as much as the packet has them for. */
export interface AsRead {
  readonly law: "EU" | "US";
  readonly per: "100 g" | "100 ml" | "portion";
  readonly figures: Readonly<Record<string, number>>;
}

/** An ingredient of the cook's own as it is kept: from its packet, or with a composition from a file. */
export interface OwnEntry {
  readonly name: string;
  readonly aliases?: readonly string[];
  /** Per 100 g. */
  readonly label?: Omit<Label, "name"> & {readonly class: IngredientClass};
  /** The same as it stands on the packet, to be shown again. */
  readonly packet?: AsRead;
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
  const {packet: kept, ...entry} = objectIn(value);
  const packet = asRead(kept);
  try {
    // Prices and amounts stand on the shelf, and nowhere else.
    const {price: _, stock: __, ...ingredient} = readIngredient(entry, "your ingredients");
    return {entry: {...(entry as OwnEntry), ...(packet && {packet})}, ingredient};
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

/** Figures of a packet as the browser kept them; nothing where they make no sense. */
function asRead(value: unknown): AsRead | undefined {
  const {law, per, figures} = objectIn(value);
  if (law !== "EU" && law !== "US") return undefined;
  if (per !== "100 g" && per !== "100 ml" && per !== "portion") return undefined;
  const known = Object.entries(objectIn(figures)).filter(
    (pair): pair is [string, number] => typeof pair[1] === "number" && Number.isFinite(pair[1]),
  );
  return {law, per, figures: Object.fromEntries(known)};
}

/** All ingredients of the cook's own that can be read. */
export async function readOwn(): Promise<Own[]> {
  const all = await (await keeping()).drawer("ingredients").all();
  return [...all].flatMap(([key, value]) => {
    const own = parseOwn(value);
    return own?.ingredient.name === key ? [own] : [];
  });
}

/** Keeps ingredients, each in place of one of its name, or takes it out where there is none: see {@link changeUndoably}. */
export function changeOwn(entries: ReadonlyMap<string, OwnEntry | undefined>): Promise<() => Promise<void>> {
  return changeUndoably("ingredients", new Map([...entries].map(([name, entry]) => [name, () => entry])));
}
