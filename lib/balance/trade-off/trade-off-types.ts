import type {MixReport} from "../mix/answer.ts";
import type {AxisInput} from "../read/axis.ts";
import type {Aim} from "../brief/brief.ts";
import type {BindingLimit, Turnover} from "../mix/changes-between.ts";

/** The two things to weigh against each other, in the words of {@link AxisInput}. */
export interface TradeOffAxes {
  readonly x: AxisInput;
  readonly y: AxisInput;
}

/** A mix that no other beats: any mix that is better in one respect is worse in the other. */
export interface FrontPoint {
  /** In the unit of the axis. */
  readonly x: number;
  readonly y: number;
  readonly mix: MixReport;
  /** Limits that the mix meets exactly. */
  readonly binding: readonly BindingLimit[];
  /** Differences from the point before; absent in the first. */
  readonly turnover?: Turnover;
}

/** The front of two things: the best of one for each value of the other. */
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
       * Largest distance of the front from those lines, as a share of its width and height: 1e-8 for an exact front, otherwise the
       * largest distance found where it was checked, in the middle between two points (an estimate, no bound).
       */
      readonly error: number;
      /** Rules in whole numbers that were left out; no mix that keeps them lies beyond the front. */
      readonly leftOut: readonly string[];
    }
  | {readonly status: "infeasible" | "undecided"; readonly reason: string};
