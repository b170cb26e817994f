import type {Product} from "../../../lib/kitchen/product/product.ts";
import {productLines} from "../../../lib/kitchen/product/product.ts";
import {goesBy} from "../../../lib/pantry/pantry.ts";

/** Promises of a product's name. */
export interface Promised {
  /** Names that an ingredient of it goes by. */
  readonly named: readonly string[];
  /** Names that none goes by, left over from another recipe perhaps. */
  readonly missing: readonly string[];
}

/** Ingredients typed as promised, parted by commas, against what the product holds. */
export function promised(typed: string, product: Product): Promised {
  const names = typed
    .split(",")
    .map((name) => name.trim())
    .filter(Boolean);
  const lines = productLines(product);
  const holds = (name: string) => lines.some(({ingredient}) => goesBy(ingredient, name));
  return {named: names.filter(holds), missing: names.filter((name) => !holds(name))};
}
