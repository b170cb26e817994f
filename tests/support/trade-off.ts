import {readFileSync} from "node:fs";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import type {Brief} from "../../lib/balance/brief/brief.ts";
import {formulate} from "../../lib/balance/program/formulate.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import type {Subject} from "../../lib/balance/measure/measures.ts";
import {coefficientOf} from "../../lib/balance/measure/of-subject.ts";
import {tradeOff} from "../../lib/balance/trade-off/trade-off.ts";
import type {TradeOff, TradeOffAxes} from "../../lib/balance/trade-off/trade-off-types.ts";
import type {LinearProgram, Row} from "../../lib/lp/program/program.ts";
import {loadHighs, referenceOf} from "./reference-lp.ts";
import {demoPantry} from "./pantry.ts";

/** The invented brief of the demo shop. */
export const input = JSON.parse(
  readFileSync(new URL("../../datasets/demo/pear-base.json", import.meta.url), "utf8"),
) as BriefInput;
export const pear = readBrief(input, demoPantry);

export const COST: Subject = {kind: "cost"};
export const SUGARS: Subject = {kind: "quantity", quantity: "sugars"};
export const HARD: Subject = {kind: "hardPhase", at: -18};
export const FAT: Subject = {kind: "quantity", quantity: "fat"};

/** The front, or a failed test. */
export function frontOf(brief: Brief, axes: TradeOffAxes): Extract<TradeOff, {status: "front"}> {
  const found = tradeOff(brief, axes);
  if (found.status !== "front") throw new Error(found.reason);
  return found;
}

/** What each ingredient brings to a weighted sum of two subjects. Every mix here has ice, so nothing is cut off. */
export function along(
  {ingredients}: Brief,
  weights: readonly (readonly [subject: Subject, weight: number])[],
): number[] {
  return ingredients.map(({ingredient}) =>
    weights.reduce((sum, [subject, weight]) => sum + weight * coefficientOf(subject, ingredient), 0),
  );
}

const highs = await loadHighs();

/** Least value of a weighted sum over the mixes of a brief and further rows, by HiGHS. */
export function leastByHighs(brief: Brief, costs: readonly number[], rows: readonly Row[] = []): number {
  const {aim: _aim, ...limits} = brief;
  const {program} = formulate(limits);
  const changed: LinearProgram = {
    variables: program.variables.map((variable, j) => ({...variable, cost: costs[j]!})),
    rows: [...program.rows, ...rows],
  };
  const {status, objective} = referenceOf(highs, changed);
  return status === "optimal" ? objective : NaN;
}
