import {recipeText} from "../words/recipe-text.ts";
import type {TubParts} from "./tub-product.ts";

/**
 * The address of the batch day that makes a ripple in its base: what that page keeps, under its own names, the product's name and
 * promise too. Prices go along where the cook has typed them.
 */
export function onwardAddress(
  {name, pot, cookedGrams, sievedPercent, splitPercent, share}: TubParts,
  {base, named, own}: {readonly base: string; readonly named: string; readonly own: ReadonlySet<string>},
  {freezer, ...sizes}: Readonly<Record<"freezer" | "overrun" | "tub" | "portion", number>>,
): string {
  const ripple = pot.map(({ingredient, grams}) => ({
    ingredient: ingredient.name,
    grams,
    ...(own.has(ingredient.name) && ingredient.price !== undefined && {price: ingredient.price}),
  }));
  const state = new URLSearchParams({
    name,
    named,
    base,
    pot: recipeText(ripple),
    cooked: String(Number(cookedGrams.toFixed(1))),
    sieve: String(sievedPercent),
    split: String(splitPercent),
    share: String(share),
    freezer: String(freezer),
    ...Object.fromEntries(Object.entries(sizes).map(([key, value]) => [key, String(value)])),
  });
  return `./batch-day.html#${state}`;
}
