import {finite} from "../core/numbers.ts";
import {expectList, oneOf} from "../core/shape.ts";
import type {Composition} from "../pantry/parts.ts";
import {firmness, firmnessReference, USUAL_OVERRUN} from "./firmness.ts";
import {FIRMNESS, SCATTER, SCOOPED} from "./firmness-table.ts";
import type {Learned} from "./learned.ts";

/** Findings on how a batch scooped. */
export const FOUND = ["too soft", "right", "too hard"] as const;

/** Report of a cook on one batch. */
export interface FirmnessReport {
  readonly composition: Composition;
  /** Temperature throughout the tub when it was scooped, °C: that of the freezer, or `temperatureAfter` some minutes. */
  readonly temperature: number;
  /** %; 30 by default. */
  readonly overrun?: number;
  readonly found: (typeof FOUND)[number];
}

/**
 * Belief about a kitchen before it reports: that its reference is the book's, within 4 g per 100 g (the error of the
 * index and a degree of the freezer's thermometer), and that batches scatter by a factor of 1.4 in hardness, which itself may
 * be off by half.
 */
const PRIOR = {shift: 4, scatter: Math.log(1.5)} as const;

/** Share of reports that are taken to say nothing: a tub mixed up, a freezer door left open. */
const SLIPS = 0.02;

/** Half of the ln of the hardness range that is found right. */
const HALF = Math.log(SCOOPED[1] / SCOOPED[0]) / 2;

/** Shifts, g per 100 g, and scatters of ln hardness at which the posterior is worked out. */
const SHIFTS = Array.from({length: 121}, (_, i) => (i - 60) / 3);
const SCATTERS = Array.from({length: 15}, (_, i) => SCATTER * Math.exp(((i - 7) / 2.5) * PRIOR.scatter));

/**
 * Lesson of reports on batches: the shift of the reference and the scatter of the batches, as the posterior over the stated
 * prior (Bayes's rule on a grid). A tub is found right while its hardness, with the scatter of its batch, lies in the range
 * that was measured on scooped ice cream. Reports that agree narrow the band, those that contradict each other widen it.
 *
 * @param log the reports, in any order; none leaves everything as it is
 * @throws InputError for a temperature below -40 °C, an overrun out of range or words that are not known
 *
 * @example
 * ```ts
 * const composition = {water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17};
 * const learned = calibrate([{composition, temperature: -18, found: "right"}]);
 * learned.shift > 0; // => true
 * ```
 */
export function calibrate(log: readonly FirmnessReport[]): Learned {
  expectList(
    log,
    {composition: "object", temperature: "number", found: "text"},
    "reports",
    'give {composition, temperature, overrun, found: "right"} for each',
  );
  if (log.length === 0) return {reports: 0, shift: 0, narrowing: 1, scatter: SCATTER};
  const seen = log.map(({composition, temperature, overrun = USUAL_OVERRUN, found}, i) => {
    oneOf(found, FOUND, `reports[${i}].found`, "finding");
    finite(temperature, `reports[${i}].temperature`, {min: -40, max: 0}, "°C");
    return {over: firmness(composition, temperature) - firmnessReference(overrun), found};
  });
  let [total, first, second, spread] = [0, 0, 0, 0];
  for (const scatter of SCATTERS) {
    const doubt = Math.log(scatter / SCATTER) / PRIOR.scatter;
    for (const shift of SHIFTS) {
      let weight = Math.exp(-((shift / PRIOR.shift) ** 2 + doubt ** 2) / 2);
      for (const {over, found} of seen) weight *= chance(found, FIRMNESS.slope * (over - shift), scatter);
      total += weight;
      first += weight * shift;
      second += weight * shift ** 2;
      spread += weight * scatter ** 2;
    }
  }
  const shift = first / total;
  const left = Math.sqrt(Math.max(0, second / total - shift ** 2));
  return {
    reports: log.length,
    shift,
    narrowing: left / PRIOR.shift,
    scatter: Math.sqrt(spread / total),
  };
}

/** Chance that a tub of a ln of hardness over the reference is found so. */
function chance(found: FirmnessReport["found"], hardness: number, scatter: number): number {
  const [below, above] = [normal((-HALF - hardness) / scatter), normal((HALF - hardness) / scatter)];
  const plain = found === "too soft" ? below : found === "right" ? above - below : 1 - above;
  return SLIPS / FOUND.length + (1 - SLIPS) * plain;
}

/** Standard normal distribution, within 2e-7 (M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 7.1.26). */
function normal(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const series =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = (series * Math.exp(-x * x)) / 2;
  return z < 0 ? tail : 1 - tail;
}
