import {expectShape, oneOf} from "../../core/shape.ts";
import {expectComposition} from "../../pantry/expect.ts";
import {finite} from "../../core/numbers.ts";
import {blend} from "../../pantry/mix.ts";
import type {Composition} from "../../pantry/parts.ts";
import {quantityOf} from "../../pantry/quantities.ts";

/** The standards that are checked. */
export const STANDARDS = [
  "US ice cream",
  "US frozen custard",
  "US sherbet",
  "UK ice cream",
  "UK dairy ice cream",
] as const;

/** Name of a compositional standard. */
export type Standard = (typeof STANDARDS)[number];

/** What a standard looks at. */
export interface ProductFacts {
  /** The mix without bulky flavours (fruit, nuts, cocoa, ripple), g per 100 g. */
  readonly mix: Composition;
  /** What the bulky flavours are made of, g per 100 g; absent without any. */
  readonly bulky?: Composition;
  /** g of bulky flavours per 100 g of the finished food, 0 (default) to below 100. */
  readonly bulkyPercent?: number;
  /** Of the frozen food, g/ml. */
  readonly density: number;
  /** Solids of whey in per cent of the milk solids-not-fat, 0 by default. */
  readonly wheyPercentOfMsnf?: number;
  /** Whether a sherbet is flavoured with fruit, so that it must be acid. */
  readonly fruit?: boolean;
}

/** One condition of a standard. */
export interface StandardCheck {
  readonly rule: string;
  /** In `unit`, as the rule counts it. */
  readonly found: number;
  readonly unit: string;
  readonly min?: number;
  readonly max?: number;
  /** Whether the maximum itself is already too much. */
  readonly below?: boolean;
  readonly met: boolean;
  readonly source: string;
}

const ICE_CREAM = "21 CFR 135.110";
const SHERBET = "21 CFR 135.140";
const UK = "SI 1996/1499 (UK), Schedule 8, Part I, revoked in 2014 by SI 2014/1855";

/** Whether a standard is law where it is named for, or a custom that the trade keeps since its law was revoked. */
export const STANDARD_FORCE: Readonly<Record<Standard, "law" | "custom">> = {
  "US ice cream": "law",
  "US frozen custard": "law",
  "US sherbet": "law",
  "UK ice cream": "custom",
  "UK dairy ice cream": "custom",
};

/** g/ml in one pound (453.59237 g) per US gallon (3785.411784 ml). */
const POUND_PER_GALLON = 453.59237 / 3785.411784;

/** Titratable acidity, as lactic acid (90.08 g per equivalent), of fruit acids counted as malic (67.04); citric (64.04) gives 5 % more. */
const AS_LACTIC = 90.08 / 67.04;

/**
 * Least milk solids-not-fat of US ice cream, %: 10, less one for every whole per cent of milk fat above 10, down to 6.
 *
 * 21 CFR 135.110(a): 10/10, 11/9, 12/8, 13/7, 14/6; fat between two lines counts as the lower one, not interpolated.
 *
 * @param milkFat % of the food without bulky flavours, 0 to 100
 * @throws InputError outside that range
 *
 * @example
 * ```ts
 * leastMsnf(12); // => 8
 * ```
 */
export function leastMsnf(milkFat: number): number {
  finite(milkFat, "milkFat", {min: 0, max: 100}, "%");
  return 10 - Math.min(4, Math.max(0, Math.floor(milkFat - 10 + 1e-9)));
}

/**
 * Checks a frozen food against a compositional standard, rule by rule. A US standard is a federal one; the UK's were revoked in
 * 2014 and are custom since ({@link STANDARD_FORCE}): missing one breaks no law. This is not licensed advice.
 *
 * @throws InputError for a density or percentage outside its range
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 1000}];
 * const facts = productFacts(makeProduct("milk ice", [baseComponent({name: "milk ice", lines})]), 50);
 * checkStandard("US ice cream", facts)
 *   .filter(({met}) => !met)
 *   .map(({rule}) => rule); // => ["milk fat, without bulky flavours", "milk solids-not-fat, without bulky flavours", "total solids"]
 * ```
 */
export function checkStandard(standard: Standard, facts: ProductFacts): StandardCheck[] {
  oneOf(standard, STANDARDS, "standard", "standard");
  expectShape(
    facts,
    {mix: "object", density: "number"},
    "set of product facts",
    "make it with productFacts(product, overrun)",
  );
  expectComposition(facts.mix);
  if (facts.bulky !== undefined) expectComposition(facts.bulky);
  finite(facts.density, "density", {min: 0.1, max: 2}, "g/ml");
  const bulky = finite(facts.bulkyPercent ?? 0, "bulkyPercent", {min: 0, max: 95}, "%");
  finite(facts.wheyPercentOfMsnf ?? 0, "wheyPercentOfMsnf", {min: 0, max: 100}, "%");
  const food = blend([
    {composition: facts.mix, mass: 100 - bulky},
    {composition: facts.bulky ?? {}, mass: bulky},
  ]);
  switch (standard) {
    case "US ice cream":
      return [...iceCream(facts, food, bulky), yolk(facts, bulky, false)];
    case "US frozen custard":
      return [...iceCream(facts, food, bulky), yolk(facts, bulky, true)];
    case "US sherbet":
      return sherbet(facts, food);
    case "UK ice cream":
      return [
        check("fat", quantityOf(food, "fat"), "%", {min: 5}, UK),
        check("milk protein", quantityOf(food, "milkProtein"), "%", {min: 2.5}, UK),
      ];
    case "UK dairy ice cream":
      return [
        check("milk fat", quantityOf(food, "milkFat"), "%", {min: 5}, UK),
        check("fat that is not milk's, eggs' or a flavour's", foreignFat(facts.mix), "%", {max: TRACES}, UK),
        check("milk protein", quantityOf(food, "milkProtein"), "%", {min: 2.5}, UK),
      ];
  }
}

function iceCream(facts: ProductFacts, food: Composition, bulky: number): StandardCheck[] {
  // All milk fat and solids, a bulky flavour's too, count against the food less the flavour. With bulky flavours the rest holds
  // 20 % milk solids, and the scale of solids-not-fat is for ice cream without them.
  const rest = 1 - bulky / 100;
  const milkFat = quantityOf(food, "milkFat") / rest;
  const msnf = quantityOf(food, "msnf") / rest;
  const source = ICE_CREAM;
  return [
    check("milk fat, without bulky flavours", milkFat, "%", {min: 10}, source),
    ...(bulky > 0
      ? [
          check(
            "milk solids, without bulky flavours",
            quantityOf(food, "milkSolids") / rest,
            "%",
            {min: 20},
            source,
          ),
          check("milk fat of the finished food", quantityOf(food, "milkFat"), "%", {min: 8}, source),
          check("milk solids of the finished food", quantityOf(food, "milkSolids"), "%", {min: 16}, source),
        ]
      : [check("milk solids-not-fat, without bulky flavours", msnf, "%", {min: leastMsnf(milkFat)}, source)]),
    check("whey solids in the milk solids-not-fat", facts.wheyPercentOfMsnf ?? 0, "%", {max: 25}, source),
    check("weight", facts.density / POUND_PER_GALLON, "lb/gal", {min: 4.5}, source),
    check(
      "total solids",
      (facts.density * quantityOf(food, "totalSolids")) / 100 / POUND_PER_GALLON,
      "lb/gal",
      {min: 1.6},
      source,
    ),
  ];
}

/** Egg-yolk solids tell ice cream from frozen custard; bulky flavours thin a custard's yolk, but not below 1.12 %. */
function yolk(facts: ProductFacts, bulky: number, custard: boolean): StandardCheck {
  const inMix = quantityOf(facts.mix, "eggYolkSolids");
  if (!custard) {
    return check("egg-yolk solids, without bulky flavours", inMix, "%", {max: 1.4}, ICE_CREAM, true);
  }
  const rest = 1 - bulky / 100;
  const min = Math.max(1.12, 1.4 * rest);
  return check("egg-yolk solids of the finished food", inMix * rest, "%", {min}, ICE_CREAM);
}

function sherbet({density, fruit}: ProductFacts, food: Composition): StandardCheck[] {
  const acidity = quantityOf(food, "organicAcids") * AS_LACTIC;
  return [
    check("milk fat", quantityOf(food, "milkFat"), "%", {min: 1, max: 2}, SHERBET),
    check("milk solids-not-fat", quantityOf(food, "msnf"), "%", {min: 1}, SHERBET),
    check("milk solids", quantityOf(food, "milkSolids"), "%", {min: 2, max: 5}, SHERBET),
    check("weight", density / POUND_PER_GALLON, "lb/gal", {min: 6}, SHERBET),
    ...(fruit ? [check("acidity as lactic acid, estimated", acidity, "%", {min: 0.35}, SHERBET)] : []),
  ];
}

/** Fat of spices and extracts that counts as their flavour's, %: our own reading of a rule that exempts the fat of flavourings. */
const TRACES = 0.1;

/** Fat of the mix that is neither milk's nor egg's nor cocoa's; bulky flavours are no part of the mix, and their fat is exempt. */
function foreignFat(mix: Composition): number {
  return quantityOf(mix, "coconutFat") + quantityOf(mix, "otherFat");
}

function check(
  rule: string,
  found: number,
  unit: string,
  limits: {min?: number; max?: number},
  source: string,
  below = false,
): StandardCheck {
  const {min = -Infinity, max = Infinity} = limits;
  const met = found >= min - 1e-9 && (below ? found < max - 1e-9 : found <= max + 1e-9);
  return {rule, found, unit, ...limits, ...(below ? {below} : {}), met, source};
}
