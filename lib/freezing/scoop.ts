import {sum} from "../core/numbers.ts";
import {rootBetween} from "../core/roots.ts";
import {readComposition} from "../pantry/composition.ts";
import type {Composition} from "../pantry/parts.ts";
import {COLDEST} from "./held-water.ts";
import {hardPhase, iceFunction} from "./ice.ts";
import {solidFat} from "./solid-fat.ts";
import {HARD_MIXES} from "./tables.ts";

/** Temperatures at which hard ice cream is dipped, °C (common practice, no source). */
export const DIPPING = {from: -14, to: -12} as const;

/** Middle of the temperatures at which hard ice cream is dipped, -14 to -12 °C (common practice, no source). */
export const DIPPING_TEMPERATURE = (DIPPING.from + DIPPING.to) / 2;

/** How firm a mix is at a temperature, in plain words. */
export type Verdict = "soft" | "scoops" | "firm" | "hard";

/** Where a mix scoops, °C. A value is absent where the mix is never so hard between -40 and 40 °C. */
export interface ScoopTemperature {
  /** Where the hard phase is the reference. */
  readonly temperature?: number;
  /** Cold end of the band: where it is the reference plus the spread. */
  readonly low?: number;
  /** Warm end of the band: where it is the reference less the spread. */
  readonly high?: number;
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
 * Temperature at which a mix is as hard as the published mixes are when dipped, with the band that their spread gives.
 *
 * An estimate: it leaves out overrun (more air scoops colder), crystal size and stabiliser.
 */
export function scoopTemperature(composition: Composition): ScoopTemperature {
  const {mean, spread} = referenceHardPhase();
  const temperature = whereHard(composition, mean);
  const low = whereHard(composition, mean + spread);
  const high = whereHard(composition, mean - spread);
  return {
    ...(temperature !== undefined && {temperature}),
    ...(low !== undefined && {low}),
    ...(high !== undefined && {high}),
  };
}

/** Hard phases between which a verdict holds, g per 100 g; the first has no lower and the last no upper end. */
export interface VerdictBand {
  readonly verdict: Verdict;
  /** Lower end, included only where the verdict is `scoops`. */
  readonly from: number;
  /** Upper end, included but for `soft`. */
  readonly to: number;
}

/**
 * The bands of the verdicts, from soft to hard: a mix `scoops` within two spreads of the reference (all seven published mixes
 * do at -13 °C), is `soft` below that, `firm` for two spreads more, and `hard` above. Where to draw these lines is our own
 * choice; the scale is that of the published mixes.
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
 * How firm a mix is at a temperature, in plain words (see {@link verdictBands}).
 *
 * @param temperature °C, -40 or above
 * @throws InputError below -40 °C
 */
export function verdictAt(composition: Composition, temperature: number): Verdict {
  const hard = hardPhase(composition, temperature);
  const [soft] = verdictBands();
  if (hard < soft!.to) return "soft";
  return verdictBands().find(({verdict, to}) => verdict !== "soft" && hard <= to)!.verdict;
}

/** Temperature at which the hard phase has a size, °C; it only falls on warming. */
function whereHard(composition: Composition, grams: number): number | undefined {
  const iceAt = iceFunction(composition);
  return rootBetween((t) => iceAt(t) + solidFat(composition, t) - grams, COLDEST, 40);
}
