import type {Balanced} from "../../balance/mix/answer.ts";
import type {IngredientPrice, LimitPrice, Prices} from "../../balance/explain/prices.ts";
import type {Reliability} from "../../balance/weigh/reliability.ts";
import type {WeighableMix} from "../../balance/weigh/weighable.ts";
import {printable} from "../../core/errors.ts";
import {amountLines, cell, limitName, priceUnit, right, wrap} from "./report-lines.ts";
import {scoopsClause} from "../../kitchen/size/scoop-words.ts";
import {decimal} from "../../core/format.ts";
import {plainName} from "../text/plain-name.ts";
import {costText, countsOf, missedBy, scaleReading} from "./weighable-sections.ts";

/**
 * The prices of the binding limits with the range over which each holds, and of the ingredients, as a section of text.
 */
export function pricesText({limits, ingredients, degenerate}: Prices): string {
  return [
    "What each limit costs per kg: one more of it (100 g of an ingredient, 0.1 % of a",
    "dose), and valid from where to where",
    ...limits.map((limit) => limitLine(limit, priceUnit(limit).units)),
    ...(ingredients.length
      ? [
          "",
          "How far an ingredient's price may move before the mix changes",
          ...ingredients.map(ingredientLine),
        ]
      : []),
    ...(degenerate
      ? ["  (several limits meet at this mix: other ranges could be given with equal right)"]
      : []),
  ].join("\n");
}

/** Sentence on the engine that found the mix and the exactness of the proof. */
export function checkText({engine, check}: Pick<Balanced, "engine" | "check">): string {
  const {residual, gap} = check;
  const best =
    gap === undefined
      ? "for whole amounts the mix is checked, its being best is the engine's word"
      : `no better mix exists (proved to ${exactness(gap)})`;
  return [
    "How it was checked",
    ...wrap(`found by ${engine}, every limit holds to ${exactness(residual)}, ${best}`),
  ].join("\n");
}

/** A relative error in words. */
function exactness(error: number): string {
  return error < 1e-14 ? "the last digit" : `one part in ${(1 / error).toExponential(0)}`;
}

function limitLine(limit: LimitPrice, units: number): string {
  const {price = 0, from, to} = limit;
  const range = from === undefined || to === undefined ? "here only" : `${decimal(from, 2)} to ${bound(to)}`;
  return `  ${limitName(limit).padEnd(38)} ${right(signed(price * units, 4), 9)}   ${range}`;
}

function ingredientLine({ingredient, used, price, from, to}: IngredientPrice): string {
  const low = from <= 0 ? "0" : decimal(from, 2);
  return used
    ? `  ${cell(ingredient)} ${right(decimal(price, 2), 7)} per kg: the same from ${low} to ${bound(to)}`
    : `  ${cell(ingredient)} ${right(decimal(price, 2), 7)} per kg: not used; ${from <= 0 ? "not even if it were free" : `comes in below ${low}`}`;
}

/** The other mixes in full, as a section of text. */
export function candidatesInFull(candidates: readonly Balanced[]): string {
  return candidates
    .map((mix) => [`${mix.name}: ${scoopsClause(mix.scoop)}`, ...amountLines(mix)].join("\n"))
    .join("\n\n");
}

/** Amounts that can be weighed and counted, as a section of text. */
export function weighableText(mix: WeighableMix): string {
  const counts = countsOf(mix).map(printable);
  const missed = missedBy(mix);
  const costs = costText(mix.cost, mix.total);
  return [
    "To weigh and count: this is the one to make",
    ...mix.amounts
      .filter((amount) => amount.grams > 0)
      .map((amount) => `  ${cell(amount.ingredient)} ${right(`${scaleReading(amount.grams)} g`, 11)}`),
    `  ${cell("in all")} ${right(`${scaleReading(mix.total)} g`, 11)}`,
    ...(counts.length ? [`  that is ${counts.join(", ")}`] : []),
    ...(costs ? [`  ${costs}`] : []),
    ...(missed.length ? missed.map((miss) => `  ${miss}`) : ["  every target is kept"]),
  ].join("\n");
}

/** The chances of the targets in a kitchen with errors, as a section of text. */
export function reliabilityText({targets, all, error}: Reliability): string {
  return [
    `How often each target holds when the kitchen is off (± ${decimal(100 * error, 1)} % by chance)`,
    ...targets.map(
      ({target, holds, low, high}) =>
        `  ${cell(plainName(target))} ${right(`${decimal(100 * holds, 0)} %`, 6)}${low === undefined || high === undefined ? "" : `   nine in ten between ${decimal(low, 2)} and ${decimal(high, 2)}`}`,
    ),
    ...wrap(
      `all together ${decimal(100 * all, 0)} %${all < 0.95 ? '; to make them hold, give the brief "margin": true' : ""}`,
    ),
  ].join("\n");
}

function signed(value: number, digits: number): string {
  return `${value > 0 ? "+" : ""}${decimal(value, digits)}`;
}

function bound(value: number): string {
  return Number.isFinite(value) ? decimal(value, 2) : "any";
}
