import {finite} from "../core/numbers.ts";

/**
 * Vapour pressure of ice over that of supercooled water at the same temperature.
 *
 * Source: D. M. Murphy and T. Koop, Review of the vapour pressures of ice and supercooled water for atmospheric
 * applications, Q. J. R. Meteorol. Soc. 131 (2005), equations 7 (ice, above 110 K) and 10 (water, 123 to 332 K).
 *
 * @param temperature °C, -40 to 0.01
 */
export function iceToWaterPressure(temperature: number): number {
  const T = temperature + 273.15;
  const log = Math.log(T);
  const ice = 9.550426 - 5723.265 / T + 3.53068 * log - 0.00728332 * T;
  const water =
    54.842763 -
    6763.22 / T -
    4.21 * log +
    0.000367 * T +
    Math.tanh(0.0415 * (T - 218.8)) * (53.878 - 1331.22 / T - 9.44523 * log + 0.014025 * T);
  return Math.exp(ice - water);
}

/** Lowest temperature of the published pressure of supercooled water, °C: 123 K. */
const COLDEST = -150;

const AT_FREEZING = iceToWaterPressure(0);

/**
 * Water activity of any solution in equilibrium with ice at a temperature.
 *
 * The pressures above meet at the triple point, 0.01 °C. Air-saturated water at 1 atm freezes at 0 °C, so the ratio is
 * divided by its value there (0.999903).
 *
 * @param temperature °C, -150 to 0.01; the curves of this library are used down to -40
 * @throws InputError outside that range
 * @returns 0.679 at -40 °C to 1 at 0 °C
 *
 * @example
 * ```ts
 * iceWaterActivity(-10); // => 0.907
 * ```
 */
export function iceWaterActivity(temperature: number): number {
  if (!(temperature <= 0.01 && temperature >= COLDEST) || typeof temperature !== "number")
    finite(temperature, "temperature", {min: COLDEST, max: 0.01}, "°C");
  return iceToWaterPressure(temperature) / AT_FREEZING;
}
