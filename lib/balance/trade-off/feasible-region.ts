import {expectOptions} from "../../core/shape.ts";
import {type Deadline, deadlineOf, type TimeOptions} from "../../lp/program/deadline.ts";
import {amountsOf} from "../mix/amounts.ts";
import type {Amount} from "../mix/answer.ts";
import {type AxisInput, readAxes} from "../read/axis.ts";
import type {Brief} from "../brief/brief.ts";
import {briefOf, type BriefSource} from "../read/brief-of.ts";
import type {Point} from "./hull.ts";
import {finish, type Steps} from "../../core/in-chunks.ts";
import {exactOutline} from "./exact-outline.ts";
import {slicedOutline} from "./sliced-outline.ts";
import type {Subject} from "../measure/measures.ts";
import {isTemperature} from "../measure/of-subject.ts";
import {withoutWholeValues} from "../program/without-whole-values.ts";

/** Axes of a region, in the words of {@link AxisInput}; their better direction does not matter. */
export interface RegionAxes {
  readonly x: AxisInput;
  readonly y: AxisInput;
}

/** A corner of a region, with a mix that reaches it. */
export interface RegionPoint extends Point {
  readonly amounts: readonly Amount[];
}

/** All pairs of values of two things that the mixes of a brief have. */
export type Region =
  | {
      readonly status: "region";
      readonly x: Subject;
      readonly y: Subject;
      /** Anticlockwise; two for a line, one for a single pair. */
      readonly corners: readonly RegionPoint[];
      /** Whether the polygon is the region itself. */
      readonly exact: boolean;
      /** Largest distance of the region from the polygon, as a share of its width and height (see `TradeOff`). */
      readonly error: number;
      /** Rules in whole numbers that were left out: with them only some of these pairs are reached. */
      readonly leftOut: readonly string[];
    }
  | {readonly status: "infeasible" | "undecided"; readonly reason: string};

/**
 * The pairs of two things that the mixes of a brief can have, as a polygon.
 *
 * Of two weighted sums the region is convex and the polygon exact: each corner is the mix that lies farthest in some
 * direction, and no mix lies outside by more than 1e-8 of its width and height (see `cornersOf`). With a freezing point
 * or scoop temperature on one side it is cut into slices along that, each with its exact ends. Ice, hard phase and heat
 * shock are those of mixes that still have ice at their (warmest) temperature.
 *
 * @param options with a `deadline`, past which the answer is `undecided`
 * @throws InputError for an axis not understood, a price or property that an ingredient lacks, or two temperatures
 *
 * @example
 * ```ts
 * const brief = readBrief(
 *   {
 *     ingredients: [
 *       {name: "whole milk", price: 1},
 *       {name: "cream 40 %", price: 5},
 *       {name: "sucrose", price: 1},
 *     ],
 *     targets: {sugars: {min: 10, max: 20}},
 *   },
 *   includedPantry(),
 * );
 * const region = feasibleRegion(brief, {x: "fat", y: "sugars"});
 * region.status === "region" && region.corners.map(({x, y}) => [x, y]); // => [[2.9, 10], [36, 10], [32, 20], [2.6, 20]]
 * ```
 */
export function feasibleRegion(source: BriefSource, axes: RegionAxes, options: TimeOptions = {}): Region {
  return finish(feasibleRegionSteps(source, axes, options));
}

/**
 * {@link feasibleRegion} in steps, one for each linear program, for `inChunks`.
 *
 * @example
 * ```ts
 * const brief = readBrief(
 *   {
 *     ingredients: [
 *       {name: "whole milk", price: 1},
 *       {name: "cream 40 %", price: 5},
 *       {name: "sucrose", price: 1},
 *     ],
 *     targets: {sugars: {min: 10, max: 20}},
 *   },
 *   includedPantry(),
 * );
 * const region = await inChunks(feasibleRegionSteps(brief, {x: "fat", y: "sugars"}));
 * region.status; // => "region"
 * ```
 */
export function* feasibleRegionSteps(
  source: BriefSource,
  axes: RegionAxes,
  options: TimeOptions = {},
): Steps<Region> {
  const given = briefOf(source);
  expectOptions(options, ["deadline", "now"]);
  return yield* regionBefore(deadlineOf(options), given, axes);
}

/** The region, or `undecided` past a deadline; in steps. */
export function* regionBefore(deadline: Deadline | undefined, given: Brief, axes: RegionAxes): Steps<Region> {
  const {x, y} = readAxes(axes, given.ingredients);
  const {brief, leftOut} = withoutWholeValues(given);
  const sliced = isTemperature(x.subject) || isTemperature(y.subject);
  const outline = yield* (sliced ? slicedOutline : exactOutline)(brief, x, y, deadline);
  if ("status" in outline) return outline;
  return {
    status: "region",
    x: x.subject,
    y: y.subject,
    corners: outline.corners.map(({x, y, shares}) => ({x, y, amounts: amountsOf(brief, shares)})),
    exact: !sliced,
    error: outline.error,
    leftOut,
  };
}
