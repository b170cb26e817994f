import {solve, type SolveOptions} from "../lp/solve.ts";
import type {Balanced} from "./answer.ts";
import {bindingOf} from "./binding.ts";
import type {Aim, Brief, Target} from "./brief.ts";
import {type Formulation, formulate} from "./formulate.ts";
import {mixFrom, reportOf} from "./mix-report.ts";
import {objectiveOf} from "./objective.ts";

/** A verified mix, or what became of a brief that has none. */
export type Solution =
  | Balanced
  | {readonly status: "infeasible"}
  | {readonly status: "unbounded" | "undecided"; readonly reason: string};

/**
 * The best mix of a checked brief for one aim.
 *
 * @param brief a checked brief
 * @param name what the mix is called in reports
 * @param aim what to optimise, by default what the brief asks for
 * @param extra further targets beside the brief's
 * @param search how long to look for whole values and with what
 */
export function solveBrief(
  brief: Brief,
  name = brief.name,
  aim: Aim | undefined = brief.aim,
  extra: readonly Target[] = [],
  search: SolveOptions = {},
): Solution {
  return solveFormulation(brief, name, formulate(brief, aim, extra), search);
}

/** The mix that a program of a brief stands for, verified. */
export function solveFormulation(
  brief: Brief,
  name: string,
  formulation: Formulation,
  search: SolveOptions = {},
): Solution {
  const outcome = solve(formulation.program, search);
  switch (outcome.status) {
    case "infeasible":
      return {status: "infeasible"};
    case "unbounded":
      return {status: "unbounded", reason: "the amounts can grow without end; give the brief a batch"};
    case "undecided":
      return outcome;
    case "optimal": {
      const mix = mixFrom(brief, formulation, outcome.values);
      const objective = objectiveOf(mix);
      return {
        status: "optimal",
        name,
        batch: brief.batch,
        ...(objective && {objective}),
        ...reportOf(mix),
        binding: bindingOf(brief, formulation, outcome, mix.composition),
        degenerate: outcome.degenerate,
        engine: outcome.engine,
        check: outcome.check,
      };
    }
  }
}
