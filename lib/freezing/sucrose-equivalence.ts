import {finite} from "../core/numbers.ts";
import {rootBetween} from "../core/roots.ts";
import {expectShape} from "../core/shape.ts";
import {SHORTHANDS} from "../pantry/composition.ts";
import {expectComposition} from "../pantry/expect.ts";
import type {Composition, Part} from "../pantry/parts.ts";
import {SOLUTES} from "./held-water.ts";
import {interpolate} from "./interpolate.ts";
import {SUCROSE_EQUIVALENTS, SUCROSE_TABLE, SYRUP_EQUIVALENTS} from "./tables.ts";

/**
 * Freezing-point depression by the salts of milk and whey, °C g water per g of MSNF or whey solids.
 *
 * Source: H. D. Goff and R. W. Hartel, Ice Cream, 7th ed. (2013), chapter 6. It goes back to A. Leighton, On the
 * calculation of the freezing point of ice-cream mixes, J. Dairy Sci. 10 (1927): 0.244 °C in milk of 8.99 solids-not-fat
 * and 87.11 water.
 */
export const SALTS_DEPRESSION = 2.37;

/** A mix as the method of sucrose equivalents sees it, g per 100 g. */
export interface EquivalenceMix {
  /** Sucrose that would lower the freezing point as all the sugars do. */
  readonly sucroseEquivalent: number;
  /** MSNF and whey solids, whose salts count apart. */
  readonly milkSolids: number;
  readonly water: number;
}

/**
 * A composition in sucrose equivalents.
 *
 * Milk solids are taken from the milk salts, 8 g per 100 g MSNF. The method knows no alcohol, salt, glycerol, acids
 * or plant salts: what it leaves out is listed.
 *
 * @example
 * ```ts
 * equivalenceMix({water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17}); // => {sucroseEquivalent: 23, milkSolids: 12.5, water: 62, leftOut: []}
 * ```
 */
export function equivalenceMix(
  composition: Composition,
): EquivalenceMix & {readonly leftOut: readonly Part[]} {
  expectComposition(composition);
  let sucroseEquivalent = 0;
  for (const part in SUCROSE_EQUIVALENTS) {
    sucroseEquivalent +=
      SUCROSE_EQUIVALENTS[part as keyof typeof SUCROSE_EQUIVALENTS] * (composition[part as Part] ?? 0);
  }
  const syrup = composition.glucoseSyrupSolids ?? 0;
  if (syrup > 0) sucroseEquivalent += syrup * syrupEquivalent(composition.dextroseEquivalent ?? 0);
  return {
    sucroseEquivalent,
    milkSolids: (composition.milkSalts ?? 0) / SHORTHANDS.msnf.milkSalts!,
    water: composition.water ?? 0,
    leftOut: SOLUTES.filter((part) => composition[part] && !COUNTED.has(part)),
  };
}

const COUNTED = new Set<Part>([
  ...(Object.keys(SUCROSE_EQUIVALENTS) as Part[]),
  "glucoseSyrupSolids",
  "milkSalts",
]);

/** Sucrose equivalent of glucose-syrup solids, g per g: straight between the published 10, 36, 42, 62 DE and dextrose. */
function syrupEquivalent(dextroseEquivalent: number): number {
  const {x, y} = SYRUP_EQUIVALENTS;
  return interpolate({x: [...x, 100], y: [...y, SUCROSE_EQUIVALENTS.dextrose]}, dextroseEquivalent);
}

/**
 * Temperature at which a share of the water is ice, °C, by sucrose equivalents: the depression of the sugars, from the
 * table for sucrose at their strength in the water left, and that of the milk salts are added.
 *
 * Source: A. Leighton (1927), as given in H. D. Goff and R. W. Hartel, Ice Cream, 7th ed. (2013), example problems 13
 * and 14, with their table 6.1.
 *
 * @param frozen share of the water that is ice, %, from 0 to below 100
 * @returns `undefined` where the solution is stronger than the table, 180 g sucrose per 100 g water
 */
export function temperatureBySucroseEquivalence(mix: EquivalenceMix, frozen: number): number | undefined {
  const liquid = mix.water * (1 - frozen / 100);
  if (liquid <= 0) return undefined;
  const strength = (100 * mix.sucroseEquivalent) / liquid;
  if (strength > SUCROSE_TABLE.x.at(-1)!) return undefined;
  return -(interpolate(SUCROSE_TABLE, strength) + (SALTS_DEPRESSION * mix.milkSolids) / liquid);
}

/**
 * Water that stays liquid at a temperature by sucrose equivalents, g per 100 g of mix: the inverse of
 * {@link temperatureBySucroseEquivalence}, with no regard to how much water there is.
 *
 * @param temperature °C, below 0
 * @returns `undefined` where the solution would be stronger than the table, and for a mix without sugars
 */
export function liquidBySucroseEquivalence(mix: EquivalenceMix, temperature: number): number | undefined {
  if (mix.sucroseEquivalent <= 0) return undefined;
  const strongest = SUCROSE_TABLE.x.at(-1)!;
  const strength = rootBetween(
    (s) => interpolate(SUCROSE_TABLE, s) + saltsAt(mix, s) + temperature,
    0,
    strongest,
    1e-6,
  );
  return strength === undefined ? undefined : (100 * mix.sucroseEquivalent) / strength;
}

/** Temperature at which the sucrose table ends for a mix, °C. */
export function coldestBySucroseEquivalence(mix: EquivalenceMix): number {
  if (mix.sucroseEquivalent <= 0) return 0;
  return -(SUCROSE_TABLE.y.at(-1)! + saltsAt(mix, SUCROSE_TABLE.x.at(-1)!));
}

/** Depression by the milk salts, °C, where the sugars have a strength in g sucrose per 100 g water. */
function saltsAt({sucroseEquivalent, milkSolids}: EquivalenceMix, strength: number): number {
  return (SALTS_DEPRESSION * milkSolids * strength) / (100 * sucroseEquivalent);
}

/**
 * Freezing curve by sucrose equivalents, as far as the table goes.
 *
 * @param step distance of the points in % of the water frozen, 0.001 to 100; 5 by default
 * @throws InputError for figures that are no numbers from 0, and a step out of range
 *
 * @example
 * ```ts
 * const mix = equivalenceMix({
 *   water: 62,
 *   milkFat: 10,
 *   milkProtein: 4,
 *   lactose: 6,
 *   milkSalts: 1,
 *   sucrose: 17,
 * });
 * sucroseEquivalenceCurve(mix, 25).slice(0, 2); // => [{frozen: 0, temperature: -2.8}, {frozen: 25, temperature: -3.7}]
 * ```
 */
export function sucroseEquivalenceCurve(
  mix: EquivalenceMix,
  step = 5,
): {readonly frozen: number; readonly temperature: number}[] {
  expectShape(
    mix,
    {sucroseEquivalent: "number", milkSolids: "number", water: "number"},
    "mix in sucrose equivalents",
    "make it with equivalenceMix(composition)",
  );
  for (const key of ["sucroseEquivalent", "milkSolids", "water"] as const)
    finite(mix[key], `mix.${key}`, {min: 0}, "g per 100 g");
  finite(step, "step", {min: 0.001, max: 100}, "%");
  const curve: {frozen: number; temperature: number}[] = [];
  for (let frozen = 0; frozen < 100; frozen += step) {
    const temperature = temperatureBySucroseEquivalence(mix, frozen);
    if (temperature === undefined) break;
    curve.push({frozen, temperature});
  }
  return curve;
}
