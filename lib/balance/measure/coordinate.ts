/** A sum over a mix that counts as 0 where it is negative, such as ice. */
export interface CutOff {
  /** `ice at -18 °C`. */
  readonly name: string;
  /** Per ingredient, before it is cut off at 0. */
  readonly weights: readonly number[];
}

/**
 * A property of a mix: a sum over its ingredients' shares, plus sums that are cut off at 0 (`cutOff`), and at least each of the sums in
 * `atLeast`, where sweeteners crystallise. Where `there` is given, it holds only for mixes in which the sum `there` is at least 0.
 */
export interface Coordinate {
  readonly weights: readonly number[];
  readonly cutOff?: readonly CutOff[];
  readonly atLeast?: readonly (readonly number[])[];
  readonly there?: readonly number[];
}

/** The value of a coordinate in a mix, from the share of the batch of each ingredient. */
export function coordinateValue(
  {weights, cutOff = [], atLeast = []}: Coordinate,
  shares: readonly number[],
): number {
  const sum = cutOff.reduce(
    (total, part) => total + Math.max(0, dot(part.weights, shares)),
    dot(weights, shares),
  );
  return Math.max(sum, ...atLeast.map((piece) => dot(piece, shares)));
}

function dot(weights: readonly number[], shares: readonly number[]): number {
  let total = 0;
  for (let j = 0; j < weights.length; j++) total += weights[j]! * shares[j]!;
  return total;
}
