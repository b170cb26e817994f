import {
  type Cost,
  knownCost,
  type Pack,
  productCost,
  type ProductCost,
} from "../../../lib/kitchen/product/cost.ts";
import {type Product, productLines} from "../../../lib/kitchen/product/product.ts";
import {inventedPrices, inventedWords} from "./price-origin.ts";

/** Sizes in which a product is sold. */
export interface Sizes {
  /** ml */
  readonly tub: number;
  /** ml */
  readonly portion: number;
}

/** Money as far as it is known. */
export interface Money {
  /** Of all that has a price. */
  readonly known: Cost;
  /** By the kilogram, litre, tub and portion; absent while a price is missing. */
  readonly whole?: ProductCost;
  /** Names of what has no price. */
  readonly unpriced: readonly string[];
  /** Names of what has an invented price. */
  readonly invented: readonly string[];
  /** That in words, for the sentence of a sum; empty without any. */
  readonly atInvented: string;
}

/** The money that a batch takes, as far as prices are known. */
export function moneyOf(
  {product, grams}: {readonly product: Product; readonly grams: number},
  {
    overrun,
    tub,
    portion,
    packs,
    own,
  }: Sizes & {
    readonly overrun: number;
    readonly packs: Readonly<Record<string, Pack>>;
    readonly own: ReadonlySet<string>;
  },
): Money {
  const lines = productLines(product, grams);
  const {cost, unpriced} = knownCost(lines, packs);
  const invented = inventedPrices(
    lines.map(({ingredient}) => ingredient),
    own,
  );
  const sizes = {grams, overrun, tubMillilitres: tub, portionMillilitres: portion};
  return {
    known: cost,
    ...(unpriced.length === 0 && {whole: productCost(product, sizes, packs)}),
    unpriced,
    invented,
    atInvented: inventedWords(invented, lines.length),
  };
}

/** Words on what to type where prices are missing. */
export function unpricedWords(unpriced: readonly string[]): string {
  const [first = ""] = unpriced;
  return `No price for ${unpriced.join(", ")}: type it behind the line, as in “100 g ${first} @ 4.20” for a kilogram or “@ 6.20 for 1000 g” for a pack.`;
}
