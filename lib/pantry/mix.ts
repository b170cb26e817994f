import {expectList} from "../core/shape.ts";
import {type Composition, PARTS, type Part} from "./parts.ts";

/** Something of a known composition, and how much of it, in any unit of mass. */
export interface Portion {
  readonly composition: Composition;
  readonly mass: number;
}

/**
 * Composition of a mix, g per 100 g: the mass-weighted mean of the portions' parts, and of the dextrose equivalent
 * weighted by the mass of glucose-syrup solids. An empty mix has an empty composition.
 */
export function mixComposition(portions: readonly Portion[]): Composition {
  expectList(
    portions,
    {composition: "object", mass: "number"},
    "portions",
    "give {composition, mass} of each",
  );
  let mass = 0;
  let reducing = 0;
  const parts: Partial<Record<Part, number>> = {};
  for (const portion of portions) {
    if (portion.mass === 0) continue;
    mass += portion.mass;
    for (const part of PARTS) {
      const value = portion.composition[part];
      if (value) parts[part] = (parts[part] ?? 0) + portion.mass * value;
    }
    reducing +=
      portion.mass *
      (portion.composition.glucoseSyrupSolids ?? 0) *
      (portion.composition.dextroseEquivalent ?? 0);
  }
  if (mass === 0) return {};
  const syrup = parts.glucoseSyrupSolids ?? 0;
  for (const part in parts) parts[part as Part]! /= mass;
  return syrup > 0 ? {...parts, dextroseEquivalent: reducing / syrup} : parts;
}
