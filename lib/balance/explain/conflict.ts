import {irreducibleConflict} from "../../lp/explain/conflict.ts";
import {beforeTime, NO_DEADLINE, partOfTime} from "../../lp/program/deadline.ts";
import {type Limit, withoutLimits} from "../../lp/program/limits.ts";
import {withCosts} from "../../lp/program/with-costs.ts";
import {solve, type SolveOptions} from "../../lp/solve/solve.ts";
import type {Pantry} from "../../pantry/pantry.ts";
import type {Conflict, ConflictingLimit} from "../mix/answer.ts";
import type {Aim, Brief, Target} from "../brief/brief.ts";
import {type Formulation, formulate} from "../program/formulate.ts";
import {limitKey, targetPath} from "../brief/limit-path.ts";
import {mixFrom} from "../mix/mix-report.ts";
import {withMinimaAsRows} from "../program/minima-as-rows.ts";
import {nameLimit} from "./name-limit.ts";
import {ingredientsThatHelp} from "./ingredients-that-help.ts";
import {distinct, relax} from "./relax.ts";
import {measureOf, type Subject} from "../measure/measures.ts";
import {subjectName, valueOf} from "../measure/of-subject.ts";

/**
 * Why a brief cannot be met: a smallest set of its limits that conflict, and the least change that would let all be met.
 *
 * Limits that always hold are not listed: the size of the batch, and that no amount is negative. Targets give way before
 * limits on ingredients do; those move only where they conflict among themselves.
 *
 * @param pantry the larger shelf, for what could be added
 * @param search time for all of it, and engine
 * @throws OutOfTime where not even the program could be stated in time
 */
export function explainConflict(brief: Brief, pantry: Pantry, search: SolveOptions = {}): Conflict {
  const {deadline = NO_DEADLINE} = search;
  const formulation = withMinimaAsRows(brief, formulate(brief, brief.aim, [], deadline));
  const keyOf = (limit: Limit) => limitKey(nameLimit(brief, formulation, limit)!);
  const conflict = irreducibleConflict(
    formulation.program,
    (limit) => nameLimit(brief, formulation, limit) === undefined,
    {...search, deadline: partOfTime(deadline, 0.4)},
    keyOf,
  );
  const limits = conflict?.limits ?? [];
  const targets = distinct(limits.map((limit) => nameLimit(brief, formulation, limit)!));
  const reach = bestReach(brief, targets, search);
  const relaxed = beforeTime(
    () => relax(brief, {...search, deadline: partOfTime(deadline, 0.6)}),
    () => ({relaxations: [], relaxation: "not searched to the end"}) as const,
  );
  const more = othersBehind(formulation, limits, keyOf, {...search, deadline: partOfTime(deadline, 0.3)});
  const openers = ingredientsThatHelp(brief, pantry, search);
  const cutShort = !conflict?.irreducible || !(deadline.left() > 0);
  return {
    targets,
    ...(more && {more}),
    ...relaxed,
    ...(reach && {reach}),
    openers,
    ...(cutShort && {cutShort}),
  };
}

/** Whether the limits named are not all that is in the way: without some one of them, the rest still conflict. */
function othersBehind(
  {program}: Formulation,
  limits: readonly Limit[],
  keyOf: (limit: Limit) => string,
  search: SolveOptions,
): boolean {
  const anyPoint = withCosts(program, () => 0, program.sense);
  return [...new Set(limits.map(keyOf))].some((key) => {
    const own = limits.filter((limit) => keyOf(limit) === key);
    return solve(withoutLimits(anyPoint, own), search).status === "infeasible";
  });
}

/** Best value of the only target that takes part in a conflict, under the limits on the ingredients alone. */
function bestReach(
  brief: Brief,
  limits: readonly ConflictingLimit[],
  search: SolveOptions,
): Conflict["reach"] {
  const involved = brief.targets.flatMap((target) => {
    const limit = limits.find(({path}) => path === targetPath(brief, target));
    return limit ? [{target, bound: limit.bound}] : [];
  });
  const [only, another] = involved;
  if (!only || another) return undefined;
  const {target, bound} = only;
  const {subject} = target;
  if (bound === "equal") return undefined;
  const alone = {...brief, targets: []};
  const aim: Aim = {sense: bound === "min" ? "maximise" : "minimise", subject: linearSubject(target)};
  const formulation = formulate(alone, aim);
  const outcome = solve(formulation.program, search);
  if (outcome.status !== "optimal") return undefined;
  const best = valueOf(subject, mixFrom(alone, formulation, outcome.values));
  return best === undefined ? undefined : {target: subjectName(subject), best};
}

/** The subject itself, or for a temperature, which is no weighted sum, one that rises and falls with it: ice or hard phase at the wanted temperature. */
function linearSubject({subject, min, max}: Target): Subject {
  const {temperature} = measureOf(subject);
  return temperature ? (temperature.twin((max ?? min)!) as Subject) : subject;
}
