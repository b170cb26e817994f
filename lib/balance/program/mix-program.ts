import {ProgramBuilder, type Terms} from "../../lp/program/builder.ts";
import type {LinearProgram, Outcome, Row} from "../../lp/program/program.ts";
import {withCosts} from "../../lp/program/with-costs.ts";
import type {Brief} from "../brief/brief.ts";
import type {Coordinate} from "../measure/coordinate.ts";
import {type Formulation, formulate} from "./formulate.ts";
import {mixTerms} from "./mix-terms.ts";

/** A solver for the mixes of a brief that are best by one weighted sum after another. */
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
export function formulateWithoutAim({aim: _aim, ...brief}: Brief): Formulation {
  return formulate(brief);
}

/**
 * A program over the mixes of a brief with one row for each coordinate, so that only weights and limits change.
 *
 * A sum that is cut off at 0 in a coordinate (ice) becomes a variable of its own, equal to that sum, which leaves out the mixes in which
 * the sum is negative; or, with `bounding`, at least the sum and at least 0, which is right where the coordinate is to be small. Sums that
 * are a lower bound of the coordinate (`atLeast`) likewise: with `bounding` a variable makes up the difference, otherwise the mixes in
 * which they would exceed it are left out.
 *
 * @param formulation the limits of the brief (see {@link formulateWithoutAim})
 * @param solve a solver to share among programs of the same shape
 */
export function mixProgram(
  {program}: Formulation,
  coordinates: readonly Coordinate[],
  bounding: readonly boolean[],
  solve: (program: LinearProgram) => Outcome,
): MixProgram {
  const builder = new ProgramBuilder<unknown>(program);
  const amounts = program.variables.map((_, j) => builder.variableAt(j));
  const over = (weights: readonly number[]): Terms => mixTerms(amounts, weights);
  const parts = coordinates.map(({cutOff = []}) =>
    cutOff.map((part) => ({...part, variable: builder.variable({name: part.name, cost: 0})})),
  );
  const sums = coordinates.map(({weights, atLeast = []}, k): Terms => [
    ...over(weights),
    ...parts[k]!.map(({variable}) => [variable, 1] as const),
    ...(bounding[k] && atLeast.length ? [[builder.variable({name: "crystals", cost: 0}), 1] as const] : []),
  ]);
  for (const [k, {atLeast = []}] of coordinates.entries())
    for (const piece of atLeast) {
      const less = sums[k]!.map(([variable, weight]) => [variable, -weight] as const);
      builder.row({name: "crystals", terms: [...over(piece), ...less], upper: 0}, undefined);
    }
  for (const [k, own] of parts.entries()) {
    const lower = bounding[k] ? {} : {lower: 0};
    for (const {name, weights, variable} of own)
      builder.row({name, terms: [...over(weights), [variable, -1]], ...lower, upper: 0}, undefined);
  }
  for (const {there} of coordinates)
    if (there) builder.row({name: "there", terms: over(there), lower: 0}, undefined);
  const fixed = builder.build("minimise").program;
  return {
    solve(weights, limits = []) {
      const costs = fixed.variables.map(() => 0);
      for (const [k, terms] of sums.entries())
        for (const [variable, weight] of terms) costs[variable]! += weights[k]! * weight;
      const limited = new ProgramBuilder<unknown>(withCosts(fixed, (j) => costs[j]!));
      for (const [k, terms] of sums.entries())
        if (limits[k]) limited.row({name: "coordinate", terms, ...limits[k]}, undefined);
      return solve(limited.build().program);
    },
  };
}

/** The share of the batch of each ingredient of a brief in an answer of its {@link MixProgram}. */
export function sharesIn({ingredients}: Brief, {shares}: Formulation, values: readonly number[]): number[] {
  // A share can be below 0 only by the rounding that the program's check has passed.
  return ingredients.map((_, j) => Math.max(0, shares[j]! * values[j]!));
}
