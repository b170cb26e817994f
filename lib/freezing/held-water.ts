import {finite} from "../core/numbers.ts";
import {oneOf} from "../core/shape.ts";
import {expectComposition} from "../pantry/expect.ts";
import {type Composition, type Part, PARTS} from "../pantry/parts.ts";
import {type HeldWaterCoefficients, heldWaterPerGram} from "./solute.ts";
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
  oneOf(part, PARTS, "part", "part");
  const activity = activityOfIce(temperature);
  finite(dextroseEquivalent, "dextroseEquivalent", {min: 0, max: 100});
  if (!isSolute(part)) return 0;
  const share = part === "glucoseSyrupSolids" ? dextroseEquivalent / 100 : 1;
  return share * heldWaterPerGram(SOLUTE_TABLE[part].coefficients, activity);
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
  expectComposition(composition);
  return heldIn(composition, temperature);
}

/** As {@link heldWater}, of anything linear in masses, which may be negative: rows of a linear program. */
export function heldIn(composition: Composition, temperature: number): number {
  return heldWaterPerGram(mixCoefficients(composition), activityOfIce(temperature));
}

/** Coefficients of 100 g of a mix: the sum of its solutes', since a held-water curve is linear in its coefficients. */
export function mixCoefficients(composition: Composition): HeldWaterCoefficients {
  const total: [number, number, number, number, number, number] = [0, 0, 0, 0, 0, 0];
  for (const part of SOLUTES) {
    const grams = composition[part];
    if (!grams) continue;
    const share = part === "glucoseSyrupSolids" ? (composition.dextroseEquivalent ?? 0) / 100 : 1;
    const {coefficients} = SOLUTE_TABLE[part];
    for (let i = 0; i < 6; i++) total[i]! += grams * share * coefficients[i]!;
  }
  return total;
}

/**
 * Water activity of ice where the model holds. Kept for the temperatures asked before: they are the same for every mix.
 *
 * @throws InputError outside -40 to below 0 °C
 */
export function activityOfIce(temperature: number): number {
  const known = activities.get(temperature);
  if (known !== undefined) return known;
  finite(temperature, "temperature", {min: COLDEST, max: -Number.EPSILON}, "°C");
  const activity = iceWaterActivity(temperature);
  if (activities.size >= 2000) activities.clear();
  activities.set(temperature, activity);
  return activity;
}

const activities = new Map<number, number>();
