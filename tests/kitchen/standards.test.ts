import {describe, expect, test} from "vitest";
import {
  baseComponent,
  makeProduct,
  productDensity,
  rippleComponent,
} from "../../lib/kitchen/product/product.ts";
import {productFacts} from "../../lib/kitchen/label/product-facts.ts";
import {checkStandard, type ProductFacts} from "../../lib/kitchen/label/standards.ts";
import {leastMsnf} from "../../lib/kitchen/label/us-standards.ts";
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

// SI 1996/1499, regulation 42 and Schedule 8, Part I.
describe("21 CFR 135.115, 135.130, 135.140 and 135.160, what else the US has names for", () => {
  // 135.140: 2 % citrus, 6 % berries, 10 % other fruit. 135.160: as sherbet, no milk, no egg but white.
  test("sherbet holds so much fruit of its kind", () => {
    const fruity = (fruitKind: ProductFacts["fruitKind"], fruitPercent: number) =>
      failed("US sherbet", {
        ...standing(mix(1.5, 1, {organicAcids: 0.3}), {density: 0.72, fruit: true}),
        fruitPercent,
        ...(fruitKind && {fruitKind}),
      });
    expect(
      [fruity("citrus", 2), fruity("berry", 6), fruity("other", 10), fruity(undefined, 10)].flat(),
    ).toEqual([]);
    for (const [kind, percent] of [
      ["citrus", 1.9],
      ["berry", 5.9],
      ["other", 9.9],
      [undefined, 9.9],
    ] as const)
      expect(fruity(kind, percent)).toEqual(["fruit and juice"]);
  });
  test("a water ice holds no milk and no yolk", () => {
    const ice: Composition = {water: 72, sucrose: 27.6, organicAcids: 0.4};
    const facts = {...standing(ice, {density: 0.8, fruit: true}), fruitPercent: 25};
    expect(failed("US water ice", facts)).toEqual([]);
    expect(failed("US water ice", {...facts, mix: {...ice, water: 71, lactose: 1}})).toEqual(["milk solids"]);
    expect(failed("US water ice", {...facts, mix: {...ice, water: 71, eggFat: 1}})).toEqual([
      "egg fat (white may go in)",
    ]);
    expect(failed("US water ice", {...facts, density: 0.71})).toEqual(["weight"]);
  });
  // 135.130: 6 % fat and 2.7 % protein of the food less bulky flavours, in no case below 4.8 and 2.2 % of the whole.
  test("mellorine has fat of any kind", () => {
    const of = (fat: number, protein: number): Composition => ({
      otherFat: fat,
      milkProtein: protein,
      sucrose: 25,
      water: 75 - fat - protein,
    });
    expect(failed("US mellorine", standing(of(6, 2.7)))).toEqual([]);
    expect(failed("US mellorine", standing(of(5.9, 2.6)))).toEqual([
      "fat of the finished food",
      "protein of milk’s quality in the finished food",
    ]);
    // A quarter of the tub is fruit: 4.5 and 2.0 % would do by proportion, the floors are 4.8 and 2.2 %.
    const fruity = {bulky: {water: 100}, bulkyPercent: 25, density: 0.9};
    expect(failed("US mellorine", standing(of(6.41, 2.94), fruity))).toEqual([]);
    expect(failed("US mellorine", standing(of(6.39, 2.92), fruity))).toHaveLength(2);
  });
  test("goat's milk ice cream is of goat's milk alone", () => {
    expect(failed("US goat's milk ice cream", standing(mix(10, 10), {goatPercent: 100}))).toEqual([]);
    expect(failed("US goat's milk ice cream", standing(mix(10, 10), {goatPercent: 99}))).toEqual([
      "goat’s share of the milk solids",
    ]);
    const goat = {name: "goat's milk", composition: mix(4, 9)};
    const cow = {name: "whole milk", composition: mix(4, 9)};
    const share = (lines: {ingredient: typeof goat; grams: number}[]) =>
      productFacts(makeProduct("x", [baseComponent({name: "x", lines})]), 50).goatPercent;
    expect(
      share([
        {ingredient: goat, grams: 300},
        {ingredient: cow, grams: 100},
      ]),
    ).toBeCloseTo(75, 9);
  });
});

describe("21 CFR 135.110(a)(3), what bulky flavours count for", () => {
  const line = (name: string, group: string, composition: Composition, grams: number) => ({
    ingredient: {name, group, composition},
    grams,
  });
  const facts = (...lines: ReturnType<typeof line>[]) =>
    productFacts(makeProduct("x", [baseComponent({name: "x", lines})]), 50);
  const base = line("base", "dairy", mix(10, 10), 800);
  test("fruit and nuts for 1.4 times, cocoa solids for 2.5 times their weight", () => {
    const berries = facts(base, line("strawberry", "fruit", {water: 90, fructose: 10}, 200));
    expect(berries.bulkyPercent).toBeCloseTo(20, 9);
    expect(berries.countedBulkyPercent).toBeCloseTo(28, 9);
    const nutty = facts(base, line("walnuts", "nut", {otherFat: 60, fibre: 40}, 200));
    expect(nutty.countedBulkyPercent).toBeCloseTo(28, 9);
    // 4 % cocoa powder of 5 % water: 2.5 x 95 % of 4 % are 9.5 %.
    const cocoa = facts(
      {...base, grams: 960},
      line("cocoa", "cocoa", {water: 5, fibre: 75, cocoaButter: 20}, 40),
    );
    expect(cocoa.bulkyPercent).toBeCloseTo(4, 9);
    expect(cocoa.countedBulkyPercent).toBeCloseTo(9.5, 9);
    // 4 % chocolate with 45 % sugar: 2.5 x 55 % of 4 % are 5.5 %.
    const bar = facts(
      {...base, grams: 960},
      line("chocolate", "cocoa", {sucrose: 45, fibre: 25, cocoaButter: 30}, 40),
    );
    expect(bar.countedBulkyPercent).toBeCloseTo(5.5, 9);
  });
  test("a chocolate ice cream that the law allows is met", () => {
    // 5 % cocoa of no water counts for 12.5 %. Milk fat 8.8 / (1 - 0.125) = 10.06 %; by its own weight 8.8 / 0.95 = 9.26 %. Milk
    // solids 18.3 / 0.875 = 20.9 %, or 18.3 / 0.95 = 19.3 %.
    const [milky, cocoa] = [mix(8.8 / 0.95, 10), line("cocoa", "cocoa", {fibre: 80, cocoaButter: 20}, 50)];
    const chocolate = facts(line("base", "dairy", milky, 950), cocoa);
    expect(failed("US ice cream", chocolate)).toEqual([]);
    const {countedBulkyPercent: _, ...byWeight} = chocolate;
    expect(failed("US ice cream", byWeight)).toEqual([
      "milk fat, without bulky flavours",
      "milk solids, without bulky flavours",
    ]);
  });
  test("a ripple counts for its own weight, sugar and all, or for more where its fruit does", () => {
    const sauce = (plums: number) => ({
      name: "ripple",
      lines: [
        line("plum", "fruit", {water: 88, dextrose: 12}, plums),
        line("sugar", "sugar", {sucrose: 100}, 1000 - plums),
      ],
    });
    const tub = (plums: number) =>
      productFacts(
        makeProduct("x", [baseComponent({name: "b", lines: [base]}, 80), rippleComponent(sauce(plums), 20)]),
        50,
      );
    expect(tub(500).countedBulkyPercent).toBeCloseTo(20, 9);
    expect(tub(900).countedBulkyPercent).toBeCloseTo(0.9 * 1.4 * 20, 9);
    expect(tub(500)).toMatchObject({fruit: true, fruitKind: "other"});
    expect(tub(500).fruitPercent).toBeCloseTo(10, 9);
  });
  test.each([
    ["lemon juice", "citrus"],
    ["raspberry", "berry"],
    ["redcurrant", "berry"],
    ["sour cherry", "other"],
    ["pear", "other"],
  ])("%s is %s", (name, kind) => {
    expect(facts(base, line(name, "fruit", {water: 90, fructose: 10}, 50)).fruitKind).toBe(kind);
  });
});

describe("UK minima (Food Labelling Regulations 1996, Schedule 8)", () => {
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
