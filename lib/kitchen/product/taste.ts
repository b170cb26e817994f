import {decimal} from "../../core/format.ts";
import {sandiness} from "../../freezing/solubility.ts";
import type {Composition} from "../../pantry/parts.ts";
import {quantityIn} from "../../pantry/quantities.ts";
import {noDessert, tooDry} from "./no-dessert.ts";

/**
 * Salt from which on a frozen dessert tastes salty, g per 100 g: a plain mix takes 0.1 to 0.2, one of salted caramel about 0.5.
 * Common practice, no source.
 */
const SALTY = 0.3;

/** Milk solids from which on a mix is judged as one with milk, g per 100 g: a sherbet has 2 to 5 (21 CFR 135.140). */
const CREAMY = 5;

/**
 * Sweetness beyond which a mix cloys, g of sucrose as sweet per 100 g: the suggested mixes for hard ice cream have 13 to 16 by this
 * model (University of Guelph, ice cream technology e-book), gelato up to about 20, sorbets 22 to 30 (common practice, no source).
 */
const CLOYING = {creamy: 22, sorbet: 36};

/**
 * Acid beyond which a mix is too sour to eat, g per 100 g: sorbets have up to about 1, as citric acid, those of lemon up to 1.5.
 * Common practice, no source.
 */
const SOUR = 1.5;

/** Fat up to which it does not matter that nothing holds it, g per 100 g (common practice, no source). */
const LITTLE_FAT = 2;

/**
 * Protein that holds a gram of fat in the water, g: cream of 48 % fat, which is still an emulsion, has 0.04, coconut milk and nut
 * pastes 0.07 and more. Common practice, no source.
 */
const TO_HOLD = {milkFat: 0.02, otherFat: 0.05};

/** Protein that a gram of emulsifier counts for, g: 0.2 % of it do for 10 % fat. Common practice, no source. */
const EMULSIFIER = 5;

/** Cautions on tastes and textures of a mix that are probably unintended, each a sentence with a remedy. */
export function tasteCautions(composition: Composition): string[] {
  const none = noDessert(composition);
  return [
    salty(composition),
    none ?? sweet(composition),
    // What is next to all solids has no water for acid, fat or lactose to be in.
    ...(tooDry(composition) === undefined
      ? [sour(composition), separates(composition), sandy(composition)]
      : []),
  ].filter((caution) => caution !== undefined);
}

function salty({salt = 0}: Composition): string | undefined {
  if (salt <= SALTY) return undefined;
  return `Tastes salty: ${decimal(salt, 2)} % salt, where a plain mix has 0.1 to 0.2 and salted caramel about 0.5. For less, limit what brings it.`;
}

function sweet(composition: Composition): string | undefined {
  const creamy = quantityIn(composition, "milkSolids") >= CREAMY;
  const sweetness = quantityIn(composition, "sweetness");
  if (sweetness <= (creamy ? CLOYING.creamy : CLOYING.sorbet)) return undefined;
  return `Very sweet: as sweet as ${decimal(sweetness, 0)} % sugar, where ${creamy ? "ice cream is like 13 to 16 % and gelato up to 20" : "a sorbet is like 22 to 30"} %. Ask for at most so much sweetness.`;
}

function sour({organicAcids = 0}: Composition): string | undefined {
  if (organicAcids <= SOUR) return undefined;
  return `Very sour: ${decimal(organicAcids, 1)} % acid, where a sorbet has up to about 1 % and one of lemon 1.5. Ask for at most so much of what is sour.`;
}

function separates(composition: Composition): string | undefined {
  const {milkFat = 0, eggFat = 0, emulsifier = 0} = composition;
  const [fat, protein] = [quantityIn(composition, "fat"), quantityIn(composition, "protein")];
  // Egg fat brings its own lecithin.
  const needed = TO_HOLD.milkFat * milkFat + TO_HOLD.otherFat * (fat - milkFat - eggFat);
  if (fat <= LITTLE_FAT || protein + EMULSIFIER * emulsifier >= needed) return undefined;
  return `The fat separates: ${decimal(fat, 0)} % fat, and only ${decimal(protein, 1)} % protein${emulsifier > 0 ? ` and ${decimal(emulsifier, 2)} % emulsifier` : ""} to hold it in the water. Put in milk protein, yolk, lecithin, mono- and diglycerides or another emulsifier.`;
}

function sandy(composition: Composition): string | undefined {
  const {lactose, longStorage, quickTurnover, caution} = sandiness(composition);
  const has = `${decimal(lactose, 1)} % lactose, where its water keeps`;
  switch (caution) {
    case "none":
      return undefined;
    case "sell soon":
      return `May turn sandy in storage: ${has} at most ${decimal(longStorage, 1)} dissolved for months. Sell it within weeks, or take less of what brings it: milk powder, whey, condensed milk.`;
    case "likely":
      return `Likely to turn sandy: ${has} at most ${decimal(quickTurnover, 1)} dissolved even for weeks. Take less of what brings it: milk powder, whey, condensed milk.`;
  }
}
