import {expectComposition} from "../pantry/expect.ts";
import type {Composition} from "../pantry/parts.ts";
import {activityOfIce, heldBy, heldWater, type Solute, SOLUTES} from "./held-water.ts";
import {type HeldWaterCoefficients, heldWaterPerGram, type SoluteCurve} from "./solute.ts";
import {MILK_SALTS_TODAY, SOLUTE_TABLE} from "./solute-table.ts";
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
 * How far the held water, and so the ice, may be wrong, g per 100 g of mix: root of the sum of squares.
 *
 * Within its data a solute is wrong by its fit's rms; beyond, also by half of what its bound water is taken to fall
 * past their end. Milk salts are wrong by what today's freezing point of milk (-0.52 °C) would change. The whole is
 * wrong by half of what the method of sucrose equivalents says otherwise.
 *
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function iceError(composition: Composition, temperature: number): number {
  expectComposition(composition);
  const activity = activityOfIce(temperature);
  let squares = (methodDifference(composition, temperature) / 2) ** 2;
  for (const part of SOLUTES) {
    const grams = composition[part];
    if (!grams) continue;
    const curve: SoluteCurve = SOLUTE_TABLE[part];
    const share = part === "glucoseSyrupSolids" ? (composition.dextroseEquivalent ?? 0) / 100 : 1;
    const calibration =
      part === "milkSalts" ? (1 - MILK_SALTS_TODAY) * heldWaterPerGram(curve.coefficients, activity) : 0;
    squares +=
      (grams * share) ** 2 *
      (fitError(curve, temperature) ** 2 + extrapolationError(curve, temperature) ** 2 + calibration ** 2);
  }
  return Math.sqrt(squares);
}

/**
 * Water that stays liquid by the method of sucrose equivalents less that by held water, g per 100 g of mix, counting
 * only what both methods know. Where the sucrose table has ended, the relative difference at its end is kept.
 *
 * @param temperature °C, from -40 to below 0
 * @returns 0 for a mix without sugars
 * @throws InputError outside the temperature range
 */
export function methodDifference(composition: Composition, temperature: number): number {
  const {leftOut, ...mix} = equivalenceMix(composition);
  activityOfIce(temperature);
  const common = Object.fromEntries(
    Object.entries(composition).filter(([part]) => !(leftOut as readonly string[]).includes(part)),
  );
  const within = Math.max(temperature, coldestBySucroseEquivalence(mix));
  const liquid = liquidBySucroseEquivalence(mix, within);
  if (liquid === undefined) return 0;
  return (liquid / heldWater(common, within) - 1) * heldWater(common, temperature);
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
