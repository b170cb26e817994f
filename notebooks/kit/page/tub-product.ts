import {cookDown} from "../../../lib/kitchen/cooking/cook.ts";
import {
  baseComponent,
  makeProduct,
  type Product,
  rippleComponent,
} from "../../../lib/kitchen/product/product.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {RecipeLine} from "../../../lib/pantry/recipe.ts";

/** Base and ripple as a page has them. */
export interface TubParts {
  readonly name: string;
  readonly base: readonly RecipeLine[];
  /** Ingredients of the ripple's pot; empty without a ripple. */
  readonly pot: readonly RecipeLine[];
  /** g of the cooked ripple. */
  readonly cookedGrams: number;
  /** Stones, skins and seeds, g per 100 g of the fruit. */
  readonly sievedPercent: number;
  /** Share of the sucrose that splits while it cooks, %. */
  readonly splitPercent: number;
  /** g of ripple per 100 g of the tub. */
  readonly share: number;
}

/** Product that goes into the tub: the base, and the cooked ripple if there is one. */
export function tubProduct({name, base, pot, share, ...cooking}: TubParts): Product {
  const recipe = {name: "Base", lines: base};
  if (share === 0 || !pot.length) return makeProduct(name, [baseComponent(recipe)]);
  const fruits = pot.filter(({ingredient}) => isFruit(ingredient)).map(({ingredient}) => ingredient.name);
  const ripple = {name: [...fruits, "ripple"].join(" "), lines: pot};
  const sieved = pot
    .filter(({ingredient}) => isFruit(ingredient) && cooking.sievedPercent > 0)
    .map(({ingredient}) => ({ingredient: ingredient.name, percent: cooking.sievedPercent}));
  const cooked = cookDown(
    ripple,
    {cookedGrams: cooking.cookedGrams},
    {sieved, inversion: cooking.splitPercent / 100},
  );
  return makeProduct(name, [baseComponent(recipe, 100 - share), rippleComponent(ripple, share, cooked)]);
}

/** Whether something counts as the fruit of a ripple, and goes through the sieve. */
export function isFruit({group}: Ingredient): boolean {
  return group === "fruit";
}
