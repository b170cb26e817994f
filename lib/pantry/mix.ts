import {finite} from "../core/numbers.ts";
import {expectList} from "../core/shape.ts";
import {expectComposition} from "./expect.ts";
import {type Composition, PARTS, type Part} from "./parts.ts";

/** Something of a known composition, and how much of it. */
export interface Portion {
  readonly composition: Composition;
  /** At least 0. */
  readonly grams: number;
}

/** The same in any unit of mass, or as a share. */
export interface Weighted {
  readonly composition: Composition;
  readonly mass: number;
}

/**
 * Composition of a mix, g per 100 g: the mass-weighted mean of the portions' parts, and of the dextrose equivalent
 * weighted by the mass of glucose-syrup solids. An empty mix has an empty composition.
 *
 * @throws InputError for a mass that is no finite number of at least 0, and for anything that is no composition
 *
 * @example
 * ```ts
 * const cream = {water: 54, milkFat: 40, milkProtein: 2.2, lactose: 3.2, milkSalts: 0.6};
 * mixComposition([
 *   {composition: cream, grams: 300},
 *   {composition: {sucrose: 100}, grams: 100},
 * ]); // => {water: 40.5, milkFat: 30, milkProtein: 1.65, lactose: 2.4, milkSalts: 0.45, sucrose: 25}
 * ```
 */
export function mixComposition(portions: readonly Portion[]): Composition {
  expectList(
    portions,
    {composition: "object", grams: "number"},
    "portions",
    "give {composition, grams} of each",
  );
  for (const [i, {composition, grams}] of portions.entries()) {
    finite(grams, `portions[${i}].grams`, {min: 0}, "g");
    expectComposition(composition);
  }
  return blend(portions.map(({composition, grams}) => ({composition, mass: grams})));
}

/** As {@link mixComposition}, of portions that were checked before: the library's own, many a time. */
export function blend(portions: readonly Weighted[]): Composition {
  let mass = 0;
  let reducing = 0;
  // Few parts are in any one ingredient: only those that are there are walked through.
  const sums: Record<string, number> = {};
  for (const {composition, mass: portion} of portions) {
    if (portion === 0) continue;
    mass += portion;
    for (const key in composition) sums[key] = (sums[key] ?? 0) + portion * composition[key as Part]!;
    reducing += portion * (composition.glucoseSyrupSolids ?? 0) * (composition.dextroseEquivalent ?? 0);
  }
  const parts: Partial<Record<Part, number>> = {};
  for (const part of PARTS) if (sums[part]) parts[part] = sums[part] / mass;
  const syrup = sums.glucoseSyrupSolids ?? 0;
  return syrup > 0 ? {...parts, dextroseEquivalent: reducing / syrup} : parts;
}
