import {beforeTime} from "../../lp/program/deadline.ts";
import {solveSteps, type SolveOptions} from "../../lp/solve/solve.ts";
import type {Balanced, MixReport} from "./answer.ts";
import {withBrief} from "../brief/checked.ts";
import {bindingOf} from "./binding.ts";
import type {Aim, Brief, Target} from "../brief/brief.ts";
import {type Formulation, formulate} from "../program/formulate.ts";
import {finish} from "../../core/in-chunks.ts";
import {mixFrom, reportOf} from "./mix-report.ts";
import {objectiveOf} from "./objective.ts";
import {keepOutcome} from "./outcomes.ts";

/** A verified mix, or the reason why a brief has none. */
export type Solution =
  | Balanced
  | {readonly status: "infeasible"}
  | {readonly status: "unbounded"; readonly reason: string}
  | {
      readonly status: "undecided";
      readonly reason: string;
      /** The best mix found that keeps every limit; a better one may exist. */
      readonly best?: MixReport;
    };

/**
 * The best mix of a checked brief for one aim.
 *
 * @param brief a checked brief
 * @param name name of the mix in reports
 * @param aim objective, by default the brief's own
 * @param extra further targets beside the brief's
 * @param search time and engine of the search for whole values
 */
export function solveBrief(
  brief: Brief,
  name = brief.name,
  aim: Aim | undefined = brief.aim,
  extra: readonly Target[] = [],
  search: SolveOptions = {},
): Solution {
  return finish(solveBriefSteps(brief, name, aim, extra, search));
}

/** {@link solveBrief} in steps. */
export function* solveBriefSteps(
  brief: Brief,
  name = brief.name,
  aim: Aim | undefined = brief.aim,
  extra: readonly Target[] = [],
  search: SolveOptions = {},
): Generator<void, Solution> {
  const formulation = beforeTime(
    () => formulate(brief, aim, extra, search.deadline),
    () => undefined,
  );
  if (!formulation) return {status: "undecided", reason: "the time limit came before the search began"};
  return yield* solveFormulation(brief, name, formulation, search);
}

/** The mix that a program of a brief stands for, verified; in steps. */
export function* solveFormulation(
  brief: Brief,
  name: string,
  formulation: Formulation,
  search: SolveOptions = {},
): Generator<void, Solution> {
  const outcome = yield* solveSteps(formulation.program, search);
  switch (outcome.status) {
    case "infeasible":
      return {status: "infeasible"};
    case "unbounded":
      return {status: "unbounded", reason: "the amounts can grow without end; give the brief a batch"};
    case "undecided": {
      const {status, reason, best} = outcome;
      return {status, reason, ...(best && {best: reportOf(mixFrom(brief, formulation, best.values))})};
    }
    case "optimal": {
      const mix = mixFrom(brief, formulation, outcome.values);
      const objective = objectiveOf(mix);
      keepOutcome(formulation.program, outcome);
      const balanced: Balanced = {
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
      return withBrief(balanced, brief);
    }
  }
}
