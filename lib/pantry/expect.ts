import {InputError} from "../core/errors.ts";
import {expectShape} from "../core/shape.ts";
import type {Ingredient} from "./ingredient.ts";
import {type Composition, PARTS} from "./parts.ts";

const KEYS: ReadonlySet<string> = new Set([...PARTS, "dextroseEquivalent"]);

/**
 * Refuses what is no composition. One key is looked at, for speed: an answer, a recipe or an ingredient has none of a
 * composition's.
 *
 * @throws InputError for anything else
 */
export function expectComposition(value: Composition): void {
  if (typeof value === "object" && value !== null) {
    let known = true;
    for (const key in value) {
      known = KEYS.has(key);
      break;
    }
    if (known) return;
  }
  throw new InputError(
    "composition",
    "not a composition",
    value,
    "give g per 100 g by part, e.g. an ingredient's composition or recipeComposition(recipe)",
  );
}

/** Refuses what is no ingredient. */
export function expectIngredient(value: Ingredient): void {
  expectShape(
    value,
    {name: "text", composition: "object"},
    "ingredient",
    "give {name, composition}, e.g. from findIngredient",
  );
}
