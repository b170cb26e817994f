import type {Outcome} from "../../lp/program/program.ts";
import type {Composition} from "../../pantry/parts.ts";
import {bindingOf} from "../mix/binding.ts";
import type {Brief} from "../brief/brief.ts";
import type {Formulation} from "../program/formulate.ts";
import type {Point} from "./hull.ts";
import {mixFrom, reportOf} from "../mix/mix-report.ts";
import type {FrontPoint} from "./trade-off-types.ts";
import {type BindingLimit, changesBetween} from "../mix/changes-between.ts";

/** A solved program. */
export type Solved = Extract<Outcome, {status: "optimal"}>;

/** A mix on a front or a boundary, before it is described. */
export interface FoundMix extends Point {
  readonly outcome: Solved;
}

/** A front before it is described, or the reason why there is none. */
export type RawFront =
  | {readonly points: readonly FoundMix[]; readonly error: number}
  | {readonly status: "infeasible" | "undecided"; readonly reason: string};

/** Reason why a program gave no mix. */
export function failureOf(outcome: Outcome): {status: "infeasible" | "undecided"; reason: string} {
  if (outcome.status === "infeasible")
    return {status: "infeasible", reason: "no mix meets the brief; balance it to see what conflicts"};
  const reason = outcome.status === "undecided" ? outcome.reason : "the amounts can grow without end";
  return {status: "undecided", reason};
}

/** The points with their recipes, the limits that they meet, and the differences in kind from one to the next. */
export function describeFront(
  brief: Brief,
  formulation: Formulation,
  points: readonly FoundMix[],
): FrontPoint[] {
  const described = points.map(({x, y, outcome}) => {
    const mix = mixFrom(brief, formulation, outcome.values);
    return {x, y, mix: reportOf(mix), binding: metLimits(brief, formulation, outcome, mix.composition)};
  });
  return described.map((point, k) => {
    const before = described[k - 1];
    return before
      ? {
          ...point,
          turnover: changesBetween(
            {amounts: before.mix.amounts, binding: before.binding},
            {amounts: point.mix.amounts, binding: point.binding},
          ),
        }
      : point;
  });
}

/** The brief's limits that a mix meets, without prices: those would be for the search's own aim, not the brief's. */
function metLimits(
  brief: Brief,
  formulation: Formulation,
  outcome: Solved,
  composition: Composition,
): BindingLimit[] {
  const {duals: _duals, reducedCosts: _reducedCosts, ...point} = outcome;
  return bindingOf(brief, formulation, point, composition);
}
