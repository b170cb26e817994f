import {finite} from "../../core/numbers.ts";
import {expectShape} from "../../core/shape.ts";
import type {Nutrition} from "../product/nutrition.ts";

/** One line of a nutrition declaration, rounded for print. */
export interface NutritionLine {
  readonly name: string;
  /** Value with its unit; absent when it is not known. */
  readonly text?: string;
}

const NUTRIENTS = [
  "kilojoules",
  "kilocalories",
  "fat",
  "carbohydrate",
  "sugars",
  "polyols",
  "fibre",
  "protein",
  "salt",
] as const;

/**
 * A nutrition declaration in the order of Regulation (EU) No 1169/2011, Annex XV, rounded as the European Commission's guidance on
 * tolerances (December 2012) asks for, read in a restatement of its table: energy to 1; fat, carbohydrate, sugars, polyols, fibre and protein to 1 g from
 * 10 g, to 0.1 g below, "<0.5 g" up to 0.5 g; saturates likewise, "<0.1 g" up to 0.1 g; salt to 0.1 g from 1 g, to 0.01 g below,
 * "<0.01 g" up to 0.0125 g ("0 g" is allowed too). Fibre and polyols are voluntary (Article 30(2)).
 *
 * @throws InputError for figures that are no numbers from 0
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 1000}];
 * const product = makeProduct("milk ice", [baseComponent({name: "milk ice", lines})]);
 * nutritionLabel(nutritionOf(product))[0]; // => {name: "energy", text: "255 kJ / 61 kcal"}
 * ```
 */
export function nutritionLabel(nutrition: Nutrition): NutritionLine[] {
  expectShape(
    nutrition,
    {kilojoules: "number", salt: "number"},
    "nutrition",
    "make it with nutritionOf(product)",
  );
  for (const key of NUTRIENTS) finite(nutrition[key], `nutrition.${key}`, {min: 0});
  if (nutrition.saturates !== undefined) finite(nutrition.saturates, "nutrition.saturates", {min: 0}, "g");
  const {kilojoules, kilocalories, fat, saturates, carbohydrate, sugars, polyols, fibre, protein, salt} =
    nutrition;
  return [
    {name: "energy", text: `${kilojoules.toFixed(0)} kJ / ${kilocalories.toFixed(0)} kcal`},
    {name: "fat", text: rounded(fat, 0.5)},
    {name: "of which saturates", ...(saturates !== undefined && {text: rounded(saturates, 0.1)})},
    {name: "carbohydrate", text: rounded(carbohydrate, 0.5)},
    {name: "of which sugars", text: rounded(sugars, 0.5)},
    ...(polyols > 0 ? [{name: "of which polyols", text: rounded(polyols, 0.5)}] : []),
    {name: "fibre", text: rounded(fibre, 0.5)},
    {name: "protein", text: rounded(protein, 0.5)},
    {name: "salt", text: salt <= 0.0125 ? "<0.01 g" : `${salt.toFixed(salt >= 0.995 ? 1 : 2)} g`},
  ];
}

function rounded(grams: number, least: number): string {
  if (grams <= least) return `<${least} g`;
  return `${grams.toFixed(grams >= 9.95 ? 0 : 1)} g`;
}
