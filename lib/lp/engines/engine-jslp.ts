import solver from "javascript-lp-solver";
import {checkTime, type Deadline, NO_DEADLINE} from "../program/deadline.ts";

/** End of a run of the tableau. */
export interface TableauRun {
  readonly end: "solved" | "infeasible" | "unbounded" | "stopped";
  /** For each row, what is basic in it: columns count from 0, slacks of rows go on after the last column. Entry 0 is unused. */
  readonly basic: readonly number[];
  /** For each column, what is nonbasic in it, counted likewise. Entry 0 is unused. */
  readonly nonbasic: readonly number[];
  /** The final tableau, row after row; row 0 is the negated reduced costs, column 0 the unrounded right-hand side. */
  readonly matrix: Float64Array;
}

/**
 * Simplex of javascript-lp-solver on a tableau: minimise -(row 0) . x, (rows 1...) x + slack = column 0, all >= 0.
 *
 * This is the only file that knows the engine, and it uses its tableau directly: names cannot collide with the engine's
 * own, its presolve (which drops costs) never runs, and nothing is rounded to 8 decimals. It is sure to end: the engine alone
 * can loop for ever, here each pivot is counted.
 *
 * @param matrix `width * height` numbers, row after row; overwritten
 * @param first row and column to pivot on before anything else
 * @param tolerance below which the engine takes a number for 0
 * @throws OutOfTime before the first pivot after the deadline
 */
export function runTableau(
  matrix: Float64Array,
  width: number,
  height: number,
  first: readonly [row: number, column: number] | undefined,
  maxPivots: number,
  tolerance: number,
  deadline: Deadline = NO_DEADLINE,
): TableauRun {
  const model = new Model(tolerance);
  model.debug(false);
  const {tableau} = model;
  tableau.model = model;
  tableau.initialize(width, height, [], {});
  tableau.matrix = matrix;
  for (let element = 0; element < width + height - 2; element++) {
    const isColumn = element < width - 1;
    const place = isColumn ? element + 1 : element - width + 2;
    (isColumn ? tableau.varIndexByCol : tableau.varIndexByRow)[place] = element;
    tableau.colByVarIndex[element] = isColumn ? place : -1;
    tableau.rowByVarIndex[element] = isColumn ? -1 : place;
  }
  const pivot = tableau.pivot.bind(tableau);
  let pivots = 0;
  tableau.pivot = (row, column) => {
    if (++pivots > maxPivots) throw STOP;
    checkTime(deadline);
    pivot(row, column);
  };
  let stopped = false;
  try {
    if (first) tableau.pivot(...first);
    tableau.simplex();
  } catch (error) {
    if (error !== STOP) throw error;
    stopped = true;
  }
  const end = stopped
    ? "stopped"
    : !tableau.feasible
      ? "infeasible"
      : !tableau.bounded
        ? "unbounded"
        : "solved";
  return {end, basic: tableau.varIndexByRow, nonbasic: tableau.varIndexByCol, matrix: tableau.matrix};
}

const STOP = new Error("too many pivots");

/** All that is used of the engine's insides. Its own types describe another module format than the one that is loaded. */
interface EngineTableau {
  model: EngineModel;
  matrix: Float64Array;
  readonly varIndexByRow: number[];
  readonly varIndexByCol: number[];
  readonly rowByVarIndex: number[];
  readonly colByVarIndex: number[];
  readonly feasible: boolean;
  readonly bounded: boolean;
  initialize(width: number, height: number, variables: never[], unrestricted: Record<number, never>): void;
  pivot(row: number, column: number): void;
  simplex(): unknown;
}

interface EngineModel {
  readonly tableau: EngineTableau;
  debug(checkForCycles: boolean): unknown;
}

const {Model} = solver as unknown as {Model: new (tolerance: number) => EngineModel};
