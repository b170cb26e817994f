import {type Deadline, NO_DEADLINE} from "../program/deadline.ts";
import type {DenseProgram} from "../program/dense.ts";
import {findBasis} from "./find-basis.ts";
import {optimality, TOLERANCE} from "../proof/proof.ts";

/** A point of a program with whole values, in scaled units. */
export interface WholePoint {
  readonly values: Float64Array;
  readonly activities: Float64Array;
  readonly residual: number;
}

/**
 * The best point with the integer variables fixed at the nearest whole values: the rest is solved and proved anew, and the whole is
 * checked against every limit.
 *
 * Once whole values are fixed most rows that link them bind a single variable, so the program that is left is small.
 */
export function fixWhole(
  dense: DenseProgram,
  column: Float64Array,
  integer: readonly number[],
  near: Float64Array,
  deadline: Deadline = NO_DEADLINE,
): WholePoint | undefined {
  const [lower, upper] = [dense.lower.slice(), dense.upper.slice()];
  for (const j of integer) lower[j] = upper[j] = Math.round(near[j]! * column[j]!) / column[j]!;
  const rows = boundsFromRows({...dense, lower, upper}, lower, upper);
  const free: number[] = [];
  for (let j = 0; j < dense.columns; j++) if (lower[j] !== upper[j]) free.push(j);
  const proof = findBasis(partOf({...dense, lower, upper}, rows, free), deadline)?.proof;
  if (proof?.status !== "optimal") return undefined;
  const values = lower.slice();
  for (const [k, j] of free.entries()) values[j] = proof.values[k]!;
  const {activities, residual} = optimality(dense, values, new Float64Array(dense.rows));
  return residual <= 2 * TOLERANCE ? {values, activities, residual} : undefined;
}

/** Turns rows with one variable that is not fixed into bounds of that variable; the indices of the rows that are left. */
function boundsFromRows(program: DenseProgram, lower: Float64Array, upper: Float64Array): number[] {
  const {columns: n, rows: m, matrix, rowLower, rowUpper} = program;
  const left: number[] = [];
  for (let i = 0; i < m; i++) {
    let [free, only, fixed] = [0, -1, 0];
    for (let j = 0, k = i * n; j < n; j++, k++) {
      if (matrix[k] === 0) continue;
      if (lower[j] === upper[j]) fixed += matrix[k]! * lower[j]!;
      else [free, only] = [free + 1, j];
    }
    const a = matrix[i * n + only]!;
    if (free > 1 || (free === 1 && Math.abs(a) < 1e-3)) left.push(i);
    else if (free === 1) {
      const [one, other] = [(rowLower[i]! - fixed) / a, (rowUpper[i]! - fixed) / a];
      lower[only] = Math.max(lower[only]!, Math.min(one, other));
      upper[only] = Math.min(upper[only]!, Math.max(one, other));
      // Limits that miss each other by rounding meet; real conflicts show in the check of the whole point.
      if (upper[only]! < lower[only]! + TOLERANCE / 10) upper[only] = lower[only]!;
    }
  }
  return left;
}

/** The program of some rows and columns, with all others at their lower bounds. */
function partOf(program: DenseProgram, rows: readonly number[], columns: readonly number[]): DenseProgram {
  const {columns: n, matrix, lower, upper, cost, rowLower, rowUpper} = program;
  const kept = new Uint8Array(n);
  for (const j of columns) kept[j] = 1;
  const fixed = rows.map((i) => {
    let total = 0;
    for (let j = 0, k = i * n; j < n; j++, k++)
      if (kept[j] === 0 && lower[j] !== 0) total += matrix[k]! * lower[j]!;
    return total;
  });
  const pick = (entries: Float64Array) => Float64Array.from(columns, (j) => entries[j]!);
  const part = new Float64Array(rows.length * columns.length);
  for (const [r, i] of rows.entries()) {
    for (const [c, j] of columns.entries()) part[r * columns.length + c] = matrix[i * n + j]!;
  }
  return {
    columns: columns.length,
    rows: rows.length,
    cost: pick(cost),
    lower: pick(lower),
    upper: pick(upper),
    matrix: part,
    rowLower: Float64Array.from(rows, (i, r) => rowLower[i]! - fixed[r]!),
    rowUpper: Float64Array.from(rows, (i, r) => rowUpper[i]! - fixed[r]!),
  };
}
