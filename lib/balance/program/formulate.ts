import {ProgramBuilder} from "../../lp/program/builder.ts";
import {checkTime, type Deadline, NO_DEADLINE} from "../../lp/program/deadline.ts";
import type {LinearProgram} from "../../lp/program/program.ts";
import type {Aim, Brief, Target} from "../brief/brief.ts";
import type {MixRow} from "../measure/mix-row.ts";
import {aimCoordinate, existenceRow, targetRows} from "../measure/of-subject.ts";
import {doseRows} from "./dose-limits.ts";
import {mixTerms} from "./mix-terms.ts";
import {addPacks, paidByPack} from "./packs.ts";
import {HELP, type RowOrigin} from "./row-origin.ts";
import {addRules} from "./rules.ts";
import {narrowedRows} from "./spread.ts";

/** A brief as a linear program, and what its rows and variables stand for. */
export interface Formulation {
  readonly program: LinearProgram;
  /** One per row. */
  readonly origins: readonly RowOrigin[];
  /** Share of the batch that one unit of each ingredient's variable stands for; these variables come first. */
  readonly shares: readonly number[];
}

/** Programs of up to so many coefficients are kept with their brief; larger ones take more memory than time. */
const MOST_KEPT = 100_000;

const KEPT = new WeakMap<Brief, Formulation>();

/**
 * The linear program of a brief. The one of its own aim and targets is kept as long as the brief is there.
 *
 * @param brief a checked brief
 * @param aim objective, by default the brief's own
 * @param extra further targets, e.g. a limit on the cost
 * @throws OutOfTime soon after the deadline
 */
export function formulate(
  brief: Brief,
  aim: Aim | undefined = brief.aim,
  extra: readonly Target[] = [],
  deadline: Deadline = NO_DEADLINE,
): Formulation {
  const isOwn = aim === brief.aim && extra.length === 0;
  const known = isOwn ? KEPT.get(brief) : undefined;
  if (known) return known;
  const formulation = formulated(brief, aim, extra, deadline);
  const {variables, rows} = formulation.program;
  if (isOwn && variables.length * rows.length <= MOST_KEPT) KEPT.set(brief, formulation);
  return formulation;
}

/**
 * The linear program of a brief, written anew.
 *
 * One variable per ingredient, in the brief's order: its share of the batch, or the number of its whole steps. The first
 * row says that the shares sum to 1; then come the targets (see {@link targetRows}), the doses (see {@link doseRows}) and
 * the practical rules (see {@link addRules}), which bring variables of their own.
 */
function formulated(
  brief: Brief,
  aim: Aim | undefined,
  extra: readonly Target[],
  deadline: Deadline,
): Formulation {
  checkTime(deadline);
  const {batch, ingredients: choices} = brief;
  const shares = choices.map(({step}) => (step === undefined ? 1 : step / batch));
  const packed = paidByPack(brief, aim);
  const objective = aim && aimCoordinate(aim, brief);
  const builder = new ProgramBuilder<RowOrigin>();
  const amounts = choices.map(({ingredient, min, max, step}, j) =>
    builder.variable({
      name: ingredient.name,
      cost: objective && !packed.includes(j) ? objective.weights[j]! * shares[j]! : 0,
      // A limit that is a whole number of steps but for rounding still allows that number.
      lower: step === undefined ? min / batch : Math.ceil(min / step - 1e-9),
      upper: step === undefined ? max / batch : Math.floor(Math.min(max, batch) / step + 1e-9),
      ...(step !== undefined && {integer: true}),
    }),
  );
  const terms = (weights: readonly number[]) => mixTerms(amounts, weights, shares);
  const state = (row: MixRow, origin: RowOrigin) => builder.row({...row, terms: terms(row.weights)}, origin);
  state({name: "batch", weights: choices.map(() => 1), lower: 1, upper: 1}, {kind: "batch"});
  const stateTarget = (target: Target, rows: readonly MixRow[]) => {
    for (const row of rows) state(row, {kind: "target", target});
    const frozen = existenceRow(target, brief);
    if (frozen) state(frozen, {kind: "frozen", target});
  };
  for (const target of brief.targets) {
    const {margin, spread} = brief;
    stateTarget(target, margin && spread ? narrowedRows(target, brief, spread) : targetRows(target, brief));
  }
  // Further targets only compare mixes with one another, so they need no margin for the spread of batches.
  for (const target of extra) stateTarget(target, targetRows(target, brief));
  for (const {dose, ...row} of doseRows(brief, deadline)) state(row, {kind: "dose", dose});
  checkTime(deadline);
  addRules(builder, brief, amounts, shares);
  addPacks(builder, brief, packed, amounts, shares);
  const parts = (objective?.cutOff ?? []).map(({name, weights}) => {
    const part = builder.variable({name, cost: 1});
    builder.row({name, terms: [...terms(weights), [part, -1]], upper: 0}, HELP);
    return part;
  });
  if (objective?.atLeast?.length) {
    const name = "crystals";
    const excess = builder.variable({name, cost: 1});
    for (const piece of objective.atLeast) {
      const beyond = piece.map((weight, j) => weight - objective.weights[j]!);
      const counted = [...parts, excess].map((one) => [one, -1] as const);
      builder.row({name, terms: [...terms(beyond), ...counted], upper: 0}, HELP);
    }
  }
  return {...builder.build(aim?.sense ?? "minimise", deadline), shares};
}
