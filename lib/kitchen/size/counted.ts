import type {Ingredient} from "../../pantry/ingredient.ts";

/** Groups that are weighed or poured although the mass of one is known: the juice of a lemon, a pear without its core. */
const WEIGHED = new Set(["fruit", "juice"]);

/** True for an ingredient that is counted at the bench: eggs, sachets, any with the mass of one that is neither fruit nor juice. */
export function isCounted({unit, group = ""}: Pick<Ingredient, "unit" | "group">): boolean {
  return unit !== undefined && !WEIGHED.has(group);
}

/**
 * A number of whole or half ones in words: `8 × 17 g`, or `about 8.5 × 17 g` where that is off by more than 1 %; `undefined` below
 * half of one.
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
