import {ProgramBuilder} from "../../lp/program/builder.ts";
import type {LinearProgram, Variable} from "../../lp/program/program.ts";
import type {Brief, Target} from "../brief/brief.ts";
import type {MixRow} from "../measure/mix-row.ts";
import {mixTerms} from "../program/mix-terms.ts";
import {doseRows} from "../program/dose-limits.ts";
import {existenceRow, targetRows} from "../measure/of-subject.ts";

/** Range of the search around given amounts, and whether targets may give way. */
export interface Search {
  /** So many steps below and above the amount; `Infinity` for any. */
  readonly reach: number;
  /** True for each ingredient that comes in whole steps; all do by default. */
  readonly whole?: readonly boolean[];
  /** Targets may be missed, at a price far above that of any number of steps. */
  readonly elastic?: boolean;
}

/** Distance within which a weighable mix meets a target of one exact value: half of the last digit a report shows. */
export const EXACT_ENOUGH = 0.05;

/** Price of missing a target by one g or °C, against one step of one ingredient. */
const MISS = 1000;

/**
 * The program that looks for weighable amounts: numbers of steps near given amounts that keep the targets, with the
 * least number of steps away from them.
 *
 * Its variables are, per ingredient of the brief, the number of its steps, then how many steps that is away, then by how
 * much the total misses the batch, then (elastic) by how much each target is missed. The targets are stated for whatever
 * the total is: the sum over ingredients of mass x (what it brings - limit) has the right sign.
 *
 * @param amounts masses to stay near, g
 * @param steps mass of one step of each ingredient, g
 * @returns `undefined` where an ingredient's limits leave no step within reach
 */
export function nearbySteps(
  brief: Brief,
  amounts: readonly number[],
  steps: readonly number[],
  search: Search,
): LinearProgram | undefined {
  const {batch, ingredients: choices} = brief;
  const numbers = choices.map((_, j) => numberOfSteps(brief, amounts, steps[j]!, j, search));
  if (numbers.some(({lower = 0, upper = Infinity}) => lower > upper)) return undefined;
  const builder = new ProgramBuilder();
  const variables = numbers.map((number) => builder.variable(number));
  const grams = (j: number, times = 1) => [variables[j]!, times * steps[j]!] as const;
  for (const [j, {ingredient}] of choices.entries()) {
    const away = {name: `${ingredient.name}, steps away`, cost: 1};
    builder.distance(away, [grams(j)], amounts[j]!, undefined, steps[j]);
  }
  // An empty mix would meet every target, so the total must stay within one step of the batch.
  const off = {name: "total off the batch", cost: 1 / Math.min(...steps), upper: Math.max(...steps)};
  builder.distance(
    off,
    choices.map((_, j) => grams(j)),
    batch,
  );
  for (const [j, {ingredient, ratio}] of choices.entries()) {
    if (!ratio) continue;
    const terms = [grams(j), grams(ratio.index, -ratio.grams)];
    builder.row({name: ingredient.name, terms, lower: -steps[j]!, upper: steps[j]!});
  }
  for (const row of [
    ...brief.targets.flatMap((target) => [
      ...targetRows(widened(target), brief),
      ...[existenceRow(target, brief)].filter((row) => row !== undefined),
    ]),
    ...doseRows(brief),
  ]) {
    for (const weights of sidesOf(row)) {
      const missed = {name: `${row.name} missed`, cost: MISS / batch};
      const stated = builder.row({name: row.name, terms: mixTerms(variables, weights, steps), lower: 0});
      if (search.elastic) builder.elastic(stated, "lower", missed);
    }
  }
  return builder.build().program;
}

/** The limits of a row as sums over masses that must not be below 0, whatever the total: each ingredient counts what it brings beyond the limit. */
function sidesOf({weights, lower, upper}: MixRow): number[][] {
  const side = (limit: number | undefined, sign: 1 | -1) =>
    limit === undefined ? [] : [weights.map((weight) => sign * (weight - limit))];
  return [...side(lower, 1), ...side(upper, -1)];
}

/** The number of steps of an ingredient: within reach of its amount, its limits and the rules that bear on it; 0 if unused. */
function numberOfSteps(
  {ingredients}: Brief,
  amounts: readonly number[],
  step: number,
  index: number,
  {reach, whole}: Search,
): Variable {
  const {ingredient, min, max, minIfUsed = 0} = ingredients[index]!;
  if (amounts[index]! < 1e-6) return {name: ingredient.name, cost: 0, upper: 0};
  const needed = ingredients.map(({onlyWith}, j) =>
    onlyWith?.index === index && amounts[j]! > 1e-6 ? onlyWith.min : 0,
  );
  const [least, most] = [Math.max(min, minIfUsed, ...needed) / step, max / step];
  if (!(whole?.[index] ?? true)) return {name: ingredient.name, cost: 0, lower: least, upper: most};
  const exact = amounts[index]! / step;
  return {
    name: ingredient.name,
    cost: 0,
    lower: Math.max(0, Math.floor(exact + 1e-9) + 1 - reach, Math.ceil(least - 1e-9)),
    upper: Math.min(Math.ceil(exact - 1e-9) - 1 + reach, Math.floor(most + 1e-9)),
    integer: true,
  };
}

/** A target; one of a single exact value becomes the narrow range that a scale can meet. */
function widened(target: Target): Target {
  const {min, max} = target;
  return min !== undefined && min === max
    ? {...target, min: min - EXACT_ENOUGH, max: max + EXACT_ENOUGH}
    : target;
}
