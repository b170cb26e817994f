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

/** Whether an ingredient is there for its flavour, by its group; one without a group is not. */
export function isFlavour({group}: Ingredient): boolean {
  return group !== undefined && FLAVOUR_GROUPS.has(group);
}
