import {expectShape} from "../../core/shape.ts";
import {expectProgram} from "../program/expect-program.ts";
import {InputError} from "../../core/errors.ts";
import {denseForm, type DenseProgram} from "../program/dense.ts";
import type {LinearProgram, Outcome, BasisStatus} from "../program/program.ts";
import {scale} from "../program/scale.ts";
import {AT_LOWER, AT_UPPER, AT_ZERO, BASIC, kernelOf, type Basis, type Kernel} from "../proof/vertex.ts";

/** Price of a binding limit, and the range of the limit in which that price holds. */
export interface LimitPrice {
  /** Index of the row or variable. */
  readonly index: number;
  /** The limit that binds; `equal` where lower and upper are the same. */
  readonly side: "lower" | "upper" | "equal";
  /** Change of the objective per unit by which the limit rises. */
  readonly price: number;
  /** Values of the limit between which the price holds; it cannot pass the opposite limit. */
  readonly from: number;
  readonly to: number;
}

/** Costs of a variable between which the point stays optimal. */
export interface CostRange {
  readonly index: number;
  readonly cost: number;
  readonly from: number;
  readonly to: number;
}

/** Response of an optimum to changes of its limits and costs, one at a time. */
export interface Sensitivity {
  /** For each binding row. */
  readonly rows: readonly LimitPrice[];
  /** For each variable at a limit; its price is the reduced cost. */
  readonly bounds: readonly LimitPrice[];
  /** For each variable. One at its lower limit of 0 enters where its cost falls (when minimising) below `from`. */
  readonly costs: readonly CostRange[];
  /** Whether the vertex is degenerate: prices and ranges then hold for its present basis, and others may be given with equal right. */
  readonly degenerate: boolean;
}

/**
 * Prices and their ranges, from the basis of an optimum.
 *
 * Source: V. Chvátal, Linear Programming (1983), chapter 10; both limits of rows and variables taken into account.
 *
 * @param outcome what `solve` found for this program
 * @throws InputError where the outcome is not an optimum of a continuous program
 *
 * @example
 * ```ts
 * const program = {
 *   variables: [
 *     {name: "x", cost: 2},
 *     {name: "y", cost: 3},
 *   ],
 *   rows: [{name: "enough", coefficients: [1, 1], lower: 10}],
 * };
 * sensitivity(program, solve(program)).rows[0]; // => {index: 0, side: "lower", price: 2}
 * ```
 */
export function sensitivity(program: LinearProgram, outcome: Outcome): Sensitivity {
  expectProgram(program);
  expectShape(outcome, {status: "text"}, "outcome", "give what solve(program) returned");
  if (outcome.status !== "optimal" || !outcome.basis || !outcome.duals || !outcome.reducedCosts) {
    throw new InputError(
      "outcome",
      "no optimum of a continuous program",
      outcome.status,
      "solve without whole values first",
    );
  }
  const {dense, column, row, objective} = scale(denseForm(program));
  const basis = Uint8Array.from([...outcome.basis.variables, ...outcome.basis.rows], (place) => CODES[place]);
  const kernel = kernelOf(dense, basis);
  if (!kernel || basis.length !== dense.columns + dense.rows) {
    throw new InputError(
      "outcome",
      "its basis does not belong to the program",
      undefined,
      "pass the outcome of this program",
    );
  }
  const values = Float64Array.from(outcome.values, (value, j) => value / column[j]!);
  const activities = Float64Array.from(outcome.activities, (value, i) => value / row[i]!);
  const point = {dense, basis, kernel, values, activities};
  const rows = kernel.rows.map((i, k) => {
    const entering = kernel.solve(unit(kernel.rows.length, k));
    return limitPrice(
      dense.rowLower[i]!,
      dense.rowUpper[i]!,
      basis[dense.columns + i]!,
      i,
      row[i]!,
      outcome.duals![i]!,
      room(point, entering),
    );
  });
  const bounds: LimitPrice[] = [];
  for (let j = 0; j < dense.columns; j++) {
    if (basis[j] === BASIC || basis[j] === AT_ZERO) continue;
    const moved = kernel.solve(Float64Array.from(kernel.rows, (i) => -dense.matrix[i * dense.columns + j]!));
    const reach = room(point, moved, j);
    bounds.push(
      limitPrice(dense.lower[j]!, dense.upper[j]!, basis[j]!, j, column[j]!, outcome.reducedCosts[j]!, reach),
    );
  }
  const sign = program.sense === "maximise" ? -1 : 1;
  const duals = Float64Array.from(outcome.duals, (dual, i) => (sign * dual * row[i]!) / objective);
  const reducedCosts = Float64Array.from(
    outcome.reducedCosts,
    (cost, j) => (sign * cost * column[j]!) / objective,
  );
  const costs = program.variables.map(({cost}, index) => {
    const [down, up] = costRoom(point, duals, reducedCosts, index);
    const price = objective / column[index]!;
    return sign > 0
      ? {index, cost, from: cost + down * price, to: cost + up * price}
      : {index, cost, from: cost - up * price, to: cost - down * price};
  });
  return {rows, bounds, costs, degenerate: outcome.degenerate};
}

const CODES: Readonly<Record<BasisStatus, number>> = {
  lower: AT_LOWER,
  upper: AT_UPPER,
  basic: BASIC,
  zero: AT_ZERO,
};

interface Point {
  readonly dense: DenseProgram;
  readonly basis: Basis;
  readonly kernel: Kernel;
  readonly values: Float64Array;
  readonly activities: Float64Array;
}

/** Smallest rate of change that counts as one. */
const RATE = 1e-11;

function limitPrice(
  lower: number,
  upper: number,
  place: number,
  index: number,
  factor: number,
  price: number,
  [down, up]: readonly [number, number],
): LimitPrice {
  const side = lower === upper ? "equal" : place === AT_UPPER ? "upper" : "lower";
  const limit = side === "upper" ? upper : lower;
  const from = Math.max(limit + down, side === "upper" ? lower : -Infinity);
  const to = Math.min(limit + up, side === "lower" ? upper : Infinity);
  return {index, side, price, from: from * factor, to: to * factor};
}

/** Changes of a limit, down (<= 0) and up (>= 0), until a basic quantity meets a limit, given what moves when it rises by 1. */
function room(
  {dense, basis, kernel, values, activities}: Point,
  moved: Float64Array,
  own?: number,
): readonly [number, number] {
  const {columns: n, rows: m, matrix, lower, upper, rowLower, rowUpper} = dense;
  let [down, up] = [-Infinity, Infinity];
  const narrow = (rate: number, value: number, low: number, high: number) => {
    if (Math.abs(rate) < RATE) return;
    const [below, above] = [Math.min(0, low - value), Math.max(0, high - value)];
    up = Math.min(up, rate > 0 ? above / rate : below / rate);
    down = Math.max(down, rate > 0 ? below / rate : above / rate);
  };
  for (const [k, j] of kernel.columns.entries()) narrow(moved[k]!, values[j]!, lower[j]!, upper[j]!);
  for (let i = 0; i < m; i++) {
    if (basis[n + i] !== BASIC) continue;
    let rate = own === undefined ? 0 : matrix[i * n + own]!;
    for (const [k, j] of kernel.columns.entries()) rate += matrix[i * n + j]! * moved[k]!;
    narrow(rate, activities[i]!, rowLower[i]!, rowUpper[i]!);
  }
  return [down, up];
}

/** Changes of the (minimised) cost of a variable, down and up, until a price changes its sign. */
function costRoom(
  {dense, basis, kernel}: Point,
  duals: Float64Array,
  reducedCosts: Float64Array,
  variable: number,
): readonly [number, number] {
  const {columns: n, matrix, lower, upper, rowLower, rowUpper} = dense;
  let [down, up] = [-Infinity, Infinity];
  const narrow = (rate: number, price: number, place: number, fixed: boolean) => {
    if (fixed || Math.abs(rate) < RATE) return;
    // A price must stay >= 0 at a lower limit, <= 0 at an upper one, 0 at none.
    const slack = place === AT_LOWER ? Math.max(0, price) : place === AT_UPPER ? Math.min(0, price) : 0;
    const turn = -slack / rate;
    if (place === AT_ZERO || rate > 0 === (place === AT_UPPER)) up = Math.min(up, turn);
    if (place === AT_ZERO || rate > 0 === (place === AT_LOWER)) down = Math.max(down, turn);
  };
  if (basis[variable] !== BASIC) {
    narrow(1, reducedCosts[variable]!, basis[variable]!, lower[variable] === upper[variable]);
    return [down, up];
  }
  const position = kernel.columns.indexOf(variable);
  const rates = kernel.solveTransposed(unit(kernel.columns.length, position));
  for (const [k, i] of kernel.rows.entries()) {
    narrow(rates[k]!, duals[i]!, basis[n + i]!, rowLower[i] === rowUpper[i]);
  }
  for (let j = 0; j < n; j++) {
    if (basis[j] === BASIC) continue;
    let rate = 0;
    for (const [k, i] of kernel.rows.entries()) rate -= rates[k]! * matrix[i * n + j]!;
    narrow(rate, reducedCosts[j]!, basis[j]!, lower[j] === upper[j]);
  }
  return [down, up];
}

function unit(length: number, position: number): Float64Array {
  const entries = new Float64Array(length);
  entries[position] = 1;
  return entries;
}
