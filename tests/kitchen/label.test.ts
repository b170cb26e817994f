import {describe, expect, test} from "vitest";
import {cookDown} from "../../lib/kitchen/cooking/cook.ts";
import {costOf, priceForMargin, productCost} from "../../lib/kitchen/product/cost.ts";
import {ingredientList, quidPercent} from "../../lib/kitchen/label/label.ts";
import {nutritionLabel} from "../../lib/kitchen/label/nutrition-label.ts";
import {nutritionOf} from "../../lib/kitchen/product/nutrition.ts";
import {ENERGY_FACTORS} from "../../lib/pantry/energy.ts";
import {productAllergens} from "../../lib/kitchen/product/product-allergens.ts";
import {
  baseComponent,
  makeProduct,
  productComposition,
  productDensity,
  productLines,
  rippleComponent,
} from "../../lib/kitchen/product/product.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import type {Composition} from "../../lib/pantry/parts.ts";

const of = (name: string, composition: Composition, more: Partial<Ingredient> = {}): Ingredient => ({
  name,
  composition,
  ...more,
});

describe("nutrition", () => {
  // USDA National Nutrient Database, Release 28 (2015): 01126 "Egg, yolk, raw, frozen, pasteurized", 19335 "Sugars,
  // granulated", 01127 "Egg, yolk, raw, frozen, sugared, pasteurized" (10 % sugar).
  const yolk = of(
    "frozen yolk",
    {water: 56.44, otherProtein: 15.53, eggFat: 25.6, dextrose: 0.16, otherSolids: 2.27},
    {
      properties: {sodium: 67},
    },
  );
  const sugar = of("sugar", {sucrose: 99.98, water: 0.02}, {properties: {sodium: 1}});
  const sugared = makeProduct("sugared yolk", [
    baseComponent({
      name: "sugared yolk",
      lines: [
        {ingredient: yolk, grams: 900},
        {ingredient: sugar, grams: 100},
      ],
    }),
  ]);
  test("sugared yolk from yolk and sugar meets USDA 01127", () => {
    const nutrition = nutritionOf(sugared);
    // Printed figures; two samples of one food, so within 2 %. USDA counts energy by egg's own factors.
    const printed = {protein: 13.87, fat: 22.82, sugars: 10.3, kilocalories: 307} as const;
    const off = Object.entries(printed).filter(
      ([key, value]) => Math.abs(nutrition[key as keyof typeof printed] / value - 1) >= 0.02,
    );
    expect(off).toEqual([]);
    expect(Math.abs(productComposition(sugared).water! / 51.23 - 1)).toBeLessThan(0.02);
    expect(nutrition.salt).toBeCloseTo((2.5 * (0.9 * 67 + 0.1 * 1)) / 1000, 9);
  });
  test("the factors of Annex XIV, one by one", () => {
    // Regulation (EU) No 1169/2011, Annex XIV: kJ and kcal per g.
    const one = (composition: Composition) => {
      const {kilojoules, kilocalories} = nutritionOf(
        makeProduct("x", [baseComponent({name: "x", lines: [{ingredient: of("x", composition), grams: 1}]})]),
      );
      return [kilojoules, kilocalories].map((value) => Number((value / 100).toFixed(6)));
    };
    expect(one({sucrose: 100})).toEqual([17, 4]);
    expect(one({starch: 100})).toEqual([17, 4]);
    expect(one({sorbitol: 100})).toEqual([10, 2.4]);
    expect(one({erythritol: 100})).toEqual([0, 0]);
    expect(one({milkProtein: 100})).toEqual([17, 4]);
    expect(one({otherFat: 100})).toEqual([37, 9]);
    expect(one({alcohol: 100})).toEqual([29, 7]);
    expect(one({organicAcids: 100})).toEqual([13, 3]);
    expect(one({fibre: 100})).toEqual([8, 2]);
    expect(one({water: 100})).toEqual([0, 0]);
    expect(Object.keys(ENERGY_FACTORS)).toHaveLength(7);
  });
  test("a portion is its share; the label rounds", () => {
    const {kilojoules, fat} = nutritionOf(sugared);
    expect(nutritionOf(sugared, 60).kilojoules).toBeCloseTo(0.6 * kilojoules, 9);
    expect(nutritionOf(sugared, 60).fat).toBeCloseTo(0.6 * fat, 9);
    expect(() => nutritionOf(sugared, 0)).toThrow("grams: out of range (got 0)");
    // Rounding of the European Commission's guidance on tolerances (2012), from memory.
    const exact = {
      ...nutritionOf(sugared),
      fat: 9.94,
      carbohydrate: 10.4,
      sugars: 0.5,
      protein: 0.51,
      salt: 0.0125,
      saturates: 0.11,
    };
    expect(nutritionLabel(exact).map((line) => line.text)).toEqual([
      `${kilojoules.toFixed(0)} kJ / ${exact.kilocalories.toFixed(0)} kcal`,
      "9.9 g",
      "0.1 g",
      "10 g",
      "<0.5 g",
      "<0.5 g",
      "0.5 g",
      "<0.01 g",
    ]);
    expect(nutritionLabel(nutritionOf(sugared))[2]).toEqual({name: "of which saturates"});
  });
  test("saturates stay absent while the fat's kind is unknown", () => {
    expect(nutritionOf(sugared).saturates).toBeUndefined();
    expect(nutritionOf(sugared).lackingSaturates).toEqual(["frozen yolk"]);
    const known = {...yolk, properties: {sodium: 67, saturates: 7.8}};
    const recipe = {
      name: "x",
      lines: [
        {ingredient: known, grams: 50},
        {ingredient: sugar, grams: 50},
      ],
    };
    expect(nutritionOf(makeProduct("x", [baseComponent(recipe)])).saturates).toBeCloseTo(3.9, 9);
  });
});

const milk = of(
  "whole milk",
  {water: 88.13, milkFat: 3.25, milkProtein: 3.15, lactose: 4.8, milkSalts: 0.67},
  {
    allergens: ["milk"],
    price: 1,
  },
);
const cream = of(
  "double cream",
  {water: 46, milkFat: 48, milkProtein: 2, lactose: 3, milkSalts: 1},
  {allergens: ["milk"], price: 5},
);
const sugar = of("sugar", {sucrose: 100}, {price: 1.2});
const plum = of("plums", {water: 88, dextrose: 6, fructose: 4, fibre: 2}, {price: 3});
const nut = of(
  "roasted hazelnuts",
  {otherFat: 62, otherProtein: 15, fibre: 10, sucrose: 5, water: 8},
  {allergens: ["nuts"]},
);
const base = {
  name: "base",
  lines: [
    {ingredient: milk, grams: 600},
    {ingredient: cream, grams: 220},
    {ingredient: sugar, grams: 180},
  ],
};
const sauce = {
  name: "plum ripple",
  lines: [
    {ingredient: plum, grams: 1000},
    {ingredient: sugar, grams: 500},
  ],
};
const cooked = cookDown(sauce, {cookedGrams: 1000});
const product = makeProduct("plum ripple ice cream", [
  baseComponent(base, 85),
  rippleComponent(sauce, 15, cooked),
]);

describe("the finished product", () => {
  test("the ripple's share enters composition, ingredients and density", () => {
    expect(productComposition(product).sucrose).toBeCloseTo(0.85 * 18 + 0.15 * 50, 9);
    const grams = Object.fromEntries(
      productLines(product, 1000).map((line) => [line.ingredient.name, line.grams]),
    );
    expect(grams["plums"]).toBeCloseTo(150, 9);
    expect(grams["sugar"]).toBeCloseTo(850 * 0.18 + 75, 9);
    expect(productDensity(product, 0)).toBeGreaterThan(1.09);
    expect(productDensity(product, 50)).toBeLessThan(0.9);
    expect(productAllergens(product)).toEqual(["milk"]);
  });
  test("components that do not fill the tub are refused", () => {
    expect(() => makeProduct("x", [baseComponent(base, 80)])).toThrow(
      "x: the components do not sum to 100 %",
    );
    expect(() => productDensity(makeProduct("x", [rippleComponent(sauce, 100)]), 20)).toThrow(
      "nothing in it is churned",
    );
  });
});

describe("the ingredient list", () => {
  const text = (list: ReturnType<typeof ingredientList>) =>
    list.map(({text, emphasised}) => (emphasised ? `*${text}*` : text)).join("");
  test("descending, the ripple compound, the plums with their percentage, allergens set apart", () => {
    expect(text(ingredientList(product, ["plums"]))).toBe(
      "whole *milk*, double cream (*milk*), sugar, plum ripple 15 % (plums 15 %, sugar)",
    );
  });
  test("boiled-down fruit counts as used, as Annex VIII has it", () => {
    expect(quidPercent(product, "plums")).toBeCloseTo(15, 9);
    const thick = rippleComponent(sauce, 15, cookDown(sauce, {cookedGrams: 750}));
    expect(quidPercent(makeProduct("x", [baseComponent(base, 85), thick]), "plums")).toBeCloseTo(20, 9);
    // Above 100 % Annex VIII has the weight per 100 g stated.
    const paste = makeProduct("fruit paste", [
      {...rippleComponent(sauce, 100, cookDown(sauce, {cookedGrams: 750})), churned: true},
    ]);
    expect(text(ingredientList(paste, ["plums"]))).toBe("plums 133 g per 100 g, sugar");
    expect(() => quidPercent(product, "plum")).toThrow("did you mean plums");
  });
  test("nuts are named by kind; compound ingredients by their label", () => {
    const nutty = makeProduct("x", [
      baseComponent({
        name: "x",
        lines: [
          {ingredient: nut, grams: 30},
          {ingredient: milk, grams: 70},
        ],
      }),
    ]);
    const names = {"roasted hazelnuts": {name: "praline", contains: "hazelnuts 60 %, sugar"}};
    expect(text(ingredientList(nutty, [], names))).toBe("whole *milk*, praline (*hazelnuts* 60 %, sugar)");
    expect(text(ingredientList(nutty))).toBe("whole *milk*, roasted *hazelnuts*");
    expect(productAllergens(nutty)).toEqual(["milk", "nuts"]);
  });
});

describe("cost", () => {
  test("used, bought in packs, and left over", () => {
    const cost = costOf([{ingredient: sugar, grams: 2300}], {sugar: {grams: 1000, price: 1.5, stock: 400}});
    expect(cost.lines[0]).toEqual({
      ingredient: "sugar",
      grams: 2300,
      cost: 3.45,
      packs: 2,
      outlay: 3,
      leftover: 100,
    });
    expect(
      costOf([{ingredient: sugar, grams: 2000}], {sugar: {grams: 1000, price: 1.5}}).lines[0],
    ).toMatchObject({packs: 2, leftover: 0});
  });
  test("lines of one ingredient draw on one stock and the same packs", () => {
    const line = {ingredient: sugar, grams: 600};
    const packs = {sugar: {grams: 1000, price: 1.5, stock: 600}};
    const cost = costOf([line, {ingredient: milk, grams: 100}, line], packs);
    expect(cost.lines.map(({ingredient}) => ingredient)).toEqual([sugar.name, milk.name]);
    expect(cost.lines[0]).toMatchObject({grams: 1200, packs: 1, outlay: 1.5, leftover: 400});
    expect(cost.lines[0]!.cost).toBeCloseTo(1.8, 12);
    expect(cost.total).toBeCloseTo(1.8 + (100 * milk.price!) / 1000, 12);
    // At a price per kg each line is paid for at its own.
    const dear = {ingredient: {...sugar, price: 3}, grams: 100};
    expect(costOf([{ingredient: {...sugar, price: 1}, grams: 100}, dear]).total).toBeCloseTo(0.4, 12);
  });
  test("per kg, litre, tub and portion", () => {
    const selling = {grams: 4000, overrun: 35, tubMillilitres: 500, portionMillilitres: 120};
    const cost = productCost(product, selling);
    const perKg = 0.85 * (0.6 * 1 + 0.22 * 5 + 0.18 * 1.2) + 0.15 * (1 * 3 + 0.5 * 1.2);
    expect(cost.perKilogram).toBeCloseTo(perKg, 9);
    expect(cost.total).toBeCloseTo(4 * perKg, 9);
    expect(cost.perLitre).toBeCloseTo(perKg * productDensity(product, 35), 9);
    expect(cost.perTub * 2).toBeCloseTo(cost.perLitre, 9);
    expect(cost.perPortion).toBeCloseTo(cost.perLitre * 0.12, 9);
    expect(() => productCost(product, {...selling, tubMillilitres: 0})).toThrow(
      "tubMillilitres: out of range (got 0)",
    );
  });
  test("a price that leaves the margin", () => {
    expect(priceForMargin(2, 60)).toBeCloseTo(5, 12);
    expect(priceForMargin(2, 60, 20)).toBeCloseTo(6, 12);
    expect(() => priceForMargin(2, 100)).toThrow("margin: out of range");
  });
  test("a missing price is never 0", () => {
    expect(() => costOf([{ingredient: nut, grams: 10}])).toThrow(
      "roasted hazelnuts: no price; give its price per kg",
    );
  });
});
