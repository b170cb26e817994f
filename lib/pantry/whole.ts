import {InputError} from "../core/errors.ts";
import {sum} from "../core/numbers.ts";
import {type Composition, PARTS} from "./parts.ts";

/** Largest deviation of the sum of the parts from 100, g per 100 g. */
const SUM_TOLERANCE = 0.5;

/**
 * Refuses parts of an ingredient that are not 100 g together, within 0.5 g.
 *
 * @param place where the composition stands
 * @param given the figures as they were given, shorthands for several parts among them; the parts by default
 * @throws InputError with their sum, and the slip that is likely behind it
 */
export function expectWhole(
  parts: Composition,
  place: string,
  given: Readonly<Record<string, number>> = parts,
): void {
  const total = sum(PARTS.map((part) => parts[part] ?? 0));
  if (Math.abs(total - 100) <= SUM_TOLERANCE + 1e-9) return;
  throw new InputError(
    place,
    "the parts do not sum to 100 g",
    Number(total.toFixed(3)),
    `${slipIn(given, total)}give every part, water included, in g per 100 g`,
  );
}

/** A likely slip of parts that do not sum to 100 g: a lost decimal point, or figures for a portion. */
function slipIn(given: Readonly<Record<string, number>>, total: number): string {
  const lost = Object.entries(given).find(
    ([key, grams]) => key !== "dextroseEquivalent" && Math.abs(total - 0.9 * grams - 100) <= SUM_TOLERANCE,
  );
  if (lost && total > 100)
    return `is the decimal point of ${lost[0]} missing (${lost[1]}, ${Number((lost[1] / 10).toFixed(3))})? If not, `;
  return total < 75 && Object.hasOwn(given, "water") ? "are the figures for a portion? If not, " : "";
}
