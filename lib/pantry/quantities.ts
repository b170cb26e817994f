import {oneOf} from "../core/shape.ts";
import {expectComposition} from "./expect.ts";
import {type Composition, PARTS, type Part} from "./parts.ts";
import {sweetnessOf} from "./sweetness.ts";

/** Weights on the parts: a quantity is the weighted sum of the parts, so it is linear in the ingredient masses. */
type Weights = Readonly<Partial<Record<Part, number>>>;

const FATS: Weights = {milkFat: 1, eggFat: 1, cocoaButter: 1, coconutFat: 1, otherFat: 1};
const MSNF: Weights = {milkProtein: 1, lactose: 1, milkSalts: 1};
const SUGARS: Weights = {
  sucrose: 1,
  dextrose: 1,
  fructose: 1,
  maltose: 1,
  galactose: 1,
  trehalose: 1,
  allulose: 1,
  isomaltulose: 1,
  tagatose: 1,
  glucoseSyrupSolids: 1,
};

/** Fibre as a label counts it. Three kinds are parts of their own because they dissolve and lower the freezing point. */
const FIBRES: Weights = {fibre: 1, inulin: 1, polydextrose: 1, oligofructose: 1};

/** Gums, starch and gelatine, which set or thicken; gelatine is a part of its own because it is protein. */
const STABILISERS: Weights = {stabiliser: 1, gelatine: 1};

/**
 * Yolk solids per g of egg fat: egg yolk has 47.69 g solids and 26.54 g fat per 100 g.
 * Source: USDA National Nutrient Database, Release 28 (2015), NDB 01125 "Egg, yolk, raw, fresh".
 */
const YOLK_SOLIDS_PER_EGG_FAT = 47.69 / 26.54;

const weighted = {
  /** All fats. */
  fat: FATS,
  /** Milk solids-not-fat: milk protein, lactose and milk salts. */
  msnf: MSNF,
  /** Milk fat and MSNF. */
  milkSolids: {milkFat: 1, ...MSNF},
  /** Sugars in the trade's sense: all sugars and glucose-syrup solids, but not lactose. */
  sugars: SUGARS,
  /** Dextrose and glucose-syrup solids. */
  glucose: {dextrose: 1, glucoseSyrupSolids: 1},
  /** Milk and other protein, gelatine among it. */
  protein: {milkProtein: 1, otherProtein: 1, gelatine: 1},
  /** Sugar alcohols. */
  polyols: {
    sorbitol: 1,
    xylitol: 1,
    erythritol: 1,
    mannitol: 1,
    maltitol: 1,
    lactitol: 1,
    isomalt: 1,
    glycerol: 1,
  },
  /** Solids of egg yolk, from the egg fat. */
  eggYolkSolids: {eggFat: YOLK_SOLIDS_PER_EGG_FAT},
} as const satisfies Record<Exclude<Derived, "sweetness" | "totalSolids" | "totalSugars">, Weights>;

/** Every derived quantity, in g per 100 g but for `sweetness` (sucrose = 100). */
export const DERIVED = [
  "fat",
  "msnf",
  "milkSolids",
  "sugars",
  "totalSugars",
  "glucose",
  "totalSolids",
  "protein",
  "polyols",
  "eggYolkSolids",
  "sweetness",
] as const;

/** A derived quantity of a composition. */
export type Derived = (typeof DERIVED)[number];

/** Any quantity that a composition has by itself: a part or a derived one. */
export type Quantity = Part | Derived;

/** All quantities of a composition, parts first. */
export const QUANTITIES: readonly Quantity[] = [...PARTS, ...DERIVED];

/** True where a text names a quantity of a composition. */
export function isQuantity(name: string): name is Quantity {
  return (QUANTITIES as readonly string[]).includes(name);
}

/**
 * A quantity of a composition, g per 100 g (`sweetness`: sucrose solution of the same strength = 100).
 *
 * Every quantity is linear in the ingredient masses: the value of a mix is the mass-weighted mean of its ingredients'.
 *
 * `fibre` counts inulin, polydextrose and oligofructose too, and `stabiliser` gelatine, which are parts of their own besides.
 *
 * `totalSugars` is the label's sense: mono- and disaccharides, lactose included. Of glucose-syrup solids it counts the
 * dextrose equivalent, that is the reducing sugars as dextrose; the published mono- and disaccharide contents of acid
 * syrups of 27 to 65 DE lie within 9 points of it (Corn Refiners Association, from memory).
 *
 * @throws InputError for anything that is no composition, and for an unknown quantity, with the nearest known one
 *
 * @example
 * ```ts
 * const milk = {water: 88, milkFat: 3.5, milkProtein: 3.2, lactose: 4.6, milkSalts: 0.7};
 * quantityOf(milk, "msnf"); // => 8.5
 * quantityOf(milk, "totalSolids"); // => 12
 * ```
 */
export function quantityOf(composition: Composition, quantity: Quantity): number {
  expectComposition(composition);
  return quantityIn(composition, oneOf(quantity, QUANTITIES, "quantity", "quantity"));
}

/** As {@link quantityOf}, of a composition and a quantity that were checked before: the library's own, many a time. */
export function quantityIn(composition: Composition, quantity: Quantity): number {
  switch (quantity) {
    case "sweetness":
      return sweetnessOf(composition);
    case "totalSolids":
      return 100 - (composition.water ?? 0) - (composition.alcohol ?? 0);
    case "fibre":
      return weigh(composition, FIBRES);
    case "stabiliser":
      return weigh(composition, STABILISERS);
    case "totalSugars": {
      const syrup = composition.glucoseSyrupSolids ?? 0;
      return (
        weigh(composition, SUGARS) +
        (composition.lactose ?? 0) -
        syrup * (1 - (composition.dextroseEquivalent ?? 0) / 100)
      );
    }
    default:
      return quantity in weighted
        ? weigh(composition, weighted[quantity as keyof typeof weighted])
        : (composition[quantity as Part] ?? 0);
  }
}

function weigh(composition: Composition, weights: Weights): number {
  let total = 0;
  for (const part in weights) total += (weights[part as Part] ?? 0) * (composition[part as Part] ?? 0);
  return total;
}
