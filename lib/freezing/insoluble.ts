import type {Composition, Part} from "../pantry/parts.ts";

/** Parts that stay solid in a mix: particles of cocoa, nuts and fruit, and protein that is not of milk. */
const INSOLUBLE: readonly Part[] = ["otherProtein", "starch", "fibre", "otherCarbohydrate", "otherSolids"];

/** Solids that neither dissolve nor melt, g per 100 g. Linear in the masses. */
export function insoluble(composition: Composition): number {
  let total = 0;
  for (const part of INSOLUBLE) total += composition[part] ?? 0;
  return total;
}
