import {solidFat} from "../freezing/solid-fat.ts";
import type {LinearProgram, Row, Variable} from "../lp/program.ts";
import type {Aim, Brief, Target} from "./brief.ts";
import {coefficientOf} from "./coefficient.ts";
import {targetRows} from "./target-rows.ts";

/** A brief as a linear program, and what its rows and variables stand for. */
export interface Formulation {
  readonly program: LinearProgram;
  /** The target that each row states; `undefined` for the rows that only hold the mix together. */
  readonly targets: readonly (Target | undefined)[];
  /** Share of the batch that one unit of each ingredient's variable stands for. */
  readonly shares: readonly number[];
}

/**
 * The linear program of a brief.
 *
 * One variable per ingredient, in the brief's order: its share of the batch, or the number of its whole steps. The first
 * row says that the shares sum to 1, the others state the targets (see {@link targetRows}).
 *
 * @param brief a checked brief
 * @param aim what to optimise, by default what the brief asks for
 * @param extra further targets, e.g. a limit on the cost
 */
export function formulate(
  brief: Brief,
  aim: Aim | undefined = brief.aim,
  extra: readonly Target[] = [],
): Formulation {
  const {batch, ingredients: choices} = brief;
  const shares = choices.map(({step}) => (step === undefined ? 1 : step / batch));
  const variables: Variable[] = choices.map(({ingredient, min, max, step}, j) => ({
    name: ingredient.name,
    cost: aim ? coefficientOf(aim.subject, ingredient) * shares[j]! : 0,
    // A limit that is a whole number of steps but for rounding still allows that number.
    lower: step === undefined ? min / batch : Math.ceil(min / step - 1e-9),
    upper: step === undefined ? max / batch : Math.floor(Math.min(max, batch) / step + 1e-9),
    ...(step !== undefined && {integer: true}),
  }));
  const rows: Row[] = [{name: "batch", coefficients: choices.map(() => 1), lower: 1, upper: 1}];
  const targets: (Target | undefined)[] = [undefined];
  for (const target of [...brief.targets, ...extra]) {
    for (const row of targetRows(target, choices)) {
      rows.push(row);
      targets.push(target);
    }
  }
  const scaled = rows.map((row) => ({...row, coefficients: row.coefficients.map((c, j) => c * shares[j]!)}));
  const program: LinearProgram = {sense: aim?.sense ?? "minimise", variables, rows: scaled};
  if (aim?.sense !== "minimise" || aim.subject.kind !== "hardPhase") return {program, targets, shares};
  return {
    program: withIceCutOff(program, brief, aim.subject.at, shares),
    targets: [...targets, undefined],
    shares,
  };
}

/**
 * The same program with its objective, the hard phase, taken as solid fat plus a variable that is at least the ice and
 * at least 0: ice that is not there must not pay for fat.
 */
function withIceCutOff(
  program: LinearProgram,
  brief: Brief,
  at: number,
  shares: readonly number[],
): LinearProgram {
  const ice = brief.ingredients.map(
    ({ingredient}, j) => coefficientOf({kind: "ice", at}, ingredient) * shares[j]!,
  );
  return {
    ...program,
    variables: [
      ...program.variables.map((variable, j) => ({
        ...variable,
        cost: solidFat(brief.ingredients[j]!.ingredient.composition, at) * shares[j]!,
      })),
      {name: `ice at ${at} °C`, cost: 1},
    ],
    rows: [
      ...program.rows.map((row) => ({...row, coefficients: [...row.coefficients, 0]})),
      {name: `ice at ${at} °C`, coefficients: [...ice, -1], upper: 0},
    ],
  };
}
