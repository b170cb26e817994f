import type {Progress, Steps} from "../../core/in-chunks.ts";
import type {Deadline} from "../../lp/program/deadline.ts";
import {solverOfMany} from "../../lp/solve/solve-again.ts";
import {describeAlternative, mixOfRecipe} from "../substitute/alternative.ts";
import {type Goal, goalsOf, nearestRecipe} from "../substitute/nearest-recipe.ts";
import type {Candidate} from "../substitute/substitution-problem.ts";
import type {Alternative} from "../substitute/substitution-types.ts";
import type {Target} from "../brief/brief.ts";
import {valueOf} from "../measure/of-subject.ts";
import type {ChangeGoal} from "./change-goal.ts";
import type {ChangeProblem} from "./change-problem.ts";
import {type Made, weighed} from "./weighed.ts";

/** Highest score worth paying for the whole way to a goal: where the next part of the way would count more than its share of that, the change stops. */
const WORTH = 25;

/** Score of a line that is weighed anew, and the further score of a newcomer: about what an eater may just notice, so that few are touched. */
const [LINE, NEWCOMER] = [0.5, 1];

/** Number of newcomers, those that do best alone, among which pairs are tried. */
const PAIRED = 5;

/** Margins by which the goal is tightened in turn until the weighed amounts hold it, as a share of the way to it. */
const MARGINS = [0, 0.01, 0.02, 0.04, 0.08];

/** Least share of the way to the goal that makes a change worth showing. */
const WORTHWHILE = 0.15;

/** Share of the way that weighing may take from a change that does not reach its goal. */
const NEARLY = 0.03;

/** Margin below customary doses until amounts are weighed, as a share of the dose: less than a gram in 100 g. */
const BELOW_DOSES = 0.007;

/** Share of the way that counts as none. */
const HARDLY = 1e-3;

/** Room for rounding at a limit. */
const ROOM = 1e-6;

/** A change that was found. */
export interface Found {
  readonly alternative: Alternative;
  /** Distance by which it misses its goal, in the goal's unit; 0 where it reaches it. */
  readonly missed: number;
  /** Its score, with what lines and newcomers count. */
  readonly score: number;
  /** Score that the missing rest of the way to the goal is worth. */
  readonly worth: number;
}

/** One question to the program: which ingredients may move, and how. */
interface Asked {
  readonly free: readonly Candidate[];
  readonly margin: number;
}

/**
 * The least noticed change that reaches a goal, or comes as near as it can: the program of `nearestRecipe` with the goal in it,
 * over the recipe's own ingredients; with each newcomer besides; with pairs of those that do best; then with as few lines moved
 * as the score allows; and at last in amounts that are weighed, the goal a little tighter where rounding would miss it.
 */
export function* nearestChange(
  problem: ChangeProblem,
  goal: ChangeGoal,
  deadline?: Deadline,
): Steps<Found | undefined> {
  const others =
    goal.towards === "cheaper"
      ? problem.others.filter(({ingredient}) => ingredient.price !== undefined)
      : problem.others;
  const goals = noticed(problem, goal, others);
  const way = wayTo(problem, goal);
  const solve = solverOfMany(deadline);
  let solved = 0;
  const progress = (): Progress => ({solved: ++solved});

  const ask = ({free, margin}: Asked, step: number): readonly Made[] | undefined => {
    if (deadline && !(deadline.left() > 0)) return undefined;
    const fixed = [...problem.kept, ...problem.own.filter((candidate) => !free.includes(candidate))];
    const tight = tightened(goal, margin * way);
    const outcome = nearestRecipe(problem, goals, free, fixed, tight.keeps, solve, {
      target: tight.target,
      cost: WORTH / way,
      belowDoses: step ? BELOW_DOSES : 0,
    });
    if (outcome.status !== "optimal") return undefined;
    return [
      ...free.map((candidate, j) => ({candidate, grams: Math.max(0, outcome.values[j]!) * problem.batch})),
      ...fixed.map((candidate) => ({candidate, grams: candidate.before})),
    ];
  };
  const found = (asked: Asked, step = 0): Found | undefined => {
    const made = ask(asked, step);
    if (!made) return undefined;
    // A part of the way that is not worth its score is no miss; a part that weighing takes away is one.
    if (!step) return judged(problem, goal, goals, made, way, HARDLY * way);
    const amounts = weighed(made, problem.batch, step);
    return amounts && judged(problem, goal, goals, amounts, way, ROOM);
  };

  const plain = found({free: problem.own, margin: 0});
  yield progress();
  let best = plain && {...plain, free: problem.own};
  const singles: (Found & {readonly newcomer: Candidate})[] = [];
  const take = (one: Found | undefined, free: readonly Candidate[]) => {
    if (one && (!best || ranked(one, best) < 0)) best = {...one, free};
  };
  for (const newcomer of others) {
    const free = [...problem.own, newcomer];
    const one = found({free, margin: 0});
    yield progress();
    take(one, free);
    if (one && isThere(one, newcomer)) singles.push({...one, newcomer});
  }
  singles.sort(ranked);
  for (const [i, {newcomer: one}] of singles.slice(0, PAIRED).entries())
    for (const {newcomer: two} of singles.slice(i + 1, PAIRED)) {
      const free = [...problem.own, one, two];
      const both = found({free, margin: 0});
      yield progress();
      take(both, free);
    }
  // Fewer lines: whatever ingredient is best left as it was goes out of the program, as long as that does not count more.
  for (let better = best; better;) {
    better = undefined;
    for (const left of best!.free) {
      const free = best!.free.filter((other) => other !== left);
      const one = found({free, margin: 0});
      yield progress();
      if (one && ranked(one, better ?? best!) <= 0) better = {...one, free};
    }
    if (better) best = better;
  }
  if (!best) return undefined;
  if (best.missed > (1 - WORTHWHILE) * way) {
    const stays = [...problem.own, ...problem.kept].map((candidate) => ({
      candidate,
      grams: candidate.before,
    }));
    return judged(problem, goal, goals, stays, way, ROOM);
  }
  for (const step of [1, 0.1])
    for (const margin of MARGINS) {
      const one = found({free: best.free, margin}, step);
      yield progress();
      if (one && one.missed <= (best.missed && best.missed + NEARLY * way) && keeps(problem, goal, one))
        return one;
    }
  return best;
}

/** All that is noticed and not sought. */
function noticed(
  problem: ChangeProblem,
  {sought, towards}: ChangeGoal,
  others: readonly Candidate[],
): Goal[] {
  const priced = [...problem.kept, ...problem.own, ...others].every(
    ({ingredient}) => ingredient.price !== undefined,
  );
  return goalsOf(problem, priced && towards !== "cheaper").filter(({what}) => !sought.includes(what));
}

/** Distance of a recipe from a goal, in the goal's unit. */
function wayTo(problem: ChangeProblem, {target: {subject, min, max}}: ChangeGoal): number {
  const value = valueOf(subject, mixOfRecipe(problem.before, problem)) ?? 0;
  return Math.max(ROOM, Math.abs(value - (max ?? min!)));
}

/** The goal and the limits on firmness, each tighter by so much. */
function tightened({target, keeps}: ChangeGoal, by: number): Pick<ChangeGoal, "target" | "keeps"> {
  const tighter = ({subject, min, max}: Target): Target => ({
    subject,
    ...(min !== undefined && {min: min + by}),
    ...(max !== undefined && {max: max - by}),
  });
  return {
    target: tighter(target),
    keeps: keeps.map((keep) => (keep.subject.kind === "firmness" && by > 0 ? tighter(keep) : keep)),
  };
}

/** A change with its amounts measured anew. */
function judged(
  problem: ChangeProblem,
  {target: {subject, min = -Infinity, max = Infinity}}: ChangeGoal,
  goals: readonly Goal[],
  amounts: readonly Made[],
  way: number,
  room: number,
): Found {
  const alternative = describeAlternative(problem, goals, "re-balanced", amounts);
  const value = valueOf(subject, mixOfRecipe(alternative.recipe, problem));
  const missed = value === undefined ? Infinity : Math.max(0, min - value, value - max);
  const moved = alternative.amounts.filter(({change}) => Math.abs(change) > ROOM * problem.batch);
  const newcomers = moved.filter(({before}) => before === 0).length;
  return {
    alternative,
    missed: missed <= room ? 0 : missed,
    score: alternative.score + LINE * moved.length + NEWCOMER * newcomers,
    worth: Math.min(1, missed / way) * WORTH,
  };
}

/** Whether the firmness that a change must keep is kept by the amounts as they are. */
function keeps(problem: ChangeProblem, goal: ChangeGoal, {alternative}: Found): boolean {
  const mix = mixOfRecipe(alternative.recipe, problem);
  return goal.keeps.every(({subject, min = -Infinity, max = Infinity}) => {
    if (subject.kind !== "firmness") return true;
    const value = valueOf(subject, mix)!;
    return value >= min - ROOM && value <= max + ROOM;
  });
}

function isThere({alternative}: Found, {ingredient}: Candidate): boolean {
  return alternative.amounts.some((amount) => amount.ingredient === ingredient.name && amount.after > 0);
}

/** Order of two changes: one that reaches the goal first, then by score with the worth of what is missed. */
function ranked(a: Found, b: Found): number {
  return Number(a.missed > 0) - Number(b.missed > 0) || a.score + a.worth - b.score - b.worth;
}
