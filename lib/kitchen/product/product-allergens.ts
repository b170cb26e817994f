import {sum} from "../../core/numbers.ts";
import {type Allergen, ALLERGENS} from "../../pantry/ingredient.ts";
import {expectProduct, type Product, productLines} from "./product.ts";

/** Sulphites below which none are declared, mg of sulphur dioxide per kg of the finished food: Annex II, point 12. */
const LITTLE_SULPHITE = 10;

/**
 * The allergens of everything in the product, in the order of Regulation (EU) 1169/2011, Annex II. Sulphites are allergens above
 * 10 mg/kg of the finished food: they are left out where `properties.sulphites` (mg of sulphur dioxide per 100 g) of every ingredient
 * that declares them comes to no more.
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 1000}];
 * productAllergens(makeProduct("milk ice", [baseComponent({name: "milk ice", lines})])); // => ["milk"]
 * ```
 */
export function productAllergens(product: Product): Allergen[] {
  expectProduct(product);
  const lines = productLines(product).filter(({grams}) => grams > 0);
  const present = new Set(lines.flatMap(({ingredient}) => ingredient.allergens ?? []));
  const sulphited = lines.filter(({ingredient}) => ingredient.allergens?.includes("sulphites"));
  const perKilogram = sum(
    sulphited.map(({ingredient, grams}) => ((ingredient.properties?.sulphites ?? Infinity) * grams) / 10),
  );
  if (perKilogram <= LITTLE_SULPHITE) present.delete("sulphites");
  return ALLERGENS.filter((allergen) => present.has(allergen));
}
