import {solidFat} from "../../freezing/solid-fat.ts";
import {checkTime, type Deadline, NO_DEADLINE} from "../../lp/program/deadline.ts";
import type {LinearProgram, Variable} from "../../lp/program/program.ts";
import type {Aim, Brief, Target} from "../brief/brief.ts";
import {coefficientOf} from "./coefficient.ts";
import {doseRows} from "./dose-limits.ts";
import type {MeantRow, Meaning, SparseRow} from "./meaning.ts";
import {countPacks} from "./packs.ts";
import {ruleRows} from "./rules.ts";
import {narrowedRows} from "./spread.ts";
import {frozenRow, targetRows} from "./target-rows.ts";
import {zeros} from "../brief/zeros.ts";

/** A brief as a linear program, and what its rows and variables stand for. */
export interface Formulation {
  readonly program: LinearProgram;
  /** One per row. */
  readonly meanings: readonly Meaning[];
  /** Share of the batch that one unit of each ingredient's variable stands for; these variables come first. */
  readonly shares: readonly number[];
}

/**
 * The linear program of a brief.
 *
 * One variable per ingredient, in the brief's order: its share of the batch, or the number of its whole steps. The first
 * row says that the shares sum to 1; then come the targets (see {@link targetRows}), the doses (see {@link doseRows}) and
 * the practical rules (see {@link ruleRows}), which bring variables of their own.
 *
 * @param brief a checked brief
 * @param aim what to optimise, by default what the brief asks for
 * @param extra further targets, e.g. a limit on the cost
 * @throws OutOfTime soon after the deadline
 */
export function formulate(
  brief: Brief,
  aim: Aim | undefined = brief.aim,
  extra: readonly Target[] = [],
  deadline: Deadline = NO_DEADLINE,
): Formulation {
  const {batch, ingredients: choices} = brief;
  const shares = choices.map(({step}) => (step === undefined ? 1 : step / batch));
  const {variables: used, rows: rules} = ruleRows(brief);
  const packs = countPacks(brief, aim, choices.length + used.length);
  const amounts: Variable[] = choices.map(({ingredient, min, max, step}, j) => ({
    name: ingredient.name,
    cost: aim && !packs.counted.includes(j) ? coefficientOf(aim.subject, ingredient) * shares[j]! : 0,
    // A limit that is a whole number of steps but for rounding still allows that number.
    lower: step === undefined ? min / batch : Math.ceil(min / step - 1e-9),
    upper: step === undefined ? max / batch : Math.floor(Math.min(max, batch) / step + 1e-9),
    ...(step !== undefined && {integer: true}),
  }));
  const variables = [...used, ...packs.variables];
  const mass: MeantRow = {
    name: "batch",
    coefficients: choices.map(() => 1),
    lower: 1,
    upper: 1,
    meaning: {kind: "batch"},
  };
  const narrowed = (target: Target) =>
    brief.margin && brief.spread ? narrowedRows(target, brief, brief.spread) : targetRows(target, choices);
  const wanted = [
    ...brief.targets.map((target) => [target, narrowed(target)] as const),
    // What other mixes are compared with is no wish that has to hold for every batch.
    ...extra.map((target) => [target, targetRows(target, choices)] as const),
  ].flatMap(([target, rows]) => [
    ...rows.map((row): MeantRow => ({...row, meaning: {kind: "target", target}})),
    ...[frozenRow(target, choices)].flatMap((row): MeantRow[] =>
      row ? [{...row, meaning: {kind: "frozen", target}}] : [],
    ),
  ]);
  const ice =
    aim?.sense === "minimise" && aim.subject.kind === "hardPhase"
      ? iceCutOff(brief, aim.subject.at, choices.length + variables.length)
      : undefined;
  const width = choices.length + variables.length + (ice ? 1 : 0);
  const rows: readonly (MeantRow | SparseRow)[] = [
    mass,
    ...wanted,
    ...doseRows(brief),
    ...rules,
    ...packs.rows,
    ...(ice ? [ice.row] : []),
  ];
  return {
    program: {
      sense: aim?.sense ?? "minimise",
      variables: [
        ...(ice ? amounts.map((amount, j) => ({...amount, cost: ice.fat[j]! * shares[j]!})) : amounts),
        ...variables,
        ...(ice ? [ice.variable] : []),
      ],
      rows: rows.map(({name, coefficients, lower, upper}, i) => {
        if (i % 64 === 63) checkTime(deadline);
        return {
          name,
          coefficients: padded(coefficients, shares, width),
          ...(lower !== undefined && {lower}),
          ...(upper !== undefined && {upper}),
        };
      }),
    },
    meanings: rows.map(({meaning}) => meaning),
    shares,
  };
}

/** Coefficients over shares as coefficients over the program's variables, with 0 for those that a row leaves out. */
function padded(
  coefficients: readonly number[] | ReadonlyMap<number, number>,
  shares: readonly number[],
  width: number,
): number[] {
  const all = zeros(width);
  // A list may have holes.
  for (const [j, coefficient] of coefficients.entries()) {
    if (coefficient) all[j] = coefficient * (shares[j] ?? 1);
  }
  return all;
}

/**
 * For a hard phase to be minimised: solid fat plus a variable that is at least the ice and at least 0, so that ice which
 * is not there cannot pay for fat.
 *
 * @param index place of that variable
 */
function iceCutOff(
  {ingredients}: Brief,
  at: number,
  index: number,
): {fat: number[]; variable: Variable; row: MeantRow} {
  const coefficients: number[] = ingredients.map(({ingredient}) =>
    coefficientOf({kind: "ice", at}, ingredient),
  );
  coefficients[index] = -1;
  return {
    fat: ingredients.map(({ingredient}) => solidFat(ingredient.composition, at)),
    variable: {name: `ice at ${at} °C`, cost: 1},
    row: {
      name: `ice at ${at} °C`,
      coefficients: Array.from(coefficients, (c) => c ?? 0),
      upper: 0,
      meaning: {kind: "help"},
    },
  };
}
