import type {Ingredient} from "../../pantry/ingredient.ts";
import {oneOf} from "../../core/shape.ts";
import {expectPantry, type Pantry} from "../../pantry/pantry.ts";
import {quantityIn} from "../../pantry/quantities.ts";

/** Kinds of ingredients that a cook may choose for the flavour of a starting point. */
export type FlavourKind = "fruit" | "nut" | "spirit";

const KINDS: readonly FlavourKind[] = ["fruit", "nut", "spirit"];

/** Least water of a fruit that is a purée by itself, g per 100 g: dried fruit and jam have less (common practice, no source). */
const JUICY = 70;

/** Most fat or starch of a fruit for a sorbet, g per 100 g: avocado and sweet potato have more (common practice, no source). */
const STARCHY = 6;

/** Acid of a fruit beyond which half of a sorbet would be too sour, g per 100 g of the sorbet (common practice, no source). */
const SOUR_ENOUGH = 1.2;

/** Least and most fruit, % of a sorbet: half of it, less of sour fruit (common practice, no source). */
const FRUIT = {least: 20, most: 50};

/** Least fat of a paste of nuts, g per 100 g: chestnuts and sweet spreads have less (common practice, no source). */
const OILY = 40;

/** Nuts by the allergens of Regulation (EU) 1169/2011, Annex II; poppy and pumpkin seeds stand in their group, but are none. */
const NUTTY: ReadonlySet<string> = new Set(["nuts", "peanuts", "sesame"]);

/** Least alcohol and most sugar of a spirit, g per 100 g: from 35 % vol on (common practice, no source). */
const SPIRIT = {alcohol: 29, sugar: 2};

/**
 * Ingredients of a pantry for the flavour of a starting point, in the pantry's order: fruit and juice with the water of a purée, nuts with
 * the fat of a paste, spirits from 35 % vol on (common practice, no source).
 *
 * @param kind the `flavour.kind` of a starting point
 * @throws InputError for an unknown kind
 *
 * @example
 * ```ts
 * flavoursOf("fruit", includedPantry()).some(({name}) => name === "mango"); // => true
 * ```
 */
export function flavoursOf(kind: FlavourKind, pantry: Pantry): Ingredient[] {
  expectPantry(pantry);
  return pantry.ingredients.filter(IS[oneOf(kind, KINDS, "flavour kind", "kind")]);
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
 * Share of a fruit in a sorbet, %, in steps of 5: half; of sour fruit as much as brings about 1.2 g of acid to 100 g, but never less than
 * its code of practice asks for.
 *
 * @param code least share that a code of practice asks for, %
 */
export function fruitShare({composition}: Ingredient, code: number): number {
  const acid = composition.organicAcids ?? 0;
  const sour = acid > 0 ? (100 * SOUR_ENOUGH) / acid : Infinity;
  return 5 * Math.floor(Math.min(FRUIT.most, Math.max(FRUIT.least, code, sour)) / 5);
}
