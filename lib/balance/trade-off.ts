import {finish, type Steps} from "./in-chunks.ts";
import {type AxisInput, isTemperature, readAxis} from "./axis.ts";
import type {MixReport} from "./answer.ts";
import type {Aim, Brief} from "./brief.ts";
import {limitsOnly} from "./mix-program.ts";
import {exactFront} from "./exact-front.ts";
import type {FrontMix} from "./front-mix.ts";
import {describeFront} from "./front-mix.ts";
import {sampledFront} from "./sampled-front.ts";
import type {Met, Turnover} from "./turnover.ts";
import {withoutWholeValues} from "./without-whole-values.ts";

/** The two things to weigh against each other, in the words of {@link AxisInput}. */
export interface TradeOffAxes {
  readonly x: AxisInput;
  readonly y: AxisInput;
}

/** A mix that nothing beats: whatever is better in one respect is worse in the other. */
export interface FrontPoint {
  /** In the unit of the axis. */
  readonly x: number;
  readonly y: number;
  readonly mix: MixReport;
  /** Limits that the mix meets exactly. */
  readonly binding: readonly Met[];
  /** What is different from the point before; absent in the first. */
  readonly turnover?: Turnover;
}

/** All that can be had of two things at once. */
export type TradeOff =
  | {
      readonly status: "front";
      readonly x: Aim;
      readonly y: Aim;
      /** From the best in `x` to the best in `y`; one point where a single mix is best in both. */
      readonly points: readonly FrontPoint[];
      /**
       * Whether the points are the corners of the front and the lines between them the front itself: every mix of two
       * neighbours' recipes then lies on it.
       */
      readonly exact: boolean;
      /**
       * How far the front may be from those lines, in the unit of `y`: for an exact front what rounding leaves, otherwise
       * the largest distance found where it was checked, midway between two points (an estimate, no bound).
       */
      readonly error: number;
      /** Rules in whole numbers that were left out, so that the front is what no mix with them can pass. */
      readonly leftOut: readonly string[];
    }
  | {readonly status: "infeasible" | "undecided"; readonly reason: string};

/**
 * What must be given up of one thing for more of another: the Pareto front of a brief between any two of its cost, a
 * quantity, a property, ice, hard phase, heat shock, freezing point and scoop temperature.
 *
 * Between weighted sums the front is exact (see `cornersBetween`): no mix lies beyond it by more than 1e-8 of its width
 * and height. Where a freezing point or scoop temperature takes part, it is found at temperatures chosen where it bends,
 * each point of it exact. What the brief itself minimises does not count.
 *
 * @throws InputError for an axis not understood, or a price or property that an ingredient lacks
 */
export function tradeOff(brief: Brief, axes: TradeOffAxes): TradeOff {
  return finish(tradeOffSteps(brief, axes));
}

/** {@link tradeOff} in steps, one for each linear program, for `inChunks`. */
export function* tradeOffSteps(given: Brief, axes: TradeOffAxes): Steps<TradeOff> {
  const x = readAxis(axes.x, given.ingredients, "x");
  const y = readAxis(axes.y, given.ingredients, "y");
  const {brief, leftOut} = withoutWholeValues(given);
  const formulation = limitsOnly(brief);
  const sampled = isTemperature(x.subject) || isTemperature(y.subject);
  const front = yield* (sampled ? sampledFront : exactFront)(brief, formulation, x, y);
  if (!("points" in front)) return front;
  return {
    status: "front",
    x,
    y,
    points: describeFront(brief, formulation, front.points),
    exact: !sampled,
    error: front.error,
    leftOut,
  };
}

/** A front before it is described, or why there is none. */
export type RawFront =
  | {readonly points: readonly FrontMix[]; readonly error: number}
  | {readonly status: "infeasible" | "undecided"; readonly reason: string};
