import {loadHighs} from "../engines/engine-highs.ts";
import {deadlineIn, partOfTime, USUAL_TIME} from "../program/deadline.ts";
import {expectProgram} from "../program/expect-program.ts";
import type {LinearProgram, Outcome} from "../program/program.ts";
import {
  expectSolveOptions,
  isLarge,
  NODES_BEFORE_HIGHS,
  OWN_SHARE,
  solve,
  type SolveOptions,
  wholeVariables,
} from "./solve.ts";

/**
 * As `solve`, but loads HiGHS where it is needed: for large programs with whole values, at a time limit, and for whatever would
 * stay undecided.
 *
 * @example
 * ```ts
 * const program = {
 *   variables: [{name: "boxes", cost: 7, integer: true}],
 *   rows: [{name: "enough", coefficients: [12], lower: 40}],
 * };
 * await solveAsync(program); // => {status: "optimal", objective: 28, values: [4]}
 * ```
 */
export async function solveAsync(program: LinearProgram, options: SolveOptions = {}): Promise<Outcome> {
  expectProgram(program);
  expectSolveOptions(options);
  const deadline = options.deadline ?? deadlineIn(options.timeLimit ?? USUAL_TIME, options.now);
  if (!options.highs && !isLarge(program, wholeVariables(program).length)) {
    const maxNodes = options.maxNodes ?? NODES_BEFORE_HIGHS;
    const outcome = solve(program, {...options, maxNodes, deadline: partOfTime(deadline, OWN_SHARE)});
    if (outcome.status !== "undecided") return outcome;
  }
  return solve(program, {...options, deadline, highs: options.highs ?? (await loadHighs())});
}
