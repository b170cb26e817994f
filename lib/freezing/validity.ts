import {expectComposition} from "../pantry/expect.ts";
import type {Composition, Part} from "../pantry/parts.ts";
import {activityOfIce, boundBy, heldBy, heldWater, isSolute, type Solute, SOLUTES} from "./held-water.ts";
import {type HeldWaterCoefficients, heldWaterPerGram, type SoluteCurve} from "./solute.ts";
import {MILK_SALTS_OF_1927, SOLUTE_TABLE} from "./solute-table.ts";
import {
  coldestBySucroseEquivalence,
  equivalenceMix,
  liquidBySucroseEquivalence,
} from "./sucrose-equivalence.ts";
import {iceWaterActivity} from "./water-activity.ts";

/** A solute whose curve is used beyond the data that it was fitted to. */
export interface Extrapolation {
  readonly part: Solute;
  /** Lowest freezing point in its data, °C. */
  readonly coldest: number;
  /** Water that it holds, g per 100 g of mix. */
  readonly held: number;
}

/**
 * The solutes of a mix whose data end above a temperature, the one that holds most water first. Most mixes have some:
 * of the sugars only sucrose was measured below -6 °C.
 *
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 *
 * @example
 * ```ts
 * // Dextrose was measured down to about -6 °C, salt to its eutectic.
 * extrapolations({water: 70, dextrose: 30}, -18).map(({part}) => part); // => ["dextrose"]
 * extrapolations({water: 96, salt: 4}, -18); // => []
 * ```
 */
export function extrapolations(composition: Composition, temperature: number): Extrapolation[] {
  expectComposition(composition);
  activityOfIce(temperature);
  return SOLUTES.filter((part) => composition[part] && temperature < SOLUTE_TABLE[part].coldest)
    .map((part) => ({
      part,
      coldest: SOLUTE_TABLE[part].coldest,
      held: composition[part]! * heldBy(part, temperature, composition.dextroseEquivalent),
    }))
    .sort((a, b) => b.held - a.held);
}

/**
 * Error of the held water, and so of the ice, g per 100 g of mix: root of the sum of squares of
 * `heldError` and half of what the method of sucrose equivalents says otherwise.
 *
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 *
 * @example
 * ```ts
 * iceError({water: 70, sucrose: 30}, -10); // => 0.4
 * ```
 */
export function iceError(composition: Composition, temperature: number): number {
  return Math.hypot(heldError(composition, temperature), methodDifference(composition, temperature) / 2);
}

/**
 * Uncertainty of the bound water of a part, g per g. Proteins: the spread of calorimetry (Nippon Nogeikagaku Kaishi 53,
 * 1979); gums, starch, fibre and chains, which are from memory: half of their figure. Polyols that rest on constants at
 * 25 °C: what those constants miss of the bound water of mannitol (0.08) and glycerol (0.3) by the CRC Handbook, which are
 * both the wrong way, in the middle.
 */
const BOUND_ERROR: Readonly<Partial<Record<Part, number>>> = {
  milkProtein: 0.06,
  otherProtein: 0.06,
  starch: 0.15,
  fibre: 0.13,
  stabiliser: 0.25,
  gelatine: 0.25,
  sorbitol: 0.15,
  xylitol: 0.15,
  erythritol: 0.15,
};

/**
 * Share by which the whole effect of a part may be wrong: trehalose, whose commercial product freezes as if it were more
 * than 15 % lighter (abstract, Food Systems), and what is from memory or without a measurement.
 */
const HELD_ERROR: Readonly<Partial<Record<Part, number>>> = {
  trehalose: 0.15,
  isomalt: 0.1,
  allulose: 0.05,
  isomaltulose: 0.1,
  tagatose: 0.05,
  polydextrose: 0.25,
  oligofructose: 0.25,
  inulin: 0.25,
};

/**
 * Error of the held water by what is known of its parts, g per 100 g of mix: root of the sum of squares.
 *
 * Within its data a solute is wrong by its fit's rms; beyond, also by half of what its bound water is taken to fall
 * past their end. Milk salts are wrong by what the freezing point of milk of 1927 (-0.55 °C) would change, bound water and
 * solutes without measurement by what is not known of them.
 *
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function heldError(composition: Composition, temperature: number): number {
  expectComposition(composition);
  const activity = activityOfIce(temperature);
  const syrup = (composition.dextroseEquivalent ?? 0) / 100;
  let squares =
    ((composition.glucoseSyrupSolids ?? 0) * boundBy("glucoseSyrupSolids", 0) * (1 - syrup) * 0.5) ** 2;
  for (const part in BOUND_ERROR) {
    squares += ((composition[part as Part] ?? 0) * BOUND_ERROR[part as Part]!) ** 2;
  }
  for (const part of SOLUTES) {
    const grams = composition[part];
    if (!grams) continue;
    const curve: SoluteCurve = SOLUTE_TABLE[part];
    const share = part === "glucoseSyrupSolids" ? syrup : 1;
    const unsure = part === "milkSalts" ? MILK_SALTS_OF_1927 - 1 : (HELD_ERROR[part] ?? 0);
    const calibration = unsure > 0 ? unsure * heldWaterPerGram(curve.coefficients, activity) : 0;
    squares +=
      (grams * share) ** 2 *
      (fitError(curve, temperature) ** 2 + extrapolationError(curve, temperature) ** 2 + calibration ** 2);
  }
  return Math.sqrt(squares);
}

/**
 * Water that stays liquid by the method of sucrose equivalents less that by held water, g per 100 g of mix, counting
 * only what both methods know: no bound water of proteins and gums. Where the sucrose table has ended, the relative difference at its end is kept.
 *
 * @param temperature °C, from -40 to below 0
 * @returns 0 for a mix without sugars
 * @throws InputError outside the temperature range
 *
 * @example
 * ```ts
 * const mix = {water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17};
 * methodDifference(mix, -15); // => -1.1
 * ```
 */
export function methodDifference(composition: Composition, temperature: number): number {
  const {leftOut, ...mix} = equivalenceMix(composition);
  activityOfIce(temperature);
  const common = Object.fromEntries(
    Object.entries(composition).filter(
      ([part]) => !(leftOut as readonly string[]).includes(part) && !bindsOnly(part as Part),
    ),
  );
  const within = Math.max(temperature, coldestBySucroseEquivalence(mix));
  const liquid = liquidBySucroseEquivalence(mix, within);
  if (liquid === undefined) return 0;
  return (liquid / heldWater(common, within) - 1) * heldWater(common, temperature);
}

/** Whether a part only binds water: protein, starch, fibre, gums. */
function bindsOnly(part: Part): boolean {
  return !isSolute(part) && boundBy(part) > 0;
}

/** The rms of a fit, °C, as held water, g per g. */
function fitError({coefficients, rms}: SoluteCurve, temperature: number): number {
  const warmer = heldWaterPerGram(coefficients, iceWaterActivity(temperature * 0.999));
  const colder = heldWaterPerGram(coefficients, iceWaterActivity(temperature * 1.001));
  return (rms * (warmer - colder)) / (0.002 * Math.abs(temperature));
}

/** Half of the change of bound water between the end of the data and a temperature, g per g. */
function extrapolationError({coefficients, coldest}: SoluteCurve, temperature: number): number {
  if (temperature >= coldest) return 0;
  const [, root, c0, c1, c2, c3] = coefficients;
  const bound: HeldWaterCoefficients = [0, root, c0, c1, c2, c3];
  const change =
    heldWaterPerGram(bound, iceWaterActivity(coldest)) -
    heldWaterPerGram(bound, iceWaterActivity(temperature));
  return Math.abs(change) / 2;
}
