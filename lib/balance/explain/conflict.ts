import {irreducibleConflict} from "../../lp/explain/conflict.ts";
import {beforeTime, NO_DEADLINE, partOfTime} from "../../lp/program/deadline.ts";
import {limitsOf, withoutLimits} from "../../lp/program/limits.ts";
import {withCosts} from "../../lp/program/with-costs.ts";
import {solve, type SolveOptions} from "../../lp/solve/solve.ts";
import type {Pantry} from "../../pantry/pantry.ts";
import type {Conflict, ConflictingLimit} from "../mix/answer.ts";
import type {Aim, Brief, Target} from "../brief/brief.ts";
import {type Formulation, formulate} from "../program/formulate.ts";
import {limitKey, targetPath} from "../brief/limit-path.ts";
import {mixFrom} from "../mix/mix-report.ts";
import {without} from "./moved.ts";
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
  const conflict = smallestConflict(brief, formulation, {...search, deadline: partOfTime(deadline, 0.4)});
  const limits = conflict?.limits ?? [];
  const targets = distinct(limits.map((limit) => nameLimit(brief, formulation, limit)!));
  const reach = bestReach(brief, targets, search);
  const relaxed = beforeTime(
    () => relax(brief, {...search, deadline: partOfTime(deadline, 0.6)}),
    () => ({relaxations: [], relaxation: "not searched to the end"}) as const,
  );
  const behind = conflictBehind(brief, targets, {...search, deadline: partOfTime(deadline, 0.3)});
  const openers = ingredientsThatHelp(brief, pantry, search);
  const cutShort = !conflict?.irreducible || !(deadline.left() > 0);
  return {
    targets,
    ...(behind && {more: true as const, behind}),
    ...relaxed,
    ...(reach && {reach}),
    openers,
    ...(cutShort && {cutShort}),
  };
}

function smallestConflict(
  brief: Brief,
  formulation: Formulation,
  search: SolveOptions,
): ReturnType<typeof irreducibleConflict> {
  return irreducibleConflict(
    formulation.program,
    (limit) => nameLimit(brief, formulation, limit) === undefined,
    search,
    (limit) => limitKey(nameLimit(brief, formulation, limit)!),
  );
}

/**
 * The conflict that remains without one of the limits named, where any does: those are then not all that is in the way. A dose
 * that the limit had raised is customary again without it.
 */
function conflictBehind(
  brief: Brief,
  named: readonly ConflictingLimit[],
  search: SolveOptions,
): Conflict["behind"] {
  for (const limit of named) {
    const {brief: rest, formulation} = withoutLimit(brief, limit, search);
    const {program} = formulation;
    if (
      solve(
        withCosts(program, () => 0, program.sense),
        search,
      ).status !== "infeasible"
    )
      continue;
    const {limits} = smallestConflict(rest, formulation, search) ?? {limits: []};
    return {without: limit, targets: distinct(limits.map((one) => nameLimit(rest, formulation, one)!))};
  }
  return undefined;
}

/** The program of a brief without one of its limits. */
function withoutLimit(
  brief: Brief,
  limit: ConflictingLimit,
  {deadline = NO_DEADLINE}: SolveOptions,
): {readonly brief: Brief; readonly formulation: Formulation} {
  const rest = without(brief, limit);
  const stated = withMinimaAsRows(rest, formulate(rest, rest.aim, [], deadline));
  if (limit.of !== "rule") return {brief: rest, formulation: stated};
  const own = limitsOf(stated.program).filter((one) => {
    const name = nameLimit(rest, stated, one);
    return name && limitKey(name) === limitKey(limit);
  });
  return {brief: rest, formulation: {...stated, program: withoutLimits(stated.program, own)}};
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
