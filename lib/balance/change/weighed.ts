import {sum} from "../../core/numbers.ts";
import type {Candidate} from "../substitute/substitution-problem.ts";

/** An ingredient with the amount that it is to have, g. */
export interface Made {
  readonly candidate: Candidate;
  readonly grams: number;
}

/** From so many g on amounts are weighed to 5 g, and below so many to a tenth. */
const [COARSE, FINE] = [500, 10];

/** What rounding leaves of a whole step. */
const ROOM = 1e-6;

/**
 * Amounts as a cook weighs them: to 5 g from 500 g on, to 1 g below, to 0.1 g below 10 g, each within its limits. What does not move
 * stays as it is, and the largest of what moves takes the rest, so that the mass is kept.
 *
 * @param step what a whole step counts: 1, or 0.1 for a tenth of each
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
