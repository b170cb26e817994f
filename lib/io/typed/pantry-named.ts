import type {Ingredient} from "../../pantry/ingredient.ts";
import {nameKey, type Pantry} from "../../pantry/pantry.ts";

/** The ingredients that a name means: none, one, or those that share an alias. */
export function pantryNamed({byName, byAlias}: Pantry, name: string): readonly Ingredient[] {
  const key = nameKey(name);
  const named = byName.get(key);
  return named ? [named] : (byAlias.get(key) ?? []);
}
