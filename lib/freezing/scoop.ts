import {tenth} from "../core/format.ts";
import {finite} from "../core/numbers.ts";
import {rootBetween} from "../core/roots.ts";
import {expectOptions} from "../core/shape.ts";
import {readComposition} from "../pantry/composition.ts";
import {expectComposition} from "../pantry/expect.ts";
import type {Composition} from "../pantry/parts.ts";
import {
  FIRMNESS_OPTIONS,
  firmnessFunction,
  type FirmnessOptions,
  firmnessReference,
  USUAL_OVERRUN,
} from "./firmness.ts";
import {firmnessBand, fitError} from "./firmness-band.ts";
import {FIRMNESS, SCOOPED} from "./firmness-table.ts";
import {COLDEST} from "./held-water.ts";
import {initialFreezingPoint} from "./ice.ts";
import {type Softener, softenedBy} from "./softened-by.ts";
import {HARD_MIXES} from "./tables.ts";

/** Temperatures at which hard ice cream is dipped, °C (common practice, no source). */
export const DIPPING = {from: -14, to: -12} as const;

/** Middle of the temperatures at which hard ice cream is dipped, -14 to -12 °C (common practice, no source). */
export const DIPPING_TEMPERATURE = (DIPPING.from + DIPPING.to) / 2;

/** Coldest scoop temperature that is given, °C: a mix that is softer even there never hardens. No tub is served so cold, and the index was fitted to none. */
export const COLDEST_SCOOP = -30;

/**
 * Firmness of a mix at a temperature, in plain words. One that is nowhere as hard as a tub that scoops `never hardens`, at
 * whatever temperature.
 */
export type Verdict = "soft" | "scoops" | "firm" | "hard" | "never hardens";

/** Scoop temperature of a mix, °C; empty for a mix that is not as hard as that at -30 °C. */
export interface ScoopTemperature {
  /** Temperature at which the firmness is the reference, to the last digit: limits speak of it. */
  readonly temperature?: number;
  /** Coldest temperature at which it scoops, to a tenth of a degree; absent where that is below -40 °C. */
  readonly low?: number;
  /** Warmest temperature at which it scoops, to a tenth of a degree. */
  readonly high?: number;
  /** Error of the temperature, one standard deviation, °C. */
  readonly error?: number;
  /** Reason why the temperature is not to be trusted: the mix holds no ice at all, or is unlike any that was measured. */
  readonly unsure?: "no ice" | "unlike any";
}

/** Scoop temperature of a mix, and its verdict in a freezer. */
export interface Scooping extends ScoopTemperature {
  /** °C. */
  readonly freezer: number;
  /** Air beaten in, % of the mix's volume. */
  readonly overrun: number;
  /** In that freezer. */
  readonly verdict: Verdict;
  /** For a mix that is too soft there: what softens it most. */
  readonly softenedBy?: Softener;
}

/** The seven published mixes of hard ice cream, as compositions (`datasets/hard_mixes.csv`). */
export const PUBLISHED_HARD_MIXES: readonly {readonly name: string; readonly composition: Composition}[] =
  HARD_MIXES.map(({name, parts}) => ({name, composition: readComposition(parts, name)}));

/**
 * Temperature at which a tub scoops, with the temperatures between which it does (see {@link verdictAt}) and how far all of them may
 * be off: by what the index misses in a class of dessert that it has not seen (more for a mix far from all it has seen), the
 * spread of its parameters, what is not known of the ice, and the scatter of the process, a factor of 1.4 in hardness.
 *
 * Crystal size and stabiliser are left out.
 *
 * @throws InputError for an overrun, or a number of `learned`, out of range
 *
 * @example
 * ```ts
 * scoopTemperature({water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17})
 *   .temperature; // => -12
 * ```
 */
export function scoopTemperature(composition: Composition, options: FirmnessOptions = {}): ScoopTemperature {
  return endsOf(thresholds(composition, options));
}

function endsOf({temperature, low, high, error, unsure}: Thresholds): ScoopTemperature {
  return {
    ...(unsure && {unsure}),
    ...(temperature !== undefined && {temperature}),
    ...(low !== undefined && {low}),
    ...(high !== undefined && {high}),
    ...(error !== undefined && {error}),
  };
}

/**
 * Scoop temperature of a mix, and its verdict in a freezer.
 *
 * @param freezer °C, -40 or above
 * @throws InputError below -40 °C and for an overrun, or a number of `learned`, out of range
 *
 * @example
 * ```ts
 * scooping({water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17}, -18).verdict; // => "hard"
 * ```
 */
export function scooping(composition: Composition, freezer: number, options: FirmnessOptions = {}): Scooping {
  const ends = thresholds(composition, options);
  const {overrun = USUAL_OVERRUN} = options;
  const verdict = verdictFrom(ends, freezer);
  const tooSoft = verdict === "soft" || verdict === "never hardens";
  const softener = tooSoft ? softenedBy(composition, Math.min(freezer, -0.1)) : undefined;
  return {...endsOf(ends), freezer, overrun, verdict, ...(softener && {softenedBy: softener})};
}

/** Firmness between which a verdict holds, g per 100 g; the first has no lower and the last no upper end. */
export interface VerdictBand {
  readonly verdict: Exclude<Verdict, "never hardens">;
  readonly from: number;
  readonly to: number;
}

/** Half of the ln of the hardness range that is scooped. */
const HALF = Math.log(SCOOPED[1] / SCOOPED[0]) / 2;

/**
 * The bands of the verdicts as firmness, g per 100 g, from soft to hard: a tub `scoops` while its hardness is within the range
 * that was measured on scooped ice cream (a factor of 1.8 either way of the reference), is `soft` below, `firm` until it is twice
 * as hard as the stiffest that is scooped, and `hard` beyond, where a spoon bends. That factor of two is our own choice.
 *
 * @throws InputError for an overrun, or a number of `learned`, out of range
 *
 * @example
 * ```ts
 * verdictBands().map(({verdict}) => verdict); // => ["soft", "scoops", "firm", "hard"]
 * ```
 */
export function verdictBands(options: FirmnessOptions = {}): readonly VerdictBand[] {
  expectOptions(options, FIRMNESS_OPTIONS);
  const reference = firmnessReference(options.overrun, options.learned);
  const at = (ln: number) => reference + ln / FIRMNESS.slope;
  const [soft, scoops, firm] = [at(-HALF), at(HALF), at(HALF + Math.LN2)];
  return [
    {verdict: "soft", from: -Infinity, to: soft},
    {verdict: "scoops", from: soft, to: scoops},
    {verdict: "firm", from: scoops, to: firm},
    {verdict: "hard", from: firm, to: Infinity},
  ];
}

/**
 * Firmness of a mix at a temperature, in plain words. It `scoops` from `low` to `high` of its {@link scoopTemperature},
 * both included, is `soft` where it is warmer, and `firm` or `hard` where it is colder (see {@link verdictBands}).
 *
 * Temperatures are compared to a tenth of a degree, as they are printed, so that no two words about one mix differ.
 *
 * @param temperature °C, -40 or above
 * @throws InputError below -40 °C and for an overrun, or a number of `learned`, out of range
 *
 * @example
 * ```ts
 * verdictAt({water: 95, sucrose: 5}, -18); // => "hard"
 * ```
 */
export function verdictAt(
  composition: Composition,
  temperature: number,
  options: FirmnessOptions = {},
): Verdict {
  return verdictFrom(thresholds(composition, options), temperature);
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
  /** Temperature below which it is no longer firm but hard. */
  readonly firm?: number;
}

function thresholds(composition: Composition, options: FirmnessOptions): Thresholds {
  expectComposition(composition);
  const [soft, scoops, firm] = verdictBands(options).map(({to}) => to) as [number, number, number];
  const {overrun = USUAL_OVERRUN, learned} = options;
  const at = firmnessFunction(composition);
  const where = (index: number) => rootBetween((t) => at(t) - index, COLDEST, 40);
  const temperature = where(firmnessReference(overrun, learned));
  if (temperature === undefined || temperature < COLDEST_SCOOP) return {};
  const edge = (name: "high" | "low" | "firm", index: number) => {
    const there = where(index);
    return there === undefined ? {} : {[name]: tenth(there)};
  };
  const steep = (at(temperature - STEP) - at(temperature + STEP)) / (2 * STEP);
  const band = firmnessBand(composition, temperature, overrun, learned);
  const error = Math.hypot(band / steep, fitError(composition, temperature, overrun, learned));
  const unsure =
    error > MOST_ERROR && (initialFreezingPoint(composition) === undefined ? "no ice" : "unlike any");
  return {
    temperature,
    error,
    ...(unsure && {unsure}),
    ...edge("high", soft),
    ...edge("low", scoops),
    ...edge("firm", firm),
  };
}

/**
 * Error beyond which a scoop temperature says nothing, °C: the temperatures at which tubs are served lie within it. The seven
 * published mixes have 1.5. Our own choice.
 */
const MOST_ERROR = 5;

/** Temperature difference for a slope along temperature, °C. */
const STEP = 0.05;
