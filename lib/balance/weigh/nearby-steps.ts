import type {LinearProgram, Row, Variable} from "../../lp/program/program.ts";
import type {Brief, Target} from "../brief/brief.ts";
import {doseRows} from "../program/dose-limits.ts";
import {frozenRow, targetRows} from "../program/target-rows.ts";

/** How far to look around given amounts, and whether targets may give way. */
export interface Search {
  /** So many steps below and above the amount; `Infinity` for any. */
  readonly reach: number;
  /** Which ingredients come in whole steps; all by default. */
  readonly whole?: readonly boolean[];
  /** Targets may be missed, at a price far above that of any number of steps. */
  readonly elastic?: boolean;
}

/** How near a weighable mix has to come to a target of one exact value: half of the last digit a report shows. */
export const EXACT_ENOUGH = 0.05;

/** Price of missing a target by one g or °C, against one step of one ingredient. */
const MISS = 1000;

/** A row over masses in g, with coefficients of further variables by their index. */
interface MassRow {
  readonly name: string;
  readonly grams: readonly number[];
  readonly others?: Readonly<Record<number, number>>;
  readonly lower?: number;
  readonly upper?: number;
}

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
  const n = choices.length;
  const numbers = choices.map((_, j) => numberOfSteps(brief, amounts, steps[j]!, j, search));
  if (numbers.some(({lower = 0, upper = Infinity}) => lower > upper)) return undefined;
  const only = (j: number, grams = 1) => choices.map((_, k) => (k === j ? grams : 0));
  const all = choices.map(() => 1);
  const rows: MassRow[] = [
    ...choices.flatMap(({ingredient: {name}}, j): MassRow[] => [
      {name, grams: only(j), others: {[n + j]: -steps[j]!}, upper: amounts[j]!},
      {name, grams: only(j), others: {[n + j]: steps[j]!}, lower: amounts[j]!},
    ]),
    {name: "batch", grams: all, others: {[2 * n]: -1}, upper: batch},
    {name: "batch", grams: all, others: {[2 * n]: 1}, lower: batch},
    ...choices.flatMap(({ingredient: {name}, ratio}, j): MassRow[] =>
      ratio
        ? [
            {
              name,
              grams: only(j).map((g, k) => (k === ratio.index ? -ratio.grams : g)),
              lower: -steps[j]!,
              upper: steps[j]!,
            },
          ]
        : [],
    ),
  ];
  const misses: Variable[] = [];
  for (const {name, coefficients, lower, upper} of [
    ...brief.targets.flatMap((target) => [
      ...targetRows(widened(target), choices),
      ...[frozenRow(target, choices)].filter((row) => row !== undefined),
    ]),
    ...doseRows(brief),
  ]) {
    for (const [limit, side] of [
      [lower, 1],
      [upper, -1],
    ] as const) {
      if (limit === undefined) continue;
      if (search.elastic) misses.push({name: `${name} missed`, cost: MISS / batch});
      rows.push({
        name,
        grams: coefficients.map((c) => side * (c - limit)),
        ...(search.elastic && {others: {[2 * n + misses.length]: 1}}),
        lower: 0,
      });
    }
  }
  const variables: Variable[] = [
    ...numbers,
    ...choices.map(({ingredient: {name}}) => ({name: `${name}, steps away`, cost: 1})),
    // Nothing at all would meet every target: the total stays within one step of the batch.
    {name: "total off the batch", cost: 1 / Math.min(...steps), upper: Math.max(...steps)},
    ...misses,
  ];
  return {variables, rows: rows.map((row) => inSteps(row, steps, variables.length))};
}

function inSteps({grams, others = {}, ...row}: MassRow, steps: readonly number[], width: number): Row {
  return {
    ...row,
    coefficients: Array.from({length: width}, (_, j) =>
      j < steps.length ? grams[j]! * steps[j]! : (others[j] ?? 0),
    ),
  };
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

/** A target of one exact value as the narrow range that a scale can meet. */
function widened(target: Target): Target {
  const {min, max} = target;
  return min !== undefined && min === max
    ? {...target, min: min - EXACT_ENOUGH, max: max + EXACT_ENOUGH}
    : target;
}
