import {expectComposition} from "../pantry/expect.ts";
import type {Composition, Part} from "../pantry/parts.ts";
import {interpolate} from "./interpolate.ts";
import {GLASS_TRANSITIONS, SYRUP_GLASS_TRANSITION} from "./tables.ts";

/**
 * Glass transition of the freeze-concentrated solution, °C: stored below it, ice crystals stay as they are; above it
 * they coarsen, the faster the warmer. A caution for storage: a household freezer never gets there.
 *
 * The mean of the sugars' own transitions weighted by mass, which are from memory (`datasets/glass_transition.csv`).
 * Proteins and stabilisers are left out.
 *
 * @returns `undefined` for a mix without sugars
 *
 * @example
 * ```ts
 * glassTransition({water: 70, sucrose: 30}); // => -32
 * ```
 */
export function glassTransition(composition: Composition): number | undefined {
  expectComposition(composition);
  const syrup = composition.glucoseSyrupSolids ?? 0;
  let mass = syrup;
  let total =
    syrup > 0 ? syrup * interpolate(SYRUP_GLASS_TRANSITION, composition.dextroseEquivalent ?? 0) : 0;
  for (const part in GLASS_TRANSITIONS) {
    const grams = composition[part as Part] ?? 0;
    mass += grams;
    total += grams * GLASS_TRANSITIONS[part as keyof typeof GLASS_TRANSITIONS];
  }
  return mass > 0 ? total / mass : undefined;
}
