import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {expectList} from "../../core/shape.ts";
import {HEAT_PAIRS, type HeatPair, LISTERIA_IN_MIX, REFREEZING_LIMIT} from "./heat-pairs.ts";

export {
  COOLING,
  DAIRY_PAIRS,
  HEAT_PAIRS,
  type HeatPair,
  LISTERIA_IN_MIX,
  REFREEZING_LIMIT,
} from "./heat-pairs.ts";

/**
 * Whether the former UK rule has frozen ice cream heat-treated again before it is sold, by the warmest temperature it has had
 * since freezing, °C. The rule was for ice cream with milk, and is revoked: good practice, no law.
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

/** A pair, with the time that the mix was at or above its temperature. */
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
 * checkHold(80, 15)
 *   .filter(({met}) => met)
 *   .map(({country, temperature}) => `${country}, ${temperature} °C`); // => ["UK, 79.4 °C"]
 * ```
 */
export function checkHold(temperature: number, seconds: number): PairCheck[] {
  finite(temperature, "temperature", {min: -30, max: 200}, "°C");
  finite(seconds, "seconds", {min: 0}, "s");
  return HEAT_PAIRS.map((pair) => held(pair, temperature, seconds));
}

/** One pair against a temperature and a time held. */
export function held(pair: HeatPair, temperature: number, seconds: number): PairCheck {
  const hot = temperature >= pair.temperature - 1e-9;
  const secondsHeld = hot ? seconds : 0;
  return {...pair, secondsHeld, met: hot && secondsHeld >= pair.seconds};
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
    const reached = log.some(({temperature}) => temperature >= pair.temperature);
    return {...pair, secondsHeld, met: reached && secondsHeld >= pair.seconds - 1e-6};
  });
}

/**
 * Minutes at a reference temperature that would kill as many germs as a logged curve, for information only: rules accept another
 * process than a pair where it is demonstrated to be equivalent (21 CFR 135.3; Regulation (EC) No 853/2004, Annex III, Section IX,
 * Chapter II), and this number does not demonstrate it.
 *
 * Integral of 10^((T - reference) / z) over time, exact for straight lines between readings (W. D. Bigelow 1921; C. O. Ball
 * 1923). The defaults, 79.4 °C and z = 7.0 °C, are those of Listeria monocytogenes in ice-cream mix, of which a tenth is left after
 * 0.5 s there (J. G. Bradshaw and others 1987); salmonella in sugared yolk: a tenth after 4.0 min at 60 °C, z = 4.6 °C (J. A.
 * Garibaldi and others, abstract).
 *
 * @param log readings in order of time
 * @param reference °C
 * @param z °C that change the rate of killing tenfold, 1 to 50
 * @throws InputError as {@link checkLog}, or for a reference or z outside its range
 *
 * @example
 * ```ts
 * equivalentMinutes([
 *   {minutes: 0, temperature: 79.4},
 *   {minutes: 2, temperature: 79.4},
 * ]); // => 2
 * ```
 */
export function equivalentMinutes(
  log: readonly Reading[],
  reference: number = LISTERIA_IN_MIX.temperature,
  z: number = LISTERIA_IN_MIX.z,
): number {
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
