import {sum} from "../../core/numbers.ts";
import type {Candidate} from "../substitute/substitution-problem.ts";

/** An ingredient with the amount that it is to have, g. */
export interface Made {
  readonly candidate: Candidate;
  readonly grams: number;
}

/** Amounts from which on weights are to 5 g, and below which to 0.1 g, in g. */
const [COARSE, FINE] = [500, 10];

/** Rounding error allowed in a whole step, as a share of it. */
const ROOM = 1e-6;

/**
 * Amounts as a cook weighs them: to 5 g from 500 g on, to 1 g below, to 0.1 g below 10 g, each within its limits. Amounts that do
 * not move stay as they are, and the largest that moves takes up the rounding, so that the mass is kept.
 *
 * @param step factor on these steps: 1, or 0.1 for a tenth of each
 * @returns `undefined` where the rest is beyond its limits
 */
export function weighed(made: readonly Made[], batch: number, step: number): readonly Made[] | undefined {
  const rounded = made.map(({candidate, grams}) => {
    const {before, min = 0, max} = candidate;
    const unit = step * (grams >= COARSE ? 5 : grams >= FINE ? 1 : 0.1);
    if (Math.abs(grams - before) < unit / 2) return {candidate, grams: before, stays: true};
    const [least, most] = [Math.ceil(min / unit - ROOM), Math.floor(max / unit + ROOM)];
    const steps = Math.min(most, Math.max(least, Math.round(grams / unit)));
    return {candidate, grams: Number((steps * unit).toFixed(6)), stays: false};
  });
  const [largest] = rounded.filter(({stays}) => !stays).sort((a, b) => b.grams - a.grams);
  if (!largest) return rounded;
  const rest = Number((largest.grams + batch - sum(rounded.map(({grams}) => grams))).toFixed(9));
  const {min = 0, max} = largest.candidate;
  if (rest < min - ROOM || rest > max + ROOM) return undefined;
  return rounded.map((one) => (one === largest ? {...one, grams: rest} : one));
}
