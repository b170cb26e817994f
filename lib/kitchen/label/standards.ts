import {expectShape, oneOf} from "../../core/shape.ts";
import {expectComposition} from "../../pantry/expect.ts";
import {finite} from "../../core/numbers.ts";
import {blend} from "../../pantry/mix.ts";
import type {Composition} from "../../pantry/parts.ts";
import {quantityOf} from "../../pantry/quantities.ts";
import {check, type FruitKind, LEAST_FRUIT, type ProductFacts, type StandardCheck} from "./standard-check.ts";
import {asFruity, iceCream, mellorine, sherbet, WATER_ICE, yolk} from "./us-standards.ts";

export type {ProductFacts, StandardCheck} from "./standard-check.ts";

/** The standards that are checked. */
export const STANDARDS = [
  "US ice cream",
  "US goat's milk ice cream",
  "US frozen custard",
  "US mellorine",
  "US sherbet",
  "US water ice",
  "UK ice cream",
  "UK dairy ice cream",
] as const;

/** Name of a compositional standard. */
export type Standard = (typeof STANDARDS)[number];

/** Source of the UK standards. Its ice cream is moreover "a heat-treated emulsion", which a mix stirred together cold is not. */
const UK = "SI 1996/1499 (UK), regulation 42 and Schedule 8, Part I, revoked in 2014 by SI 2014/1855";

/** Force of a standard: law in its country, or a custom that the trade keeps since its law was revoked. */
export const STANDARD_FORCE: Readonly<Record<Standard, "law" | "custom">> = {
  "US ice cream": "law",
  "US goat's milk ice cream": "law",
  "US frozen custard": "law",
  "US mellorine": "law",
  "US sherbet": "law",
  "US water ice": "law",
  "UK ice cream": "custom",
  "UK dairy ice cream": "custom",
};

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
  finite(facts.countedBulkyPercent ?? bulky, "countedBulkyPercent", {min: bulky, max: 99}, "%");
  for (const key of ["wheyPercentOfMsnf", "fruitPercent", "goatPercent"] as const)
    finite(facts[key] ?? 0, key, {min: 0, max: 100}, "%");
  if (facts.fruitKind !== undefined)
    oneOf(facts.fruitKind, Object.keys(LEAST_FRUIT) as FruitKind[], "fruitKind", "kind of fruit");
  const food = blend([
    {composition: facts.mix, mass: 100 - bulky},
    {composition: facts.bulky ?? {}, mass: bulky},
  ]);
  switch (standard) {
    case "US ice cream":
      return [...iceCream(facts, food, bulky), yolk(facts, bulky, false)];
    case "US goat's milk ice cream":
      return [
        check("goat’s share of the milk solids", facts.goatPercent ?? 0, "%", {min: 100}, "21 CFR 135.115"),
        ...iceCream(facts, food, bulky),
        yolk(facts, bulky, false),
      ];
    case "US frozen custard":
      return [...iceCream(facts, food, bulky), yolk(facts, bulky, true)];
    case "US mellorine":
      return mellorine(facts, food, bulky);
    case "US sherbet":
      return sherbet(facts, food);
    case "US water ice":
      return [
        check("milk solids", quantityOf(food, "milkSolids"), "%", {max: 0}, WATER_ICE),
        check("egg fat (white may go in)", quantityOf(food, "eggFat"), "%", {max: 0}, WATER_ICE),
        ...asFruity(facts, food, WATER_ICE),
      ];
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

/** Fat of spices and extracts that counts as their flavour's, %: our own reading of a rule that exempts the fat of flavourings. */
const TRACES = 0.1;

/** Fat of the mix that is neither milk's nor egg's nor cocoa's; bulky flavours are no part of the mix, and their fat is exempt. */
function foreignFat(mix: Composition): number {
  return quantityOf(mix, "coconutFat") + quantityOf(mix, "otherFat");
}
