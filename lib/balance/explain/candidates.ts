import {deadlineIn, USUAL_TIME} from "../../lp/program/deadline.ts";
import {expectSolveOptions, solveSteps, type SolveOptions} from "../../lp/solve/solve.ts";
import {finite} from "../../core/numbers.ts";
import {expectOptions, expectShape} from "../../core/shape.ts";
import type {Balanced} from "../mix/answer.ts";
import {briefOf, type BriefSource} from "../read/brief-of.ts";
import type {Aim, Brief, Target} from "../brief/brief.ts";
import {formulateClosest} from "../program/closest.ts";
import {coordinateValue} from "../measure/coordinate.ts";
import {aimCoordinate} from "../measure/of-subject.ts";
import {type Formulation, formulate} from "../program/formulate.ts";
import {finish} from "../../core/in-chunks.ts";
import {outlayOf, paysPacks} from "../program/packs.ts";
import {noWorseThan} from "../program/no-worse.ts";
import {type Solution, solveBriefSteps, solveFormulation} from "../mix/solve-brief.ts";

/** Demands on a candidate for it to be shown. */
export interface CandidateOptions {
  /**
   * Loss against the best mix that a candidate may have in what the brief optimises, as a share of that value's size; 0.15 by
   * default, so that at a least cost none is more than 15 % dearer.
   */
  readonly margin?: number;
  /** Least difference between any two mixes shown: amount exchanged to make one of the other, g per 100 g; 0.5 by default. */
  readonly apart?: number;
  /** Time for all of them together, and engine of the search. */
  readonly search?: SolveOptions;
}

/**
 * Other good answers to the same brief, each best at something else and at most 15 % worse than the best mix in what the brief
 * optimises (where that is the cost, at most 15 % dearer): the softest that still holds its shape
 * in the brief's freezer, the least sweet, one with fewer ingredients, and the closest to the recipe that the brief names.
 * None has a worse verdict in the freezer than the best mix: none is softer than what scoops unless that mix is so because
 * the brief asks for it, and then none is softer than that; none is harder.
 * A candidate that is nearly one of the mixes already found is left out, so that every one on the list is worth a look.
 *
 * @param source the checked brief, from `readBrief`, or its answer
 * @param best its answer, which the candidates must differ from
 * @throws InputError for what is neither, an unknown option, or one out of range
 *
 * @example
 * ```ts
 * const written = {
 *   ingredients: [
 *     {name: "water", price: 0},
 *     {name: "sucrose", price: 1},
 *     {name: "dextrose", price: 1.1},
 *   ],
 *   targets: {sugars: {equal: 25}},
 * };
 * const best = balance(written, {pantry: includedPantry()});
 * best.status === "optimal" && candidatesOf(best, best).map(({name}) => name); // => ["softest at -18 °C"]
 * ```
 */
export function candidatesOf(
  source: BriefSource,
  best: Balanced,
  options: CandidateOptions = {},
): Balanced[] {
  const brief = briefOf(source);
  expectShape(best, {amounts: "list", shares: "object"}, "best mix", "give an answer of balance(brief)");
  expectOptions(options, CANDIDATE_OPTIONS);
  const {margin, apart, search} = options;
  if (search !== undefined) expectSolveOptions(search, "search");
  if (margin !== undefined) finite(margin, "margin", {min: 0});
  if (apart !== undefined) finite(apart, "apart", {min: 0}, "g per 100 g");
  return finish(candidatesSteps(brief, best, options)).found;
}

/** {@link candidatesOf} in steps, and whether time was left to look for all. */
export function* candidatesSteps(
  brief: Brief,
  best: Balanced,
  options: CandidateOptions = {},
): Generator<void, {readonly found: Balanced[]; readonly complete: boolean}> {
  const {margin = 0.15, apart = 0.5} = options;
  const {timeLimit = USUAL_TIME, now} = options.search ?? {};
  const deadline = options.search?.deadline ?? deadlineIn(timeLimit, now);
  const search = {...options.search, deadline};
  const within = [...nearBest(brief, best, margin), ...noWorseThan(best.composition, brief)];
  const towards = (name: string, aim: Aim) => () => solveBriefSteps(brief, name, aim, within, search);
  const ways: (() => Generator<void, Solution> | Generator<void, Solution | undefined> | undefined)[] = [
    towards(`softest at ${brief.freezer} °C`, {
      sense: "minimise",
      subject: {kind: "firmness", at: brief.freezer},
    }),
    towards("least sweet", {sense: "minimise", subject: {kind: "quantity", quantity: "sweetness"}}),
    () => fewerIngredients(brief, best, within, search),
    () =>
      brief.near &&
      solveFormulation(brief, "closest to the recipe", formulateClosest(brief, brief.near, within), search),
  ];
  // No row of their programs counts packs: what they come to is compared.
  const outlay = ({amounts}: Balanced) =>
    outlayOf(
      brief,
      amounts.map(({grams}) => grams),
    )!;
  const pays = paysPacks(brief, brief.aim);
  const isDearer = (mix: Balanced) => pays && outlay(mix) > (1 + margin) * outlay(best);
  const found: Balanced[] = [];
  for (const way of ways) {
    if (!(deadline.left() > 0)) return {found, complete: false};
    yield;
    const steps = way();
    const mix = steps && (yield* steps);
    if (mix?.status !== "optimal" || isDearer(mix)) continue;
    if ([best, ...found].every((other) => distance(mix, other) > apart)) found.push(mix);
  }
  return {found, complete: deadline.left() > 0};
}

const CANDIDATE_OPTIONS = ["margin", "apart", "search"] satisfies (keyof CandidateOptions)[];

/** Amount to be taken out and put in to make one mix of the other, g per 100 g. */
export function distance(a: Balanced, b: Balanced): number {
  return a.amounts.reduce((total, {percent}, j) => total + Math.abs(percent - b.amounts[j]!.percent), 0) / 2;
}

/**
 * A mix without one or more of the best mix's ingredients, still within the limits of a candidate.
 *
 * Ingredients are left out one by one, the smallest first, as long as the rest can do without. That is quick and need not
 * be the fewest possible: for those, give the brief `maxIngredients`.
 */
function* fewerIngredients(
  brief: Brief,
  best: Balanced,
  within: readonly Target[],
  search: SolveOptions,
): Generator<void, Solution | undefined> {
  const used = best.amounts.flatMap(({percent}, j) =>
    percent > 1e-6 && brief.ingredients[j]!.min === 0 ? [{j, percent}] : [],
  );
  const unused = best.amounts.flatMap(({percent}, j) => (percent <= 1e-6 ? [j] : []));
  const out = new Set(unused);
  let found: Formulation | undefined;
  for (const {j} of used.sort((a, b) => a.percent - b.percent)) {
    out.add(j);
    const ingredients = brief.ingredients.map((choice, k) => (out.has(k) ? {...choice, max: 0} : choice));
    const fewer = formulate({...brief, ingredients}, brief.aim, within);
    const {status} = yield* solveSteps(fewer.program, search);
    if (status === "optimal") found = fewer;
    else out.delete(j);
  }
  return found && (yield* solveFormulation(brief, "fewer ingredients", found, search));
}

/** Limit on the loss of a candidate in what the brief optimises; none where that is nothing. */
function nearBest(brief: Brief, best: Balanced, margin: number): Target[] {
  const {aim} = brief;
  if (!aim) return [];
  const value = coordinateValue(
    aimCoordinate(aim, brief),
    best.amounts.map(({percent}) => percent / 100),
  );
  const room = margin * Math.abs(value);
  return [{subject: aim.subject, ...(aim.sense === "minimise" ? {max: value + room} : {min: value - room})}];
}
