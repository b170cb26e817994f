import {checkTime, type Deadline, NO_DEADLINE} from "./deadline.ts";
import type {DenseProgram} from "./dense.ts";

/** A program in units in which its numbers are near 1, and the factors that lead back. All factors are powers of two: exact. */
export interface Scaled {
  readonly dense: DenseProgram;
  /** Original value of a variable per unit of the scaled one. */
  readonly column: Float64Array;
  /** Original sum of a row per unit of the scaled one. */
  readonly row: Float64Array;
  /** Original objective per unit of the scaled one. */
  readonly objective: number;
}

/**
 * Equilibration: rows and columns divided by their largest coefficient, then values by the median limit, then costs by the
 * largest, so that one absolute tolerance fits every program. (Dividing by the geometric mean would let coefficients that are
 * rounding noise, such as 1e-17, set the scale.)
 *
 * Without it the engine is wrong on a fifth of badly scaled blends.
 *
 * @throws OutOfTime soon after the deadline
 */
export function scale(dense: DenseProgram, deadline: Deadline = NO_DEADLINE): Scaled {
  const {columns: n, rows: m, matrix} = dense;
  const column = new Float64Array(n).fill(1);
  const row = new Float64Array(m).fill(1);
  const empty: boolean[] = [];
  const most = new Float64Array(n);
  for (let i = 0; i < m; i++) {
    if (i % 64 === 63) checkTime(deadline);
    let largest = 0;
    for (let j = 0, k = i * n; j < n; j++, k++) largest = Math.max(largest, Math.abs(matrix[k]!));
    empty[i] = largest === 0;
    if (largest > 0) row[i] = powerOfTwo(largest);
    for (let j = 0, k = i * n; j < n; j++, k++) most[j] = Math.max(most[j]!, Math.abs(matrix[k]!) / row[i]!);
  }
  for (let j = 0; j < n; j++) if (most[j]! > 0) column[j] = 1 / powerOfTwo(most[j]!);
  const spread = powerOfTwo(medianLimit(dense, column, row));
  for (let j = 0; j < n; j++) column[j]! *= spread;
  // A row without coefficients is met or not in any unit; scaled down, its limit might fall below the tolerance.
  for (let i = 0; i < m; i++) if (!empty[i]) row[i]! *= spread;
  return apply(dense, column, row, spread, deadline);
}

function apply(
  dense: DenseProgram,
  column: Float64Array,
  row: Float64Array,
  spread: number,
  deadline: Deadline,
): Scaled {
  const {columns: n, rows: m} = dense;
  const matrix = new Float64Array(m * n);
  for (let i = 0, k = 0; i < m; i++) {
    if (i % 64 === 63) checkTime(deadline);
    const factor = 1 / row[i]!;
    for (let j = 0; j < n; j++, k++) matrix[k] = dense.matrix[k]! * column[j]! * factor;
  }
  const cost = dense.cost.map((value, j) => value * column[j]!);
  const largest = cost.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const objective = largest > 0 ? powerOfTwo(largest) : spread;
  return {
    dense: {
      columns: n,
      rows: m,
      cost: cost.map((value) => value / objective),
      lower: dense.lower.map((value, j) => value / column[j]!),
      upper: dense.upper.map((value, j) => value / column[j]!),
      matrix,
      rowLower: dense.rowLower.map((value, i) => value / row[i]!),
      rowUpper: dense.rowUpper.map((value, i) => value / row[i]!),
    },
    column,
    row,
    objective,
  };
}

/** The nearest power of two. */
function powerOfTwo(value: number): number {
  return 2 ** Math.round(Math.log2(value));
}

/** Middle of the sizes of all finite limits but 0; 1 for none. */
function medianLimit(dense: DenseProgram, column: Float64Array, row: Float64Array): number {
  const sizes: number[] = [];
  const collect = (limits: Float64Array, factors: Float64Array) => {
    for (let k = 0; k < limits.length; k++) {
      const size = Math.abs(limits[k]!) / factors[k]!;
      if (size > 0 && size < Infinity) sizes.push(size);
    }
  };
  collect(dense.lower, column);
  collect(dense.upper, column);
  collect(dense.rowLower, row);
  collect(dense.rowUpper, row);
  if (sizes.length === 0) return 1;
  return sizes.sort((a, b) => a - b)[sizes.length >> 1]!;
}
