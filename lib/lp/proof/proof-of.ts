import {checkTime, type Deadline, NO_DEADLINE} from "../program/deadline.ts";
import type {DenseProgram} from "../program/dense.ts";
import {
  isOptimal,
  optimality,
  provesInfeasible,
  provesUnbounded,
  TOLERANCE,
  type Optimality,
} from "./proof.ts";
import {
  AT_LOWER,
  AT_UPPER,
  BASIC,
  kernelOf,
  vertexOf,
  withoutNoise,
  type Basis,
  type Kernel,
} from "./vertex.ts";

/** Proof that a basis gives about its program. */
export type Proof =
  | {
      readonly status: "optimal";
      readonly values: Float64Array;
      readonly duals: Float64Array;
      readonly figures: Optimality;
    }
  | {readonly status: "infeasible"; readonly multipliers: Float64Array}
  | {readonly status: "unbounded"; readonly values: Float64Array; readonly ray: Float64Array};

/**
 * Proof that a basis gives, from the program's own numbers; `undefined` where it proves nothing.
 *
 * @throws OutOfTime soon after the deadline
 */
export function proofOf(
  program: DenseProgram,
  basis: Basis,
  deadline: Deadline = NO_DEADLINE,
): Proof | undefined {
  const kernel = kernelOf(program, basis, deadline);
  if (!kernel) return undefined;
  const {values, duals} = vertexOf(program, basis, kernel);
  const figures = optimality(program, values, duals);
  if (isOptimal(figures)) return {status: "optimal", values, duals, figures};
  if (figures.residual > TOLERANCE) {
    for (const multipliers of farkasCandidates(program, basis, kernel, values, figures.activities)) {
      checkTime(deadline);
      if (provesInfeasible(program, multipliers)) return {status: "infeasible", multipliers};
    }
    return undefined;
  }
  for (const ray of rayCandidates(program, basis, kernel, figures.reducedCosts, duals)) {
    checkTime(deadline);
    if (provesUnbounded(program, ray)) return {status: "unbounded", values, ray};
  }
  return undefined;
}

/**
 * The combination of rows that keeps a basic quantity outside its limits: for each one alone (where a dual simplex ends), then
 * for all together (where the sum of violations is least).
 */
function* farkasCandidates(
  program: DenseProgram,
  basis: Basis,
  kernel: Kernel,
  values: Float64Array,
  activities: Float64Array,
): Generator<Float64Array> {
  const {columns: n, rows: m, matrix, lower, upper, rowLower, rowUpper} = program;
  const {rows, columns} = kernel;
  const together = new Float64Array(m);
  const combine = (direction: number, rightHandSide: Float64Array, own?: number) => {
    const solved = kernel.solveTransposed(rightHandSide);
    const multipliers = new Float64Array(m);
    for (const [k, i] of rows.entries()) multipliers[i] = -direction * solved[k]!;
    if (own !== undefined) multipliers[own] = direction;
    for (let i = 0; i < m; i++) together[i]! += multipliers[i]!;
    return withoutNoise(multipliers);
  };
  for (let i = 0; i < m; i++) {
    const direction = basis[n + i] === BASIC ? wayBack(activities[i]!, rowLower[i]!, rowUpper[i]!) : 0;
    if (direction !== 0)
      yield combine(
        direction,
        Float64Array.from(columns, (j) => matrix[i * n + j]!),
        i,
      );
  }
  for (const [k, j] of columns.entries()) {
    const direction = wayBack(values[j]!, lower[j]!, upper[j]!);
    if (direction !== 0)
      yield combine(
        direction,
        Float64Array.from(columns, (_, c) => (c === k ? 1 : 0)),
      );
  }
  yield withoutNoise(together);
}

/** 1 below the lower limit, -1 above the upper one, 0 between. */
function wayBack(value: number, lower: number, upper: number): number {
  return value < lower - TOLERANCE / 10 ? 1 : value > upper + TOLERANCE / 10 ? -1 : 0;
}

/** For each nonbasic quantity that would pay to leave its limit: the direction in which all moves when it does. */
function* rayCandidates(
  program: DenseProgram,
  basis: Basis,
  kernel: Kernel,
  reducedCosts: Float64Array,
  duals: Float64Array,
): Generator<Float64Array> {
  const {columns: n, matrix} = program;
  const {rows, columns} = kernel;
  const move = (rightHandSide: Float64Array, own?: readonly [index: number, step: number]) => {
    const solved = kernel.solve(rightHandSide);
    const ray = new Float64Array(n);
    for (const [k, j] of columns.entries()) ray[j] = solved[k]!;
    if (own) ray[own[0]] = own[1];
    return withoutNoise(ray);
  };
  for (let j = 0; j < n; j++) {
    const step = gainful(basis[j]!, reducedCosts[j]!);
    if (step !== 0)
      yield move(
        Float64Array.from(rows, (i) => -step * matrix[i * n + j]!),
        [j, step],
      );
  }
  for (const [k, i] of rows.entries()) {
    const step = gainful(basis[n + i]!, duals[i]!);
    if (step !== 0) yield move(Float64Array.from(rows, (_, r) => (r === k ? step : 0)));
  }
}

/** The direction in which a nonbasic quantity with this price improves the objective, 0 where it may not move so. */
function gainful(place: number, price: number): number {
  if (place === BASIC || Math.abs(price) <= TOLERANCE / 10) return 0;
  const step = price > 0 ? -1 : 1;
  return (place === AT_LOWER && step < 0) || (place === AT_UPPER && step > 0) ? 0 : step;
}
