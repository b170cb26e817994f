import {checkTime, type Deadline, NO_DEADLINE} from "../program/deadline.ts";
import type {DenseProgram} from "../program/dense.ts";

/** Positions of a variable or a row in a basis. */
export const AT_LOWER = 0;
export const AT_UPPER = 1;
export const BASIC = 2;
/** A free variable that is left at 0, or a row without limits: it must be basic. */
export const AT_ZERO = 3;

/** A basis: the place of each variable, then of each row's sum. */
export type Basis = Uint8Array;

/** A vertex of a program with its prices. */
export interface Vertex {
  /** Value of each variable. */
  readonly values: Float64Array;
  /** Price of each row. */
  readonly duals: Float64Array;
}

/** The part of the matrix that a basis inverts: tight rows by basic variables, as LU factors. */
export interface Kernel {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
  /** Solves kernel . x = right-hand side (one entry per tight row); result per basic variable. */
  solve(rightHandSide: Float64Array): Float64Array;
  /** Solves transposed kernel . y = right-hand side (one entry per basic variable); result per tight row. */
  solveTransposed(rightHandSide: Float64Array): Float64Array;
}

/**
 * The vertex that a basis describes, from the program's own numbers and not from an engine's: whatever an engine rounded,
 * perturbed or let drift is gone.
 */
export function vertexOf(program: DenseProgram, basis: Basis, kernel: Kernel): Vertex {
  const {columns: n, rows: m, matrix, cost} = program;
  const values = new Float64Array(n);
  for (let j = 0; j < n; j++) values[j] = limitAt(basis[j]!, program.lower[j]!, program.upper[j]!);
  const remainder = Float64Array.from(kernel.rows, (i) => {
    let rest = limitAt(basis[n + i]!, program.rowLower[i]!, program.rowUpper[i]!);
    for (let j = 0, k = i * n; j < n; j++, k++) rest -= matrix[k]! * values[j]!;
    return rest;
  });
  const basicValues = kernel.solve(remainder);
  for (const [k, j] of kernel.columns.entries()) {
    values[j] = ontoLimit(basicValues[k]!, program.lower[j]!, program.upper[j]!);
  }
  const prices = kernel.solveTransposed(Float64Array.from(kernel.columns, (j) => cost[j]!));
  const duals = new Float64Array(m);
  for (const [k, i] of kernel.rows.entries()) duals[i] = prices[k]!;
  return {values, duals: withoutNoise(duals)};
}

/** The value, or the limit that it misses by no more than rounding: so no amount is below 0 by 1e-17. */
function ontoLimit(value: number, lower: number, upper: number): number {
  if (Math.abs(value - lower) < 1e-13) return lower;
  return Math.abs(value - upper) < 1e-13 ? upper : value;
}

/** The vector with its rounding errors at 0: entries below 1e-12 of the largest. */
export function withoutNoise(vector: Float64Array): Float64Array {
  let largest = 0;
  for (let k = 0; k < vector.length; k++) largest = Math.max(largest, Math.abs(vector[k]!));
  return vector.map((entry) => (Math.abs(entry) < 1e-12 * largest ? 0 : entry));
}

function limitAt(place: number, lower: number, upper: number): number {
  return place === AT_LOWER ? lower : place === AT_UPPER ? upper : 0;
}

/**
 * The kernel of a basis, or `undefined` when it is singular.
 *
 * @throws OutOfTime for a large one soon after the deadline
 */
export function kernelOf(
  program: DenseProgram,
  basis: Basis,
  deadline: Deadline = NO_DEADLINE,
): Kernel | undefined {
  const {columns: n, rows: m, matrix} = program;
  const columns: number[] = [];
  const rows: number[] = [];
  for (let j = 0; j < n; j++) if (basis[j] === BASIC) columns.push(j);
  for (let i = 0; i < m; i++) if (basis[n + i] !== BASIC) rows.push(i);
  if (rows.length !== columns.length) return undefined;
  const size = rows.length;
  const lu = new Float64Array(size * size);
  for (let r = 0; r < size; r++) {
    for (let c = 0; c < size; c++) lu[r * size + c] = matrix[rows[r]! * n + columns[c]!]!;
  }
  const order = factorise(lu, size, deadline);
  if (!order) return undefined;
  return {
    rows,
    columns,
    solve(rightHandSide) {
      const x = Float64Array.from(order, (r) => rightHandSide[r]!);
      for (let r = 0; r < size; r++) for (let c = 0; c < r; c++) x[r]! -= lu[r * size + c]! * x[c]!;
      for (let r = size - 1; r >= 0; r--) {
        for (let c = r + 1; c < size; c++) x[r]! -= lu[r * size + c]! * x[c]!;
        x[r]! /= lu[r * size + r]!;
      }
      return x;
    },
    solveTransposed(rightHandSide) {
      const y = rightHandSide.slice();
      for (let c = 0; c < size; c++) {
        for (let r = 0; r < c; r++) y[c]! -= lu[r * size + c]! * y[r]!;
        y[c]! /= lu[c * size + c]!;
      }
      for (let c = size - 1; c >= 0; c--)
        for (let r = c + 1; r < size; r++) y[c]! -= lu[r * size + c]! * y[r]!;
      const result = new Float64Array(size);
      for (let k = 0; k < size; k++) result[order[k]!] = y[k]!;
      return result;
    },
  };
}

/** LU factors in place with partial pivoting (Golub & Van Loan, Matrix Computations, 2013, section 3.4); the order of the rows. */
function factorise(lu: Float64Array, size: number, deadline: Deadline): number[] | undefined {
  const order = Array.from({length: size}, (_, k) => k);
  for (let k = 0; k < size; k++) {
    if (k % 16 === 15) checkTime(deadline);
    let best = k;
    for (let r = k + 1; r < size; r++) {
      if (Math.abs(lu[r * size + k]!) > Math.abs(lu[best * size + k]!)) best = r;
    }
    const pivot = lu[best * size + k]!;
    if (Math.abs(pivot) < 1e-11) return undefined;
    if (best !== k) {
      [order[k], order[best]] = [order[best]!, order[k]!];
      for (let c = 0; c < size; c++) {
        const swap = lu[k * size + c]!;
        lu[k * size + c] = lu[best * size + c]!;
        lu[best * size + c] = swap;
      }
    }
    for (let r = k + 1; r < size; r++) {
      const factor = lu[r * size + k]! / pivot;
      lu[r * size + k] = factor;
      if (factor !== 0) for (let c = k + 1; c < size; c++) lu[r * size + c]! -= factor * lu[k * size + c]!;
    }
  }
  return order;
}
