import {checkTime, type Deadline, NO_DEADLINE} from "../program/deadline.ts";
import type {DenseProgram} from "../program/dense.ts";
import {runTableau} from "./engine-jslp.ts";
import {AT_LOWER, AT_UPPER, AT_ZERO, BASIC, type Basis} from "../proof/vertex.ts";

/** One column of the tableau: a variable as its distance (>= 0) from a limit, upwards (1) or downwards (-1). */
interface Column {
  readonly variable: number;
  readonly direction: 1 | -1;
  /** Value of the variable where the column is 0. */
  readonly origin: number;
  /** BasisStatus of the variable in the basis where the column is nonbasic. */
  readonly place: number;
  readonly cost: number;
}

/** One row of the tableau: a limit of a program's row, or (with `column`) the far bound of a column. */
interface Limit {
  readonly row: number;
  readonly side: 1 | -1;
  readonly column?: number;
}

/**
 * A basis found by javascript-lp-solver for a scaled program; what it is worth is for others to judge.
 *
 * The engine is reliable only where its start is dual feasible, since then its first phase is a dual simplex that ends at the
 * optimum and its unsafe second phase has nothing to do. So every variable is measured from the limit that its cost favours,
 * costs near 0 get a tie-break, free variables are split, and costs that still favour infinity are met by a first pivot on a
 * row that bounds them all.
 *
 * A far bound costs the engine a row, so of many those that a row implies are left out, and a tableau that is still too large is
 * not begun: a simplex that knows bounds is faster there.
 *
 * @throws OutOfTime before the first pivot after the deadline
 */
export function basisByTableau(program: DenseProgram, deadline: Deadline = NO_DEADLINE): Basis | undefined {
  const columns = columnsOf(program);
  const rows = limitsOfRows(program);
  if ((columns.length + 1) * rows.length > LARGEST) return undefined;
  const shifts = shiftsOf(program, columns);
  const limits = [...rows, ...farBounds(program, columns, rows, shifts)];
  const boxed = columns.some((column) => column.cost < 0);
  const width = columns.length + 1;
  const height = limits.length + (boxed ? 2 : 1);
  if (width * height > LARGEST) return undefined;
  checkTime(deadline);
  const matrix = new Float64Array(width * height);
  fillCosts(matrix, columns);
  fillLimits(matrix, width, program, columns, limits, shifts);
  if (boxed) fillBox(matrix, width, height - 1, columns);
  const first = boxed ? dualFeasiblePivot(matrix, width, height) : undefined;
  const run = runTableau(matrix, width, height, first, 100 + 4 * (width + height), TOLERANCE, deadline);
  if (run.end === "stopped") return undefined;
  return readBasis(program, columns, limits, run.nonbasic);
}

/** Numbers below this count as 0 in the engine: less than the tolerance of the final judgement. */
const TOLERANCE = 1e-9;

/** Largest cost of a tie-break, where the largest cost is 1. */
const TIE_BREAK = 1e-6;

/** Most numbers in a tableau: beyond that a pivot takes longer than all steps of a bounded simplex on most blends. */
const LARGEST = 300_000;

/** From so many far bounds on, those that a row implies are looked for. */
const MANY = 100;

/** Bound on the sum of all variables whose cost favours infinity, in scaled units. */
const BOX = 1e6;

function columnsOf({columns: n, cost, lower, upper}: DenseProgram): Column[] {
  const columns: Column[] = [];
  for (let j = 0; j < n; j++) {
    const [low, high, price] = [lower[j]!, upper[j]!, cost[j]!];
    if (low === high) continue;
    const add = (direction: 1 | -1, origin: number, place: number) => {
      const own = direction * price;
      // Distinct tie-breaks, by multiples of the golden ratio, keep the engine from cycling among equals.
      const tie = Math.abs(own) < TIE_BREAK ? TIE_BREAK * (1 + ((columns.length * 0.618034) % 1)) : 0;
      columns.push({variable: j, direction, origin, place, cost: own + tie});
    };
    if (low > -Infinity && (price >= 0 || high === Infinity)) add(1, low, AT_LOWER);
    else if (high < Infinity) add(-1, high, AT_UPPER);
    else {
      add(1, 0, AT_ZERO);
      add(-1, 0, AT_ZERO);
    }
  }
  return columns;
}

function limitsOfRows({rows: m, rowLower, rowUpper}: DenseProgram): Limit[] {
  const limits: Limit[] = [];
  for (let row = 0; row < m; row++) {
    if (rowUpper[row]! < Infinity) limits.push({row, side: 1});
    if (rowLower[row]! > -Infinity) limits.push({row, side: -1});
  }
  return limits;
}

/** The far bounds of the columns; of many, only those that no row implies. */
function farBounds(
  {columns: n, matrix, lower, upper, rowLower, rowUpper}: DenseProgram,
  columns: readonly Column[],
  rows: readonly Limit[],
  shifts: Float64Array,
): Limit[] {
  const bounds: Limit[] = [];
  for (const [column, {variable}] of columns.entries()) {
    if (lower[variable]! > -Infinity && upper[variable]! < Infinity) bounds.push({row: -1, side: 1, column});
  }
  if (bounds.length < MANY) return bounds;
  // All columns are at least 0: a row without negative entries keeps each below its own share of the limit.
  const most = new Float64Array(columns.length).fill(Infinity);
  for (const {row, side} of rows) {
    const entry = ({variable, direction}: Column) => side * direction * matrix[row * n + variable]!;
    if (columns.some((column) => entry(column) < 0)) continue;
    const room = side * ((side === 1 ? rowUpper[row]! : rowLower[row]!) - shifts[row]!);
    for (const [c, column] of columns.entries())
      if (entry(column) > 1e-3) most[c] = Math.min(most[c]!, room / entry(column));
  }
  return bounds.filter(({column}) => {
    const {variable} = columns[column!]!;
    return most[column!]! > upper[variable]! - lower[variable]!;
  });
}

/** Value of each row where all columns are 0. */
function shiftsOf(
  {columns: n, rows: m, matrix, lower, upper}: DenseProgram,
  columns: readonly Column[],
): Float64Array {
  const shifts = new Float64Array(m);
  const origins = new Float64Array(n);
  for (let j = 0; j < n; j++) if (lower[j] === upper[j]) origins[j] = lower[j]!;
  for (const {variable, origin} of columns) origins[variable] = origin;
  for (let i = 0, k = 0; i < m; i++) {
    for (let j = 0; j < n; j++, k++) if (origins[j] !== 0) shifts[i]! += matrix[k]! * origins[j]!;
  }
  return shifts;
}

function fillCosts(matrix: Float64Array, columns: readonly Column[]): void {
  for (const [c, column] of columns.entries()) matrix[c + 1] = -column.cost;
}

function fillLimits(
  matrix: Float64Array,
  width: number,
  program: DenseProgram,
  columns: readonly Column[],
  limits: readonly Limit[],
  shifts: Float64Array,
): void {
  const {columns: n, lower, upper, rowLower, rowUpper} = program;
  for (const [r, {row, side, column}] of limits.entries()) {
    const at = (r + 1) * width;
    if (column !== undefined) {
      const {variable} = columns[column]!;
      matrix[at] = upper[variable]! - lower[variable]!;
      matrix[at + column + 1] = 1;
      continue;
    }
    matrix[at] = side * ((side === 1 ? rowUpper[row]! : rowLower[row]!) - shifts[row]!);
    const from = row * n;
    for (let c = 0; c < columns.length; c++) {
      const {variable, direction} = columns[c]!;
      matrix[at + c + 1] = side * direction * program.matrix[from + variable]!;
    }
  }
}

function fillBox(matrix: Float64Array, width: number, row: number, columns: readonly Column[]): void {
  matrix[row * width] = BOX;
  for (const [c, column] of columns.entries()) if (column.cost < 0) matrix[row * width + c + 1] = 1;
}

/** A pivot after which no cost is negative: on a row that bounds all columns of negative cost; the last row always does. */
function dualFeasiblePivot(matrix: Float64Array, width: number, height: number): [number, number] {
  for (let r = 1; r < height; r++) {
    const at = r * width;
    let [pivot, ratio] = [0, 0];
    for (let c = 1; c < width && ratio < Infinity; c++) {
      if (matrix[c]! <= 0) continue;
      const bounding = matrix[at + c]! > 1e-3;
      if (!bounding || matrix[c]! / matrix[at + c]! > ratio) {
        ratio = bounding ? matrix[c]! / matrix[at + c]! : Infinity;
        pivot = c;
      }
    }
    if (ratio === Infinity || matrix[at]! < 0) continue;
    let dualFeasible = true;
    for (let c = 1; c < width && dualFeasible; c++)
      dualFeasible = matrix[c]! - ratio * matrix[at + c]! <= 1e-12;
    if (dualFeasible) return [r, pivot];
  }
  throw new Error("no row bounds the columns of negative cost");
}

function readBasis(
  {columns: n, rows: m, lower, upper}: DenseProgram,
  columns: readonly Column[],
  limits: readonly Limit[],
  nonbasic: readonly number[],
): Basis {
  const basis = new Uint8Array(n + m).fill(BASIC);
  for (let j = 0; j < n; j++) if (lower[j] === upper[j]) basis[j] = AT_LOWER;
  const isNonbasic = new Uint8Array(columns.length + limits.length + 1);
  for (let c = 1; c <= columns.length; c++) isNonbasic[nonbasic[c]!] = 1;
  for (const [c, {variable, place}] of columns.entries()) {
    const twin = place === AT_ZERO && columns[c - 1]?.variable === variable;
    if (isNonbasic[c] === 1 && !(twin && isNonbasic[c - 1] === 0)) basis[variable] = place;
    else basis[variable] = BASIC;
  }
  for (const [r, {row, side, column}] of limits.entries()) {
    if (isNonbasic[columns.length + r] !== 1) continue;
    if (column === undefined) basis[n + row] = side === 1 ? AT_UPPER : AT_LOWER;
    else basis[columns[column]!.variable] = columns[column]!.direction === 1 ? AT_UPPER : AT_LOWER;
  }
  return basis;
}
