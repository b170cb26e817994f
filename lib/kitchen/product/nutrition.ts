import {finite, sum} from "../../core/numbers.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {energyOf, labelFigures} from "../../pantry/energy.ts";
import {nutrientIn} from "../../pantry/nutrients.ts";
import {expectProduct, type Product, productComposition, productLines} from "./product.ts";

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
 * Protein is the ingredients' own (N x 6.25 by the Regulation, N x 6.38 in most dairy tables). Saturates and sodium are those
 * that each ingredient says of itself (see `nutrientOf`).
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
  const figures = labelFigures(composition);
  const lackingSaturates = lines.filter(({ingredient}) => saturatesOf(ingredient) === undefined);
  const unknownFat = sum(
    lackingSaturates.map(({ingredient, grams}) => (labelFigures(ingredient.composition).fat * grams) / 100),
  );
  const saturates = sum(lines.map(({ingredient, grams}) => ((saturatesOf(ingredient) ?? 0) * grams) / 100));
  const lackingSodium = lines.filter(({ingredient}) => nutrientIn(ingredient, "sodium") === undefined);
  return {
    kilojoules: energyOf(composition, "kilojoules"),
    kilocalories: energyOf(composition, "kilocalories"),
    ...figures,
    ...(unknownFat <= UNSEEN ? {saturates} : {}),
    salt: sum(lines.map(({ingredient, grams}) => (saltOf(ingredient) * grams) / 100)),
    lackingSaturates: lackingSaturates.map(({ingredient}) => ingredient.name),
    lackingSodium: lackingSodium.map(({ingredient}) => ingredient.name),
  };
}

function saturatesOf(ingredient: Ingredient): number | undefined {
  return nutrientIn(ingredient, "saturates");
}

function saltOf(ingredient: Ingredient): number {
  const {composition} = ingredient;
  return (
    nutrientIn(ingredient, "saltEquivalent") ??
    (composition.salt ?? 0) + (composition.milkSalts ?? 0) * SALT_PER_MILK_SALTS
  );
}
