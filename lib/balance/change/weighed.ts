import {sum} from "../../core/numbers.ts";
import type {Candidate} from "../substitute/substitution-problem.ts";

/** From so many g on amounts are weighed to 5 g, and below so many to a tenth. */
const [COARSE, FINE] = [500, 10];

/**
 * Amounts as a cook weighs them: to 5 g from 500 g on, to 1 g below, to 0.1 g below 10 g. What does not move stays as it is, and the
 * largest of what moves takes the rest, so that the mass is kept.
 *
 * @param made candidates with their amounts as `max`, g
 * @param step what a whole step counts: 1, or 0.1 for a tenth of each
 * @returns `undefined` where the rest is less than nothing
 */
export function weighed(
  made: readonly Candidate[],
  batch: number,
  step: number,
): readonly Candidate[] | undefined {
  const rounded = made.map((candidate) => {
    const unit = step * (candidate.max >= COARSE ? 5 : candidate.max >= FINE ? 1 : 0.1);
    const stays = Math.abs(candidate.max - candidate.before) < unit / 2;
    const grams = stays ? candidate.before : Number((Math.round(candidate.max / unit) * unit).toFixed(6));
    return {...candidate, max: grams, stays};
  });
  const rest = batch - sum(rounded.map(({max}) => max));
  const [largest] = rounded.filter(({stays}) => !stays).sort((a, b) => b.max - a.max);
  if (!largest) return made.map((candidate) => ({...candidate, max: candidate.before}));
  const grams = Number((largest.max + rest).toFixed(9));
  if (grams < 0) return undefined;
  return rounded.map((candidate) => (candidate === largest ? {...candidate, max: grams} : candidate));
}
