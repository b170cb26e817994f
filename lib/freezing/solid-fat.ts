import {finite} from "../core/numbers.ts";
import {expectComposition} from "../pantry/expect.ts";
import type {Composition} from "../pantry/parts.ts";
import {interpolate} from "./interpolate.ts";
import {SOLID_FAT} from "./tables.ts";

/** A part that is fat. */
export type Fat = keyof typeof SOLID_FAT;

/** The parts that are fats. */
export const FATS = Object.keys(SOLID_FAT) as readonly Fat[];

/**
 * Solid share of a fat at a temperature, %: how much has crystallised at rest.
 *
 * The curves of milk fat, cocoa butter and coconut fat are from memory, those of egg fat and of nut and seed oils are
 * estimates; all are in `datasets/solid_fat.csv`. Below -40 and above 38 °C they are level.
 *
 * @param temperature °C
 */
export function solidShare(fat: Fat, temperature: number): number {
  return interpolate(SOLID_FAT[fat], temperature);
}

/**
 * Solid fat at a temperature, g per 100 g of mix. Linear in the masses; fats are taken not to dissolve in each other.
 *
 * @param temperature °C
 * @throws InputError for a temperature that is no finite number
 *
 * @example
 * ```ts
 * solidFat({water: 60, milkFat: 40}, -18); // => 33
 * ```
 */
export function solidFat(composition: Composition, temperature: number): number {
  expectComposition(composition);
  finite(temperature, "temperature", {}, "°C");
  return solidFatIn(composition, temperature);
}

/** As {@link solidFat}, of anything linear in masses, which may be negative: rows of a linear program. */
export function solidFatIn(composition: Composition, temperature: number): number {
  let total = 0;
  for (const fat of FATS) {
    const grams = composition[fat];
    if (grams) total += (grams * solidShare(fat, temperature)) / 100;
  }
  return total;
}
