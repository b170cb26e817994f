import {finite} from "../core/numbers.ts";
import {rootBetween} from "../core/roots.ts";
import {expectComposition} from "../pantry/expect.ts";
import type {Composition} from "../pantry/parts.ts";
import {activityOfIce, COLDEST, heldIn, mixCoefficients} from "./held-water.ts";
import {solidFatIn} from "./solid-fat.ts";
import {heldWaterPerGram} from "./solute.ts";
import {balanceAt, mixtureOf} from "./state.ts";
import {iceWaterActivity} from "./water-activity.ts";

/**
 * Water less the water that the solutes hold if all of them stay dissolved, g per 100 g: the ice, or, where negative, how
 * much water is missing before any ice could form. Linear in the masses: the row of a linear program. Where a sweetener
 * crystallises there is more ice: `piecesOf` has the further rows.
 *
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function unclippedIce(composition: Composition, temperature: number): number {
  return (composition.water ?? 0) - heldIn(composition, temperature);
}

/**
 * Ice at a temperature, g per 100 g of mix, what sweeteners release as they crystallise included; 0 from 0 °C upwards.
 *
 * @param temperature °C, -40 or above
 * @throws InputError below -40 °C
 *
 * @example
 * ```ts
 * ice({water: 70, sucrose: 30}, -10); // => 46.5
 * ```
 */
export function ice(composition: Composition, temperature: number): number {
  expectComposition(composition);
  if (temperature < 0) {
    const activity = activityOfIce(temperature);
    return Math.max(0, balanceAt(mixtureOf(composition), temperature, activity).ice);
  }
  finite(temperature, "temperature", {min: COLDEST}, "°C");
  return 0;
}

/** Ice with everything dissolved, g per 100 g of mix: what melts and freezes, takes up and gives off heat, without waiting for crystals. */
export function dissolvedIce(composition: Composition, temperature: number): number {
  return temperature < 0 ? Math.max(0, unclippedIce(composition, temperature)) : 0;
}

/** As {@link dissolvedIce}, of one mix at many temperatures, none of which comes twice. */
export function dissolvedIceFunction(composition: Composition): (temperature: number) => number {
  const coefficients = mixCoefficients(composition);
  const all = composition.water ?? 0;
  return (t) => (t < 0 ? Math.max(0, all - heldWaterPerGram(coefficients, iceWaterActivity(t))) : 0);
}

/**
 * Ice of one mix as a function of temperature, for root finding: the mix is summed up once, and the temperatures, none
 * of which comes twice, are neither checked nor kept.
 */
export function iceFunction(composition: Composition): (temperature: number) => number {
  expectComposition(composition);
  const mixture = mixtureOf(composition);
  return (t) => (t < 0 ? Math.max(0, balanceAt(mixture, t, iceWaterActivity(t)).ice) : 0);
}

/**
 * Share of the water that is ice, %; 0 for a mix without water.
 *
 * @param temperature °C, -40 or above
 * @throws InputError below -40 °C
 *
 * @example
 * ```ts
 * frozenShare({water: 70, sucrose: 30}, -10); // => 66.5
 * ```
 */
export function frozenShare(composition: Composition, temperature: number): number {
  expectComposition(composition);
  return composition.water ? (100 * ice(composition, temperature)) / composition.water : 0;
}

/**
 * Temperature at which the first ice forms on cooling (supercooling apart), °C. Sweeteners are dissolved as far as they can be.
 *
 * @returns 0 for water without solutes; `undefined` for a mix that has no water or does not freeze above -40 °C
 *
 * @example
 * ```ts
 * initialFreezingPoint({water: 70, sucrose: 30}); // => -2.7
 * ```
 */
export function initialFreezingPoint(composition: Composition): number | undefined {
  expectComposition(composition);
  const water = composition.water ?? 0;
  if (water <= 0) return undefined;
  const mixture = mixtureOf(composition);
  const iceAt = (t: number) => balanceAt(mixture, t, iceWaterActivity(t)).ice;
  // Without solutes the ice is the same at all temperatures: what the water is beyond the bound.
  if (iceAt(-1e-9) > 0) return 0;
  return rootBetween(iceAt, COLDEST, -1e-9);
}

/**
 * Hard phase at a temperature, g per 100 g: ice and solid fat. What a mix has of both; `firmness` says how hard it is.
 *
 * @param temperature °C, -40 or above
 * @throws InputError below -40 °C
 *
 * @example
 * ```ts
 * hardPhase({water: 62, milkFat: 12, milkProtein: 4, lactose: 6, sucrose: 16}, -18); // => 60
 * ```
 */
export function hardPhase(composition: Composition, temperature: number): number {
  return ice(composition, temperature) + solidFatIn(composition, temperature);
}

/**
 * Hard phase with the ice before it is cut off at zero, everything dissolved, g per 100 g: linear in the masses.
 *
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function unclippedHardPhase(composition: Composition, temperature: number): number {
  return unclippedIce(composition, temperature) + solidFatIn(composition, temperature);
}

/**
 * Ice that melts and freezes again when a freezer swings between two temperatures, g per 100 g of mix. It comes back
 * on the crystals that are left, which grow coarser with every swing. Everything counts as dissolved: sweeteners that have
 * crystallised do not dissolve again so fast.
 *
 * @param warm warm end of the swing, °C
 * @param cold cold end of the swing, °C, -40 or above
 * @throws InputError below -40 °C
 *
 * @example
 * ```ts
 * heatShock({water: 70, sucrose: 30}, -14, -18); // => 3.3
 * ```
 */
export function heatShock(composition: Composition, warm: number, cold: number): number {
  expectComposition(composition);
  for (const temperature of [cold, warm]) finite(temperature, "temperature", {min: COLDEST}, "°C");
  return Math.abs(dissolvedIce(composition, cold) - dissolvedIce(composition, warm));
}
