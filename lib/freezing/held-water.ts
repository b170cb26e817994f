import {finite} from "../core/numbers.ts";
import {oneOf} from "../core/shape.ts";
import {expectComposition, expectEquivalent} from "../pantry/expect.ts";
import {type Composition, type Part, PARTS} from "../pantry/parts.ts";
import {type HeldWaterCoefficients, heldWaterPerGram} from "./solute.ts";
import {SOLUTE_TABLE} from "./solute-table.ts";
import {BOUND_WATER} from "./tables.ts";
import {iceWaterActivity} from "./water-activity.ts";

/** A part that lowers the freezing point. */
export type Solute = keyof typeof SOLUTE_TABLE;

/** The parts that lower the freezing point; proteins, fibre, starch and stabilisers only bind some water. */
export const SOLUTES = Object.keys(SOLUTE_TABLE) as readonly Solute[];

/** Lowest temperature of the model, °C: the bound water of the sugars would run out near -44 °C. */
export const COLDEST = -40;

/** Whether a part lowers the freezing point. */
export function isSolute(part: Part): part is Solute {
  return part in SOLUTE_TABLE;
}

/** A part that binds water which never freezes. */
type Binder = keyof typeof BOUND_WATER;

/**
 * Water that one g of a part binds at every temperature, g per g: what calorimetry finds unfreezable in proteins
 * (0.36 ± 0.04, Nippon Nogeikagaku Kaishi 53, 1979), gums, starch, fibre and long chains of sugar. The water that sugars
 * and salts bind is in their own curves.
 *
 * @param dextroseEquivalent of glucose-syrup solids, which bind it where they are no dextrose; not used for other parts
 */
export function boundBy(part: Part, dextroseEquivalent?: number): number {
  const bound = part in BOUND_WATER ? BOUND_WATER[part as Binder] : 0;
  return part === "glucoseSyrupSolids" ? bound * (1 - dextroseEquivalent! / 100) : bound;
}

/**
 * Water that one g of a part keeps liquid at a temperature, g per g: what it holds as a solute and what it binds. A part
 * that crystallises (`CRYSTALLISING`) holds this as far as it stays dissolved.
 *
 * Glucose-syrup solids hold dextrose equivalent / 100 of what dextrose holds: as much as the same number of dextrose
 * molecules (number-average molar mass 18016 / DE). Of the ways tried this agrees best with the published sucrose
 * equivalents of 10, 36, 42 and 62 DE, and it is exact for blends of syrups.
 *
 * @param temperature °C, from -40 to below 0
 * @param dextroseEquivalent of glucose-syrup solids, which need one, dextrose = 100; not used for other parts
 * @throws InputError outside the temperature range, and for glucose-syrup solids without an equivalent
 *
 * @example
 * ```ts
 * heldBy("sucrose", -10); // => 0.78
 * ```
 */
export function heldBy(part: Part, temperature: number, dextroseEquivalent?: number): number {
  oneOf(part, PARTS, "part", "part");
  const activity = activityOfIce(temperature);
  expectEquivalent(part === "glucoseSyrupSolids" ? 1 : 0, dextroseEquivalent, "dextroseEquivalent");
  if (dextroseEquivalent !== undefined) finite(dextroseEquivalent, "dextroseEquivalent", {min: 0, max: 100});
  const bound = boundBy(part, dextroseEquivalent);
  if (!isSolute(part)) return bound;
  const share = part === "glucoseSyrupSolids" ? dextroseEquivalent! / 100 : 1;
  return bound + share * heldWaterPerGram(SOLUTE_TABLE[part].coefficients, activity);
}

/**
 * Water that stays liquid at a temperature, g per 100 g, if there is enough of it and all solutes stay dissolved: the sum
 * over the solutes of mass over the strength of the solute's own solution that freezes there, and the bound water.
 *
 * It is linear in the masses of the parts, and so in the masses of ingredients. This is the mixing rule of
 * A. B. Zdanovskii (1936), R. H. Stokes and R. A. Robinson (J. Phys. Chem. 70, 1966): solutions of equal water
 * activity mix without changing it.
 *
 * @param composition g per 100 g
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range, and for glucose-syrup solids without a dextrose equivalent
 *
 * @example
 * ```ts
 * heldWater({water: 70, sucrose: 30}, -10); // => 23.5
 * ```
 */
export function heldWater(composition: Composition, temperature: number): number {
  expectComposition(composition);
  return heldIn(composition, temperature);
}

/** As {@link heldWater}, of anything linear in masses, which may be negative: rows of a linear program. */
export function heldIn(composition: Composition, temperature: number): number {
  return heldWaterPerGram(mixCoefficients(composition), activityOfIce(temperature));
}

/** A held-water curve that is being added up. */
type Sum = [number, number, number, number, number, number];

/** Curve of one g of a part, bound water included. */
interface PerGram {
  readonly curve: HeldWaterCoefficients;
  /** Excess of the curve over a share of the dextrose equivalent: 0 but for glucose-syrup solids. */
  readonly bound: number;
}

const PER_GRAM = new Map<string, PerGram>();
for (const part of SOLUTES) PER_GRAM.set(part, {curve: SOLUTE_TABLE[part].coefficients, bound: 0});
for (const part of Object.keys(BOUND_WATER) as Binder[]) {
  const [ideal, root, c0, c1, c2, c3] = PER_GRAM.get(part)?.curve ?? [0, 0, 0, 0, 0, 0];
  const syrup = part === "glucoseSyrupSolids";
  PER_GRAM.set(part, {
    curve: [ideal, root, c0 + (syrup ? 0 : BOUND_WATER[part]), c1, c2, c3],
    bound: syrup ? BOUND_WATER[part] : 0,
  });
}

/**
 * Coefficients of 100 g of a mix in which all solutes are dissolved: the sum of theirs, since a held-water curve is linear in
 * its coefficients, with the bound water as a constant.
 */
export function mixCoefficients(composition: Composition): HeldWaterCoefficients {
  const total: Sum = [0, 0, 0, 0, 0, 0];
  for (const part in composition) {
    const perGram = PER_GRAM.get(part);
    if (perGram === undefined) continue;
    const grams = composition[part as Part] ?? 0;
    if (perGram.bound === 0) addCurve(total, perGram.curve, grams);
    else {
      const share = (composition.dextroseEquivalent ?? 0) / 100;
      addCurve(total, perGram.curve, grams * share);
      total[2] += grams * (1 - share) * perGram.bound;
    }
  }
  return total;
}

/** Adds some grams of a curve to a sum. */
export function addCurve(total: Sum, curve: HeldWaterCoefficients, grams: number): void {
  for (let i = 0; i < 6; i++) total[i]! += grams * curve[i]!;
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
