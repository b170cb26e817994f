import {decimal, degrees, setDegrees, tenth} from "../../core/format.ts";
import type {Learned} from "../../freezing/learned.ts";
import type {Scooping, ScoopTemperature} from "../../freezing/scoop.ts";
import {temperingTime} from "../../freezing/tub.ts";
import type {Composition} from "../../pantry/parts.ts";

/** Words for a mix that is never as hard as the reference. */
const NEVER = "never gets as hard as ice cream is when dipped";

/** Scoop temperature for a table: `−14.2 °C`, or `never`. */
export function scoopsAt({temperature}: ScoopTemperature): string {
  return temperature === undefined ? "never" : degrees(temperature);
}

/** Sentence on the temperature at which a mix scoops best, its error, and the temperatures between which it scoops. */
export function whereItScoops({temperature, low, high, error}: ScoopTemperature): string {
  if (temperature === undefined || high === undefined) return `It ${NEVER}.`;
  const band = low === undefined ? `from ${degrees(high)} down` : `from ${degrees(low)} to ${degrees(high)}`;
  const give = error === undefined ? "" : `, all give or take ${decimal(error, 1)} degrees`;
  return `Scoops at about ${degrees(temperature)}, and ${band}${give}.`;
}

/** Scoop temperature as the end of a sentence about a mix: `scoops at −14.2 °C`. */
export function scoopsClause({temperature}: ScoopTemperature): string {
  return temperature === undefined ? NEVER : `scoops at ${degrees(temperature)}`;
}

/**
 * Verdict on a mix from its freezer with the next step, as the end of a sentence: `it scoops straight away`.
 *
 * @param wait time that a tub needs on the counter, in words (see {@link waitOnCounter})
 */
export function outOfFreezer(scoop: Scooping, wait = "some minutes on the counter"): string {
  switch (scoop.verdict) {
    case "never hardens":
      return `it ${NEVER}, however cold: ${HARDEN}`;
    case "soft":
      return `it is soft and may not hold its shape: ${colder(scoop)}, or take out some of the sugars`;
    case "scoops":
      return "it scoops straight away";
    case "firm":
      return `it is firm: give the tub ${wait} first`;
    case "hard":
      return `it is too hard to scoop: give the tub ${wait} first, or ask for less firmness`;
  }
}

/** Warning for a mix that does not hold its shape in its freezer, with the next step; `undefined` for any other. */
export function softWarning(scoop: Scooping): string | undefined {
  if (scoop.verdict === "never hardens") return `Never hardens: it ${NEVER}, however cold; ${HARDEN}.`;
  if (scoop.verdict !== "soft") return undefined;
  return `Soft in a freezer at ${setDegrees(scoop.freezer)}: it may not hold its shape; ${colder(scoop)}, or take out some of the sugars.`;
}

const HARDEN = "put in more water, or take out sugars, syrup or alcohol";

/** Temperature at which a mix must be kept to hold its shape, in words. */
function colder({high}: Scooping): string {
  return `keep it at ${degrees(high!)} or colder`;
}

/** Scoop temperature of a mix compared with an earlier one, in words: "the same" only where both print alike. */
export function scoopsAgainst(now: ScoopTemperature, before: ScoopTemperature): string {
  const [here, there] = [now.temperature, before.temperature];
  if (here === undefined) return there === undefined ? `It ${NEVER}, as before.` : `It now ${NEVER}.`;
  if (there === undefined) return `It scoops at ${degrees(here)}, where it never got as hard as that before.`;
  return tenth(here) === tenth(there)
    ? `It scoops at ${degrees(here)}, as before.`
    : `It scoops at ${degrees(here)}, where it was ${degrees(there)} before.`;
}

const IS = {
  "never hardens": "never hardens",
  soft: "is soft",
  scoops: "scoops",
  firm: "is firm",
  hard: "is hard",
} as const;

const WAS = {
  "never hardens": "never hardened",
  soft: "was soft",
  scoops: "scooped",
  firm: "was firm",
  hard: "was hard",
} as const;

/** Verdict on a mix in its freezer compared with that on an earlier one, in words. */
export function verdictAgainst(now: Scooping, before: Scooping): string {
  const at = `At ${setDegrees(now.freezer)} it`;
  if (now.verdict !== before.verdict) return `${at} ${IS[now.verdict]}; before it ${WAS[before.verdict]}.`;
  return now.verdict === "soft" || now.verdict === "firm" || now.verdict === "hard"
    ? `${at} is still ${now.verdict}.`
    : `${at} still ${now.verdict}.`;
}

/** A tub of a litre, cm. */
const LITRE = {shape: "box", length: 16, width: 10.5, height: 6} as const;

/**
 * Time that a litre tub needs on a counter at 20 °C, in words; `undefined` where it needs none or none helps.
 *
 * @param learned calibration by the kitchen's own reports, if the verdict rests on it
 */
export function waitOnCounter(
  composition: Composition,
  {freezer, overrun}: Scooping,
  learned?: Learned,
): string | undefined {
  const time = temperingTime(composition, LITRE, {
    freezer,
    airTemperature: 20,
    overrun,
    ...(learned && {learned}),
  });
  if (!time || time.minutes === 0) return undefined;
  return `about ${duration(time.minutes)} at 20 °C`;
}

/**
 * Tempering in a sentence.
 *
 * @param minutes that the tub takes; absent where it does not get there
 * @param room °C
 */
export function temperSentence(scoop: Scooping, minutes: number | undefined, room: number): string {
  switch (scoop.verdict) {
    case "never hardens":
      return `It ${NEVER}: there is nothing to temper.`;
    case "soft":
      return "It is soft from the freezer: no tempering.";
    case "scoops":
      return "It scoops straight from the freezer.";
    default:
      return minutes === undefined
        ? `It is ${scoop.verdict} from the freezer, and stays so at ${setDegrees(room)}.`
        : `Temper at ${setDegrees(room)} until it is at ${degrees(scoop.temperature!)}: about ${duration(minutes)}.`;
  }
}

/** A time in words: whole minutes, at least one, and from an hour and a half on hours. */
export function duration(minutes: number): string {
  if (minutes >= 89.5) return `${decimal(minutes / 60, 1)} hours`;
  const whole = Math.max(1, Math.round(minutes));
  return `${whole} ${whole === 1 ? "minute" : "minutes"}`;
}
