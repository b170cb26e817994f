import {decimal} from "../../core/format.ts";
import type {Composition} from "../../pantry/parts.ts";
import {quantityIn} from "../../pantry/quantities.ts";

/**
 * Fat beyond which no mix is churned as it is, g per 100 g: the richest published hard ice cream mixes have 16 (University of Guelph,
 * ice cream technology e-book), the richest that are sold a little over 20 (common practice, no source).
 */
const RICH = 25;

/**
 * Total solids beyond which too little water is left to freeze, g per 100 g: published mixes have 31 to 41 (the same e-book), nut and
 * chocolate bases up to 50 (common practice, no source).
 */
const DRY = 60;

/** Total solids below which a mix freezes to plain ice, g per 100 g: a granita has 12 to 18 (common practice, no source). */
const ICY = 10;

/** Sweetness below which a mix is none of the kinds that are sold: a granita has 10 or more (common practice, no source). */
const PLAIN = 5;

/** Alcohol from which on a mix with next to no solids is a drink, g per 100 g. */
const DRINK = 5;

/** Sentence on a mix that is no frozen dessert, with a remedy: fat, a paste, ice or a drink; `undefined` for any other. */
export function noDessert(composition: Composition): string | undefined {
  return tooDry(composition) ?? tooThin(composition);
}

/** Sentence on a mix with too little water to freeze: fat, or a paste. */
export function tooDry(composition: Composition): string | undefined {
  const [fat, solids] = [quantityIn(composition, "fat"), quantityIn(composition, "totalSolids")];
  if (fat > RICH)
    return `Fat, not ice cream: ${decimal(fat, 0)} % fat, where the richest have about 20. Ask for at most so much of it.`;
  if (solids > DRY)
    return `A paste, not ice cream: ${decimal(solids, 0)} % total solids, where mixes have 30 to 45. Ask for at most so much of them.`;
  return undefined;
}

function tooThin(composition: Composition): string | undefined {
  const [solids, sweetness] = [quantityIn(composition, "totalSolids"), quantityIn(composition, "sweetness")];
  const what = (composition.alcohol ?? 0) > DRINK ? "A drink" : "Ice";
  if (solids < ICY)
    return `${what}, not a dessert: ${decimal(solids, 0)} % total solids, where even a granita has 12 and mixes have 30 to 45. Ask for at least so much of them.`;
  if (sweetness < PLAIN)
    return `${what}, not a dessert: as sweet as ${decimal(sweetness, 0)} % sugar, where even a granita is like 10 %. Ask for at least so much sweetness.`;
  return undefined;
}
