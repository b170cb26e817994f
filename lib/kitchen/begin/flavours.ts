import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Pantry} from "../../pantry/pantry.ts";
import {quantityIn} from "../../pantry/quantities.ts";

/** What a cook may choose for the flavour of a starting point. */
export type FlavourKind = "fruit" | "nut" | "spirit";

/** Fruit that is a purée by itself has at least so much water, g per 100 g: dried fruit and jam have less (common practice, no source). */
const JUICY = 70;

/** Fruit beyond so much fat or starch is none for a sorbet, g per 100 g: avocado, sweet potato (common practice, no source). */
const STARCHY = 6;

/** Acid of a fruit beyond which half of a sorbet would be too sour, g per 100 g of the sorbet (common practice, no source). */
const SOUR_ENOUGH = 1.2;

/** Least and most fruit, % of a sorbet: half of it, less of sour fruit (common practice, no source). */
const FRUIT = {least: 20, most: 50};

/** A paste of nuts is so fat, g per 100 g: chestnuts and sweet spreads are not (common practice, no source). */
const OILY = 40;

/** Nuts by the allergens of Regulation (EU) 1169/2011, Annex II; poppy and pumpkin seeds stand in their group, but are none. */
const NUTTY: ReadonlySet<string> = new Set(["nuts", "peanuts", "sesame"]);

/** A spirit has so much alcohol and so little sugar, g per 100 g: from 35 % vol on (common practice, no source). */
const SPIRIT = {alcohol: 29, sugar: 2};

/** The ingredients of a pantry that a cook may choose for a flavour, in the pantry's order. */
export function flavoursOf(kind: FlavourKind, {ingredients}: Pantry): Ingredient[] {
  return ingredients.filter(IS[kind]);
}

const IS: Readonly<Record<FlavourKind, (ingredient: Ingredient) => boolean>> = {
  fruit: ({group, composition, nutrients}) =>
    (group === "fruit" || group === "juice") &&
    (composition.water ?? 0) >= JUICY &&
    (nutrients?.addedSugars ?? 0) === 0 &&
    quantityIn(composition, "totalSugars") >= 1 &&
    quantityIn(composition, "fat") + (composition.starch ?? 0) < STARCHY,
  nut: ({group, composition, allergens = []}) =>
    group === "nut" && quantityIn(composition, "fat") >= OILY && allergens.some((one) => NUTTY.has(one)),
  spirit: ({group, composition}) =>
    group === "alcohol" &&
    (composition.alcohol ?? 0) >= SPIRIT.alcohol &&
    quantityIn(composition, "totalSugars") <= SPIRIT.sugar,
};

/**
 * Share of a fruit in a sorbet, %: half, and of sour fruit what brings about 1.2 g of acid to 100 g, but never less than its code of practice
 * asks for; in steps of 5.
 *
 * @param code least share that a code of practice asks for, %
 */
export function fruitShare({composition}: Ingredient, code: number): number {
  const acid = composition.organicAcids ?? 0;
  const sour = acid > 0 ? (100 * SOUR_ENOUGH) / acid : Infinity;
  return 5 * Math.floor(Math.min(FRUIT.most, Math.max(FRUIT.least, code, sour)) / 5);
}
