import {InputError} from "../../core/errors.ts";
import {expectOptions} from "../../core/shape.ts";
import {sensitivity} from "../../lp/explain/sensitivity.ts";
import {deadlineOf, type TimeOptions} from "../../lp/program/deadline.ts";
import {solve} from "../../lp/solve/solve.ts";
import type {Binding} from "../mix/answer.ts";
import {doseLimit, ingredientLimit, oneEach, percentOf, slopeOf, targetLimit} from "../mix/binding.ts";
import {measureOf} from "../measure/measures.ts";
import type {Brief} from "../brief/brief.ts";
import {briefOf, type BriefSource} from "../read/brief-of.ts";
import {outcomeOf} from "../mix/outcomes.ts";
import {formulate} from "../program/formulate.ts";
import {mixFrom} from "../mix/mix-report.ts";

/** A binding limit with its price and how far the price reaches. */
export interface LimitPrice extends Binding {
  /** Values of the limit between which the price holds, in its unit; absent for limits on a temperature, whose rows bend. */
  readonly from?: number;
  readonly to?: number;
}

/** Response of the mix to the price of one ingredient, money per kg. */
export interface IngredientPrice {
  readonly ingredient: string;
  readonly used: boolean;
  readonly price: number;
  /** Prices between which these amounts stay the cheapest. An unused ingredient enters where its price falls below `from`. */
  readonly from: number;
  readonly to: number;
}

/** Prices of the limits of a balanced brief, and for each ingredient the range of its price in which the amounts stay the cheapest. */
export interface Prices {
  readonly limits: readonly LimitPrice[];
  /** Empty where the brief is not about cost. */
  readonly ingredients: readonly IngredientPrice[];
  /** Whether several limits meet at the mix, so that other prices and ranges could be given with equal right. */
  readonly degenerate: boolean;
}

/**
 * Prices and ranges of a brief that can be met: what one more unit of each binding limit costs per kg of mix and over
 * which range that holds; for each ingredient, how far its own price may move.
 *
 * @param source the brief, or its answer
 * @throws InputError for a brief with whole steps, whole packs or yes-or-no rules, which has no such prices, one that cannot be met,
 *   and where a `deadline` comes before they are found
 *
 * @example
 * ```ts
 * const brief = readBrief(
 *   {
 *     ingredients: [
 *       {name: "cream 40 %", price: 5},
 *       {name: "sucrose", price: 1},
 *     ],
 *     targets: {sugars: {min: 12, max: 20}},
 *   },
 *   includedPantry(),
 * );
 * pricesOf(brief).limits.map(({path, bound, price}) => ({path, bound, price})); // => [{path: "targets.sugars", bound: "max", price: -0.04}]
 * ```
 */
export function pricesOf(source: BriefSource, options: TimeOptions = {}): Prices {
  const brief = briefOf(source);
  expectOptions(options, ["deadline", "now"]);
  const deadline = deadlineOf(options);
  const formulation = formulate(brief);
  const {program, origins, shares} = formulation;
  if (program.variables.some(({integer}) => integer)) {
    throw new InputError(
      brief.name,
      "a mix in whole steps has no prices",
      undefined,
      "leave out step, unit, minIfUsed, onlyWith, maxIngredients and wholePacks to see them",
    );
  }
  const outcome = outcomeOf(program) ?? solve(program, deadline && {deadline});
  if (outcome.status === "undecided")
    throw new InputError(brief.name, "no prices were found", outcome.reason, "allow more time");
  if (outcome.status !== "optimal")
    throw new InputError(
      brief.name,
      "no mix meets the brief",
      outcome.status,
      "balance it first: the answer says what conflicts",
    );
  const {rows, bounds, costs, degenerate} = sensitivity(program, outcome);
  const {composition} = mixFrom(brief, formulation, outcome.values);
  const limits: LimitPrice[] = [];
  for (const {index, side, price, from, to} of rows) {
    const origin = origins[index]!;
    if (origin.kind === "dose") limits.push({...doseLimit(origin.dose), price, from: Math.max(0, from), to});
    if (origin.kind !== "target") continue;
    const {target} = origin;
    const {subject, max = 0} = target;
    const {temperature, lowest} = measureOf(subject);
    const least = side === "upper" ? (lowest?.(subject, max, brief) ?? -Infinity) : -Infinity;
    limits.push({
      ...targetLimit(brief, target, side === "lower"),
      price: price * slopeOf(target, side === "lower", composition),
      ...(!temperature && {from: Math.max(from, least), to}),
    });
  }
  for (const {index, side, price, from, to} of bounds) {
    const choice = brief.ingredients[index];
    if (!choice || (side === "lower" && choice.min === 0)) continue;
    const grams = shares[index]! * brief.batch;
    limits.push({
      ...ingredientLimit(index, choice.ingredient.name),
      bound: side === "equal" ? "equal" : side === "lower" ? "min" : "max",
      limit: side === "upper" ? choice.max : choice.min,
      ...percentOf(choice.percents, side === "upper" ? "max" : "min"),
      price: price / grams,
      from: Math.max(0, from * grams),
      to: to * grams,
    });
  }
  return {limits: oneEach(limits), ingredients: ingredientPrices(brief, costs, outcome.values), degenerate};
}

function ingredientPrices(
  {aim, ingredients}: Brief,
  costs: readonly {index: number; cost: number; from: number; to: number}[],
  values: readonly number[],
): IngredientPrice[] {
  if (aim?.subject.kind !== "cost" || aim.sense !== "minimise") return [];
  return ingredients.map(({ingredient}, j) => {
    const {cost, from, to} = costs.find(({index}) => index === j)!;
    return {ingredient: ingredient.name, used: values[j]! > 1e-9, price: cost, from, to};
  });
}
