import type {LinearProgram} from "./program.ts";

/** The same program with another cost of each variable, minimised unless it is said otherwise. */
export function withCosts(
  program: LinearProgram,
  costOf: (position: number) => number,
  sense: LinearProgram["sense"] = "minimise",
): LinearProgram {
  const variables = program.variables.map((variable, j) => ({...variable, cost: costOf(j)}));
  return {...program, sense, variables};
}
