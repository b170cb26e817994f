import {readComposition} from "../../lib/pantry/composition.ts";
import type {Composition} from "../../lib/pantry/parts.ts";

/** Parts and shorthands of a mix from a cell such as `milkFat=10; msnf=11`, g per 100 g. */
export function partsIn(cell: string): Record<string, number> {
  const pairs = cell.split(";").map((pair) => pair.split("="));
  return Object.fromEntries(pairs.map(([part, grams]) => [part!.trim(), Number(grams)]));
}

/** A composition from parts; from a mix that may have lost or gained some water, per 100 g of what it is. */
export function compositionOf(parts: Record<string, number>, place: string): Composition {
  const total = Object.values(parts).reduce((a, b) => a + b, 0);
  return readComposition(
    Object.fromEntries(Object.entries(parts).map(([part, grams]) => [part, (100 * grams) / total])),
    place,
  );
}
