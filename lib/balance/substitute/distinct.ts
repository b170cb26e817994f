import type {Alternative} from "./substitution-types.ts";

/** Largest difference in an amount with which two alternatives count as the same, g per 100 g of mix. */
const SAME = 0.05;

/** The list without recipes that are nearly the same as an earlier one; the simpler way to a recipe comes first. */
export function distinct(alternatives: readonly Alternative[], batch: number): Alternative[] {
  const found: Alternative[] = [];
  for (const alternative of alternatives) {
    const same = found.some((other) => {
      const names = new Set([...alternative.amounts, ...other.amounts].map(({ingredient}) => ingredient));
      return [...names].every((name) => {
        const grams = (of: Alternative) => of.amounts.find(({ingredient}) => ingredient === name)?.after ?? 0;
        return Math.abs(grams(alternative) - grams(other)) * 100 <= SAME * batch;
      });
    });
    if (!same) found.push(alternative);
  }
  return found;
}
