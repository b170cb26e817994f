import {finite, sum} from "../../core/numbers.ts";
import {expectFlag, expectOptions} from "../../core/shape.ts";
import {blend} from "../../pantry/mix.ts";
import type {Composition} from "../../pantry/parts.ts";
import {quantityOf} from "../../pantry/quantities.ts";
import {type RecipeLine, recipeMass} from "../../pantry/recipe.ts";
import {expectProduct, type Product, productDensity, productLines} from "../product/product.ts";
import type {ProductFacts} from "./standard-check.ts";

/** Facts that a standard asks for and that do not follow from the composition of a product. */
export interface ProductFactsDetails {
  /** Solids of whey in per cent of the milk solids-not-fat, 0 by default. */
  readonly wheyPercentOfMsnf?: number;
  /** True for a sherbet flavoured with fruit; by default where it holds fruit or juice. */
  readonly fruit?: boolean;
}

/** Groups whose ingredients are bulky flavours wherever they are: 21 CFR 135.110(a)(2) and (3), cocoa, fruit and nuts. */
const BULKY = new Set(["fruit", "juice", "nut", "cocoa", "inclusion"]);

/**
 * Factor by which an ingredient may count for more than its weight as bulky flavour, by its group: 21 CFR 135.110(a)(3). Of cocoa it is the
 * solids that count. Dried fruit counts with its weight: the rule adds its lost water first, which is not known here.
 */
const FACTOR: Readonly<Record<string, number>> = {fruit: 1.4, nut: 1.4, cocoa: 2.5};

const CITRUS =
  /\b(lemon|lime|orange|grapefruit|mandarin|clementine|tangerine|citron|bergamot|yuzu|pomelo)s?\b/i;
const BERRY = /\b\w*(berry|berries|currants?)\b/i;

/** A portion of a product, with its kind: bulky flavour or not. */
interface Portion {
  readonly composition: Composition;
  /** g per 100 g of the product. */
  readonly mass: number;
  readonly bulky: boolean;
}

/**
 * A product as a compositional standard sees it: the churned base as the mix; ripple, pieces, and fruit, nuts or cocoa churned in
 * as bulky flavours, with their own weight and with that which the US rule lets them count for; its fruit, which is of the kind that
 * most of it is; the frozen density at an overrun.
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
      // A component that was boiled down or sieved is no longer the sum of its ingredients.
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
  const bulkyPercent = sum(bulky.map(({mass}) => mass));
  const fruits = productLines(product).filter(
    ({ingredient: {group}, grams}) => grams > 0 && (group === "fruit" || group === "juice"),
  );
  const most = [...fruits].sort((a, b) => b.grams - a.grams)[0]?.ingredient.name ?? "";
  return {
    mix: blend(mix),
    ...(bulky.length && {bulky: blend(bulky)}),
    bulkyPercent,
    ...(bulky.length && {
      countedBulkyPercent: Math.min(99, Math.max(bulkyPercent, countedPercent(product))),
    }),
    density: productDensity(product, overrun),
    ...(fruits.length && {
      fruit: true,
      fruitPercent: Math.min(100, sum(fruits.map(({grams}) => grams))),
      fruitKind: CITRUS.test(most) ? "citrus" : BERRY.test(most) ? "berry" : "other",
    }),
    goatPercent: goatPercent(product),
    ...details,
  };
}

/** Share that the bulky flavours of a product count for, %: of a ripple or pieces at least their own weight, sugar and all. */
function countedPercent({components}: Product): number {
  return sum(
    components.map(({recipe, grams: mass, percent, churned}) => {
      const counted = (countedBulky(recipe.lines) / mass) * percent;
      return churned ? counted : Math.max(percent, counted);
    }),
  );
}

/**
 * Weight that the bulky flavours of a recipe count for, g, by 21 CFR 135.110(a)(3): chocolate and cocoa solids for 2.5 times, fruit and nuts
 * for 1.4 times their weight.
 */
export function countedBulky(lines: readonly RecipeLine[]): number {
  return sum(
    lines.map(({ingredient: {group = "", composition}, grams}) => {
      if (!BULKY.has(group)) return 0;
      const solid =
        quantityOf(composition, "totalSolids") -
        quantityOf(composition, "sugars") -
        quantityOf(composition, "milkSolids");
      return group === "cocoa"
        ? Math.max(grams, (FACTOR.cocoa! * Math.max(0, solid) * grams) / 100)
        : (FACTOR[group] ?? 1) * grams;
    }),
  );
}

/** Milk solids from ingredients called a goat's, % of all milk solids. */
function goatPercent(product: Product): number {
  const milk = productLines(product).map(({ingredient: {name, composition}, grams}) => ({
    goat: /\bgoat/i.test(name),
    solids: quantityOf(composition, "milkSolids") * grams,
  }));
  const all = sum(milk.map(({solids}) => solids));
  return all > 0 ? (100 * sum(milk.filter(({goat}) => goat).map(({solids}) => solids))) / all : 0;
}
