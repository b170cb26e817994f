import {mixComposition} from "../pantry/mix.ts";
import {type Component, expectProduct, type Product, productDensity} from "./product.ts";
import type {Standing} from "./standards.ts";

/** What the composition of a product does not tell a standard. */
export interface StandingDetails {
  /** Solids of whey in per cent of the milk solids-not-fat, 0 by default. */
  readonly wheyPercentOfMsnf?: number;
  /** Whether a sherbet is flavoured with fruit. */
  readonly fruit?: boolean;
}

/**
 * A product as a compositional standard sees it: the churned base as the mix, ripple and pieces as bulky flavours, the frozen
 * density at an overrun. Fruit or cocoa churned into the base counts as mix, which makes the check the stricter.
 *
 * @param overrun % of the churned mix's volume, 0 to 300
 * @throws InputError for an overrun outside its range, or a product without a churned component
 */
export function standingOf(product: Product, overrun: number, details: StandingDetails = {}): Standing {
  expectProduct(product);
  const mix = product.components.filter((component) => component.churned);
  const bulky = product.components.filter((component) => !component.churned);
  return {
    mix: blend(mix),
    ...(bulky.length && {bulky: blend(bulky)}),
    bulkyPercent: bulky.reduce((total, component) => total + component.percent, 0),
    density: productDensity(product, overrun),
    ...details,
  };
}

function blend(components: readonly Component[]) {
  return mixComposition(components.map(({composition, percent}) => ({composition, mass: percent})));
}
