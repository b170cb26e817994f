import {recipeText} from "./recipe-text.ts";
import type {TubParts} from "./tub-product.ts";

/** The address of the batch day that makes a ripple in its base: what that page keeps, under its own names. */
export function onwardAddress(
  {pot, cookedMass, sievedPercent, splitPercent, share}: TubParts,
  base: string,
  {freezer, ...sizes}: Readonly<Record<"freezer" | "overrun" | "tub" | "portion", number>>,
): string {
  const ripple = pot.map(({ingredient: {name, price}, grams}) => ({
    ingredient: name,
    grams,
    ...(price !== undefined && {price}),
  }));
  const state = new URLSearchParams({
    base,
    pot: recipeText(ripple),
    cooked: String(Number(cookedMass.toFixed(1))),
    sieve: String(sievedPercent),
    split: String(splitPercent),
    share: String(share),
    freezer: String(freezer),
    ...Object.fromEntries(Object.entries(sizes).map(([key, value]) => [key, String(value)])),
  });
  return `./batch-day.html#${state}`;
}
