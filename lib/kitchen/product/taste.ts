import {decimal} from "../../core/format.ts";
import type {Composition} from "../../pantry/parts.ts";
import {quantityIn} from "../../pantry/quantities.ts";

/**
 * Salt from which on a frozen dessert tastes salty, g per 100 g: a plain mix takes 0.1 to 0.2, one of salted caramel about 0.5.
 * Common practice, no source.
 */
const SALTY = 0.3;

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

/** Fat from which on a mix is one with milk or cream, g per 100 g. */
const CREAMY = 2;

/**
 * Sweetness beyond which a mix cloys, g of sucrose as sweet per 100 g: the suggested mixes for hard ice cream have 13 to 16 by this
 * model (the same e-book), gelato up to about 20, sorbets 22 to 30 (common practice, no source).
 */
const CLOYING = {creamy: 22, sorbet: 36};

/** Cautions on tastes of a mix that are probably unintended, each a sentence with a remedy. */
export function tasteCautions(composition: Composition): string[] {
  const {salt = 0} = composition;
  const [fat, solids] = [quantityIn(composition, "fat"), quantityIn(composition, "totalSolids")];
  const sweetness = quantityIn(composition, "sweetness");
  const cautions: string[] = [];
  if (salt > SALTY)
    cautions.push(
      `Tastes salty: ${decimal(salt, 2)} % salt, where a plain mix has 0.1 to 0.2 and salted caramel about 0.5. For less, limit what brings it.`,
    );
  if (fat > RICH)
    cautions.push(
      `Fat, not ice cream: ${decimal(fat, 0)} % fat, where the richest have about 20. Ask for at most so much of it.`,
    );
  else if (solids > DRY)
    cautions.push(
      `A paste, not ice cream: ${decimal(solids, 0)} % total solids, where mixes have 30 to 45. Ask for at most so much of them.`,
    );
  else if (sweetness > (fat >= CREAMY ? CLOYING.creamy : CLOYING.sorbet))
    cautions.push(
      `Very sweet: as sweet as ${decimal(sweetness, 0)} % sugar, where ${fat >= CREAMY ? "ice cream is like 13 to 16 % and gelato up to 20" : "a sorbet is like 22 to 30"} %. Ask for at most so much sweetness.`,
    );
  return cautions;
}
