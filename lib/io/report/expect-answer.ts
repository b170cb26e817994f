import type {Answer} from "../../balance/mix/answer.ts";
import {InputError} from "../../core/errors.ts";
import {expectShape} from "../../core/shape.ts";

/** Keys that an answer must have, by its status. */
const SHAPES = {
  optimal: {amounts: "list", shares: "object", freezing: "object", scoop: "object", binding: "list"},
  infeasible: {conflict: "object"},
  unbounded: {reason: "text"},
  undecided: {reason: "text"},
} as const;

/** Refuses anything but an answer. */
export function expectAnswer(value: Answer): void {
  const advice = "give what balance(brief) returned";
  expectShape(value, {status: "text"}, "answer", advice);
  if (!Object.hasOwn(SHAPES, value.status)) throw new InputError("answer", "not an answer", value, advice);
  expectShape(value, SHAPES[value.status], "answer", advice);
}
