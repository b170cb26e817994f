import {expectOptions} from "../../core/shape.ts";
import {finite, sum} from "../../core/numbers.ts";
import {type Deadline, deadlineOf, partOfTime, type TimeOptions} from "../../lp/program/deadline.ts";
import {solve} from "../../lp/solve/solve.ts";
import {type AmountsInput, gramsOf} from "../mix/amounts.ts";
import type {MixReport} from "../mix/answer.ts";
import type {Brief, Choice} from "../brief/brief.ts";
import {briefOf, type BriefSource} from "../read/brief-of.ts";
import {mixOf, reportOf} from "../mix/mix-report.ts";
import {EXACT_ENOUGH, nearbySteps, type Search} from "./nearby-steps.ts";
import {subjectName, valueOf} from "../measure/of-subject.ts";

/** A target that the weighable amounts do not quite meet. */
export interface Missed {
  readonly target: string;
  readonly bound: "min" | "max" | "equal";
  readonly limit: number;
  /** Value in the weighable mix; absent where it has none. */
  readonly value?: number;
}

/** A mix in amounts that can be weighed and counted. */
export interface WeighableMix extends MixReport {
  /** Mass in all, g: the batch, but for what whole eggs bring. */
  readonly total: number;
  /** Number of whole units of the ingredients that are counted. */
  readonly counts: Readonly<Record<string, number>>;
  /** Targets that no weighable amounts near the exact mix meet, with their values in this one. */
  readonly missed: readonly Missed[];
}

/** Options of the search for {@link weighable} amounts. */
export interface WeighOptions extends TimeOptions {
  /** Step of the kitchen scale, g, 0.001 to 1 000 000; 1 by default. Amounts below 20 g are weighed to a tenth of it. */
  readonly scale?: number;
}

/**
 * Searches in their order, each where none before it found amounts. The wide ones have few programs to solve: where they find any it
 * is soon, and that there is none takes long to prove.
 */
const SEARCHES: readonly (Search & {readonly maxNodes?: number})[] = [
  {reach: 1},
  {reach: 3},
  {reach: 10, maxNodes: 400},
  {reach: 40, maxNodes: 400},
  {reach: 3, elastic: true},
];

/** Amount below which the fine scale is used, g. */
const FINE = 20;

/**
 * The amounts of a mix in steps of a scale, eggs in whole ones, so that every target is still met if that is possible.
 *
 * Not each amount rounded by itself: first the eggs become whole and the rest follows freely, then a program with whole
 * numbers looks among the steps around these amounts, and then further away, for those that keep the targets and move the least
 * number of steps.
 * Otherwise the targets give way as little as possible, and the result says which and by how much. All figures of the result are
 * measured anew.
 *
 * @param source the brief, or its answer
 * @param amounts those of an answer as they are, or the exact mass of each ingredient, g, in the brief's order
 * @param options with the step of the scale, and a `deadline`, past which each amount is rounded by itself
 * @throws InputError for anything but amounts, and a scale out of range
 *
 * @example
 * ```ts
 * const brief = {batch: 1000, ingredients: ["whole milk", "egg yolk", "sucrose"], targets: {sugars: {equal: 15}}};
 * const answer = balance(brief, {pantry: includedPantry()});
 * answer.status === "optimal" &&
 *   weighable(answer, answer.amounts).amounts.every(({grams}) => grams === Number(grams.toFixed(1))); // => true
 * weighable(readBrief(brief, includedPantry()), [811.6, 40, 148.4]).amounts.map(({grams}) => grams); // => [812, 34, 149]
 * ```
 */
export function weighable(
  source: BriefSource,
  amounts: AmountsInput,
  options: WeighOptions = {},
): WeighableMix {
  const brief = briefOf(source);
  expectOptions(options, ["scale", "deadline", "now"]);
  const scale = finite(options.scale ?? 1, "scale", {min: 0.001, max: 1e6}, "g");
  return weighed(brief, gramsOf(brief, amounts), scale, deadlineOf(options));
}

function weighed(
  brief: Brief,
  amounts: readonly number[],
  scale: number,
  deadline: Deadline | undefined,
): WeighableMix {
  const counted = brief.ingredients.map((choice, j) => unitOf(choice, amounts[j]!));
  const free = look(
    brief,
    amounts,
    counted.map((unit) => unit ?? 1),
    {reach: Infinity, whole: counted.map(Boolean)},
    deadline,
  );
  const near = free?.map((number, j) => number * (counted[j] ?? 1)) ?? amounts;
  const steps = counted.map((unit, j) => unit ?? (near[j]! < FINE ? scale / 10 : scale));
  for (const search of SEARCHES) {
    const time = deadline && partOfTime(deadline, search.maxNodes ? 0.3 : 1);
    const numbers = look(brief, near, steps, search, time);
    if (numbers) return measured(brief, steps, numbers);
  }
  return measured(
    brief,
    steps,
    near.map((grams, j) => grams / steps[j]!),
  );
}

/** Numbers of steps that keep the targets, near some amounts, if there are any. */
function look(
  brief: Brief,
  amounts: readonly number[],
  steps: readonly number[],
  {maxNodes, ...search}: Search & {readonly maxNodes?: number},
  deadline: Deadline | undefined,
): readonly number[] | undefined {
  const program = nearbySteps(brief, amounts, steps, search);
  const outcome =
    program && solve(program, {...(deadline && {deadline}), ...(maxNodes !== undefined && {maxNodes})});
  return outcome?.status === "optimal" ? outcome.values.slice(0, steps.length) : undefined;
}

/** Mass of one unit of an ingredient that is counted rather than weighed, g: eggs, and those that the brief wants in whole steps. */
function unitOf({step, ingredient}: Choice, grams: number): number | undefined {
  // Other ingredients that come in units, such as fruit, are trimmed and weighed.
  return step ?? (ingredient.group === "egg" && grams > 0 ? ingredient.unit : undefined);
}

function measured(brief: Brief, steps: readonly number[], numbers: readonly number[]): WeighableMix {
  // Sixty steps of a tenth are 6 g, not 6.000000000000001 g.
  const grams = steps.map((step, j) => Number((Math.round(numbers[j]!) * step).toFixed(6)));
  const total = sum(grams);
  const mix = mixOf(
    {...brief, batch: total},
    grams.map((mass) => mass / total),
  );
  const missed = brief.targets.flatMap(({subject, min, max}): Missed[] => {
    const value = valueOf(subject, mix);
    const equal = min !== undefined && min === max;
    const slack = equal ? EXACT_ENOUGH + 1e-9 : 1e-9;
    const miss = (bound: "min" | "max", limit: number): Missed => ({
      target: subjectName(subject),
      bound: equal ? "equal" : bound,
      limit,
      ...(value !== undefined && {value}),
    });
    if (min !== undefined && !(value !== undefined && value >= min - slack)) return [miss("min", min)];
    if (max !== undefined && !(value !== undefined && value <= max + slack)) return [miss("max", max)];
    return [];
  });
  const counted = brief.ingredients.flatMap(({ingredient, step}, j): [string, number][] =>
    grams[j]! > 0 && ingredient.unit === steps[j] && (step !== undefined || ingredient.group === "egg")
      ? [[ingredient.name, Math.round(numbers[j]!)]]
      : [],
  );
  const report = reportOf(mix);
  return {
    ...report,
    // As weighed, not as a share of the total and back.
    amounts: report.amounts.map((amount, j) => ({...amount, grams: grams[j]!})),
    total,
    counts: Object.fromEntries(counted),
    missed,
  };
}
