import {InputError} from "../core/errors.ts";
import type {Composition, Part} from "../pantry/parts.ts";
import {heldWaterPerGram} from "./solute.ts";
import {SOLUTE_TABLE} from "./solute-table.ts";
import {iceWaterActivity} from "./water-activity.ts";

/** A part that lowers the freezing point. */
export type Solute = keyof typeof SOLUTE_TABLE;

/** The parts that lower the freezing point; proteins, fibre, starch and stabilisers are counted as holding no water. */
export const SOLUTES = Object.keys(SOLUTE_TABLE) as readonly Solute[];

/** Lowest temperature of the model, °C: the bound water of the sugars would run out near -44 °C. */
export const COLDEST = -40;

/** Whether a part lowers the freezing point. */
export function isSolute(part: Part): part is Solute {
  return part in SOLUTE_TABLE;
}

/**
 * Water that one g of a part keeps liquid at a temperature, g per g; 0 for a part that is no solute.
 *
 * Glucose-syrup solids hold dextrose equivalent / 100 of what dextrose holds: as much as the same number of dextrose
 * molecules (number-average molar mass 18016 / DE). Of the ways tried this agrees best with the published sucrose
 * equivalents of 10, 36, 42 and 62 DE, and it is exact for blends of syrups.
 *
 * @param temperature °C, from -40 to below 0
 * @param dextroseEquivalent of glucose-syrup solids, dextrose = 100; not used for other parts
 * @throws InputError outside the temperature range
 */
export function heldBy(part: Part, temperature: number, dextroseEquivalent = 100): number {
  if (!isSolute(part)) return 0;
  const held = heldByEach(temperature)[SOLUTES.indexOf(part)]!;
  return part === "glucoseSyrupSolids" ? (held * dextroseEquivalent) / 100 : held;
}

/**
 * Water that stays liquid at a temperature, g per 100 g, if there is enough of it: the sum over the solutes of mass
 * over the strength of the solute's own solution that freezes there.
 *
 * It is linear in the masses of the parts, and so in the masses of ingredients. This is the mixing rule of
 * A. B. Zdanovskii (1936), R. H. Stokes and R. A. Robinson (J. Phys. Chem. 70, 1966): solutions of equal water
 * activity mix without changing it.
 *
 * @param composition g per 100 g
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function heldWater(composition: Composition, temperature: number): number {
  return dot(soluteMasses(composition), heldByEach(temperature));
}

/** Masses in the order of {@link SOLUTES}; of glucose-syrup solids, the mass of dextrose with as many molecules. */
export function soluteMasses(composition: Composition): Float64Array {
  return Float64Array.from(SOLUTES, (part) =>
    part === "glucoseSyrupSolids"
      ? ((composition.glucoseSyrupSolids ?? 0) * (composition.dextroseEquivalent ?? 0)) / 100
      : (composition[part] ?? 0),
  );
}

/** Held water of each solute in the order of {@link SOLUTES}, g per g, kept for temperatures asked before. */
export function heldByEach(temperature: number): Float64Array {
  const known = remembered.get(temperature);
  if (known) return known;
  const held = computeHeldByEach(temperature);
  if (remembered.size >= REMEMBERED) remembered.clear();
  remembered.set(temperature, held);
  return held;
}

/** As {@link heldByEach}, without keeping the result: for root finding, where no temperature comes twice. */
export function computeHeldByEach(temperature: number): Float64Array {
  if (!(temperature >= COLDEST && temperature < 0)) {
    throw new InputError(
      "temperature",
      "ice and solution meet only below 0 °C, and the model ends at -40 °C",
      temperature,
      "give a temperature from -40 to below 0 °C",
    );
  }
  const activity = iceWaterActivity(temperature);
  return Float64Array.from(SOLUTES, (part) => heldWaterPerGram(SOLUTE_TABLE[part].coefficients, activity));
}

/** Sum of products of two lists of equal length. */
export function dot(a: Float64Array, b: Float64Array): number {
  let total = 0;
  for (let i = 0; i < a.length; i++) total += a[i]! * b[i]!;
  return total;
}

/** At most so many temperatures are kept: several grids' worth, about 1 MB. */
const REMEMBERED = 4096;
const remembered = new Map<number, Float64Array>();
