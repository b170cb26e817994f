import {labelFigures} from "../../pantry/energy.ts";
import {quantityOf} from "../../pantry/quantities.ts";
import type {NutrientKey} from "../../pantry/nutrient-keys.ts";
import {gelatineIn, productNutrient} from "../product/nutrition.ts";
import {type Product, productComposition, productLines} from "../product/product.ts";
import {sum} from "../../core/numbers.ts";

/** Figures of a US panel for 100 g, unrounded; absent where an ingredient lacks one. */
export interface UsNutrition {
  readonly calories: number;
  /** g; so are those below up to `protein`, but for cholesterol and sodium, mg. */
  readonly fat: number;
  readonly saturated?: number;
  readonly trans?: number;
  readonly cholesterol?: number;
  readonly sodium?: number;
  /** By difference, fibre and sugar alcohols among it. */
  readonly carbohydrate: number;
  readonly fibre: number;
  readonly sugars: number;
  readonly addedSugars?: number;
  readonly sugarAlcohol: number;
  readonly protein: number;
  /** µg. */
  readonly vitaminD?: number;
  /** mg, as the next two. */
  readonly calcium?: number;
  readonly iron?: number;
  readonly potassium?: number;
  /** Ingredients that lack a figure, by that figure. */
  readonly lacking: Readonly<Record<string, readonly string[]>>;
}

/** kcal per g of sugar alcohols: 21 CFR 101.9(c)(1)(i)(F). */
const POLYOL_CALORIES = {
  isomalt: 2,
  lactitol: 2,
  xylitol: 2.4,
  maltitol: 2.1,
  sorbitol: 2.6,
  mannitol: 1.6,
  erythritol: 0,
} as const;

/** kcal per g of fibre, all of it taken as soluble, which is the higher: 101.9(c)(1)(i)(C). */
const FIBRE_CALORIES = 2;

/** kcal per g of alcohol, from memory; of allulose, FDA guidance of 2020, from memory. */
const ALCOHOL_CALORIES = 7;
const ALLULOSE_CALORIES = 0.4;

/** Gums on the list of fibres of 101.9(c)(6)(i). Inulin and polydextrose count by guidance of 2018, from memory; other gums do not. */
const FIBRE_GUMS = /\b(guar|locust|carob|pectin|psyllium|hydroxypropyl)/i;

const SAID = {
  saturated: "saturates",
  trans: "trans",
  cholesterol: "cholesterol",
  sodium: "sodium",
  addedSugars: "addedSugars",
  vitaminD: "vitaminD",
  calcium: "calcium",
  iron: "iron",
  potassium: "potassium",
} as const satisfies Readonly<Record<string, NutrientKey>>;

/** Nutrition of 100 g of a product as 21 CFR 101.9(c) defines it. */
export function usNutrition(product: Product): UsNutrition {
  const own = productComposition(product);
  const gelatine = gelatineIn(product);
  const figures = labelFigures(own);
  const [protein, fat] = [figures.protein + gelatine, figures.fat];
  const ash = (own.milkSalts ?? 0) + (own.plantSalts ?? 0) + (own.salt ?? 0);
  const alcohol = own.alcohol ?? 0;
  const carbohydrate = Math.max(0, 100 - protein - fat - (own.water ?? 0) - ash - alcohol);
  const gums = (own.stabiliser ?? 0) - gelatine;
  const listed = sum(
    productLines(product)
      .filter(({ingredient}) => FIBRE_GUMS.test(ingredient.name))
      .map(({ingredient, grams}) => ((ingredient.composition.stabiliser ?? 0) * grams) / 100),
  );
  const fibre = quantityOf(own, "fibre") + listed;
  const indigestible = quantityOf(own, "fibre") + gums;
  const polyols = Object.entries(POLYOL_CALORIES).map(([part, each]) => {
    const grams = own[part as keyof typeof POLYOL_CALORIES] ?? 0;
    return {grams, calories: grams * each};
  });
  const sugarAlcohol = sum(polyols.map(({grams}) => grams));
  const allulose = own.allulose ?? 0;
  const found = Object.entries(SAID).map(([name, key]) => [name, productNutrient(product, key)] as const);
  const known = found.flatMap(([name, figure]) => ("value" in figure ? [[name, figure.value] as const] : []));
  const lacking = found.flatMap(([name, figure]) =>
    "lacking" in figure ? [[name, figure.lacking] as const] : [],
  );
  return {
    calories:
      9 * fat +
      4 * protein +
      4 * Math.max(0, carbohydrate - indigestible - sugarAlcohol - allulose) +
      FIBRE_CALORIES * indigestible +
      sum(polyols.map(({calories}) => calories)) +
      ALLULOSE_CALORIES * allulose +
      ALCOHOL_CALORIES * alcohol,
    fat,
    carbohydrate,
    fibre,
    sugars: quantityOf(own, "totalSugars") - allulose,
    sugarAlcohol,
    protein,
    ...Object.fromEntries(known),
    lacking: Object.fromEntries(lacking),
  };
}
