import {type LinearProgram, type Outcome, type Row, type Variable} from "../../lp/program/program.ts";
import {solverOfMany} from "../../lp/solve/solve-again.ts";
import type {Brief} from "../brief/brief.ts";
import type {Coordinate} from "./coordinate.ts";
import {type Formulation, formulate} from "./formulate.ts";

/** The best mixes of a brief for one wish after another. */
export interface MixProgram {
  /**
   * The mix that makes the weighted sum of the coordinates smallest.
   *
   * @param weights one per coordinate
   * @param limits of the coordinates, none by default
   */
  solve(weights: readonly number[], limits?: readonly (CoordinateLimits | undefined)[]): Outcome;
}

/** Lower and upper limit of a coordinate. */
export type CoordinateLimits = Pick<Row, "lower" | "upper">;

/** The limits of a brief as a program, without anything to optimise. */
export function limitsOnly({aim: _aim, ...brief}: Brief): Formulation {
  return formulate(brief);
}

/**
 * A program over the mixes of a brief with one row for each coordinate, so that only weights and limits change.
 *
 * Ice in a coordinate becomes a variable of its own. It is just the ice, which leaves out the mixes that would have less
 * than none, or, with `bounding`, at least the ice and at least none: that is right where it is to be small.
 *
 * @param formulation the limits of the brief (see {@link limitsOnly})
 * @param solve a solver to share among programs of the same shape
 */
export function mixProgram(
  {program}: Formulation,
  coordinates: readonly Coordinate[],
  bounding: readonly boolean[] = [],
  solve = solverOfMany(),
): MixProgram {
  const ingredients = program.variables.length;
  const icy = coordinates.flatMap(({ice}, k) => (ice ? [k] : []));
  const width = ingredients + icy.length;
  const padded = (weights: readonly number[], k?: number, own = 1): number[] => {
    const all = Array.from({length: width}, (_, j) => weights[j] ?? 0);
    const at = k === undefined ? -1 : icy.indexOf(k);
    if (at >= 0) all[ingredients + at] = own;
    return all;
  };
  const sums = coordinates.map(({weights}, k) => padded(weights, k));
  const fixed: Row[] = [
    ...program.rows.map((row) => ({...row, coefficients: padded(row.coefficients)})),
    ...icy.map((k) => ({
      name: "ice",
      coefficients: padded(coordinates[k]!.ice!, k, -1),
      ...(!bounding[k] && {lower: 0}),
      upper: 0,
    })),
    ...coordinates.flatMap(({there}) =>
      there ? [{name: "ice there", coefficients: padded(there), lower: 0}] : [],
    ),
  ];
  const variables: Variable[] = [...program.variables, ...icy.map(() => ({name: "ice", cost: 0}))];
  return {
    solve(weights, limits = []) {
      const changed: LinearProgram = {
        variables: variables.map((variable, j) => ({
          ...variable,
          cost: sums.reduce((total, sum, k) => total + weights[k]! * sum[j]!, 0),
        })),
        rows: [
          ...fixed,
          ...sums.flatMap((coefficients, k) =>
            limits[k] ? [{name: "coordinate", coefficients, ...limits[k]}] : [],
          ),
        ],
      };
      return solve(changed);
    },
  };
}

/** The share of the batch of each ingredient of a brief in an answer of its {@link MixProgram}. */
export function sharesIn({ingredients}: Brief, {shares}: Formulation, values: readonly number[]): number[] {
  // A share can be below 0 only by the rounding that the program's check has passed.
  return ingredients.map((_, j) => Math.max(0, shares[j]! * values[j]!));
}
