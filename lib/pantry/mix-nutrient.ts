import {finite, sum} from "../core/numbers.ts";
import {oneOf} from "../core/shape.ts";
import {NUTRIENT_KEYS, type NutrientKey} from "./nutrient-keys.ts";
import {nutrientIn} from "./nutrients.ts";
import {expectLines, type RecipeLine} from "./recipe.ts";

/**
 * A nutrient of a mix, per 100 g of it in the unit of `NUTRIENTS`: the mean of its ingredients by mass. Where one of them does
 * not say it, the mix has no such figure, and the answer names the ingredients that lack it.
 *
 * @param trace ingredients of at most this share of the mix, from 0 to 1, count as having none where they do not say; 0 by default
 * @throws InputError for an unknown nutrient
 *
 * @example
 * ```ts
 * const milk = {ingredient: findIngredient(includedPantry(), "whole milk"), grams: 900};
 * const ours = {ingredient: {name: "our paste", composition: {otherFat: 60, fibre: 40}}, grams: 100};
 * mixNutrient([milk], "sodium"); // => {value: 43}
 * mixNutrient([milk, ours], "sodium"); // => {lacking: ["our paste"]}
 * ```
 */
export function mixNutrient(
  parts: readonly RecipeLine[],
  key: NutrientKey,
  trace = 0,
): {readonly value: number} | {readonly lacking: readonly string[]} {
  oneOf(key, NUTRIENT_KEYS, "nutrient", "nutrient");
  expectLines(parts);
  finite(trace, "trace", {min: 0, max: 1});
  const mass = sum(parts.map(({grams}) => grams));
  const lacking: string[] = [];
  let total = 0;
  for (const {ingredient, grams} of parts) {
    if (grams === 0) continue;
    const value = nutrientIn(ingredient, key);
    if (value === undefined && grams > trace * mass) lacking.push(ingredient.name);
    total += (value ?? 0) * grams;
  }
  return lacking.length ? {lacking: [...new Set(lacking)]} : {value: mass > 0 ? total / mass : 0};
}
