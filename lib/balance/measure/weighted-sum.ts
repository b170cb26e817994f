import type {Limits} from "../../core/numbers.ts";
import type {Piece} from "../../freezing/pieces.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Coordinate} from "./coordinate.ts";
import type {Measure, MeasuredMix, MixContext} from "./measure.ts";
import type {MixRow} from "./mix-row.ts";

/** Contributions of 100 g of each ingredient. */
export function weightsOf({ingredients}: MixContext, weight: (ingredient: Ingredient) => number): number[] {
  return ingredients.map(({ingredient}) => weight(ingredient));
}

/** A row of a name, weights and limits. */
export function rowOf(name: string, weights: readonly number[], {min, max}: Limits): MixRow {
  return {name, weights, ...(min !== undefined && {lower: min}), ...(max !== undefined && {upper: max})};
}

/**
 * The rows of a measure that is the largest of some sums, of which a mix has at least the first: at most m holds for each, at least m
 * for the first, which is safe. Pieces that no mix can have above m are left out.
 */
export function rowsOfPieces(name: string, pieces: readonly Piece[], {min, max}: Limits): MixRow[] {
  const [first, ...others] = pieces;
  return [
    rowOf(name, first!, {...(min !== undefined && {min}), ...(max !== undefined && {max})}),
    ...(max === undefined ? [] : reaching(others, max).map((piece) => rowOf(name, piece, {max}))),
  ];
}

/** The pieces that some mix can have above a value. */
export function reaching(pieces: readonly Piece[], value: number): Piece[] {
  return pieces.filter((piece) => piece.some((weight) => weight > value));
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
