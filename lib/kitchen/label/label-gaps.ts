import {productAllergens} from "../product/product-allergens.ts";
import {type Product, productLines} from "../product/product.ts";
import {isUnknown, kindsOf} from "./allergen-words.ts";
import {expectNames, isCompound, type LabelName, ownLabel} from "./label-names.ts";
import {printedName} from "./label.ts";

/**
 * Facts that a label still needs before it may be printed, a sentence each, with the ingredient first: the kind of a cereal or
 * nut that no name tells, and the own ingredients of a compound one (chocolate, a biscuit).
 *
 * Regulation (EU) No 1169/2011, Annex II and Annex VII, Part E.
 *
 * @param names printed names of ingredients, by their name on the shelf
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "white chocolate"), grams: 100}];
 * labelGaps(makeProduct("ice", [baseComponent({name: "ice", lines})])); // => ["white chocolate: copy its own list of ingredients from its pack"]
 * ```
 */
export function labelGaps(product: Product, names: Readonly<Record<string, LabelName>> = {}): string[] {
  expectNames(names);
  const declared = new Set(productAllergens(product));
  return productLines(product)
    .filter(({grams}) => grams > 0)
    .flatMap(({ingredient}) => {
      const {name, allergens = []} = ingredient;
      const label = ownLabel(names, name);
      const unknown = allergens
        .filter((allergen) => declared.has(allergen))
        .flatMap((allergen) => kindsOf(ingredient, allergen, printedName(ingredient, label, "EU")))
        .filter(isUnknown);
      return [
        ...unknown.map((question) => `${name}: ${question}`),
        ...(isCompound(name) && !label.contains
          ? [`${name}: copy its own list of ingredients from its pack`]
          : []),
      ];
    });
}
