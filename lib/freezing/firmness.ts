import {finite} from "../core/numbers.ts";
import {rootBetween} from "../core/roots.ts";
import {expectOptions} from "../core/shape.ts";
import {expectComposition} from "../pantry/expect.ts";
import type {Composition} from "../pantry/parts.ts";
import {FIRMNESS, SCOOPED} from "./firmness-table.ts";
import {firmnessBand, fitError} from "./firmness-band.ts";
import {COLDEST} from "./held-water.ts";
import {unclippedIce} from "./ice.ts";
import {insoluble} from "./insoluble.ts";
import type {Learned} from "./learned.ts";
import type {ScoopTemperature, Verdict, VerdictBand} from "./scoop.ts";
import {solidFatIn} from "./solid-fat.ts";
import {balanceAt, frozenState, mixtureOf} from "./state.ts";
import {iceWaterActivity} from "./water-activity.ts";

/** Overrun of a tub from a small batch machine, % of the mix's volume: what is taken where none is said (common practice). */
export const USUAL_OVERRUN = 30;

/** Temperature at which the stiffening of the syrup counts as none, °C: the middle of dipping. */
const MIDDLE = -13;

/** How a tub was frozen and what is known of the kitchen. */
export interface FirmnessOptions {
  /** % of the mix's volume, 0 to 200; 30 by default. Ripples and pieces have none. */
  readonly overrun?: number;
  /** What a kitchen's own reports have taught (see `calibrate`). */
  readonly learned?: Learned;
}

const OPTIONS = ["overrun", "learned"] as const satisfies (keyof FirmnessOptions)[];

/**
 * Firmness of a mix at a temperature, as an index in g per 100 g:
 *
 *     ice + 0.54 solid fat + 1.09 (insoluble solids + crystals) + 1.9 (-13 °C - T)
 *
 * Ice resists a spoon most; fat less, for more fat does not make ice cream harder (Roland, Phillips and Boor, J. Dairy Sci. 82,
 * 1999); particles and crystals about as much; and the unfrozen syrup stiffens as it cools, so that at a colder temperature
 * less ice feels as hard. Weights and level are fitted to published mixes and ratios and to what is common practice in the
 * trade, by `datasets/tools/fit-firmness.ts`; `FIRMNESS_ERRORS` says how well. Crystal size and stabiliser are left out.
 *
 * @param temperature °C, -40 or above
 * @throws InputError below -40 °C
 */
export function firmness(composition: Composition, temperature: number): number {
  const {ice: grams, crystals} = frozenState(composition, temperature);
  return grams + FIRMNESS.insoluble * crystals + firmnessWithoutIce(composition, temperature);
}

/**
 * Firmness without ice and crystals, g per 100 g: fat, insoluble solids and stiffening. Linear in the masses. A limit "at
 * most" needs it as a row of its own where an ingredient exceeds the limit by that alone, for ice is never less than none.
 *
 * @param temperature °C
 */
export function firmnessWithoutIce(composition: Composition, temperature: number): number {
  return (
    FIRMNESS.fat * solidFatIn(composition, temperature) +
    FIRMNESS.insoluble * insoluble(composition) +
    FIRMNESS.stiffening * (MIDDLE - temperature)
  );
}

/**
 * Firmness with the ice before it is cut off at zero and everything dissolved, g per 100 g: linear in the masses, the
 * coefficient of an ingredient in a row of a linear program (the stiffening is the same for all: shares sum to 1).
 *
 * For a limit "at least" this alone is safe; for "at most" `crystalRows` counts what crystallises.
 *
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function unclippedFirmness(composition: Composition, temperature: number): number {
  return unclippedIce(composition, temperature) + firmnessWithoutIce(composition, temperature);
}

/** Weight of crystals of sweeteners in the index, g per g. */
export const CRYSTAL_WEIGHT = FIRMNESS.insoluble;

/**
 * Firmness at which a tub scoops, g per 100 g: more ice makes up for more air, by the logarithm of the volume.
 *
 * @param overrun %, 0 to 200; 30 by default
 * @param learned what a kitchen's reports have shifted it by
 * @throws InputError for an overrun out of range
 */
export function firmnessReference(overrun = USUAL_OVERRUN, learned?: Learned): number {
  finite(overrun, "overrun", {min: 0, max: 200}, "%");
  return FIRMNESS.level + FIRMNESS.air * Math.log((100 + overrun) / 130) + (learned?.shift ?? 0);
}

/**
 * How hard a tub is at a temperature over one that scoops: 1 where it scoops, 2 where it is twice as hard. Common vane figures
 * of scooped ice cream, 2.5 to 8 kPa, are 0.56 to 1.8 of it (J. L. Briggs, J. F. Steffe and Z. Ustunol, J. Dairy Sci. 79, 1996).
 *
 * @param temperature °C, -40 or above
 * @throws InputError below -40 °C and for an overrun out of range
 */
export function hardness(
  composition: Composition,
  temperature: number,
  options: FirmnessOptions = {},
): number {
  expectOptions(options, OPTIONS);
  const over = firmness(composition, temperature) - firmnessReference(options.overrun, options.learned);
  return Math.exp(FIRMNESS.slope * over);
}

/** Firmness of one mix as a function of temperature, for root finding. */
function firmnessFunction(composition: Composition): (temperature: number) => number {
  const mixture = mixtureOf(composition);
  const still = FIRMNESS.insoluble * insoluble(composition);
  return (t) => {
    const {ice: grams, crystals} = balanceAt(mixture, t, t < 0 ? iceWaterActivity(t) : undefined);
    return (
      Math.max(0, grams) +
      FIRMNESS.insoluble * crystals +
      still +
      FIRMNESS.fat * solidFatIn(composition, t) +
      FIRMNESS.stiffening * (MIDDLE - t)
    );
  };
}

/**
 * Temperature at which a tub scoops, °C, with its band: what the fit misses in a class of dessert that it has not seen (more
 * for mixes far from all it has seen), the spread of its parameters, what is not known of the ice, and the scatter of the
 * process, a factor of 1.4 in hardness.
 *
 * @throws InputError for an overrun out of range
 */
export function scoopTemperature(composition: Composition, options: FirmnessOptions = {}): ScoopTemperature {
  expectOptions(options, OPTIONS);
  expectComposition(composition);
  const {overrun = USUAL_OVERRUN, learned} = options;
  const at = firmnessFunction(composition);
  const reference = firmnessReference(overrun, learned);
  const where = (index: number) => rootBetween((t) => at(t) - index, COLDEST, 40);
  const temperature = where(reference);
  if (temperature === undefined) return {};
  const band = firmnessBand(composition, temperature, overrun, learned);
  const fit = fitError(composition, temperature, overrun, learned);
  // What is off in firmness bends with the curve; what is off in °C does not. The two are independent.
  const end = (index: number) => {
    const there = where(index);
    return there === undefined
      ? undefined
      : temperature + Math.sign(there - temperature) * Math.hypot(there - temperature, fit);
  };
  const [low, high] = [end(reference + band), end(reference - band)];
  return {
    temperature,
    ...(low !== undefined && {low}),
    ...(high !== undefined && {high: Math.min(high, Math.max(0, temperature))}),
  };
}

/** Half of the ln of the hardness range that is scooped. */
const HALF = Math.log(SCOOPED[1] / SCOOPED[0]) / 2;

/**
 * The bands of the verdicts as firmness, g per 100 g, from soft to hard: a tub `scoops` while its hardness is within the range
 * that was measured on scooped ice cream (a factor of 1.8 either way of the reference), is `soft` below, `firm` until it is twice
 * as hard as the stiffest that is scooped, and `hard` beyond, where a spoon bends. That factor of two is our own choice.
 *
 * @throws InputError for an overrun out of range
 */
export function firmnessBands(options: FirmnessOptions = {}): readonly VerdictBand[] {
  expectOptions(options, OPTIONS);
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
 * How firm a tub is at a temperature, in plain words (see {@link firmnessBands}).
 *
 * @param temperature °C, -40 or above
 * @throws InputError below -40 °C and for an overrun out of range
 */
export function verdictAt(
  composition: Composition,
  temperature: number,
  options: FirmnessOptions = {},
): Verdict {
  const index = firmness(composition, temperature);
  const [soft, ...harder] = firmnessBands(options);
  return index < soft!.to ? "soft" : harder.find(({to}) => index <= to)!.verdict;
}
