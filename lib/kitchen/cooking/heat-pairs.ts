/** A published pair of temperature and time that makes an ice-cream mix, or another dairy product, safe. */
export interface HeatPair {
  /** Least temperature of all of the mix, °C. */
  readonly temperature: number;
  /** Least time at or above it, s. */
  readonly seconds: number;
  readonly country: "UK" | "US" | "EU";
  /** The state that has the rule, where it is not the whole country's. */
  readonly state?: string;
  readonly source: string;
}

const UK_SOURCE =
  "Ice-Cream (Heat Treatment) schedule, SI 1995/1086 and SI 1995/1372 Schedule 6 (UK), revoked, guidance";
const US_SOURCE = "21 CFR 135.3 (US)";
const OHIO = {country: "US", state: "Ohio", source: "Ohio Administrative Code 901:11-3-05"} as const;
const CONNECTICUT = {
  country: "US",
  state: "Connecticut",
  source: "Regulations of Connecticut State Agencies 21a-58-13",
} as const;
const EU_SOURCE = "Regulation (EC) No 853/2004, Annex III, Section IX, Chapter II, Part II, 1(a)";

const celsius = (fahrenheit: number) => ((fahrenheit - 32) * 5) / 9;

/**
 * The published pairs for an ice-cream mix. They are not interpolated here, since no rule says how. The UK's never applied to a
 * mix without milk.
 */
export const HEAT_PAIRS: readonly HeatPair[] = [
  {temperature: 65.6, seconds: 30 * 60, country: "UK", source: UK_SOURCE},
  {temperature: 71.1, seconds: 10 * 60, country: "UK", source: UK_SOURCE},
  {temperature: 79.4, seconds: 15, country: "UK", source: UK_SOURCE},
  {temperature: 148, seconds: 2, country: "UK", source: "SI 1995/1086 Schedule 6, Part VI, revoked"},
  {temperature: 148.9, seconds: 2, country: "UK", source: "SI 1995/1372 Schedule 6, Part VI, revoked"},
  {temperature: celsius(155), seconds: 30 * 60, country: "US", source: US_SOURCE},
  {temperature: celsius(175), seconds: 25, country: "US", source: US_SOURCE},
  {temperature: celsius(160), seconds: 15 * 60, ...CONNECTICUT},
  {temperature: celsius(165), seconds: 10 * 60, ...CONNECTICUT},
  {temperature: celsius(170), seconds: 5 * 60, ...CONNECTICUT},
  {temperature: celsius(200), seconds: 3, ...CONNECTICUT},
  {temperature: celsius(210), seconds: 0, ...CONNECTICUT},
  {temperature: celsius(180), seconds: 15, ...OHIO},
  {
    temperature: celsius(180),
    seconds: 15,
    country: "US",
    state: "Michigan",
    source: "Michigan Compiled Laws 288.697",
  },
  {temperature: celsius(191), seconds: 1, ...OHIO},
  {temperature: celsius(194), seconds: 0.5, ...OHIO},
  {temperature: celsius(201), seconds: 0.1, ...OHIO},
  {temperature: celsius(204), seconds: 0.05, ...OHIO},
  {temperature: celsius(212), seconds: 0.01, ...OHIO},
];

/**
 * The pairs of the European Union for dairy products, of which an ice-cream mix with milk is one; the Union has none for ice
 * cream. Fat, sugar and egg protect germs, and the rules for a mix ask for more: meeting these alone does not make a mix count
 * as pasteurised here.
 */
export const DAIRY_PAIRS: readonly HeatPair[] = [
  {temperature: 72, seconds: 15, country: "EU", source: EU_SOURCE},
  {temperature: 63, seconds: 30 * 60, country: "EU", source: EU_SOURCE},
];

/** Cooling after heating, by the UK schedule of {@link HEAT_PAIRS}: highest temperature, °C, and the minutes within which to reach it. */
export const COOLING = {temperature: 7.2, minutes: 90, source: UK_SOURCE} as const;

/**
 * Temperature above which frozen ice cream had to be heat-treated again before sale, °C (same schedule, revoked: now guidance for
 * ice cream with milk).
 */
export const REFREEZING_LIMIT = -2.2;

/**
 * Listeria monocytogenes in ice-cream mix: at 79.4 °C a tenth is left after 0.5 s, and 7.0 °C change that tenfold.
 * J. G. Bradshaw and others 1987, J. Food Prot. 50, 543 to 549 (abstract).
 */
export const LISTERIA_IN_MIX = {temperature: 79.4, decimalSeconds: 0.5, z: 7} as const;
