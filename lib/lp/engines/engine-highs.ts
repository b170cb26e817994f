import type {Basis as HighsBasis, Highs as HighsModule, ModelData} from "highs";
import {type Deadline, NO_DEADLINE} from "../program/deadline.ts";
import type {DenseProgram} from "../program/dense.ts";
import {AT_LOWER, AT_UPPER, AT_ZERO, BASIC, type Basis} from "../proof/vertex.ts";

/** The second engine, from {@link loadHighs}; a program that does not load it does not carry its WebAssembly either. */
export interface Highs extends HighsModule {
  /** Asks HiGHS to solve a scaled program; `solve` calls it and proves the answer. */
  readonly ask: (
    dense: DenseProgram,
    integer: readonly number[],
    column: Float64Array,
    deadline: Deadline,
  ) => HighsAnswer;
}

let loading: Promise<Highs> | undefined;

/**
 * The second engine, 3.5 MB of WebAssembly: loaded at the first call and kept.
 *
 * @example
 * ```ts
 * const highs = await loadHighs();
 * balance(
 *   {ingredients: ["whole milk", "sucrose"], targets: {sugars: {equal: 12}}},
 *   {pantry: includedPantry(), search: {highs}},
 * ).status; // => "optimal"
 * ```
 */
export function loadHighs(): Promise<Highs> {
  // Its types describe another module format than the one that is loaded.
  loading ??= import("highs").then(async (module) => {
    const highs = engineOf(await (module as unknown as {default: () => Promise<HighsModule>}).default());
    for (const integer of [[], [0]]) highs.ask(FIRST, integer, Float64Array.of(1, 1), NO_DEADLINE);
    return highs;
  });
  return loading;
}

/** A small program solved while loading: WebAssembly is compiled at its first run, which should not count against a deadline. */
const FIRST: DenseProgram = {
  columns: 2,
  rows: 1,
  cost: Float64Array.of(1, 2),
  lower: Float64Array.of(0, 0),
  upper: Float64Array.of(5, 5),
  matrix: Float64Array.of(2, 3),
  rowLower: Float64Array.of(7),
  rowUpper: Float64Array.of(9),
};

/** HiGHS with the function that `solve` calls. */
export function engineOf(module: HighsModule): Highs {
  return Object.assign(module, {
    ask: (...question: Parameters<Highs["ask"]>) => askHighs(module, ...question),
  });
}

/** Answer of HiGHS to a program; nothing of it is verified yet. */
export interface HighsAnswer {
  readonly status: "optimal" | "infeasible" | "unbounded" | "stopped";
  /** The best point found, if any. */
  readonly values?: Float64Array;
  /** The final basis of a continuous program. */
  readonly basis?: Basis;
}

/**
 * Asks HiGHS, at its finest tolerances.
 *
 * @param integer indices of the variables that must be whole in original units
 * @param column original value of a variable per unit of the scaled program
 * @param deadline asked whenever the engine calls back, which it does at each few steps
 */
function askHighs(
  highs: HighsModule,
  dense: DenseProgram,
  integer: readonly number[],
  column: Float64Array,
  deadline: Deadline,
): HighsAnswer {
  const time = deadline.left() - beyondItsTime(dense);
  if (!(time > 0)) return {status: "stopped"};
  const unit = new Float64Array(dense.columns).fill(1);
  for (const j of integer) unit[j] = column[j]!;
  let model: ReturnType<HighsModule["createModel"]> | undefined;
  try {
    model = highs.createModel(modelData(dense, integer, unit));
    const whole = integer.length > 0;
    const time_limit = Math.min(1e9, time / 1000);
    model.options.set({...OPTIONS, presolve: whole ? "on" : "off", time_limit});
    const stop = (event: {readonly interrupt: () => void}): undefined => {
      if (!(deadline.left() > 0)) event.interrupt();
    };
    const {simplexInterrupt, mipInterrupt} = highs.constants.callbackType;
    model.run({[simplexInterrupt]: stop, [mipInterrupt]: stop});
    const {solutionStatus, basisValidity} = highs.constants;
    const hasPoint = model.info.get("primal_solution_status") === solutionStatus.feasible;
    const hasBasis = !whole && model.info.get("basis_validity") === basisValidity.valid;
    return {
      status: statusOf(highs, model.getModelStatus()),
      ...(hasPoint && {values: model.getSolution().colValue.map((value, j) => value / unit[j]!)}),
      ...(hasBasis && {basis: readBasis(highs, model.getBasis())}),
    };
  } catch {
    // It gives up in this way too, with numbers of very different size, and refuses some that it thinks absurd.
    return {status: "stopped"};
  } finally {
    model?.dispose();
  }
}

/** Milliseconds that HiGHS takes for what it does without looking at its time limit, by the entries of a program: measured, with room. */
function beyondItsTime({columns, matrix}: DenseProgram): number {
  let entries = columns;
  for (const value of matrix) if (value !== 0) entries++;
  return 0.02 * entries;
}

const OPTIONS = {
  output_flag: false,
  primal_feasibility_tolerance: 1e-9,
  dual_feasibility_tolerance: 1e-9,
  mip_feasibility_tolerance: 1e-9,
  mip_rel_gap: 1e-9,
  mip_abs_gap: 1e-9,
};

function statusOf(highs: HighsModule, found: number): HighsAnswer["status"] {
  const {modelStatus} = highs.constants;
  if (found === modelStatus.optimal || found === modelStatus.empty) return "optimal";
  if (found === modelStatus.infeasible) return "infeasible";
  if (found === modelStatus.unbounded || found === modelStatus.unboundedOrInfeasible) return "unbounded";
  return "stopped";
}

function modelData(dense: DenseProgram, integer: readonly number[], unit: Float64Array): ModelData {
  const {columns: n, rows: m, matrix} = dense;
  const starts = new Int32Array(m + 1);
  const [indices, values]: [number[], number[]] = [[], []];
  for (let i = 0, k = 0; i < m; i++) {
    for (let j = 0; j < n; j++, k++) {
      if (matrix[k] === 0) continue;
      indices.push(j);
      values.push(matrix[k]! / unit[j]!);
    }
    starts[i + 1] = indices.length;
  }
  const isWhole = new Int32Array(n);
  for (const j of integer) isWhole[j] = 1;
  return {
    numCols: n,
    numRows: m,
    colCost: dense.cost.map((value, j) => value / unit[j]!),
    colLower: dense.lower.map((value, j) => value * unit[j]!),
    colUpper: dense.upper.map((value, j) => value * unit[j]!),
    rowLower: dense.rowLower,
    rowUpper: dense.rowUpper,
    matrix: {format: "csr", numRows: m, numCols: n, starts, indices, values},
    ...(integer.length > 0 && {integrality: isWhole}),
  };
}

function readBasis(highs: HighsModule, {colStatus, rowStatus}: HighsBasis): Basis {
  const {lower, upper, basic} = highs.constants.basisStatus;
  const place = (status: number) =>
    status === basic ? BASIC : status === lower ? AT_LOWER : status === upper ? AT_UPPER : AT_ZERO;
  return Uint8Array.from([...colStatus, ...rowStatus], place);
}
