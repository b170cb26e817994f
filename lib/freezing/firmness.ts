import {finite} from "../core/numbers.ts";
import {expectOptions} from "../core/shape.ts";
import type {Composition} from "../pantry/parts.ts";
import {FIRMNESS} from "./firmness-table.ts";
import {unclippedIce} from "./ice.ts";
import {insoluble} from "./insoluble.ts";
import {expectLearned, type Learned} from "./learned.ts";
import {solidFatIn} from "./solid-fat.ts";
import {balanceAt, frozenState, mixtureOf} from "./state.ts";
import {iceWaterActivity} from "./water-activity.ts";

/** Overrun of a tub from a small batch machine, % of the mix's volume: the default (common practice). */
export const USUAL_OVERRUN = 30;

/** Temperature at which the stiffening of the syrup counts as none, °C: the middle of dipping. */
const MIDDLE = -13;

/** Air in a tub, and the kitchen's own calibration. */
export interface FirmnessOptions {
  /** % of the mix's volume, 0 to 200; 30 by default. Ripples and pieces have none. */
  readonly overrun?: number;
  /** Lesson of a kitchen's own reports (see `calibrate`). */
  readonly learned?: Learned;
}

/** The keys of {@link FirmnessOptions}. */
export const FIRMNESS_OPTIONS = ["overrun", "learned"] as const satisfies (keyof FirmnessOptions)[];

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
 *
 * @example
 * ```ts
 * const mix = {water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17};
 * firmness(mix, -18) > firmness(mix, -12); // => true
 * ```
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
    stiffening(temperature)
  );
}

/**
 * Firmness with the ice before it is cut off at zero and everything dissolved, g per 100 g: linear in the masses, the
 * coefficient of an ingredient in a row of a linear program (the stiffening is the same for all: shares sum to 1).
 *
 * For a limit "at least" this alone is safe; for "at most" `piecesOf` counts what crystallises.
 *
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function unclippedFirmness(composition: Composition, temperature: number): number {
  return unclippedIce(composition, temperature) + firmnessWithoutIce(composition, temperature);
}

/**
 * The part of a limit on {@link firmness} that belongs to the mass and not to what it holds: a row over amounts that do not sum to
 * one, as where water boils off, counts it by the mass that is left, g per 100 g.
 *
 * @param temperature °C
 */
export function stiffening(temperature: number): number {
  return FIRMNESS.stiffening * (MIDDLE - temperature);
}

/** Weight of crystals of sweeteners in the index, g per g. */
export const CRYSTAL_WEIGHT = FIRMNESS.insoluble;

/**
 * Firmness at which a tub scoops, g per 100 g: more ice makes up for more air, by the logarithm of the volume.
 *
 * @param overrun %, 0 to 200; 30 by default
 * @param learned calibration by the kitchen's own reports, which shifts it
 * @throws InputError for an overrun out of range, and for a lesson with a number that is not finite or out of range
 *
 * @example
 * ```ts
 * firmnessReference(100) > firmnessReference(30); // => true
 * ```
 */
export function firmnessReference(overrun = USUAL_OVERRUN, learned?: Learned): number {
  finite(overrun, "overrun", {min: 0, max: 200}, "%");
  if (learned !== undefined) expectLearned(learned);
  return FIRMNESS.level + FIRMNESS.air * Math.log((100 + overrun) / 130) + (learned?.shift ?? 0);
}

/**
 * Hardness of a tub at a temperature over that of one that scoops: 1 where it scoops, 2 where it is twice as hard. Common vane figures
 * of scooped ice cream, 2.5 to 8 kPa, are 0.56 to 1.8 of it (J. L. Briggs, J. F. Steffe and Z. Ustunol, J. Dairy Sci. 79, 1996).
 *
 * @param temperature °C, -40 or above
 * @throws InputError below -40 °C and for an overrun, or a number of `learned`, out of range
 *
 * @example
 * ```ts
 * const mix = {water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17};
 * hardness(mix, -15, {overrun: 30}) > hardness(mix, -15, {overrun: 100}); // => true
 * ```
 */
export function hardness(
  composition: Composition,
  temperature: number,
  options: FirmnessOptions = {},
): number {
  expectOptions(options, FIRMNESS_OPTIONS);
  const over = firmness(composition, temperature) - firmnessReference(options.overrun, options.learned);
  return Math.exp(FIRMNESS.slope * over);
}

/** Firmness of one mix as a function of temperature, for root finding: it only falls on warming. */
export function firmnessFunction(composition: Composition): (temperature: number) => number {
  const mixture = mixtureOf(composition);
  const still = FIRMNESS.insoluble * insoluble(composition);
  return (t) => {
    const {ice: grams, crystals} = balanceAt(mixture, t, t < 0 ? iceWaterActivity(t) : undefined);
    return (
      Math.max(0, grams) +
      FIRMNESS.insoluble * crystals +
      still +
      FIRMNESS.fat * solidFatIn(composition, t) +
      stiffening(t)
    );
  };
}
