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

/** A row from its name, weights and limits. */
export function rowOf(name: string, weights: readonly number[], {min, max}: Limits): MixRow {
  return {name, weights, ...(min !== undefined && {lower: min}), ...(max !== undefined && {upper: max})};
}

/**
 * The rows of a measure whose value is the largest of some sums: "at most m" for each of them, "at least m" for the first alone, which
 * is safe. Sums that no mix can have above m are left out.
 */
export function rowsOfPieces(name: string, pieces: readonly Piece[], {min, max}: Limits): MixRow[] {
  const [first, ...others] = pieces;
  return [
    rowOf(name, first!, {...(min !== undefined && {min}), ...(max !== undefined && {max})}),
    ...(max === undefined ? [] : reaching(others, max).map((piece) => rowOf(name, piece, {max}))),
  ];
}

/** The pieces that exceed a value in some mix. */
export function reaching(pieces: readonly Piece[], value: number): Piece[] {
  return pieces.filter((piece) => piece.some((weight) => weight > value));
}

/** The rows, the axis, the aim and the value of a measure that is a weighted sum over the ingredients of any mix. */
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
