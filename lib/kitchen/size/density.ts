import {finite} from "../../core/numbers.ts";
import {expectComposition} from "../../pantry/expect.ts";
import {HOTTEST} from "../../freezing/enthalpy.ts";
import {COLDEST} from "../../freezing/held-water.ts";
import {ice} from "../../freezing/ice.ts";
import {componentsWith, density} from "../../freezing/thermal-properties.ts";
import type {Composition} from "../../pantry/parts.ts";
import {quantityOf} from "../../pantry/quantities.ts";

/**
 * Density of a liquid mix or sauce near 20 °C, g/ml (the same number as kg/l).
 *
 * 1 / (1.07527 fat + 0.6329 (total solids - fat) + water), as mass fractions: H. D. Goff, Ice Cream Technology, University
 * of Guelph e-book. Ordinary mixes come to 1.09 to 1.10 g/ml. Alcohol adds its own volume, 1/0.789 ml per g (from
 * memory). A composition with nothing in it has the density of water.
 *
 * @param composition g per 100 g
 *
 * @example
 * ```ts
 * mixDensity({water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17}); // => 1.11
 * ```
 */
export function mixDensity(composition: Composition): number {
  const fat = quantityOf(composition, "fat");
  const solids = quantityOf(composition, "totalSolids");
  const volume =
    1.07527 * fat + 0.6329 * (solids - fat) + (composition.water ?? 0) + (composition.alcohol ?? 0) / 0.789;
  return volume > 0 ? 100 / volume : 1;
}

/**
 * Density of a mix without air at any temperature, frozen or not, g/ml: its components side by side, by Y. Choi and
 * M. R. Okos 1986 (see `COMPONENT_PROPERTIES`), with the ice of the freezing curve. Within 1 % of {@link mixDensity} at 20 °C.
 *
 * @param composition g per 100 g
 * @param temperature °C, -40 to 200; the densities of the components are published up to 150 °C
 * @throws InputError outside -40 to 200 °C
 *
 * @example
 * ```ts
 * mixDensityAt({water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17}, 4); // => 1.1
 * ```
 */
export function mixDensityAt(composition: Composition, temperature: number): number {
  finite(temperature, "temperature", {min: COLDEST, max: HOTTEST}, "°C");
  expectComposition(composition);
  if (!Object.values(composition).some((grams) => grams > 0)) return mixDensity(composition);
  return density(componentsWith(composition, ice(composition, temperature)), temperature) / 1000;
}
