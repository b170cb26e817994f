import {finite} from "../core/numbers.ts";
import {rootBetween} from "../core/roots.ts";
import {expectComposition} from "../pantry/expect.ts";
import type {Composition} from "../pantry/parts.ts";
import {COLDEST, heldIn, mixCoefficients} from "./held-water.ts";
import {heldWaterPerGram} from "./solute.ts";
import {solidFatIn} from "./solid-fat.ts";
import {iceWaterActivity} from "./water-activity.ts";

/**
 * Water less the water that the solutes hold if all of them stay dissolved, g per 100 g: the ice, or, where negative, how
 * much water is missing before any ice could form. Linear in the masses: the row of a linear program. Where a sweetener
 * crystallises there is more ice: `frozenState` says how rows count that.
 *
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function unclippedIce(composition: Composition, temperature: number): number {
  return (composition.water ?? 0) - heldIn(composition, temperature);
}

/**
 * Ice at a temperature with everything dissolved, g per 100 g of mix; 0 from 0 °C upwards. Of sweeteners that crystallise
 * `frozenState` tells how much more there is.
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
  if (temperature < 0) return Math.max(0, unclippedIce(composition, temperature));
  finite(temperature, "temperature", {min: COLDEST}, "°C");
  return 0;
}

/**
 * Ice of one mix as a function of temperature, for root finding: the mix is summed up once, and the temperatures, none
 * of which comes twice, are neither checked nor kept.
 */
export function iceFunction(composition: Composition): (temperature: number) => number {
  expectComposition(composition);
  const water = composition.water ?? 0;
  const coefficients = mixCoefficients(composition);
  return (t) => (t < 0 ? Math.max(0, water - heldWaterPerGram(coefficients, iceWaterActivity(t))) : 0);
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
 * Temperature at which the first ice forms on cooling (supercooling apart), everything dissolved, °C.
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
  const coefficients = mixCoefficients(composition);
  const iceAt = (t: number) => water - heldWaterPerGram(coefficients, iceWaterActivity(t));
  // Without solutes the ice is the same at all temperatures: what the water is beyond the bound.
  if (iceAt(-1e-9) > 0) return 0;
  return rootBetween(iceAt, COLDEST, -1e-9);
}

/**
 * Hard phase at a temperature, g per 100 g: ice and solid fat. An estimate of firmness that leaves out overrun (more
 * air softens), crystal size and stabiliser.
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
 * on the crystals that are left, which grow coarser with every swing.
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
  return Math.abs(ice(composition, cold) - ice(composition, warm));
}
