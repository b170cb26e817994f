import {finite, sum} from "../../core/numbers.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {ENERGY_FACTORS, energyOf, labelFigures} from "../../pantry/energy.ts";
import type {NutrientKey} from "../../pantry/nutrient-keys.ts";
import {mixNutrient} from "../../pantry/mix-nutrient.ts";
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
  /** Ingredients, traces left out, whose sodium is not known by itself: of these only added salt and milk salts are counted. */
  readonly lackingSodium: readonly string[];
}

/** Fat whose saturates may be unknown without touching the label, g per 100 g: half of its last digit, 0.1 g. */
const UNSEEN = 0.05;

/** Share of the product, 0 to 1, up to which an ingredient that lacks the figure of a nutrient counts as having none of it: a pinch of gum. */
const TRACE = 0.005;

/**
 * Salt per g of milk salts: 2.5 x 43 mg sodium in 0.67 g ash of milk.
 * Source: USDA National Nutrient Database, Release 28 (2015), NDB 01077 "Milk, whole, 3.25% milkfat".
 */
const SALT_PER_MILK_SALTS = (2.5 * 0.043) / 0.67;

/**
 * Nutrition of the finished product, per 100 g or per portion.
 *
 * Energy by the factors of Annex XIV from the composition; stabilisers count as fibre, which gums are (three units and more; of added
 * ones the Regulation wants a proven benefit), except gelatine, which is protein; emulsifiers count as fat. Protein is the
 * ingredients' own: N x 6.25 by Annex I, point 10, and on packs, but N x 6.38 in most dairy tables, whose milk protein is therefore 2 %
 * too high for the declaration, 0.1 g of 4 g; that is not corrected. Saturates and sodium are the figures that each ingredient states
 * (see `nutrientOf`).
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
  const per100 = ofHundred(product);
  const scaled = Object.entries(per100).map(([key, value]) => [
    key,
    typeof value === "number" ? (value * finite(grams, "grams", {min: 0.1}, "g")) / 100 : value,
  ]);
  return Object.fromEntries(scaled) as Nutrition;
}

function ofHundred(product: Product): Nutrition {
  const lines = productLines(product);
  const composition = productComposition(product);
  const read = labelFigures(composition);
  const gelatine = gelatineIn(product);
  const figures = {...read, fibre: read.fibre - gelatine, protein: read.protein + gelatine};
  const lackingSaturates = lines.filter(({ingredient}) => saturatesOf(ingredient) === undefined);
  const unknownFat = sum(
    lackingSaturates.map(({ingredient, grams}) => (labelFigures(ingredient.composition).fat * grams) / 100),
  );
  const saturates = sum(lines.map(({ingredient, grams}) => ((saturatesOf(ingredient) ?? 0) * grams) / 100));
  const lackingSodium = lines.filter(
    ({ingredient, grams}) => grams > 100 * TRACE && nutrientIn(ingredient, "sodium") === undefined,
  );
  const more = (unit: "kilojoules" | "kilocalories") =>
    gelatine * (ENERGY_FACTORS.protein[unit] - ENERGY_FACTORS.fibre[unit]);
  return {
    kilojoules: energyOf(composition, "kilojoules") + more("kilojoules"),
    kilocalories: energyOf(composition, "kilocalories") + more("kilocalories"),
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

/** Gelatine without its water, g per 100 g of a product: a stabiliser of the mix and protein of the label (Annex I, point 10). */
export function gelatineIn(product: Product): number {
  return sum(
    productLines(product)
      .filter(({ingredient: {name}}) => /\bgelatine?\b/i.test(name))
      .map(({ingredient, grams}) => ((ingredient.composition.stabiliser ?? 0) * grams) / 100),
  );
}

/** A nutrient of 100 g of a product, or the ingredients that lack its figure; anything boiled off or sieved out counts as used. */
export function productNutrient(product: Product, key: NutrientKey): ReturnType<typeof mixNutrient> {
  const lines = productLines(product);
  const found = mixNutrient(lines, key, TRACE);
  return "value" in found ? {value: (found.value * sum(lines.map(({grams}) => grams))) / 100} : found;
}

/** The nutrition of 100 g in plain keys, energy in kJ and kcal, the rest in g; a figure that is not known is absent, never 0. */
export interface NutritionPer100 {
  readonly energyKj: number;
  readonly energyKcal: number;
  readonly fat: number;
  readonly saturates?: number;
  readonly carbohydrate: number;
  readonly sugars: number;
  readonly fibre: number;
  readonly protein: number;
  readonly salt?: number;
}

/**
 * The nutrition of 100 g of a product for other programs, unrounded: figures that an ingredient lacks are left out.
 *
 * A shorter form of {@link nutritionOf}.
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 1000}];
 * nutritionPer100(makeProduct("milk ice", [baseComponent({name: "milk ice", lines})])); // => {energyKj: 255.4, energyKcal: 61, fat: 3.3, saturates: 1.86, salt: 0.1075}
 * ```
 */
export function nutritionPer100(product: Product): NutritionPer100 {
  const {
    kilojoules,
    kilocalories,
    fat,
    saturates,
    carbohydrate,
    sugars,
    fibre,
    protein,
    salt,
    lackingSodium,
  } = nutritionOf(product);
  return {
    energyKj: kilojoules,
    energyKcal: kilocalories,
    fat,
    ...(saturates !== undefined && {saturates}),
    carbohydrate,
    sugars,
    fibre,
    protein,
    ...(lackingSodium.length ? {} : {salt}),
  };
}
