import {InputError} from "../../core/errors.ts";
import {checkTime, type Deadline, NO_DEADLINE} from "./deadline.ts";
import {expectProgram} from "./expect-program.ts";
import type {LinearProgram} from "./program.ts";

/** A program as flat arrays, always minimising: minimise cost . x, rowLower <= matrix x <= rowUpper, lower <= x <= upper. */
export interface DenseProgram {
  readonly columns: number;
  readonly rows: number;
  readonly cost: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** Coefficients, row after row. */
  readonly matrix: Float64Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
}

/**
 * The program as flat arrays; a maximised objective is negated.
 *
 * Limits of 1e20 and more in size count as open.
 *
 * @throws InputError where a number is missing or not finite, a row has the wrong length, a lower limit exceeds its upper one, or a
 *   lower limit is 1e20 or more, an upper one -1e20 or less
 * @throws OutOfTime soon after the deadline
 */
export function denseForm(program: LinearProgram, deadline: Deadline = NO_DEADLINE): DenseProgram {
  expectProgram(program);
  const {variables, rows, sense = "minimise"} = program;
  if (sense !== "minimise" && sense !== "maximise") {
    throw new InputError("sense", "unknown sense", sense, 'write "minimise" or "maximise"');
  }
  const n = variables.length;
  const sign = sense === "maximise" ? -1 : 1;
  const cost = new Float64Array(n);
  const [lower, upper] = [new Float64Array(n), new Float64Array(n)];
  for (const [j, variable] of variables.entries()) {
    if (!isFinite(variable.cost)) notFinite(`variables[${j}].cost`, variable.cost);
    cost[j] = sign * variable.cost;
    readLimits(variable.lower ?? 0, variable.upper ?? Infinity, lower, upper, j, "variables");
  }
  const matrix = new Float64Array(n * rows.length);
  const [rowLower, rowUpper] = [new Float64Array(rows.length), new Float64Array(rows.length)];
  for (const [i, {coefficients, lower = -Infinity, upper = Infinity}] of rows.entries()) {
    if (coefficients.length !== n) {
      throw new InputError(
        `rows[${i}].coefficients`,
        "wrong number of coefficients",
        coefficients.length,
        `give ${n}, one per variable`,
      );
    }
    readLimits(lower, upper, rowLower, rowUpper, i, "rows");
    if (i % 64 === 63) checkTime(deadline);
    for (let j = 0; j < n; j++) {
      const coefficient = coefficients[j]!;
      if (!isFinite(coefficient)) notFinite(`rows[${i}].coefficients[${j}]`, coefficient);
      matrix[i * n + j] = coefficient;
    }
  }
  return {columns: n, rows: rows.length, cost, lower, upper, matrix, rowLower, rowUpper};
}

function isFinite(value: unknown): value is number {
  return typeof value === "number" && value - value === 0;
}

function notFinite(place: string, value: unknown): never {
  throw new InputError(place, "not a finite number", value, "give a finite number");
}

/** The size from which a limit counts as open; the errors below name it. */
const OPEN = 1e20;

function readLimits(
  low: number,
  high: number,
  lower: Float64Array,
  upper: Float64Array,
  index: number,
  kind: "rows" | "variables",
): void {
  const place = `${kind}[${index}]`;
  if (typeof low !== "number" || !(low < OPEN)) {
    const advice = "give a number below 1e20, or -Infinity for none";
    throw new InputError(`${place}.lower`, "not a lower limit", low, advice);
  }
  if (typeof high !== "number" || !(high > -OPEN)) {
    const advice = "give a number above -1e20, or Infinity for none";
    throw new InputError(`${place}.upper`, "not an upper limit", high, advice);
  }
  if (low > high) {
    throw new InputError(place, `lower limit ${low} above upper limit`, high, "swap or widen the limits");
  }
  lower[index] = low > -OPEN ? low : -Infinity;
  upper[index] = high < OPEN ? high : Infinity;
}
