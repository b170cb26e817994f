import type {Composition} from "../pantry/parts.ts";
import {quantityOf} from "../pantry/quantities.ts";

/**
 * Density of a liquid mix or sauce near 20 °C, g/ml (the same number as kg/l).
 *
 * 1 / (1.07527 fat + 0.6329 (total solids - fat) + water), as mass fractions: H. D. Goff, Ice Cream Technology, University
 * of Guelph e-book. Ordinary mixes come to 1.09 to 1.10 g/ml. Alcohol adds its own volume, 1/0.789 ml per g (from
 * memory). A composition with nothing in it has the density of water.
 *
 * @param composition g per 100 g
 */
export function mixDensity(composition: Composition): number {
  const fat = quantityOf(composition, "fat");
  const solids = quantityOf(composition, "totalSolids");
  const volume =
    1.07527 * fat + 0.6329 * (solids - fat) + (composition.water ?? 0) + (composition.alcohol ?? 0) / 0.789;
  return volume > 0 ? 100 / volume : 1;
}
