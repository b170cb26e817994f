import type {Answer} from "../balance/mix/answer.ts";
import type {Brief} from "../balance/brief/brief.ts";
import {pricesOf} from "../balance/explain/prices.ts";
import {reliability} from "../balance/weigh/reliability.ts";
import {weighable} from "../balance/weigh/weighable.ts";
import type {Deadline} from "../lp/program/deadline.ts";
import {InputError} from "../core/errors.ts";
import {numberOf, type Options} from "./arguments.ts";

/**
 * Extras that the options ask for beside the answer, within the time that is left.
 *
 * @throws InputError for a `--scale` that is no number from 0.01 to 1000 g, and `--reliability` of a brief without a spread
 */
export function extras(
  brief: Brief,
  {amounts}: Extract<Answer, {status: "optimal"}>,
  options: Options,
  time: Deadline,
) {
  const grams = amounts.map((amount) => amount.grams);
  const left = () => ({deadline: Math.max(1, time.left())});
  return {
    ...(options.explain && {prices: pricesOf(brief, left())}),
    ...((options.weighable || options.scale !== undefined) && {
      weighable: weighable(brief, grams, {
        scale: numberOf("--scale", options.scale ?? "1", 0.01, 1000),
        ...left(),
      }),
    }),
    ...(options.reliability && {reliability: reliability(brief, grams, spreadOf(brief), left())}),
  };
}

function spreadOf({spread}: Brief) {
  if (spread) return spread;
  throw new InputError(
    "--reliability",
    "the brief has no spread",
    undefined,
    'say how far the kitchen may be off, e.g. "spread": {"weighing": 1}',
  );
}
