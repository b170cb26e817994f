import type {IngredientInput} from "../../../lib/balance/brief/brief-schema.ts";
import {type Pantry, pantryOf} from "../../../lib/pantry/pantry.ts";
import type {Kitchen} from "../keep/kitchen.ts";

/** Ingredients that may go into a mix. */
interface Allowed {
  readonly allowed: readonly IngredientInput[];
  /** Names that were chosen and that the cook does not have. */
  readonly leftOut: readonly string[];
  readonly pantry: Pantry;
}

/** Ingredients that may go into a mix: those chosen, or only as much of them as the cook has. */
export function allowedFrom(
  {from, ingredients}: {readonly from: "any" | "own"; readonly ingredients: readonly IngredientInput[]},
  {pantry, owned}: Pick<Kitchen, "pantry" | "owned">,
): Allowed {
  if (from === "any") return {allowed: ingredients, leftOut: [], pantry};
  const there = new Set(owned.map(({name}) => name));
  // What the brief itself describes is of the cook's own.
  const isThere = ({name, composition, label}: IngredientInput) =>
    there.has(name) || composition !== undefined || label !== undefined;
  const allowed = ingredients.filter(isThere);
  return {
    allowed,
    leftOut: ingredients.filter((one) => !isThere(one)).map(({name}) => name),
    pantry: pantryOf(owned),
  };
}
