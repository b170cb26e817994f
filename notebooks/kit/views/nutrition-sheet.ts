import {nutritionLabel} from "../../../lib/kitchen/label/nutrition-label.ts";
import {nutritionOf} from "../../../lib/kitchen/product/nutrition.ts";
import {baseComponent, makeProduct} from "../../../lib/kitchen/product/product.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {ShownMix, WeighedMix} from "../page/mixes.ts";
import {row, withUnit} from "../page/row.ts";
import {keyed, sheet} from "../page/sheet.ts";
import {recipeOf} from "./weighed.ts";

/** Nutrition of 100 g of each mix, as a label declares it. */
export function mixNutrition(
  mixes: readonly ShownMix<WeighedMix>[],
  ingredients: readonly Ingredient[],
): HTMLElement {
  const labels = mixes.map(({label, mix}) => {
    const product = makeProduct(label, [baseComponent(recipeOf(label, mix.amounts, ingredients))]);
    return new Map(nutritionLabel(nutritionOf(product)).flatMap(({name, text}) => figuresOf(name, text)));
  });
  const names = [...new Set(labels.flatMap((label) => [...label.keys()]))];
  return sheet({
    heading: "Nutrition",
    reading: "In 100 g of mix, rounded as a label is. Where a pack tells better, believe the pack.",
    name: "Nutrition in 100 g",
    columns: ["", ...keyed(mixes)],
    body: names.map((name) => {
      const [quantity, unit] = name.split(", ") as [string, string];
      return row(
        withUnit(quantity, unit),
        labels.map((label) => label.get(name) ?? "–"),
      );
    }),
  });
}

/** A line of a declaration with its unit beside its name, so that figures stand under figures: energy is two of them. */
function figuresOf(name: string, text: string | undefined): [string, string | undefined][] {
  if (text === undefined) return [[`${name}, g`, undefined]];
  return text.split(" / ").map((figure) => {
    const [value, unit] = figure.split(" ");
    return [`${name}, ${unit}`, value];
  });
}
