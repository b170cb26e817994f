import type {Ingredient} from "./ingredient.ts";

/** Groups of the shelf whose ingredients are there for their flavour, so that no other takes their place unasked. */
const FLAVOUR_GROUPS = new Set([
  "fruit",
  "vegetable",
  "juice",
  "nut",
  "coconut",
  "cocoa",
  "flavour",
  "alcohol",
  "inclusion",
]);

/** True for an ingredient that is there for its flavour, by its group; false for one without a group. */
export function isFlavour({group}: Ingredient): boolean {
  return group !== undefined && FLAVOUR_GROUPS.has(group);
}
