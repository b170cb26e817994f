import {finite} from "../core/numbers.ts";
import {expectComposition} from "../pantry/expect.ts";
import type {Composition} from "../pantry/parts.ts";
import {COLDEST} from "./held-water.ts";
import {dissolvedIce, dissolvedIceFunction, unclippedIce} from "./ice.ts";
import {dryComponents, iceProperties, integralFromZero, water} from "./thermal-properties.ts";

/** Heat of fusion of ice at 0 °C, kJ/kg (CRC Handbook of Chemistry and Physics; from memory). */
export const HEAT_OF_FUSION = 333.55;

/** Highest temperature of the heat capacities, °C: that of caramel. They are published up to 150 °C, and carried on beyond. */
export const HOTTEST = 200;

/**
 * Enthalpy of a mix, kJ/kg, 0 at -40 °C: the sensible heat of its parts and the heat of fusion of the ice that melts.
 *
 * Heat capacities after Choi and Okos, ice from the freezing curve; the heat of fusion changes with temperature as the
 * heat capacities of water and ice demand. The heats of mixing, of sweeteners that crystallise, and of the melting of fat are
 * left out: fat that melts takes up about 75 kJ/kg (from memory), less than 1 kJ per kg of mix between -18 and -10 °C.
 *
 * @param temperature °C, -40 to 200; the heat capacities are published up to 150 °C
 * @throws InputError outside -40 to 200 °C
 *
 * @example
 * ```ts
 * // Nearly all of it is the heat of fusion of ice, 334 kJ per kg.
 * enthalpy({water: 100}, 1) - enthalpy({water: 100}, -1); // => 340
 * ```
 */
export function enthalpy(composition: Composition, temperature: number): number {
  expectComposition(composition);
  finite(temperature, "temperature", {min: COLDEST, max: HOTTEST}, "°C");
  return fromMelted(composition, temperature) - fromMelted(composition, COLDEST);
}

/**
 * Heat to take out of a mix to cool it from one temperature to another, kJ/kg; negative for warming. What a machine
 * must do besides the work of its dasher.
 *
 * @param from °C, -40 to 200; the heat capacities are published up to 150 °C
 * @param to °C, likewise
 * @throws InputError outside -40 to 200 °C
 *
 * @example
 * ```ts
 * heatToRemove({water: 70, sucrose: 30}, 5, -18); // => 241
 * ```
 */
export function heatToRemove(composition: Composition, from: number, to: number): number {
  return enthalpy(composition, from) - enthalpy(composition, to);
}

/**
 * Heat to take out of a mix with the ice before it is cut off at zero, kJ/kg: linear in the masses, and the heat itself of a mix
 * that has ice at `to`.
 *
 * @param from °C, 0 to 150
 * @param to °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function unclippedHeatToRemove(composition: Composition, from: number, to: number): number {
  return fromMelted(composition, from) - fromMelted(composition, to, unclippedIce(composition, to));
}

/**
 * Heat to take out of a mix that has no ice at `to`, kJ/kg: linear in the masses, and less than the heat of one that has.
 *
 * @param from °C, 0 to 150
 * @param to °C, from -40 to below 0
 */
export function heatWithoutIce(composition: Composition, from: number, to: number): number {
  return fromMelted(composition, from) - fromMelted(composition, to, 0);
}

/**
 * Enthalpy of one mix as a function of temperature, kJ/kg: the mix is summed up once, and the temperatures, none of which comes
 * twice, are neither checked nor kept.
 */
export function enthalpyFunction(composition: Composition): (temperature: number) => number {
  expectComposition(composition);
  const dry = dryComponents(composition);
  const iceAt = dissolvedIceFunction(composition);
  const zero = fromMelted(composition, COLDEST, iceAt(COLDEST), dry);
  return (t) => fromMelted(composition, t, iceAt(t), dry) - zero;
}

/** Enthalpy, kJ/kg, 0 for the melted mix at 0 °C. */
function fromMelted(
  composition: Composition,
  temperature: number,
  frozen = dissolvedIce(composition, temperature),
  dry = dryComponents(composition),
): number {
  let total = frozen * (integralFromZero(iceProperties.cp, temperature) - HEAT_OF_FUSION);
  total += ((composition.water ?? 0) - frozen) * integralFromZero(water.cp, temperature);
  for (const {properties, grams} of dry) total += grams * integralFromZero(properties.cp, temperature);
  return total / 100;
}
