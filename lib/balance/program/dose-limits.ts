import {InputError} from "../../core/errors.ts";
import {finite, sum} from "../../core/numbers.ts";
import {oneOfThese} from "../../core/nearest.ts";
import {leastRelaxation} from "../../lp/explain/relaxation.ts";
import {ProgramBuilder} from "../../lp/program/builder.ts";
import {checkTime, type Deadline, NO_DEADLINE} from "../../lp/program/deadline.ts";
import type {Limit} from "../../lp/program/limits.ts";
import {DOSES, dosesIn, isAskedBy} from "../../pantry/doses.ts";
import type {BriefInput} from "../brief/brief-schema.ts";
import type {Choice, DoseLimit, Target} from "../brief/brief.ts";
import {coefficientOf, targetRows} from "../measure/of-subject.ts";
import type {MixRow} from "../measure/mix-row.ts";
import {mixTerms} from "./mix-terms.ts";

/**
 * The upper limits on doses that a brief sets: the customary ones by default, none, or those with some of the cook's own.
 *
 * A wish that the cook states outright (a least amount of an ingredient, a lower limit of a target) has priority over a customary
 * dose, which rises as far as needed. A limit of the cook's own stays as it is.
 *
 * @param batch mass of the batch, g
 * @throws InputError for an unknown dose, or a limit that is no number from 0
 */
export function readDoses(
  raw: BriefInput["doses"],
  choices: readonly Choice[],
  targets: readonly Target[],
  batch: number,
  place: string,
): DoseLimit[] {
  if (raw === "none") return [];
  const own = typeof raw === "object" ? raw : {};
  for (const [key, limit] of Object.entries(own)) {
    if (!DOSES.some((dose) => dose.key === key)) {
      throw new InputError(
        `${place}.${key}`,
        "unknown dose",
        limit,
        oneOfThese(
          key,
          DOSES.map((dose) => dose.key),
        ),
      );
    }
    finite(limit, `${place}.${key}`, {min: 0, max: 100}, "g per 100 g");
  }
  const limits = DOSES.map(({key, limit}, index): DoseLimit =>
    Object.hasOwn(own, key) ? {index, limit: own[key]!, own: true} : {index, limit},
  );
  return raisedDoses(limits, choices, targets, batch);
}

/**
 * The limits on doses as rows over shares of the batch, in g per 100 g of mix: those that some ingredient by itself could
 * break. An ingredient at a ratio to another is asked for outright, and does not count.
 *
 * @throws OutOfTime soon after the deadline
 */
export function doseRows(
  {
    doses = [],
    ingredients,
  }: {
    readonly doses?: readonly DoseLimit[];
    readonly ingredients: readonly Choice[];
  },
  deadline: Deadline = NO_DEADLINE,
): (MixRow & {readonly upper: number; readonly dose: DoseLimit})[] {
  if (doses.length === 0) return [];
  const brought = ingredients.map(({ingredient, ratio}, j) => {
    if (j % 64 === 0) checkTime(deadline);
    return ratio ? undefined : dosesIn(ingredient);
  });
  return doses.flatMap((dose) => {
    const weights = brought.map((grams) => grams?.[dose.index] ?? 0);
    if (!weights.some((grams) => grams > dose.limit)) return [];
    return [{name: DOSES[dose.index]!.name, weights, upper: dose.limit, dose}];
  });
}

/** A lower limit of a target that a dose counts. */
interface Asked {
  readonly subject: Extract<Target["subject"], {readonly kind: "quantity"}>;
  readonly min: number;
}

/**
 * Upper bound on the dose that lower limits of targets can make necessary, g per 100 g: each met by the ingredient that brings most of
 * the dose with it, on top of the least amounts. Where that is within the limit, the limit need not rise.
 */
function mostAskedFor(
  {index}: DoseLimit,
  asked: readonly Asked[],
  choices: readonly Choice[],
  brought: readonly (readonly number[])[],
  least: readonly number[],
  batch: number,
): number {
  // Most doses are brought by nothing there: a third of the time of a search through the shelf.
  if (brought.every((grams) => grams[index] === 0)) return 0;
  let most = sum(brought.map((grams, j) => (grams[index]! * least[j]!) / batch));
  for (const {subject, min} of asked) {
    if (!isAskedBy(index, subject.quantity)) continue;
    let ratio = 0;
    for (const [j, {ingredient}] of choices.entries()) {
      const own = coefficientOf(subject, ingredient);
      if (own > 0) ratio = Math.max(ratio, brought[j]![index]! / own);
    }
    most += min * ratio;
  }
  return most;
}

/** The customary limits, raised as little as possible so that everything the cook asks for outright fits. */
export function raisedDoses(
  limits: readonly DoseLimit[],
  choices: readonly Choice[],
  targets: readonly Target[],
  batch: number,
): DoseLimit[] {
  const least = choices.map(({min, step}) =>
    step === undefined ? min : Math.ceil(min / step - 1e-9) * step,
  );
  const asked = targets
    .flatMap(({subject, min}): Asked[] => (min && subject.kind === "quantity" ? [{subject, min}] : []))
    .filter(({subject}) => DOSES.some((_, d) => isAskedBy(d, subject.quantity)));
  if (asked.length === 0 && least.every((grams) => grams === 0)) return [...limits];
  // To look into thousands of ingredients takes time, and here no deadline is kept: only those that matter.
  const brought = choices.map(({ingredient, min}) =>
    min > 0 || asked.length ? dosesIn(ingredient) : DOSES.map(() => 0),
  );
  const risen = limits.map((dose): DoseLimit => {
    const there = sum(brought.map((grams, j) => (grams[dose.index]! * least[j]!) / batch));
    return !dose.own && there > dose.limit ? {...dose, limit: there, raised: true} : dose;
  });
  if (risen.every((dose) => dose.limit >= mostAskedFor(dose, asked, choices, brought, least, batch)))
    return risen;
  const shares = choices.map(({ingredient, max}, j) => ({
    name: ingredient.name,
    cost: 0,
    lower: least[j]! / batch,
    upper: max / batch,
  }));
  /** The program of some wishes and limits on doses, with the wish or dose that each of its rows states. */
  const stated = (wishes: readonly Asked[], doses: readonly DoseLimit[]) => {
    const builder = new ProgramBuilder<Asked | DoseLimit | undefined>();
    const amounts = shares.map((share) => builder.variable(share));
    const state = (row: MixRow, origin?: Asked | DoseLimit) =>
      builder.row({...row, terms: mixTerms(amounts, row.weights)}, origin);
    state({name: "batch", weights: choices.map(() => 1), lower: 1, upper: 1});
    for (const wish of wishes)
      for (const row of targetRows(wish, {ingredients: choices, overrun: 0})) state(row, wish);
    for (const dose of doses) {
      const weights = brought.map((grams, j) => (choices[j]!.ratio ? 0 : grams[dose.index]!));
      state({name: DOSES[dose.index]!.name, weights, upper: dose.limit}, dose);
    }
    return builder.build();
  };
  const needed = (wishes: readonly Asked[]) => leastMoves(stated(wishes, risen), doseWeight);
  const reached = (wishes: readonly Asked[]) => needed(withinReach(wishes, stated(wishes, [])));
  const together = needed(asked);
  const rises = together ? [together] : [reached(asked), ...asked.map((wish) => reached([wish]))];
  return risen.map((dose) => {
    const more = Math.max(0, ...rises.map((by) => by?.get(dose) ?? 0));
    // Raised by a little more than the solver's rounding, so that the least amount certainly fits.
    return more === 0 ? dose : {...dose, limit: (dose.limit + more) * (1 + 1e-9), raised: true};
  });
}

type Stated = ReturnType<ProgramBuilder<Asked | DoseLimit | undefined>["build"]>;

function doseWeight(origin: Asked | DoseLimit, side: Limit["side"]): number | undefined {
  return "limit" in origin && side === "upper" && !origin.own ? 1 / Math.max(origin.limit, 0.01) : undefined;
}

/** How far each wish or dose has to give way at least; `undefined` where the rest still conflicts. */
function leastMoves(
  {program, origins}: Stated,
  weight: (origin: Asked | DoseLimit, side: Limit["side"]) => number | undefined,
): Map<Asked | DoseLimit, number> | undefined {
  const originOf = ({of, index}: Limit) => (of === "row" ? origins[index] : undefined);
  const relaxed = leastRelaxation(program, (limit) => {
    const origin = originOf(limit);
    return origin && weight(origin, limit.side);
  });
  if (!("moves" in relaxed)) return undefined;
  return new Map(relaxed.moves.map(({limit, by}) => [originOf(limit)!, by]));
}

/**
 * The wishes as far as the ingredients reach, whatever the doses: one that cannot be met, or not beside another, is no reason to
 * hold all to customary doses.
 */
function withinReach(asked: readonly Asked[], withoutDoses: Stated): Asked[] {
  const short = leastMoves(withoutDoses, (origin) => ("min" in origin ? 1 / origin.min : undefined));
  return asked.flatMap((wish) => {
    const min = (wish.min - (short?.get(wish) ?? 0)) * (1 - 1e-9);
    return min > 1e-6 ? [{...wish, min}] : [];
  });
}
