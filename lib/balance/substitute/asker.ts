import type {Deadline} from "../../lp/program/deadline.ts";
import {solverOfMany} from "../../lp/solve/solve-again.ts";
import type {Target} from "../brief/brief.ts";
import {describeAlternative} from "./alternative.ts";
import {type Goal, nearestRecipe} from "./nearest-recipe.ts";
import type {Candidate, SubstitutionProblem} from "./substitution-problem.ts";
import type {Alternative} from "./substitution-types.ts";

/** Asks for the best recipe in which some ingredients may move and some make up the mass. */
export type Ask = (
  kind: Alternative["kind"],
  moving: readonly Candidate[],
  making: readonly Candidate[],
) => Alternative | undefined;

/** Finds the best recipe in which some ingredients may move, the rest staying; with the legal name kept if that is possible. */
export function asker(
  problem: SubstitutionProblem,
  goals: readonly Goal[],
  shape: readonly Target[],
  deadline?: Deadline,
): Ask {
  const {batch, missing, kept, own, legalName} = problem;
  const solvers = new Map<string, ReturnType<typeof solverOfMany>>();
  return (kind, moving, making) => {
    if (deadline && !(deadline.left() > 0)) return undefined;
    const left = missing.filter(({max}) => max > 0);
    const free = [...left, ...making, ...moving];
    const fixed = [...kept, ...own.filter((candidate) => !free.includes(candidate))];
    if (!solvers.has(kind)) solvers.set(kind, solverOfMany(deadline));
    const solve = solvers.get(kind)!;
    const legal = legalName?.targets ?? [];
    let outcome = nearestRecipe(problem, goals, free, fixed, [...legal, ...shape], solve);
    if (outcome.status !== "optimal" && legal.length > 0)
      outcome = nearestRecipe(problem, goals, free, fixed, shape, solve);
    if (outcome.status !== "optimal") return undefined;
    const {values} = outcome;
    const made = [
      ...missing.filter(({max}) => !(max > 0)).map((candidate) => ({candidate, grams: 0})),
      ...free.map((candidate, j) => ({candidate, grams: Math.max(0, values[j]!) * batch})),
      ...fixed.map((candidate) => ({candidate, grams: candidate.before})),
    ];
    return describeAlternative(problem, goals, kind, made, making);
  };
}
