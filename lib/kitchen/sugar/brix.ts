import {SOLUTES} from "../../freezing/held-water.ts";
import {expectComposition} from "../../pantry/expect.ts";
import type {Composition} from "../../pantry/parts.ts";

/** Parts that dissolve in the water of a sauce and bend its light: those that lower its freezing point, alcohol apart. */
const SOLUBLE = SOLUTES.filter((part) => part !== "alcohol");

/**
 * Soluble solids, g per 100 g: sugars, sugar alcohols, acids and salts. Pectin and other soluble fibre are not counted.
 *
 * @example
 * ```ts
 * solubleSolids({water: 40, sucrose: 50, fibre: 10}); // => 50
 * ```
 */
export function solubleSolids(composition: Composition): number {
  expectComposition(composition);
  return solublesIn(composition);
}

/** As {@link solubleSolids}, of anything linear in masses, which may be negative: rows of a linear program. */
export function solublesIn(composition: Composition): number {
  let grams = 0;
  for (const part of SOLUBLE) grams += composition[part] ?? 0;
  return grams;
}

/**
 * °Brix of a composition: g soluble solids per 100 g of its liquid phase (soluble solids, water and alcohol).
 *
 * That is what a refractometer reads on the juice of it, within a few tenths: all soluble solids count as sucrose does
 * (sugars differ by less than 1 % in refraction), soluble fibre is left out, and alcohol, which bends light too,
 * counts as water. Fruit pieces, seeds and fat do not reach the prism. A composition without liquid has 0 °Brix.
 *
 * @example
 * ```ts
 * brix({water: 40, sucrose: 60}); // => 60
 * ```
 */
export function brix(composition: Composition): number {
  const soluble = solubleSolids(composition);
  const liquid = soluble + (composition.water ?? 0) + (composition.alcohol ?? 0);
  return liquid > 0 ? (100 * soluble) / liquid : 0;
}
