import {finite, sum} from "../../core/numbers.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Composition} from "../../pantry/parts.ts";
import {quantityOf} from "../../pantry/quantities.ts";
import {expectProduct, type Product, productComposition, productLines} from "./product.ts";

/**
 * Energy factors per g, kJ and kcal: Regulation (EU) No 1169/2011, Annex XIV. Erythritol has 0; all other sugar alcohols,
 * glycerol among them, count as polyols. Polydextrose and inulin count as fibre. Trehalose and allulose are sugars and
 * carbohydrate there; of allulose other laws see less (United States: 0.4 kcal/g and no sugar, FDA guidance of 2020, from
 * memory), and in the European Union it was not yet an authorised food when last known (from memory).
 */
export const ENERGY_FACTORS = {
  carbohydrate: {kilojoules: 17, kilocalories: 4},
  polyols: {kilojoules: 10, kilocalories: 2.4},
  protein: {kilojoules: 17, kilocalories: 4},
  fat: {kilojoules: 37, kilocalories: 9},
  alcohol: {kilojoules: 29, kilocalories: 7},
  organicAcids: {kilojoules: 13, kilocalories: 3},
  fibre: {kilojoules: 8, kilocalories: 2},
} as const;

/** The nutrition declaration of Regulation (EU) No 1169/2011, unrounded, for a given mass of product. */
export interface Nutrition {
  readonly kilojoules: number;
  readonly kilocalories: number;
  /** g; the rest of the numbers too. */
  readonly fat: number;
  /** Absent when the ingredients of `lackingSaturates` hold too much of the fat. */
  readonly saturates?: number;
  /** Available carbohydrate: sugars, starch, glucose-syrup solids and polyols, without fibre. */
  readonly carbohydrate: number;
  readonly sugars: number;
  readonly polyols: number;
  readonly fibre: number;
  readonly protein: number;
  /** Salt as the label means it: sodium x 2.5. */
  readonly salt: number;
  /** Ingredients with fat whose saturates are not known. */
  readonly lackingSaturates: readonly string[];
  /** Ingredients whose sodium is not known by itself: of these only added salt and milk salts are counted. */
  readonly lackingSodium: readonly string[];
}

/** Fat whose saturates may be unknown without touching the label, g per 100 g: half of its last digit, 0.1 g. */
const UNSEEN = 0.05;

/**
 * Salt per g of milk salts: 2.5 x 43 mg sodium in 0.67 g ash of milk.
 * Source: USDA National Nutrient Database, Release 28 (2015), NDB 01077 "Milk, whole, 3.25% milkfat".
 */
const SALT_PER_MILK_SALTS = (2.5 * 0.043) / 0.67;

/**
 * Nutrition of the finished product, per 100 g or per portion.
 *
 * Energy by the factors of Annex XIV from the composition; stabilisers count as fibre (gums are), emulsifiers as fat.
 * Protein is the ingredients' own (N x 6.25 by the Regulation, N x 6.38 in most dairy tables). Saturates come from
 * `properties.saturates` (g per 100 g) and sodium from `properties.sodium` (mg per 100 g) of each ingredient.
 *
 * @param grams mass that the figures are for: 100 by default, or a portion, g
 * @throws InputError for a mass that is not above 0
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 1000}];
 * nutritionOf(makeProduct("milk ice", [baseComponent({name: "milk ice", lines})])); // => {kilojoules: 255.4, fat: 3.3, sugars: 4.8, protein: 3.1}
 * ```
 */
export function nutritionOf(product: Product, grams = 100): Nutrition {
  expectProduct(product);
  const per100 = nutritionPer100(product);
  const scaled = Object.entries(per100).map(([key, value]) => [
    key,
    typeof value === "number" ? (value * finite(grams, "grams", {min: 0.1}, "g")) / 100 : value,
  ]);
  return Object.fromEntries(scaled) as Nutrition;
}

function nutritionPer100(product: Product): Nutrition {
  const lines = productLines(product);
  const composition = productComposition(product);
  const nutrients = nutrientsOf(composition);
  const lackingSaturates = lines.filter(({ingredient}) => saturatesOf(ingredient) === undefined);
  const unknownFat = sum(
    lackingSaturates.map(({ingredient, grams}) => (fatOf(ingredient.composition) * grams) / 100),
  );
  const saturates = sum(lines.map(({ingredient, grams}) => ((saturatesOf(ingredient) ?? 0) * grams) / 100));
  const lackingSodium = lines.filter(({ingredient}) => ingredient.properties?.sodium === undefined);
  return {
    kilojoules: energy(nutrients, composition, "kilojoules"),
    kilocalories: energy(nutrients, composition, "kilocalories"),
    ...nutrients,
    ...(unknownFat <= UNSEEN ? {saturates} : {}),
    salt: sum(lines.map(({ingredient, grams}) => (saltOf(ingredient) * grams) / 100)),
    lackingSaturates: lackingSaturates.map(({ingredient}) => ingredient.name),
    lackingSodium: lackingSodium.map(({ingredient}) => ingredient.name),
  };
}

function nutrientsOf(composition: Composition) {
  const polyols = quantityOf(composition, "polyols");
  return {
    fat: fatOf(composition),
    carbohydrate:
      quantityOf(composition, "sugars") + (composition.lactose ?? 0) + (composition.starch ?? 0) + polyols,
    sugars: quantityOf(composition, "totalSugars"),
    polyols,
    fibre:
      (composition.fibre ?? 0) +
      (composition.stabiliser ?? 0) +
      (composition.polydextrose ?? 0) +
      (composition.inulin ?? 0),
    protein: quantityOf(composition, "protein"),
  };
}

function energy(
  nutrients: ReturnType<typeof nutrientsOf>,
  composition: Composition,
  unit: "kilojoules" | "kilocalories",
): number {
  const grams = {
    carbohydrate: nutrients.carbohydrate - nutrients.polyols,
    polyols: nutrients.polyols - (composition.erythritol ?? 0),
    protein: nutrients.protein,
    fat: nutrients.fat,
    alcohol: composition.alcohol ?? 0,
    organicAcids: composition.organicAcids ?? 0,
    fibre: nutrients.fibre,
  };
  let total = 0;
  for (const [name, factor] of Object.entries(ENERGY_FACTORS)) {
    total += grams[name as keyof typeof grams] * factor[unit];
  }
  return total;
}

function fatOf(composition: Composition): number {
  return quantityOf(composition, "fat") + (composition.emulsifier ?? 0);
}

function saturatesOf(ingredient: Ingredient): number | undefined {
  return fatOf(ingredient.composition) === 0 ? 0 : ingredient.properties?.saturates;
}

function saltOf({composition, properties}: Ingredient): number {
  if (properties?.sodium !== undefined) return (2.5 * properties.sodium) / 1000;
  return (composition.salt ?? 0) + (composition.milkSalts ?? 0) * SALT_PER_MILK_SALTS;
}
