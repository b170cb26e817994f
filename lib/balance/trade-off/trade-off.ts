import {expectOptions} from "../../core/shape.ts";
import {deadlineOf, type TimeOptions} from "../../lp/program/deadline.ts";
import {readAxes} from "../read/axis.ts";
import {isTemperature} from "../measure/of-subject.ts";
import {exactFront} from "./exact-front.ts";
import {briefOf, type BriefSource} from "../read/brief-of.ts";
import {describeFront} from "./front-mix.ts";
import {holdingShape} from "../mix/hold-shape.ts";
import {finish, type Steps} from "../../core/in-chunks.ts";
import {formulateWithoutAim} from "../program/mix-program.ts";
import {sampledFront} from "./sampled-front.ts";
import type {TradeOff, TradeOffAxes} from "./trade-off-types.ts";
import {withoutWholeValues} from "../program/without-whole-values.ts";

/**
 * Exchange of one thing for more of another: the Pareto front of a brief between any two of its cost, a
 * quantity, a property, ice, hard phase, heat shock, freezing point and scoop temperature.
 *
 * Between weighted sums the front is exact (see `cornersBetween`): no mix lies beyond it by more than 1e-8 of its width
 * and height. Where a freezing point or scoop temperature takes part, it is found at temperatures chosen where it bends,
 * each point of it exact. The brief's own aim does not count, but no point has a worse verdict in the freezer than
 * the brief's own answer (see `holdingShape`): the front ends where a mix would no longer hold its shape.
 *
 * @param source the brief, or its answer
 * @param options with a `deadline`, past which the answer is `undecided`
 * @throws InputError for an axis not understood, or a price or property that an ingredient lacks
 *
 * @example
 * ```ts
 * const brief = readBrief(
 *   {
 *     ingredients: [
 *       {name: "whole milk", price: 1},
 *       {name: "cream 40 %", price: 5},
 *     ],
 *     targets: {fat: {min: 5, max: 10}},
 *   },
 *   includedPantry(),
 * );
 * const front = tradeOff(brief, {x: "cost", y: {maximise: "fat"}});
 * front.status === "front" && front.points.map(({x, y}) => [x, y]); // => [[1.2, 5], [1.7, 10]]
 * ```
 */
export function tradeOff(source: BriefSource, axes: TradeOffAxes, options: TimeOptions = {}): TradeOff {
  return finish(tradeOffSteps(source, axes, options));
}

/**
 * {@link tradeOff} in steps, one for each linear program, for `inChunks`.
 *
 * @example
 * ```ts
 * const brief = readBrief(
 *   {
 *     ingredients: [
 *       {name: "whole milk", price: 1},
 *       {name: "cream 40 %", price: 5},
 *     ],
 *     targets: {fat: {min: 5, max: 10}},
 *   },
 *   includedPantry(),
 * );
 * const front = await inChunks(tradeOffSteps(brief, {x: "cost", y: {maximise: "fat"}}));
 * front.status; // => "front"
 * ```
 */
export function* tradeOffSteps(
  source: BriefSource,
  axes: TradeOffAxes,
  options: TimeOptions = {},
): Steps<TradeOff> {
  const given = briefOf(source);
  expectOptions(options, ["deadline", "now"]);
  const deadline = deadlineOf(options);
  const {x, y} = readAxes(axes, given.ingredients);
  const {brief: free, leftOut} = withoutWholeValues(given);
  const brief = holdingShape(free, deadline && {deadline});
  const formulation = formulateWithoutAim(brief);
  const sampled = isTemperature(x.subject) || isTemperature(y.subject);
  const front = yield* (sampled ? sampledFront : exactFront)(brief, formulation, x, y, deadline);
  if (!("points" in front)) return front;
  return {
    status: "front",
    x,
    y,
    points: describeFront(free, formulation, front.points),
    exact: !sampled,
    error: front.error,
    leftOut,
  };
}
