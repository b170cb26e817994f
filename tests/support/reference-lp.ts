import {loadHighs, type Highs} from "../../lib/lp/engines/engine-highs.ts";
import type {LinearProgram, Outcome} from "../../lib/lp/program/program.ts";
import {faultsOf} from "./optimality.ts";

/** What HiGHS says of a program as it stands: no scaling, no certificate of ours. */
export interface Reference {
  readonly status: "optimal" | "infeasible" | "unbounded" | "unknown";
  readonly objective: number;
}

export {loadHighs};

/**
 * Asks HiGHS about the original program at its finest tolerances.
 *
 * Bounds of whole variables are rounded inwards: HiGHS 1.15.3 misses optima where they are fractional.
 */
export function referenceOf(
  highs: Highs,
  program: LinearProgram,
  options: Record<string, number | string> = {},
): Reference {
  const reference = withReference(highs, program, options, (_, found) => found);
  if (reference.status !== "unknown") return reference;
  // Some nearly infeasible programs are decided only by presolve, or only without it.
  const presolve = program.variables.some(({integer}) => integer) ? "off" : "on";
  const again = withReference(highs, program, {...options, presolve}, (_, found) => found);
  if (again.status !== "unknown") return again;
  // And some by its primal simplex alone.
  return withReference(highs, program, {...options, simplex_strategy: 4}, (_, found) => found);
}

/** Runs HiGHS and hands its model on while it lives, for basis and ranges. */
export function withReference<T>(
  highs: Highs,
  {variables, rows, sense}: LinearProgram,
  options: Record<string, number | string>,
  use: (model: ReturnType<Highs["createModel"]>, reference: Reference) => T,
): T {
  const starts = [0];
  const [indices, values]: [number[], number[]] = [[], []];
  for (const {coefficients} of rows) {
    for (const [j, a] of coefficients.entries()) {
      if (a === 0) continue;
      indices.push(j);
      values.push(a);
    }
    starts.push(indices.length);
  }
  const whole = variables.some(({integer}) => integer);
  const {objectiveSense, modelStatus} = highs.constants;
  const model = highs.createModel({
    numCols: variables.length,
    numRows: rows.length,
    sense: sense === "maximise" ? objectiveSense.maximize : objectiveSense.minimize,
    colCost: variables.map(({cost}) => cost),
    colLower: variables.map(({lower = 0, integer}) => (integer ? Math.ceil(lower) : lower)),
    colUpper: variables.map(({upper = Infinity, integer}) => (integer ? Math.floor(upper) : upper)),
    rowLower: rows.map(({lower = -Infinity}) => lower),
    rowUpper: rows.map(({upper = Infinity}) => upper),
    matrix: {format: "csr", numRows: rows.length, numCols: variables.length, starts, indices, values},
    ...(whole && {integrality: Int32Array.from(variables, ({integer}) => (integer ? 1 : 0))}),
  });
  try {
    model.options.set({
      output_flag: false,
      presolve: whole ? "on" : "off",
      primal_feasibility_tolerance: 1e-9,
      dual_feasibility_tolerance: 1e-9,
      mip_feasibility_tolerance: 1e-9,
      mip_rel_gap: 1e-9,
      small_matrix_value: 1e-12,
      ...options,
    });
    model.run();
    const found = model.getModelStatus();
    const status =
      found === modelStatus.optimal
        ? "optimal"
        : found === modelStatus.infeasible
          ? "infeasible"
          : found === modelStatus.unbounded || found === modelStatus.unboundedOrInfeasible
            ? "unbounded"
            : "unknown";
    return use(model, {status, objective: model.getObjectiveValue()});
  } finally {
    model.dispose();
  }
}

/**
 * How an outcome compares with HiGHS: `wrong: ...` where it contradicts HiGHS or its own figures do not prove it; otherwise what
 * both say. Where HiGHS does not know, the proof alone counts.
 */
export function compare(program: LinearProgram, outcome: Outcome, reference: Reference): string {
  const faults = faultsOf(program, outcome);
  if (faults.length > 0) return `wrong: ${faults[0]}`;
  if (outcome.status === "undecided") return "undecided";
  if (reference.status === "unknown") return `${outcome.status}, HiGHS does not know`;
  if (outcome.status !== reference.status) return `wrong: ${outcome.status}, HiGHS says ${reference.status}`;
  if (outcome.status === "optimal") {
    const size = program.variables.reduce(
      (total, {cost}, j) => total + Math.abs(cost * outcome.values[j]!),
      0,
    );
    const off = Math.abs(outcome.objective - reference.objective);
    if (!(off <= 1e-6 * Math.max(Math.abs(reference.objective), 1e-3 * size) + 1e-9)) {
      return `wrong: objective ${outcome.objective}, HiGHS says ${reference.objective}`;
    }
  }
  return outcome.status;
}
