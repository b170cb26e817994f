import type {DenseProgram} from "../program/dense.ts";

/** Largest violation that counts as none, in scaled units. */
export const TOLERANCE = 1e-9;

/** Distance of a point and its prices from proving each other optimal. */
export interface Optimality {
  readonly activities: Float64Array;
  readonly reducedCosts: Float64Array;
  /** Largest violation of a limit, relative to the sum of the sizes of the terms (at least 1 scaled unit). */
  readonly residual: number;
  /** Largest price of the wrong sign where no limit stands, relative to the size of its terms (at least 1 scaled unit). */
  readonly dualResidual: number;
  /** Objective less the bound that the prices prove, relative to the size of their terms. */
  readonly gap: number;
}

/**
 * Weak duality: for any prices y, cost . x >= y . rows + (cost - y matrix) . x, each at the worst of its limits. A point that
 * keeps all limits and reaches that bound is optimal, no matter which engine found it.
 *
 * Source: D. Bertsimas & J. N. Tsitsiklis, Introduction to Linear Optimization (1997), theorems 4.3 and 4.5.
 */
export function optimality(program: DenseProgram, values: Float64Array, duals: Float64Array): Optimality {
  const {columns: n, rows: m, matrix, cost, lower, upper, rowLower, rowUpper} = program;
  const activities = new Float64Array(m);
  const reducedCosts = cost.slice();
  const dualSize = cost.map(Math.abs);
  let [residual, dualResidual, objective, bound, size] = [0, 0, 0, 0, 1e-6];
  const addToBound = (price: number, low: number, high: number, priceSize: number) => {
    if (price === 0) return;
    const limit = price > 0 ? low : high;
    if (limit - limit === 0) {
      bound += price * limit;
      size += Math.abs(price * limit);
    } else dualResidual = Math.max(dualResidual, Math.abs(price) / Math.max(1, priceSize));
  };
  for (let i = 0, k = 0; i < m; i++) {
    let [total, terms] = [0, 0];
    const price = duals[i]!;
    for (let j = 0; j < n; j++, k++) {
      const term = matrix[k]! * values[j]!;
      total += term;
      terms += Math.abs(term);
      if (price !== 0) {
        const share = price * matrix[k]!;
        reducedCosts[j]! -= share;
        dualSize[j]! += Math.abs(share);
      }
    }
    activities[i] = total;
    residual = Math.max(residual, violation(total, rowLower[i]!, rowUpper[i]!) / Math.max(1, terms));
    addToBound(price, rowLower[i]!, rowUpper[i]!, Math.abs(price));
  }
  for (let j = 0; j < n; j++) {
    const value = values[j]!;
    // A remainder of rounding in a sum of larger terms is no price.
    if (Math.abs(reducedCosts[j]!) < 1e-14 * dualSize[j]!) reducedCosts[j] = 0;
    residual = Math.max(residual, violation(value, lower[j]!, upper[j]!) / Math.max(1, Math.abs(value)));
    objective += cost[j]! * value;
    size += Math.abs(cost[j]! * value);
    addToBound(reducedCosts[j]!, lower[j]!, upper[j]!, dualSize[j]!);
  }
  return {activities, reducedCosts, residual, dualResidual, gap: Math.abs(objective - bound) / size};
}

/** Whether the figures pass. NaN does not. */
export function isOptimal({residual, dualResidual, gap}: Optimality): boolean {
  return residual <= TOLERANCE && dualResidual <= TOLERANCE && gap <= TOLERANCE;
}

function violation(value: number, lower: number, upper: number): number {
  return Math.max(lower - value, value - upper, 0);
}

/**
 * Farkas' lemma: whether the rows, each times its multiplier, add up to a sum that the bounds of the variables cannot reach.
 *
 * The margin is a lower bound on the largest violation of any point, so it must exceed the tolerance of a violation.
 *
 * Source: Bertsimas & Tsitsiklis (1997), theorem 4.6, with limits on both sides of rows and variables.
 */
export function provesInfeasible(program: DenseProgram, multipliers: Float64Array): boolean {
  const {columns: n, rows: m, matrix, lower, upper, rowLower, rowUpper} = program;
  const sums = new Float64Array(n);
  const sizes = new Float64Array(n);
  let [margin, weight] = [0, 0];
  for (let i = 0; i < m; i++) {
    const y = multipliers[i]!;
    if (y === 0) continue;
    margin += y * (y > 0 ? rowLower[i]! : rowUpper[i]!);
    weight += Math.abs(y);
    for (let j = 0, k = i * n; j < n; j++, k++) {
      sums[j]! += y * matrix[k]!;
      sizes[j]! += Math.abs(y * matrix[k]!);
    }
  }
  for (let j = 0; j < n; j++) {
    if (Math.abs(sums[j]!) <= 1e-12 * sizes[j]! + 1e-13 * weight) continue;
    margin -= sums[j]! * (sums[j]! > 0 ? upper[j]! : lower[j]!);
    weight += Math.abs(sums[j]!);
  }
  return margin > TOLERANCE * weight;
}

/** Whether a direction keeps every limit for ever and improves the objective all along. */
export function provesUnbounded(program: DenseProgram, ray: Float64Array): boolean {
  const {columns: n, rows: m, matrix, cost, lower, upper, rowLower, rowUpper} = program;
  const stays = (step: number, low: number, high: number, size: number) =>
    Math.abs(step) <= 1e-12 * size || (step > 0 ? high === Infinity : low === -Infinity);
  let [gain, gainSize, length] = [0, 0, 0];
  for (let j = 0; j < n; j++) {
    if (!stays(ray[j]!, lower[j]!, upper[j]!, 0)) return false;
    gain -= cost[j]! * ray[j]!;
    gainSize += Math.abs(cost[j]! * ray[j]!);
    length = Math.max(length, Math.abs(ray[j]!));
  }
  for (let i = 0, k = 0; i < m; i++) {
    let [step, size] = [0, 0];
    for (let j = 0; j < n; j++, k++) {
      step += matrix[k]! * ray[j]!;
      size += Math.abs(matrix[k]! * ray[j]!);
    }
    if (!stays(step, rowLower[i]!, rowUpper[i]!, size)) return false;
  }
  return length > 0 && gain > TOLERANCE * Math.max(gainSize, length);
}
