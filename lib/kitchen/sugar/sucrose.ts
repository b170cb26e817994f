import {finite} from "../../core/numbers.ts";
import {rootBetween} from "../../core/roots.ts";

/**
 * Pure sucrose solutions at 20 °C: g sucrose per 100 g solution (°Brix), density g/ml, refractive index at 589 nm.
 *
 * Source: CRC Handbook of Chemistry and Physics, 102nd ed. (2021), "Concentrative Properties of Aqueous Solutions",
 * sucrose; the row of pure water from the same handbook. Every tenth degree is enough: the cubic through the four
 * nearest rows meets all the rows between within 0.0001.
 */
const TABLE = [
  [0, 0.9982, 1.333],
  [10, 1.0381, 1.3478],
  [20, 1.081, 1.3639],
  [30, 1.127, 1.3812],
  [40, 1.1765, 1.3999],
  [50, 1.2295, 1.4201],
  [60, 1.2864, 1.4419],
  [70, 1.3472, 1.4654],
  [80, 1.4117, 1.4906],
] as const;

/** The strongest syrup that the table reaches, °Brix. */
const MOST = 84;

/**
 * Density of a sucrose solution at 20 °C, g/ml, as a hydrometer reads it.
 *
 * @param brix g sucrose per 100 g solution, 0 to 84
 * @throws InputError outside that range
 *
 * @example
 * ```ts
 * sucroseDensity(30); // => 1.127
 * ```
 */
export function sucroseDensity(brix: number): number {
  return interpolate(finite(brix, "brix", {min: 0, max: MOST}, "°Brix"), 1);
}

/**
 * Refractive index of a sucrose solution at 20 °C and 589 nm, as a refractometer measures it.
 *
 * @param brix g sucrose per 100 g solution, 0 to 84
 * @throws InputError outside that range
 *
 * @example
 * ```ts
 * sucroseRefractiveIndex(30); // => 1.3812
 * ```
 */
export function sucroseRefractiveIndex(brix: number): number {
  return interpolate(finite(brix, "brix", {min: 0, max: MOST}, "°Brix"), 2);
}

/**
 * °Brix that a refractometer shows for a refractive index at 20 °C and 589 nm; within 0.1 °Brix.
 *
 * @param index refractive index from 1.333 (water) to 1.501
 * @throws InputError outside that range
 *
 * @example
 * ```ts
 * brixOfRefractiveIndex(1.42); // => 50
 * ```
 */
export function brixOfRefractiveIndex(index: number): number {
  const limits = {min: interpolate(0, 2), max: interpolate(MOST, 2)};
  finite(index, "refractive index", limits);
  return rootBetween((brix) => interpolate(brix, 2) - index, 0, MOST)!;
}

/**
 * Boiling point of a sugar syrup at sea level, °C; some 0.5 °C too high at 80 °Brix (against figures from memory). Dextrose
 * and fructose raise it further.
 *
 * Water activity by Norrish's equation, a_w = x_w exp(-K x_s²), with K = 6.47 for sucrose (J. Chirife et al. 1980, from
 * memory); the syrup boils where the vapour pressure of water (Antoine's equation, log10 p/mmHg = 8.14019 -
 * 1810.94 / (244.485 + t), from memory) is 1/a_w of that at 100 °C.
 *
 * @param brix g sugar per 100 g of the liquid, 0 to 84
 * @throws InputError outside that range
 *
 * @example
 * ```ts
 * boilingPoint(70); // => 105.6
 * ```
 */
export function boilingPoint(brix: number): number {
  finite(brix, "brix", {min: 0, max: MOST}, "°Brix");
  const sugar = brix / 342.3;
  const water = (100 - brix) / 18.015;
  const share = sugar / (sugar + water);
  const logActivity = Math.log10(1 - share) - (6.47 * share ** 2) / Math.LN10;
  return 1810.94 / (1810.94 / (244.485 + 100) + logActivity) - 244.485;
}

/** Lagrange's cubic through the four rows nearest to a strength. */
function interpolate(brix: number, column: 1 | 2): number {
  const first = Math.min(Math.max(Math.floor(brix / 10) - 1, 0), TABLE.length - 4);
  const rows = TABLE.slice(first, first + 4);
  let value = 0;
  for (const row of rows) {
    let weight = row[column] as number;
    for (const other of rows) if (other !== row) weight *= (brix - other[0]) / (row[0] - other[0]);
    value += weight;
  }
  return value;
}
