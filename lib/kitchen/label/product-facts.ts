import {finite, sum} from "../../core/numbers.ts";
import {expectFlag, expectOptions} from "../../core/shape.ts";
import {blend} from "../../pantry/mix.ts";
import type {Composition} from "../../pantry/parts.ts";
import {recipeMass} from "../../pantry/recipe.ts";
import {expectProduct, type Product, productDensity} from "../product/product.ts";
import type {ProductFacts} from "./standards.ts";

/** What the composition of a product does not tell a standard. */
export interface ProductFactsDetails {
  /** Solids of whey in per cent of the milk solids-not-fat, 0 by default. */
  readonly wheyPercentOfMsnf?: number;
  /** Whether a sherbet is flavoured with fruit. */
  readonly fruit?: boolean;
}

/** Groups whose ingredients are bulky flavours wherever they are: 21 CFR 135.110(a)(2) and (3), cocoa, fruit and nuts. */
const BULKY = new Set(["fruit", "juice", "nut", "cocoa", "inclusion"]);

/** Some of a product, and whether it counts as bulky flavour. */
interface Portion {
  readonly composition: Composition;
  /** g per 100 g of the product. */
  readonly mass: number;
  readonly bulky: boolean;
}

/**
 * A product as a compositional standard sees it: the churned base as the mix; ripple, pieces, and fruit, nuts or cocoa churned in
 * as bulky flavours; the frozen density at an overrun. They count at their own weight, though the US rule lets cocoa count for 2.5
 * times and fruit and nuts for 1.4 times theirs, which makes the check the stricter.
 *
 * @param overrun % of the churned mix's volume, 0 to 300
 * @throws InputError for an overrun outside its range, or a product without a churned component
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 1000}];
 * productFacts(makeProduct("milk ice", [baseComponent({name: "milk ice", lines})]), 50).density; // => 0.69
 * ```
 */
export function productFacts(
  product: Product,
  overrun: number,
  details: ProductFactsDetails = {},
): ProductFacts {
  expectProduct(product);
  expectOptions(details, ["wheyPercentOfMsnf", "fruit"], "details");
  if (details.wheyPercentOfMsnf !== undefined)
    finite(details.wheyPercentOfMsnf, "wheyPercentOfMsnf", {min: 0, max: 100}, "%");
  if (details.fruit !== undefined) expectFlag(details.fruit, "fruit");
  const portions = product.components.flatMap(
    ({recipe, composition, churned, grams: mass, percent}): Portion[] => {
      const weighed = recipeMass(recipe);
      // What was boiled down or sieved is no longer the sum of its ingredients.
      if (!churned || Math.abs(weighed - mass) > 1e-6 * mass) {
        return [{composition, mass: percent, bulky: !churned}];
      }
      return recipe.lines.map(({ingredient, grams}) => ({
        composition: ingredient.composition,
        mass: (grams / weighed) * percent,
        bulky: BULKY.has(ingredient.group ?? ""),
      }));
    },
  );
  const mix = portions.filter((portion) => !portion.bulky);
  const bulky = portions.filter((portion) => portion.bulky && portion.mass > 0);
  return {
    mix: blend(mix),
    ...(bulky.length && {bulky: blend(bulky)}),
    bulkyPercent: sum(bulky.map(({mass}) => mass)),
    density: productDensity(product, overrun),
    ...details,
  };
}
