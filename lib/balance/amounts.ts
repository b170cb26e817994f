import type {Amount} from "./answer.ts";
import type {Brief} from "./brief.ts";

/** The amounts of a mix, from the share of the batch of each ingredient. */
export function amountsOf({batch, ingredients}: Brief, shares: readonly number[]): Amount[] {
  return ingredients.map(({ingredient}, j) => ({
    ingredient: ingredient.name,
    grams: shares[j]! * batch,
    percent: shares[j]! * 100,
  }));
}
