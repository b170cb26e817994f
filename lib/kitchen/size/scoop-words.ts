import {decimal, degrees, setDegrees, tenth} from "../../core/format.ts";
import type {Scooping, ScoopTemperature} from "../../freezing/scoop.ts";

/** Words for a mix that is never as hard as the reference. */
export const NEVER = "never gets as hard as ice cream is when dipped";

/** Wait of a firm or hard tub on the counter until it scoops. */
export interface CounterWait {
  /** Of a litre tub at 20 °C. */
  readonly minutes: number;
  /** Whether that is longer than a tub should stand. */
  readonly tooLong: boolean;
}

/** Words on a tub that is not to be waited for, after "and" or a colon. */
export const TOO_LONG = (where = "on the counter") =>
  `an hour ${where}, as long as a tub should stand, does not soften it`;

/** Scoop temperature for a table: `−14.2 °C`, `never`, or `not known`. */
export function scoopsAt({temperature, unsure}: ScoopTemperature): string {
  if (unsure) return "not known";
  return temperature === undefined ? "never" : degrees(temperature);
}

/** Sentence on the temperature at which a mix scoops best, its error, and the temperatures between which it scoops. */
export function whereItScoops({temperature, low, high, error, unsure}: ScoopTemperature): string {
  if (unsure === "no ice") return "It holds no ice, so it has no scoop temperature.";
  if (unsure)
    return "Where it scoops is not known: it is too unlike any ice cream whose hardness was measured.";
  if (temperature === undefined || high === undefined) return `It ${NEVER}.`;
  const band = low === undefined ? `from ${degrees(high)} down` : `from ${degrees(low)} to ${degrees(high)}`;
  const give = error === undefined ? "" : `, all give or take ${decimal(error, 1)} degrees`;
  return `Scoops at about ${degrees(temperature)}, and ${band}${give}.`;
}

/** Scoop temperature as the end of a sentence about a mix: `scoops at −14.2 °C`. */
export function scoopsClause({temperature, unsure}: ScoopTemperature): string {
  if (unsure === "no ice") return "holds no ice";
  if (unsure) return "has no scoop temperature to go by";
  return temperature === undefined ? NEVER : `scoops at ${degrees(temperature)}`;
}

/** Sentence on a mix without ice. */
export const NO_ICE = "A paste, not ice cream: it holds no ice.";

/**
 * Verdict on a mix from its freezer with the next step, as the end of a sentence: `it scoops straight away`.
 *
 * @param wait its wait on the counter (see `counterWait`); absent where none helps
 */
export function outOfFreezer(scoop: Scooping, wait: CounterWait | undefined): string {
  if (scoop.unsure === "no ice") return "it is a paste, not ice cream";
  const helps = wait && !wait.tooLong;
  const first = helps ? `give the tub ${counterWords(wait)} first` : TOO_LONG();
  switch (scoop.verdict) {
    case "never hardens":
      return `it ${NEVER}, however cold: ${harden(scoop)}`;
    case "soft":
      return `it is soft and may not hold its shape: ${colder(scoop)}, or ${harden(scoop)}`;
    case "scoops":
      return "it scoops straight away";
    case "firm":
      return `it is firm: ${first}${helps ? "" : "; ask for less firmness"}`;
    case "hard":
      return `it is too hard to scoop: ${first}${helps ? ", or" : ";"} ask for less firmness`;
  }
}

/** A wait that is not too long, in words. */
export function counterWords({minutes}: CounterWait): string {
  return `about ${duration(minutes)} at 20 °C`;
}

/** Warning for a mix that does not hold its shape in its freezer, with the next step; `undefined` for any other. */
export function softWarning(scoop: Scooping): string | undefined {
  if (scoop.verdict === "never hardens") return `Never hardens: it ${NEVER}, however cold; ${harden(scoop)}.`;
  if (scoop.verdict !== "soft" || scoop.unsure === "no ice") return undefined;
  return `Soft in a freezer at ${setDegrees(scoop.freezer)}: it may not hold its shape; ${colder(scoop)}, or ${harden(scoop)}.`;
}

/** Warning for a mix that no spoon gets into in its freezer, with the next step; `undefined` for any other. */
export function hardWarning(scoop: Scooping): string | undefined {
  if (scoop.verdict !== "hard" || scoop.unsure === "no ice") return undefined;
  const where = scoop.unsure ? "" : ` it ${scoopsClause(scoop)};`;
  return `Too hard for a freezer at ${setDegrees(scoop.freezer)}:${where} serve it warmer, or ask for less firmness.`;
}

/** Remedy for a mix that is too soft. */
function harden({verdict, softenedBy}: Scooping): string {
  if (verdict !== "never hardens" && softenedBy) return `take out some of the ${softenedBy}`;
  return softenedBy ? `put in more water, or take out ${softenedBy}` : "put in more water";
}

/** Temperature at which a mix must be kept to hold its shape, in words. */
function colder({high}: Scooping): string {
  return `keep it at ${degrees(high!)} or colder`;
}

/** Scoop temperature of a mix compared with an earlier one, in words: "the same" only where both print alike. */
export function scoopsAgainst(now: ScoopTemperature, before: ScoopTemperature): string {
  if (now.unsure || before.unsure) return whereItScoops(now);
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

/** A time in words: whole minutes, at least one, and from an hour and a half on hours. */
export function duration(minutes: number): string {
  if (minutes >= 89.5) return `${decimal(minutes / 60, 1)} hours`;
  const whole = Math.max(1, Math.round(minutes));
  return `${whole} ${whole === 1 ? "minute" : "minutes"}`;
}
