import {finite, positive} from "../core/numbers.ts";
import {expectShape} from "../core/shape.ts";

/** Lesson of a kitchen's own reports about when its tubs scoop. Plain data, to be kept in a file. */
export interface Learned {
  /** Reports that it rests on. */
  readonly reports: number;
  /** Firmness by which the reference is shifted, g per 100 g: above 0, this kitchen scoops what the book calls firm. */
  readonly shift: number;
  /** Share of the earlier spread that is left, 0 to 10: 1 with no reports. */
  readonly narrowing: number;
  /** Scatter of the ln of hardness from batch to batch, above 0. */
  readonly scatter: number;
}

/**
 * Refuses a lesson that a brief would refuse too.
 *
 * @throws InputError naming the number that is not finite or out of range
 */
export function expectLearned(learned: Learned): void {
  const advice = "give what calibrate(reports) returned";
  const keys = {reports: "number", shift: "number", narrowing: "number", scatter: "number"} as const;
  expectShape(learned, keys, "learned", advice);
  finite(learned.reports, "learned.reports", {min: 0});
  finite(learned.shift, "learned.shift");
  finite(learned.narrowing, "learned.narrowing", {min: 0, max: 10});
  positive(learned.scatter, "learned.scatter");
}
