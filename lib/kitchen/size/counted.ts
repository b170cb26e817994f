import type {Ingredient} from "../../pantry/ingredient.ts";

/** Groups that are weighed or poured although one piece has a known mass: the juice of a lemon, a pear without its core. */
const WEIGHED = new Set(["fruit", "juice"]);

/** Whether an ingredient is counted at the bench: eggs, sachets, whatever has the mass of one and is neither fruit nor juice. */
export function isCounted({unit, group = ""}: Pick<Ingredient, "unit" | "group">): boolean {
  return unit !== undefined && !WEIGHED.has(group);
}

/**
 * So many whole or half ones as a cook says them: `8 × 17 g`, `about 8.5 × 17 g` where the halves are off by more than 1 %;
 * nothing below half of one.
 *
 * @param grams mass, g
 * @param one mass of one, g, above 0
 */
export function countWords(grams: number, one: number): string | undefined {
  const halves = Math.round((2 * grams) / one) / 2;
  if (halves < 0.5) return undefined;
  const near = Math.abs(halves * one - grams) <= 0.01 * grams;
  return `${near ? "" : "about "}${halves} × ${Number(one.toFixed(1))} g`;
}
