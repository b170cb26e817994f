import {tenth} from "../core/format.ts";
import {finite, sum} from "../core/numbers.ts";
import {rootBetween} from "../core/roots.ts";
import {readComposition} from "../pantry/composition.ts";
import type {Composition} from "../pantry/parts.ts";
import {COLDEST} from "./held-water.ts";
import {hardPhase, iceFunction} from "./ice.ts";
import {solidFatIn} from "./solid-fat.ts";
import {HARD_MIXES} from "./tables.ts";

/** Temperatures at which hard ice cream is dipped, °C (common practice, no source). */
export const DIPPING = {from: -14, to: -12} as const;

/** Middle of the temperatures at which hard ice cream is dipped, -14 to -12 °C (common practice, no source). */
export const DIPPING_TEMPERATURE = (DIPPING.from + DIPPING.to) / 2;

/**
 * How firm a mix is at a temperature, in plain words. One that is nowhere as hard as the reference `never hardens`, at whatever
 * temperature.
 */
export type Verdict = "soft" | "scoops" | "firm" | "hard" | "never hardens";

/** Where a mix scoops, °C; empty for a mix that is never as hard as the reference between -40 and 40 °C. */
export interface ScoopTemperature {
  /** Where the hard phase is the reference, to the last digit: limits speak of it. */
  readonly temperature?: number;
  /** Coldest temperature at which it scoops, to a tenth of a degree; absent where that is below -40 °C. */
  readonly low?: number;
  /** Warmest temperature at which it scoops, to a tenth of a degree. */
  readonly high?: number;
}

/** Where a mix scoops, and what it is in a freezer. */
export interface Scooping extends ScoopTemperature {
  /** °C. */
  readonly freezer: number;
  /** In that freezer. */
  readonly verdict: Verdict;
}

/** Hard phase of the published mixes where they are dipped. */
export interface ReferenceHardPhase {
  /** Mean of the mixes, g per 100 g. */
  readonly mean: number;
  /** Standard deviation of the mixes, g per 100 g. */
  readonly spread: number;
}

/** The seven published mixes that calibrate the scoop temperature, as compositions (`datasets/hard_mixes.csv`). */
export const PUBLISHED_HARD_MIXES: readonly {readonly name: string; readonly composition: Composition}[] =
  HARD_MIXES.map(({name, parts}) => ({name, composition: readComposition(parts, name)}));

let reference: ReferenceHardPhase | undefined;

/**
 * The reference of the scoop temperature: mean and spread of the hard phase of seven published hard-ice-cream mixes
 * (H. D. Goff, Ice Cream Technology, University of Guelph e-book, suggested mixes) at -13 °C.
 *
 * @example
 * ```ts
 * const {mean, spread} = referenceHardPhase();
 * spread < mean / 10; // => true
 * ```
 */
export function referenceHardPhase(): ReferenceHardPhase {
  if (!reference) {
    const values = PUBLISHED_HARD_MIXES.map(({composition}) => hardPhase(composition, DIPPING_TEMPERATURE));
    const mean = sum(values) / values.length;
    const spread = Math.sqrt(sum(values.map((d) => (d - mean) ** 2)) / (values.length - 1));
    reference = {mean, spread};
  }
  return reference;
}

/**
 * Temperature at which a mix is as hard as the published mixes are when dipped, with the band of temperatures at which it
 * is said to scoop (see {@link verdictAt}).
 *
 * An estimate: it leaves out overrun (more air scoops colder), crystal size and stabiliser.
 *
 * @example
 * ```ts
 * scoopTemperature({water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17})
 *   .temperature; // => -15
 * ```
 */
export function scoopTemperature(composition: Composition): ScoopTemperature {
  return endsOf(thresholds(composition));
}

function endsOf({temperature, low, high}: Thresholds): ScoopTemperature {
  return {
    ...(temperature !== undefined && {temperature}),
    ...(low !== undefined && {low}),
    ...(high !== undefined && {high}),
  };
}

/**
 * Where a mix scoops, and what it is in a freezer.
 *
 * @param freezer °C, -40 or above
 * @throws InputError below -40 °C
 *
 * @example
 * ```ts
 * scooping({water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17}, -18).verdict; // => "scoops"
 * ```
 */
export function scooping(composition: Composition, freezer: number): Scooping {
  const ends = thresholds(composition);
  return {...endsOf(ends), freezer, verdict: verdictFrom(ends, freezer)};
}

/** Hard phases between which a verdict holds, g per 100 g; the first has no lower and the last no upper end. */
export interface VerdictBand {
  readonly verdict: Exclude<Verdict, "never hardens">;
  readonly from: number;
  readonly to: number;
}

/**
 * The bands of the verdicts, from soft to hard: a mix `scoops` within two spreads of the reference (all seven published mixes
 * do at -13 °C), is `soft` below that, `firm` for two spreads more, and `hard` above. Where to draw these lines is our own
 * choice; the scale is that of the published mixes. The ends themselves scoop, or are firm (see {@link verdictAt}).
 *
 * @example
 * ```ts
 * verdictBands().map(({verdict}) => verdict); // => ["soft", "scoops", "firm", "hard"]
 * ```
 */
export function verdictBands(): readonly VerdictBand[] {
  const {mean, spread} = referenceHardPhase();
  const [soft, scoops, firm] = [mean - 2 * spread, mean + 2 * spread, mean + 4 * spread];
  return [
    {verdict: "soft", from: -Infinity, to: soft},
    {verdict: "scoops", from: soft, to: scoops},
    {verdict: "firm", from: scoops, to: firm},
    {verdict: "hard", from: firm, to: Infinity},
  ];
}

/**
 * How firm a mix is at a temperature, in plain words. It `scoops` from `low` to `high` of its {@link scoopTemperature},
 * both included, is `soft` where it is warmer, and `firm` or `hard` where it is colder (see {@link verdictBands}).
 *
 * Temperatures are compared to a tenth of a degree, as they are printed, so that no two words about one mix differ.
 *
 * @param temperature °C, -40 or above
 * @throws InputError below -40 °C
 *
 * @example
 * ```ts
 * verdictAt({water: 95, sucrose: 5}, -18); // => "hard"
 * ```
 */
export function verdictAt(composition: Composition, temperature: number): Verdict {
  return verdictFrom(thresholds(composition), temperature);
}

function verdictFrom({low, high, firm}: Thresholds, temperature: number): Verdict {
  const at = tenth(finite(temperature, "temperature", {min: COLDEST}, "°C"));
  if (high === undefined) return "never hardens";
  if (at > high) return "soft";
  if (low === undefined || at >= low) return "scoops";
  return firm === undefined || at >= firm ? "firm" : "hard";
}

/** The scoop temperature, and the temperatures between the verdicts to a tenth of a degree; none for a mix that never hardens. */
interface Thresholds extends ScoopTemperature {
  /** Where it is no longer firm but hard. */
  readonly firm?: number;
}

function thresholds(composition: Composition): Thresholds {
  const iceAt = iceFunction(composition);
  // The hard phase only falls on warming.
  const where = (grams: number) =>
    rootBetween((t) => iceAt(t) + solidFatIn(composition, t) - grams, COLDEST, 40);
  const {mean, spread} = referenceHardPhase();
  const temperature = where(mean);
  if (temperature === undefined) return {};
  const edge = (name: "high" | "low" | "firm", spreads: number) => {
    const at = where(mean + spreads * spread);
    return at === undefined ? {} : {[name]: tenth(at)};
  };
  return {temperature, ...edge("high", -2), ...edge("low", 2), ...edge("firm", 4)};
}
