import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {expectList} from "../../core/shape.ts";

/** A published pair of temperature and time that makes an ice-cream mix safe. */
export interface HeatPair {
  /** Least temperature of all of the mix, °C. */
  readonly temperature: number;
  /** Least time at or above it, s. */
  readonly seconds: number;
  readonly country: "UK" | "US";
  readonly source: string;
}

const UK_SOURCE =
  "Ice-Cream (Heat Treatment) schedule, SI 1995/1086 and SI 1995/1372 Schedule 6 (UK), revoked, guidance";
const US_SOURCE = "21 CFR 135.3 (US)";

/** The published pairs. They are never interpolated: between two of them nothing is published. */
export const HEAT_PAIRS: readonly HeatPair[] = [
  {temperature: 65.6, seconds: 30 * 60, country: "UK", source: UK_SOURCE},
  {temperature: 71.1, seconds: 10 * 60, country: "UK", source: UK_SOURCE},
  {temperature: 79.4, seconds: 15, country: "UK", source: UK_SOURCE},
  {temperature: 148.9, seconds: 2, country: "UK", source: UK_SOURCE},
  {temperature: ((155 - 32) * 5) / 9, seconds: 30 * 60, country: "US", source: US_SOURCE},
  {temperature: ((175 - 32) * 5) / 9, seconds: 25, country: "US", source: US_SOURCE},
];

/** After heating: at most so warm (°C), within so many minutes, by the UK schedule of {@link HEAT_PAIRS}. */
export const COOLING = {temperature: 7.2, minutes: 90, source: UK_SOURCE} as const;

/** Frozen ice cream that has been warmer than this, °C, is heat-treated again before it is sold (same schedule). */
export const REFREEZING_LIMIT = -2.2;

/**
 * Whether frozen ice cream must be heat-treated again before it is sold, by the warmest temperature it has had since freezing, °C.
 *
 * @throws InputError outside -60 to 60 °C
 *
 * @example
 * ```ts
 * needsReheating(-1); // => true
 * ```
 */
export function needsReheating(warmest: number): boolean {
  return finite(warmest, "warmest", {min: -60, max: 60}, "°C") > REFREEZING_LIMIT;
}

/** A pair, and how long the mix was at or above its temperature. */
export interface PairCheck extends HeatPair {
  readonly secondsHeld: number;
  readonly met: boolean;
}

/** One reading of a thermometer's log. */
export interface Reading {
  readonly minutes: number;
  /** °C */
  readonly temperature: number;
}

/**
 * Checks a temperature and a holding time against every published pair, one by one, without interpolating.
 *
 * @param temperature of the coldest part of the mix, °C, -30 to 200
 * @param seconds held at it, at least 0
 * @throws InputError outside these ranges
 *
 * @example
 * ```ts
 * checkHold(80, 15).map(({country, met}) => `${country}: ${met ? "met" : "not met"}`); // => ["UK: not met", "UK: not met", "UK: met", "UK: not met", "US: not met", "US: not met"]
 * ```
 */
export function checkHold(temperature: number, seconds: number): PairCheck[] {
  finite(temperature, "temperature", {min: -30, max: 200}, "°C");
  finite(seconds, "seconds", {min: 0}, "s");
  return HEAT_PAIRS.map((pair) => {
    const secondsHeld = temperature >= pair.temperature - 1e-9 ? seconds : 0;
    return {...pair, secondsHeld, met: secondsHeld >= pair.seconds};
  });
}

/**
 * Checks a logged temperature curve against every published pair: the longest unbroken time at or above its temperature.
 *
 * @param log readings in order of time; straight lines between them
 * @throws InputError for fewer than two readings, times that do not rise, or temperatures outside -30 to 200 °C
 *
 * @example
 * ```ts
 * checkLog([
 *   {minutes: 0, temperature: 66},
 *   {minutes: 31, temperature: 66},
 * ]).some(({met}) => met); // => true
 * ```
 */
export function checkLog(log: readonly Reading[]): PairCheck[] {
  checkReadings(log);
  return HEAT_PAIRS.map((pair) => {
    const secondsHeld = 60 * longestAbove(log, pair.temperature);
    return {...pair, secondsHeld, met: secondsHeld >= pair.seconds - 1e-6};
  });
}

/**
 * Minutes at a reference temperature that would kill as many germs as a logged curve, for information only: no published rule
 * for ice cream accepts it in place of a pair.
 *
 * Integral of 10^((T - reference) / z) over time, exact for straight lines between readings (W. D. Bigelow 1921; C. O. Ball
 * 1923). The defaults, 70 °C and z = 7.5 °C, are those in use for Listeria monocytogenes (from memory).
 *
 * @param log readings in order of time
 * @param reference °C
 * @param z °C that change the rate of killing tenfold, 1 to 50
 * @throws InputError as {@link checkLog}, or for a reference or z outside its range
 *
 * @example
 * ```ts
 * equivalentMinutes([
 *   {minutes: 0, temperature: 70},
 *   {minutes: 2, temperature: 70},
 * ]); // => 2
 * ```
 */
export function equivalentMinutes(log: readonly Reading[], reference = 70, z = 7.5): number {
  checkReadings(log);
  finite(reference, "reference", {min: 40, max: 150}, "°C");
  finite(z, "z", {min: 1, max: 50}, "°C");
  let total = 0;
  for (let i = 1; i < log.length; i++) {
    const minutes = log[i]!.minutes - log[i - 1]!.minutes;
    const start = 10 ** ((log[i - 1]!.temperature - reference) / z);
    const change = ((log[i]!.temperature - log[i - 1]!.temperature) * Math.LN10) / z;
    total += minutes * start * (Math.abs(change) < 1e-9 ? 1 : Math.expm1(change) / change);
  }
  return total;
}

function checkReadings(log: readonly Reading[]): void {
  expectList(
    log,
    {minutes: "number", temperature: "number"},
    "readings",
    "give {minutes, temperature} of each",
  );
  if (log.length < 2) throw new InputError("log", "too short", log.length, "give at least two readings");
  log.forEach((reading, i) => {
    finite(reading.temperature, `log[${i}].temperature`, {min: -30, max: 200}, "°C");
    const after = i === 0 ? -Infinity : log[i - 1]!.minutes;
    if (finite(reading.minutes, `log[${i}].minutes`) <= after) {
      throw new InputError(
        `log[${i}].minutes`,
        "not later than the reading before",
        reading.minutes,
        "sort by time",
      );
    }
  });
}

/** Longest unbroken time, in minutes, at or above a temperature. */
function longestAbove(log: readonly Reading[], limit: number): number {
  let longest = 0;
  let current = 0;
  for (let i = 1; i < log.length; i++) {
    const from = log[i - 1]!;
    const to = log[i]!;
    const minutes = to.minutes - from.minutes;
    const rise = to.temperature - from.temperature;
    if (from.temperature >= limit && to.temperature >= limit) current += minutes;
    else if (from.temperature >= limit) {
      longest = Math.max(longest, current + (minutes * (limit - from.temperature)) / rise);
      current = 0;
    } else if (to.temperature >= limit) current = (minutes * (to.temperature - limit)) / rise;
    longest = Math.max(longest, current);
  }
  return longest;
}
