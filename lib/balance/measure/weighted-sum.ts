import type {Limits} from "../../core/numbers.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Coordinate} from "./coordinate.ts";
import type {Measure, MeasuredMix, MixContext} from "./measure.ts";
import type {MixRow} from "./mix-row.ts";

/** What 100 g of each ingredient bring. */
export function weightsOf({ingredients}: MixContext, weight: (ingredient: Ingredient) => number): number[] {
  return ingredients.map(({ingredient}) => weight(ingredient));
}

/** A row of a name, weights and limits. */
export function rowOf(name: string, weights: readonly number[], {min, max}: Limits): MixRow {
  return {name, weights, ...(min !== undefined && {lower: min}), ...(max !== undefined && {upper: max})};
}

/** The rows, the sum and the value of a measure that is the weighted sum of its ingredients, whatever is in the mix. */
export function weightedSum<S extends {readonly kind: string}>(
  name: (subject: S) => string,
  weight: (subject: S, ingredient: Ingredient) => number,
): Pick<Measure<S>, "name" | "weight" | "rows" | "coordinate" | "aim" | "value"> {
  const weights = (subject: S, context: MixContext) => weightsOf(context, (one) => weight(subject, one));
  const sum = (subject: S, context: MixContext): Coordinate => ({weights: weights(subject, context)});
  return {
    name,
    weight,
    rows: (subject, limits, context) => [rowOf(name(subject), weights(subject, context), limits)],
    coordinate: (subject, context) => sum(subject, context),
    aim: (subject, _, context) => sum(subject, context),
    value(subject, {brief, shares}: MeasuredMix) {
      let total = 0;
      for (const [j, {ingredient}] of brief.ingredients.entries())
        total += shares[j]! * weight(subject, ingredient);
      return total;
    },
  };
}
