import {describe, expect, test} from "vitest";
import {
  baseComponent,
  makeProduct,
  productDensity,
  rippleComponent,
} from "../../lib/kitchen/product/product.ts";
import {productFacts} from "../../lib/kitchen/label/product-facts.ts";
import {checkStandard, leastMsnf, type ProductFacts} from "../../lib/kitchen/label/standards.ts";
import type {Composition} from "../../lib/pantry/parts.ts";

/** A mix of so much milk fat and MSNF, sweetened to 40 % solids. */
function mix(milkFat: number, msnf: number, more: Composition = {}): Composition {
  const parts = {milkFat, milkProtein: 0.38 * msnf, lactose: 0.54 * msnf, milkSalts: 0.08 * msnf, ...more};
  const sum = Object.values(parts).reduce((a, b) => a + b);
  return {...parts, sucrose: 40 - sum, water: 60};
}
const failed = (...args: Parameters<typeof checkStandard>) =>
  checkStandard(...args)
    .filter((check) => !check.met)
    .map((check) => check.rule);
const standing = (composition: Composition, more: Partial<ProductFacts> = {}): ProductFacts => ({
  mix: composition,
  density: 0.7,
  ...more,
});

describe("21 CFR 135.110, ice cream", () => {
  // 21 CFR 135.110(a): milk fat 10, 11, 12, 13, 14 % with at least 10, 9, 8, 7, 6 % nonfat milk solids.
  test.each([
    [10, 10],
    [11, 9],
    [12, 8],
    [13, 7],
    [14, 6],
    [20, 6],
    [10.99, 10],
  ])("%d % milk fat needs %d % MSNF", (fat, msnf) => {
    expect(leastMsnf(fat)).toBe(msnf);
    expect(failed("US ice cream", standing(mix(fat, msnf)))).toEqual([]);
    expect(failed("US ice cream", standing(mix(fat, msnf - 0.05)))).toEqual([
      "milk solids-not-fat, without bulky flavours",
    ]);
  });
  test("below 10 % milk fat it is none", () => {
    expect(failed("US ice cream", standing(mix(9.95, 12)))).toEqual(["milk fat, without bulky flavours"]);
  });
  test("4.5 lb and 1.6 lb solids to the gallon are 539.2 and 191.7 g/l", () => {
    expect(failed("US ice cream", standing(mix(10, 10), {density: 0.5393}))).toEqual([]);
    expect(failed("US ice cream", standing(mix(10, 10), {density: 0.5391}))).toEqual(["weight"]);
    // 40 % solids: 191.7 g of them are in 479.3 g.
    const light = checkStandard("US ice cream", standing(mix(10, 10), {density: 0.4793}));
    const solids = light.find((check) => check.rule === "total solids");
    expect(solids?.found).toBeCloseTo(1.6, 3);
    expect(failed("US ice cream", standing(mix(10, 10), {density: 0.479}))).toEqual([
      "weight",
      "total solids",
    ]);
  });
  test("bulky flavours may take it down to 8 % milk fat and 16 % milk solids, not lower", () => {
    const fruit: Composition = {water: 70, sucrose: 30};
    expect(failed("US ice cream", standing(mix(10, 10), {bulky: fruit, bulkyPercent: 20}))).toEqual([]);
    expect(failed("US ice cream", standing(mix(10, 10), {bulky: fruit, bulkyPercent: 20.5}))).toEqual([
      "milk fat of the finished food",
      "milk solids of the finished food",
    ]);
  });
  test("a quarter of the MSNF may be whey solids", () => {
    expect(failed("US ice cream", standing(mix(10, 10), {wheyPercentOfMsnf: 25}))).toEqual([]);
    expect(failed("US ice cream", standing(mix(10, 10), {wheyPercentOfMsnf: 25.1}))).toEqual([
      "whey solids in the milk solids-not-fat",
    ]);
  });
  test("1.4 % egg-yolk solids part ice cream from frozen custard; 1.12 % with bulky flavours", () => {
    const yolk = (percent: number) => mix(10, 10, {eggFat: (percent * 26.54) / 47.69});
    expect(failed("US ice cream", standing(yolk(1.39)))).toEqual([]);
    expect(failed("US ice cream", standing(yolk(1.4)))).toEqual(["egg-yolk solids, without bulky flavours"]);
    expect(failed("US frozen custard", standing(yolk(1.4)))).toEqual([]);
    expect(failed("US frozen custard", standing(yolk(1.39)))).toEqual([
      "egg-yolk solids of the finished food",
    ]);
    const bulky = {bulky: {water: 100}, bulkyPercent: 20};
    expect(failed("US frozen custard", standing(yolk(1.4), bulky))).toEqual([]);
    expect(failed("US frozen custard", standing(yolk(1.39), bulky))).toEqual([
      "egg-yolk solids of the finished food",
    ]);
  });
});

describe("21 CFR 135.140, sherbet", () => {
  // Milk fat 1 to 2 %, nonfat milk solids at least 1 %, milk solids 2 to 5 %, 6 lb to the gallon (719 g/l), fruit
  // sherbet at least 0.35 % acid as lactic.
  const sherbet = (fat: number, msnf: number, acid = 0.3) =>
    standing(mix(fat, msnf, {organicAcids: acid}), {density: 0.72, fruit: true});
  test("at and beside each limit", () => {
    expect(failed("US sherbet", sherbet(1, 1))).toEqual([]);
    expect(failed("US sherbet", sherbet(2, 3))).toEqual([]);
    expect(failed("US sherbet", sherbet(0.99, 1.1))).toEqual(["milk fat"]);
    expect(failed("US sherbet", sherbet(2.01, 1))).toEqual(["milk fat"]);
    expect(failed("US sherbet", sherbet(1.5, 0.99))).toEqual(["milk solids-not-fat"]);
    expect(failed("US sherbet", sherbet(2, 3.01))).toEqual(["milk solids"]);
    expect(failed("US sherbet", {...sherbet(1, 1), density: 0.718})).toEqual(["weight"]);
    expect(failed("US sherbet", sherbet(1, 1, 0.26))).toEqual(["acidity as lactic acid, estimated"]);
    expect(failed("US sherbet", sherbet(1, 1, 0.261))).toEqual([]);
  });
});

describe("UK minima (Food Labelling Regulations 1996, Schedule 8, from memory)", () => {
  test("5 % fat, 2.5 % milk protein, dairy ice cream from milk fat alone", () => {
    expect(failed("UK ice cream", standing(mix(5, 2.5 / 0.38)))).toEqual([]);
    expect(failed("UK ice cream", standing(mix(4.9, 6.5)))).toEqual(["fat", "milk protein"]);
    expect(failed("UK dairy ice cream", standing(mix(5, 7)))).toEqual([]);
    expect(failed("UK dairy ice cream", standing(mix(5, 7, {coconutFat: 1})))).toEqual([
      "fat that is not milk's, eggs' or a flavour's",
    ]);
    expect(() => checkStandard("UK ice cream", standing(mix(5, 7), {density: 0}))).toThrow(
      "density: out of range",
    );
  });
});

describe("a product as a standard sees it", () => {
  const one = (name: string, composition: Composition) => ({
    name,
    lines: [{ingredient: {name, composition}, grams: 100}],
  });
  const product = makeProduct("fruit ice cream", [
    baseComponent(one("base", mix(10, 10)), 80),
    rippleComponent(one("ripple", {water: 50, sucrose: 50}), 20),
  ]);
  test("the ripple is the bulky flavour", () => {
    const seen = productFacts(product, 60);
    expect(seen.bulkyPercent).toBe(20);
    expect(seen.mix.milkFat).toBeCloseTo(10, 9);
    expect(seen.density).toBeCloseTo(productDensity(product, 60), 12);
    expect(failed("US ice cream", seen)).toEqual([]);
    const more = makeProduct("x", [
      {...product.components[0]!, percent: 79},
      {...product.components[1]!, percent: 21},
    ]);
    expect(failed("US ice cream", productFacts(more, 60))).toEqual([
      "milk fat of the finished food",
      "milk solids of the finished food",
    ]);
    expect(failed("US ice cream", productFacts(product, 150))).toContain("weight");
  });
});
