import {type Limit, limitValue} from "../../lp/program/limits.ts";
import {leastRelaxation} from "../../lp/explain/relaxation.ts";
import {NO_DEADLINE} from "../../lp/program/deadline.ts";
import {solve, type SolveOptions} from "../../lp/solve/solve.ts";
import type {Conflict, ConflictingLimit, Relaxation} from "../mix/answer.ts";
import type {Brief} from "../brief/brief.ts";
import {type Formulation, formulate} from "../program/formulate.ts";
import {limitKey} from "../brief/limit-path.ts";
import {withMinimaAsRows} from "../program/minima-as-rows.ts";
import {isTemperature, valueOf} from "../measure/of-subject.ts";
import {type Mix, mixFrom, reportOf} from "../mix/mix-report.ts";
import {moved} from "./moved.ts";
import {nameLimit} from "./name-limit.ts";
import {roundedMove} from "./rounded-move.ts";

/** Weight of a move of a limit on an ingredient or of a dose, over that of a target by the same proportion. */
const AMOUNT = 20;

/** Most times that a change is corrected after rounding, or where a temperature's row bends. */
const MENDS = 6;

/** Limits that may give way, in the order in which they are asked to, and how far: as a multiple of a limit's own size. */
const STAGES: readonly {gives: readonly ConflictingLimit["of"][]; most: number}[] = [
  {gives: ["target"], most: Infinity},
  {gives: ["target", "ingredient"], most: 1},
  {gives: ["target", "ingredient"], most: 2},
  {gives: ["target", "ingredient"], most: 4},
  {gives: ["target", "ingredient"], most: Infinity},
  {gives: ["target", "ingredient", "dose"], most: Infinity},
];

/** The same where a customary dose that rose with a target falls again with it: then the dose is moved as well. */
const LATER: typeof STAGES = [
  {gives: ["target", "dose"], most: Infinity},
  {gives: ["target", "ingredient", "dose"], most: Infinity},
];

/**
 * The least change of limits, each weighed by its own size, that lets all be met, and the best mix then.
 *
 * Targets give way before limits on ingredients do, and doses last; an ingredient's limit moves by no more than its own size
 * where that will do. Each new limit is rounded to the hundredth that leaves more room, and the mix is the best of the brief
 * so changed: what is listed is enough.
 *
 * @param search time for all of it, and engine
 * @throws OutOfTime where not even the program could be stated in time
 */
export function relax(
  brief: Brief,
  search: SolveOptions = {},
): Pick<Conflict, "relaxations" | "relaxation" | "amounts"> {
  const {deadline = NO_DEADLINE} = search;
  let changed = brief;
  let list: readonly Relaxation[] = [];
  for (let round = 0; round < MENDS; round++) {
    const moves = leastMoves(changed, round, search);
    if (moves === "impossible" && round === 0) return {relaxations: [], relaxation: "impossible"};
    if (typeof moves === "string") break;
    list = merged(list, moves);
    changed = moved(brief, list);
    const formulation = formulate(changed, changed.aim, [], deadline);
    const outcome = solve(formulation.program, search);
    if (outcome.status === "optimal") {
      const {amounts} = reportOf(mixFrom(changed, formulation, outcome.values));
      return {relaxations: list, relaxation: "found", amounts};
    }
  }
  return {relaxations: [], relaxation: "not searched to the end"};
}

/** The least moves of a brief's limits, in the cook's terms. */
function leastMoves(
  brief: Brief,
  round: number,
  search: SolveOptions,
): Relaxation[] | "impossible" | "undecided" {
  const formulation = withMinimaAsRows(
    brief,
    formulate(brief, brief.aim, [], search.deadline ?? NO_DEADLINE),
  );
  const {program} = formulation;
  let undecided = false;
  for (const {gives, most} of round < 2 ? STAGES : LATER) {
    const kinds = new Map<Limit, ConflictingLimit>();
    const relaxed = leastRelaxation(
      program,
      (limit) => {
        const named = nameLimit(brief, formulation, limit);
        if (!named || !gives.includes(named.of)) return undefined;
        kinds.set(limit, named);
        const counts = {target: 1, ingredient: AMOUNT, rule: AMOUNT, dose: round < 2 ? AMOUNT : 1 / AMOUNT};
        const frozen = limit.of === "row" && formulation.origins[limit.index]!.kind === "frozen";
        return (counts[named.of] * (frozen ? AMOUNT : 1)) / scaleOf(formulation, limit);
      },
      search,
      (limit) => (kinds.get(limit)?.of === "target" ? Infinity : most * scaleOf(formulation, limit)),
    );
    if (!("moves" in relaxed)) undecided ||= relaxed.status !== "infeasible";
    else if (relaxed.outcome.status !== "optimal") undecided = true;
    else {
      const mix = mixFrom(brief, formulation, relaxed.outcome.values);
      const further = 1 + round / 100;
      return distinct(
        relaxed.moves.map(({limit, by}) => relaxationOf(mix, formulation, limit, by * further)),
      );
    }
  }
  // Rules that count or step limit amounts by themselves, so the conflict does not prove that no change exists.
  return undecided || program.variables.some(({integer}) => integer) ? "undecided" : "impossible";
}

/** Earlier moves with later ones of the same limit in their place: from where it was to where it is now. */
function merged(before: readonly Relaxation[], after: readonly Relaxation[]): Relaxation[] {
  const found = new Map(before.map((move) => [limitKey(move), move]));
  for (const move of after) {
    const first = found.get(limitKey(move));
    const {from, percent, inStock} = first ?? move;
    found.set(limitKey(move), {
      ...move,
      from,
      ...(percent !== undefined && {percent}),
      ...((inStock ?? move.inStock) && {inStock: true}),
    });
  }
  return [...found.values()];
}

/** A moved limit in the cook's terms. */
function relaxationOf(mix: Mix, formulation: Formulation, limit: Limit, by: number): Relaxation {
  const {brief} = mix;
  const {limit: from, ...named} = nameLimit(brief, formulation, limit)!;
  // One exact value becomes a range on the side that gives.
  const name = {...named, bound: limit.side === "lower" ? ("min" as const) : ("max" as const)};
  const move = limit.side === "lower" ? -by : by;
  const origin = limit.of === "row" ? formulation.origins[limit.index]! : undefined;
  if (origin?.kind === "frozen") return {...name, bound: "max", from, to: 0, dropped: true};
  if (origin?.kind === "dose") return roundedMove(brief, {...name, from, to: from + move});
  if (origin?.kind !== "target") {
    const index = origin?.kind === "minimum" ? origin.index : limit.index;
    const {program, shares} = formulation;
    const to = (limitValue(program, limit) + move) * shares[index]! * brief.batch;
    return roundedMove(brief, {...name, from, to}, brief.ingredients[index]);
  }
  const {subject} = origin.target;
  // The row of a temperature limit is in g of ice: what the temperature becomes is read off the mix.
  const to = isTemperature(subject)
    ? (valueOf(subject, mix) ?? (limit.side === "lower" ? -Infinity : 0))
    : from + move;
  return roundedMove(brief, {...name, from, to}, undefined, subject);
}

/**
 * Unit of change for a limit, in the unit of its row or variable: the limit itself, so that
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
