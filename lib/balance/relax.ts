import {type Limit, limitValue} from "../lp/limits.ts";
import {leastRelaxation} from "../lp/relaxation.ts";
import type {SolveOptions} from "../lp/solve.ts";
import type {Conflict, ConflictingLimit, Relaxation} from "./answer.ts";
import type {Brief} from "./brief.ts";
import type {Formulation} from "./formulate.ts";
import {limitKey} from "./limit-path.ts";
import {measure, type Mix, mixFrom, reportOf} from "./mix-report.ts";
import {nameLimit} from "./name-limit.ts";

/**
 * The least change of limits, each weighed by its own size, that lets all be met, and the best mix then.
 *
 * Targets give way before limits on ingredients do; those move only where they conflict among themselves.
 */
export function relax(
  brief: Brief,
  formulation: Formulation,
  search: SolveOptions = {},
): Pick<Conflict, "relaxations" | "amounts"> {
  const {program, meanings} = formulation;
  const isTarget = ({of, index}: Limit) => of === "row" && meanings[index]!.kind === "target";
  const isAmount = (limit: Limit) =>
    (limit.of === "variable" || meanings[limit.index]!.kind === "minimum") &&
    nameLimit(brief, formulation, limit) !== undefined;
  for (const gives of [isTarget, (limit: Limit) => isTarget(limit) || isAmount(limit)]) {
    const relaxed = leastRelaxation(
      program,
      (limit) => (gives(limit) ? 1 / scaleOf(formulation, limit) : undefined),
      search,
    );
    if (!("moves" in relaxed) || relaxed.outcome.status !== "optimal") continue;
    const mix = mixFrom(brief, formulation, relaxed.outcome.values);
    return {
      relaxations: distinct(relaxed.moves.map(({limit, by}) => relaxationOf(mix, formulation, limit, by))),
      amounts: reportOf(mix).amounts,
    };
  }
  return {relaxations: []};
}

/** A moved limit in the cook's terms. */
function relaxationOf(mix: Mix, formulation: Formulation, limit: Limit, by: number): Relaxation {
  const {brief} = mix;
  const {limit: from, ...name} = nameLimit(brief, formulation, limit)!;
  const move = limit.side === "lower" ? -by : by;
  const meaning = limit.of === "row" ? formulation.meanings[limit.index]! : undefined;
  if (meaning?.kind !== "target") {
    const index = meaning?.kind === "minimum" ? meaning.index : limit.index;
    return {...name, from, to: from + move * formulation.shares[index]! * brief.batch};
  }
  const {subject} = meaning.target;
  // The row of a temperature limit is in g of ice: what the temperature becomes is read off the mix.
  const curved = subject.kind === "freezingPoint" || subject.kind === "scoopTemperature";
  return {...name, from, to: (curved ? measure(subject, mix) : undefined) ?? from + move};
}

/**
 * What counts as one measure of change for a limit, in the unit of its row or variable: the limit itself, so that
 * changes are weighed by proportion; for limits at or near 0, a twentieth of what the strongest ingredient brings. The
 * rows of temperature limits are near 0 in this sense. Where no ingredient brings anything to a limit of 0, moving it
 * changes nothing: its measure is 1, so that its weight does not drown the others.
 */
function scaleOf({program}: Formulation, limit: Limit): number {
  const value = Math.abs(limitValue(program, limit));
  if (limit.of === "variable") return Math.max(value, 0.01);
  const strongest = Math.max(...program.rows[limit.index]!.coefficients.map(Math.abs));
  const scale = Math.max(value, strongest / 20);
  return scale > 1e-9 ? scale : 1;
}

/** The list without repetition: the two sides of an equation are one limit to the cook. */
export function distinct<T extends ConflictingLimit | Relaxation>(limits: readonly T[]): T[] {
  return [...new Map(limits.map((limit) => [limitKey(limit), limit])).values()];
}
