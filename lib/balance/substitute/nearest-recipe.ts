import {firmness} from "../../freezing/firmness.ts";
import {initialFreezingPoint, unclippedIce} from "../../freezing/ice.ts";
import {type Piece, piecesOf} from "../../freezing/pieces.ts";
import {ProgramBuilder, type RowRef} from "../../lp/program/builder.ts";
import type {LinearProgram, Outcome} from "../../lp/program/program.ts";
import {DOSES, dosesIn} from "../../pantry/doses.ts";
import {recipeComposition} from "../../pantry/recipe.ts";
import type {Choice, Target} from "../brief/brief.ts";
import {targetRows} from "../measure/of-subject.ts";
import {doseRows} from "../program/dose-limits.ts";
import type {MixRow} from "../measure/mix-row.ts";
import {mixTerms} from "../program/mix-terms.ts";
import {SIMILARITY_TRAITS, type SimilarityTrait, traitOf} from "./similarity-traits.ts";
import type {Candidate, SubstitutionProblem} from "./substitution-problem.ts";

/** A trait to be kept near a value: the contribution of each ingredient per 100 g, the value, and the score of one unit off. */
export interface Goal {
  readonly what: SimilarityTrait;
  readonly along: (candidate: Candidate) => number;
  readonly wanted: number;
  readonly weight: number;
  /** Further lower bounds: pieces over candidates, where sweeteners crystallise. */
  readonly atLeast?: (candidates: readonly Candidate[]) => readonly Piece[];
}

/** Temperature difference for the slope of ice, °C. */
const STEP = 1e-3;

/**
 * Goals that a remade recipe is to stay near to: every trait that has a weight and can be compared.
 *
 * The freezing point is no weighted sum. The ice that a mix has at the old freezing point, over the slope of the old
 * mix's ice there, is its shift to first order.
 *
 * @param priced whether every ingredient in question has a price
 */
export function goalsOf(
  {before, batch, freezer, weights}: Pick<SubstitutionProblem, "before" | "batch" | "freezer" | "weights">,
  priced: boolean,
): Goal[] {
  const composition = recipeComposition(before);
  const freezing = initialFreezingPoint(composition);
  return SIMILARITY_TRAITS.flatMap((what): Goal[] => {
    const weight = weights[what];
    if (weight === 0 || (what === "cost" && !priced)) return [];
    if (what === "freezingPoint") {
      if (freezing === undefined || freezing > -2 * STEP) return [];
      const slope =
        (unclippedIce(composition, freezing - STEP) - unclippedIce(composition, freezing + STEP)) /
        (2 * STEP);
      const along = ({ingredient}: Candidate) => unclippedIce(ingredient.composition, freezing) / slope;
      return [{what, along, wanted: 0, weight}];
    }
    const along = ({ingredient}: Candidate) => traitOf(what, ingredient, freezer);
    if (what === "firmness") {
      const atLeast = (candidates: readonly Candidate[]) =>
        piecesOf(
          candidates.map(({ingredient}) => ingredient.composition),
          freezer,
        ).firmness.slice(1);
      return [{what, along, atLeast, wanted: firmness(composition, freezer), weight}];
    }
    const total = before.lines.reduce(
      (sum, {ingredient, grams}) => sum + grams * traitOf(what, ingredient, freezer),
      0,
    );
    return [{what, along, wanted: total / batch, weight}];
  });
}

/** A target that may be missed, at a cost for each unit. */
export interface Wish {
  readonly target: Target;
  readonly cost: number;
  /** Share by which customary doses are held lower, so that amounts can be weighed; none by default. */
  readonly belowDoses?: number;
}

/** The customary doses as rows; where the recipe had more, that is the limit. */
function customaryRows(candidates: readonly Candidate[], batch: number, below = 0): MixRow[] {
  const choices = candidates.map(({ingredient}): Choice => ({ingredient, min: 0, max: Infinity}));
  const had = DOSES.map((_, d) =>
    candidates.reduce((sum, {ingredient, before}) => sum + (before / batch) * dosesIn(ingredient)[d]!, 0),
  );
  const doses = DOSES.map(({limit}, index) => ({
    index,
    limit: Math.max(limit * (1 - below), had[index]! * (1 + 1e-9)),
  }));
  return doseRows({doses, ingredients: choices});
}

/**
 * The amounts nearest to the recipe: a program that makes the weighted sum of the sizes of all changes smallest (goal
 * programming; A. Charnes, W. W. Cooper and R. O. Ferguson, Management Science 1, 1955).
 *
 * @param free ingredients whose amounts are chosen, from 0 (or `min`) to `max`
 * @param fixed ingredients that stay as they were
 * @param targets limits to be kept whatever the score
 * @param wish target to be reached, or approached at a price
 * @returns the solved program; its first values are the shares of the batch of `free`
 */
export function nearestRecipe(
  {batch, weights, overrun, learned}: Pick<SubstitutionProblem, "batch" | "weights" | "overrun" | "learned">,
  goals: readonly Goal[],
  free: readonly Candidate[],
  fixed: readonly Candidate[],
  targets: readonly Target[],
  solve: (program: LinearProgram) => Outcome,
  wish?: Wish,
): Outcome {
  // The amount exchanged is half of the sum of all changes; its weight is per g in 100 g.
  const moving = (weights.moved * 100) / 2;
  const builder = new ProgramBuilder();
  const amounts = free.map(({ingredient, before, min = 0, max}) =>
    builder.variable({
      name: ingredient.name,
      cost: before > 0 ? 0 : moving,
      lower: min / batch,
      upper: max / batch,
    }),
  );
  /** States a row for the free ingredients: the part of the fixed ones is taken off its limits. */
  const state = ({name, weights, lower, upper}: MixRow): RowRef => {
    const there = fixed.reduce((sum, {before}, k) => sum + (before / batch) * weights[free.length + k]!, 0);
    const terms = mixTerms(amounts, weights);
    return builder.row({
      name,
      terms,
      ...(lower !== undefined && {lower: lower - there}),
      ...(upper !== undefined && {upper: upper - there}),
    });
  };
  const candidates = [...free, ...fixed];
  state({name: "batch", weights: candidates.map(() => 1), lower: 1, upper: 1});
  for (const [j, {ingredient, before}] of free.entries()) {
    if (before === 0) continue;
    const [name, share] = [ingredient.name, before / batch];
    const row = builder.row({name, terms: [[amounts[j]!, 1]], lower: share, upper: share});
    builder.elastic(row, "upper", {name: `more ${name}`, cost: moving});
    builder.elastic(row, "lower", {name: `less ${name}`, cost: moving});
  }
  for (const {what, along, atLeast, wanted, weight} of goals) {
    // What nothing that moves brings or takes away stays as it is, and costs the program a row for nothing.
    if (!atLeast && free.every((candidate) => along(candidate) === 0)) continue;
    const row = state({name: what, weights: candidates.map(along), lower: wanted, upper: wanted});
    const above = builder.elastic(row, "upper", {name: `${what} above`, cost: weight});
    builder.elastic(row, "lower", {name: `${what} below`, cost: weight});
    for (const piece of atLeast?.(candidates) ?? []) {
      const there = fixed.reduce((sum, {before}, k) => sum + (before / batch) * piece[free.length + k]!, 0);
      const terms = [...mixTerms(amounts, piece), [above, -1] as const];
      builder.row({name: what, terms, upper: wanted - there});
    }
  }
  const ingredients = candidates.map(({ingredient}): Choice => ({ingredient, min: 0, max: Infinity}));
  const context = {ingredients, overrun, ...(learned && {learned})};
  for (const target of targets) for (const row of targetRows(target, context)) state(row);
  if (wish) {
    const rows = targetRows(wish.target, context).map(state);
    const missed = builder.variable({name: "missed", cost: wish.cost});
    const side = wish.target.max === undefined ? "lower" : "upper";
    for (const row of rows) builder.elasticBy(row, side, missed);
  }
  for (const row of customaryRows(candidates, batch, wish?.belowDoses)) state(row);
  return solve(builder.build().program);
}
