import {finite} from "../../core/numbers.ts";
import type {Composition} from "../../pantry/parts.ts";
import {quantityOf} from "../../pantry/quantities.ts";
import {check, LEAST_FRUIT, type ProductFacts, type StandardCheck} from "./standard-check.ts";

const ICE_CREAM = "21 CFR 135.110";
const SHERBET = "21 CFR 135.140";
export const WATER_ICE = "21 CFR 135.160";
const MELLORINE = "21 CFR 135.130";
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

/** 21 CFR 135.110(a)(2) and (3), (b). */
export function iceCream(facts: ProductFacts, food: Composition, bulky: number): StandardCheck[] {
  // All milk fat and solids, a bulky flavour's too, count against the food less the flavour. With bulky flavours the rest holds
  // 20 % milk solids (135.110(a)(2)), and the scale of solids-not-fat is for ice cream without them; their weight may be
  // multiplied (135.110(a)(3)).
  const rest = 1 - (facts.countedBulkyPercent ?? bulky) / 100;
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
export function yolk(facts: ProductFacts, bulky: number, custard: boolean): StandardCheck {
  const inMix = quantityOf(facts.mix, "eggYolkSolids");
  if (!custard) {
    return check("egg-yolk solids, without bulky flavours", inMix, "%", {max: 1.4}, ICE_CREAM, true);
  }
  const rest = 1 - bulky / 100;
  const min = Math.max(1.12, 1.4 * rest);
  return check("egg-yolk solids of the finished food", inMix * rest, "%", {min}, ICE_CREAM);
}

/** Fat and protein of the food less its bulky flavours, and never below 4.8 and 2.2 % of the whole. Vitamin A is not checked. */
export function mellorine({density}: ProductFacts, food: Composition, bulky: number): StandardCheck[] {
  const least = (percent: number, floor: number) => Math.max(floor, percent * (1 - bulky / 100));
  return [
    check("fat of the finished food", quantityOf(food, "fat"), "%", {min: least(6, 4.8)}, MELLORINE),
    check(
      "protein of milk’s quality in the finished food",
      quantityOf(food, "protein"),
      "%",
      {min: least(2.7, 2.2)},
      MELLORINE,
    ),
    check("weight", density / POUND_PER_GALLON, "lb/gal", {min: 4.5}, MELLORINE),
    check(
      "total solids",
      (density * quantityOf(food, "totalSolids")) / 100 / POUND_PER_GALLON,
      "lb/gal",
      {min: 1.6},
      MELLORINE,
    ),
  ];
}

/** 21 CFR 135.140. */
export function sherbet(facts: ProductFacts, food: Composition): StandardCheck[] {
  return [
    check("milk fat", quantityOf(food, "milkFat"), "%", {min: 1, max: 2}, SHERBET),
    check("milk solids-not-fat", quantityOf(food, "msnf"), "%", {min: 1}, SHERBET),
    check("milk solids", quantityOf(food, "milkSolids"), "%", {min: 2, max: 5}, SHERBET),
    ...asFruity(facts, food, SHERBET),
  ];
}

/** Requirements of sherbet besides milk, and of a water ice by reference to it (our reading): weight; with fruit, acid and enough fruit. */
export function asFruity(
  {density, fruit, fruitPercent, fruitKind = "other"}: ProductFacts,
  food: Composition,
  source: string,
): StandardCheck[] {
  const acidity = quantityOf(food, "organicAcids") * AS_LACTIC;
  return [
    check("weight", density / POUND_PER_GALLON, "lb/gal", {min: 6}, source),
    ...(fruit ? [check("acidity as lactic acid, estimated", acidity, "%", {min: 0.35}, source)] : []),
    ...(fruit && fruitPercent !== undefined
      ? [check("fruit and juice", fruitPercent, "%", {min: LEAST_FRUIT[fruitKind]}, source)]
      : []),
  ];
}
