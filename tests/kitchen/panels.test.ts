import {readFileSync} from "node:fs";
import {describe, expect, test} from "vitest";
import {readRecipeJson} from "../../lib/io/json/recipe-json.ts";
import {euPanel, linearPanel, REFERENCE_INTAKES} from "../../lib/kitchen/label/eu-panel.ts";
import {DAILY_VALUES, usPanel} from "../../lib/kitchen/label/us-panel.ts";
import {mineralPercent, usFigure} from "../../lib/kitchen/label/us-rounding.ts";
import {nutritionOf, nutritionPer100} from "../../lib/kitchen/product/nutrition.ts";
import {baseComponent, makeProduct, productDensity} from "../../lib/kitchen/product/product.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import {pantryOf} from "../../lib/pantry/pantry.ts";
import {BY_HAND} from "../support/labels-by-hand.ts";
import {realPantry} from "../support/pantry.ts";
import {STATED} from "../support/stated-foods.ts";

const stated = pantryOf(Object.entries(STATED).map(([name, more]): Ingredient => ({name, ...more})));
const NAMES = Object.keys(BY_HAND) as (keyof typeof BY_HAND)[];
const read = (name: string) =>
  readFileSync(new URL(`../../datasets/demo/${name}.json`, import.meta.url), "utf8");
const productOf = async (name: string, pantry = stated) =>
  makeProduct(name, [baseComponent(await readRecipeJson(read(name), pantry, name))]);

/** Rounding of the European Commission's guidance of December 2012, as restated: once more, by hand. */
const eu = {
  gram: (value: number, least: number) =>
    value <= least
      ? `<${least} g`
      : value < 9.95
        ? `${(Math.round(value * 10) / 10).toFixed(1)} g`
        : `${Math.round(value)} g`,
  salt: (value: number) => `${(Math.round(value * 100) / 100).toFixed(2)} g`,
};

describe("the label of each recipe of the demonstration, by hand", () => {
  test.each(NAMES)("European, of %s", async (name) => {
    const {fat, saturates, carbohydrate, sugars, fibre, protein, alcohol, acids, sodium} = BY_HAND[name];
    // Annex XIV: kJ and kcal per g of carbohydrate, protein, fat, alcohol, acid, fibre.
    const kilojoules = 17 * carbohydrate + 17 * protein + 37 * fat + 29 * alcohol + 13 * acids + 8 * fibre;
    const kilocalories = 4 * carbohydrate + 4 * protein + 9 * fat + 7 * alcohol + 3 * acids + 2 * fibre;
    const product = await productOf(name);
    const panel = euPanel(product);
    expect(panel.lacking).toEqual([]);
    expect(panel.per100.map((line) => `${line.name} ${line.text}`)).toEqual([
      `energy ${Math.round(kilojoules)} kJ / ${Math.round(kilocalories)} kcal`,
      `fat ${eu.gram(fat, 0.5)}`,
      `of which saturates ${eu.gram(saturates, 0.1)}`,
      `carbohydrate ${eu.gram(carbohydrate, 0.5)}`,
      `of which sugars ${eu.gram(sugars, 0.5)}`,
      ...(fibre > 0.5 ? [`fibre ${eu.gram(fibre, 0.5)}`] : []),
      `protein ${eu.gram(protein, 0.5)}`,
      `salt ${eu.salt((2.5 * sodium) / 1000)}`,
    ]);
    const json = nutritionPer100(product);
    const figures = {
      energyKj: kilojoules,
      energyKcal: kilocalories,
      fat,
      saturates,
      carbohydrate,
      sugars,
      fibre,
      protein,
      salt: (2.5 * sodium) / 1000,
    };
    expect(Object.keys(json)).toEqual(Object.keys(figures));
    for (const [key, value] of Object.entries(figures))
      expect(json[key as keyof typeof json], key).toBeCloseTo(value, 3);
  });

  test.each(NAMES)("of the United States, of %s", async (name) => {
    const hand = BY_HAND[name];
    const product = await productOf(name);
    const panel = usPanel(product, {overrun: 30, container: 1000});
    expect(panel.lacking).toEqual({});
    // A serving is 2/3 of 240 ml (21 CFR 101.12(b)); 1000 ml hold 6.25, "about 6".
    expect(panel.grams).toBeCloseTo(160 * productDensity(product, 30), 9);
    expect(panel.servings).toBe("about 6 servings per container");
    const share = panel.grams / 100;
    // 101.9(c)(6): carbohydrate by difference. The gums of these recipes are locust bean gum, a fibre of the list.
    const total = 100 - hand.protein - hand.fat - hand.water - hand.ash - hand.alcohol;
    const calories =
      9 * hand.fat + 4 * hand.protein + 4 * (total - hand.fibre) + 2 * hand.fibre + 7 * hand.alcohol;
    const small = (value: number) =>
      value < 0.5 ? "0g" : value < 1 ? "less than 1g" : `${Math.round(value)}g`;
    const fats = (value: number) =>
      value < 0.5 ? "0g" : value < 5 ? `${Math.round(2 * value) / 2}g` : `${Math.round(value)}g`;
    const mg = (value: number) =>
      value < 5
        ? "0mg"
        : value <= 140
          ? `${5 * Math.round(value / 5)}mg`
          : `${10 * Math.round(value / 10)}mg`;
    const cholesterol = (value: number) =>
      value < 2 ? "0mg" : value <= 5 ? "less than 5mg" : `${5 * Math.round(value / 5)}mg`;
    const amounts = Object.fromEntries(
      [...panel.nutrients, ...panel.vitamins].map((line) => [line.name, line.amounts[0]]),
    );
    expect(panel.calories).toEqual([String(10 * Math.round((share * calories) / 10))]);
    expect(amounts).toEqual({
      "Total Fat": fats(share * hand.fat),
      "Saturated Fat": fats(share * hand.saturates),
      "Trans Fat": fats(share * hand.trans),
      Cholesterol: cholesterol(share * hand.cholesterol),
      Sodium: mg(share * hand.sodium),
      "Total Carbohydrate": small(share * total),
      "Dietary Fiber": small(share * hand.fibre),
      "Total Sugars": small(share * hand.sugars),
      "Added Sugars": small(share * hand.addedSugars),
      Protein: small(share * hand.protein),
      "Vitamin D": `${Number((share * hand.vitaminD).toFixed(1))}mcg`,
      Calcium: `${10 * Math.round((share * hand.calcium) / 10)}mg`,
      Iron: `${Number((share * hand.iron).toFixed(1))}mg`,
      Potassium: `${10 * Math.round((share * hand.potassium) / 10)}mg`,
    });
    const daily = Object.fromEntries(panel.nutrients.map((line) => [line.name, line.daily[0]]));
    expect(daily).toMatchObject({
      "Total Fat": `${Math.round((100 * share * hand.fat) / 78)}%`,
      "Saturated Fat": `${Math.round((100 * share * hand.saturates) / 20)}%`,
      Sodium: `${Math.round((100 * share * hand.sodium) / 2300)}%`,
      "Added Sugars": `${Math.round((100 * share * hand.addedSugars) / 50)}%`,
    });
  });

  test("of pear and ginger, in the figures that a cook would print", async () => {
    // Fat (1955 x 3.25 + 610 x 40 + 155 x 0.77 + 150 x 26.54 + 1000 x 0.14 + 30 x 0.75) / 5000 = 7.00 g in 100 g.
    expect(linearPanel(euPanel(await productOf("recipe-pear-and-ginger")))).toBe(
      "Nutrition per 100 g: energy 774 kJ / 184 kcal, fat 7.0 g, of which saturates 4.1 g, carbohydrate 27 g, of which sugars 22 g, fibre 0.8 g, protein 3.2 g, salt 0.10 g.",
    );
  });

  test.each(NAMES)("%s has whole labels with the included pantry", async (name) => {
    const product = await productOf(name, realPantry);
    expect(euPanel(product).lacking).toEqual([]);
    expect(usPanel(product).lacking).toEqual({});
  });
});

describe("rounding of the United States, 21 CFR 101.9(c)", () => {
  test.each([
    ["calories", 4.9, "0"],
    ["calories", 47, "45"],
    ["calories", 52, "50"],
    ["calories", 256, "260"],
    ["fat", 0.49, "0"],
    ["fat", 4.3, "4.5"],
    ["fat", 5.4, "5"],
    ["cholesterol", 1.9, "0"],
    ["cholesterol", 3, "less than 5"],
    ["cholesterol", 63, "65"],
    ["sodium", 4.9, "0"],
    ["sodium", 137, "135"],
    ["sodium", 146, "150"],
    ["carbohydrate", 0.4, "0"],
    ["carbohydrate", 0.7, "less than 1"],
    ["carbohydrate", 1.5, "2"],
  ] as const)("%s %d prints as %s", (kind, value, text) => {
    const figure = usFigure(value, kind);
    expect(`${figure.lessThan ? "less than " : ""}${figure.text}`).toBe(text);
  });
  // 101.9(c)(8)(iii): to 2 % up to 10, to 5 % up to 50, to 10 % above; below 2 % nothing.
  test.each([
    [1.9, "0%"],
    [2.9, "2%"],
    [9.1, "10%"],
    [12, "10%"],
    [13, "15%"],
    [56, "60%"],
  ])("%d %% of a mineral's daily value prints as %s", (percent, text) => {
    expect(mineralPercent(percent, 100)).toBe(text);
  });
  test("daily values and reference intakes are the published ones", () => {
    // 21 CFR 101.9(c)(8)(iv) and (c)(9); Regulation (EU) No 1169/2011, Annex XIII, Part B.
    expect(DAILY_VALUES).toEqual({
      fat: 78,
      saturated: 20,
      cholesterol: 300,
      sodium: 2300,
      carbohydrate: 275,
      fibre: 28,
      addedSugars: 50,
      vitaminD: 20,
      calcium: 1300,
      iron: 18,
      potassium: 4700,
    });
    expect(REFERENCE_INTAKES).toEqual({
      energy: 8400,
      fat: 70,
      saturates: 20,
      carbohydrate: 260,
      sugars: 90,
      protein: 50,
      salt: 6,
    });
  });
});

describe("servings and portions", () => {
  const milk: Ingredient = {name: "milk", composition: {water: 88, milkFat: 4, lactose: 5, milkProtein: 3}};
  const product = makeProduct("milk ice", [
    baseComponent({name: "milk ice", lines: [{ingredient: milk, grams: 1}]}),
  ]);
  // 21 CFR 101.9(b)(6), (8) and (12): below two servings a container is one; two to three ask for a second column.
  test.each([
    [150, "1 serving per container", 1, /^1 container/],
    [319, "1 serving per container", 1, /^1 container/],
    [320, "2 servings per container", 2, /^2\/3 cup/],
    [480, "3 servings per container", 2, /^2\/3 cup/],
    [500, "about 3 servings per container", 1, /^2\/3 cup/],
    [1000, "about 6 servings per container", 1, /^2\/3 cup/],
  ])("%d ml: %s", (container, servings, columns, size) => {
    const panel = usPanel(product, {container});
    expect(panel.servings).toBe(servings);
    expect(panel.columns).toHaveLength(columns);
    expect(panel.serving).toMatch(size);
    for (const line of panel.nutrients) expect(line.amounts).toHaveLength(columns);
  });
  test("a European portion has its share of the intakes, and says how many the tub holds", () => {
    const panel = euPanel(product, {portion: 60, portions: 5.4});
    // 100 g: 17 x 5 + 17 x 3 + 37 x 4 = 284 kJ; 60 g: 170 kJ, 2 % of 8400; fat 2.4 g, 3 % of 70.
    expect(panel.portion?.lines[0]!.text).toBe("170 kJ / 41 kcal");
    expect(panel.portion?.intakes.slice(0, 2)).toEqual(["2 %", "3 %"]);
    expect(panel.sentences).toEqual([
      "A portion is 60 g; the pack holds about 5 portions.",
      "Reference intake of an average adult (8 400 kJ/2 000 kcal)",
    ]);
    expect(panel.lacking).toEqual(["milk"]);
    expect(() => euPanel(product, {portion: 0})).toThrow("options.portion: out of range (got 0)");
    expect(nutritionPer100(product)).not.toHaveProperty("saturates");
    expect(nutritionPer100(product)).not.toHaveProperty("salt");
  });
  // Regulation (EU) No 1169/2011, Annex I, point 10: gelatine is protein, 17 kJ/g.
  test("gelatine is protein, other stabilisers are fibre", () => {
    const of = (name: string) =>
      nutritionOf(
        makeProduct("x", [
          baseComponent({
            name: "x",
            lines: [{ingredient: {name, composition: {water: 14, stabiliser: 86}}, grams: 1}],
          }),
        ]),
      );
    expect(of("gelatine")).toMatchObject({protein: 86, fibre: 0});
    expect(of("gelatine").kilojoules).toBeCloseTo(86 * 17, 9);
    expect(of("agar")).toMatchObject({protein: 0, fibre: 86});
    expect(of("agar").kilojoules).toBeCloseTo(86 * 8, 9);
  });
  // 21 CFR 101.9(c)(6)(i): guar, pectin and locust bean gum are fibres; xanthan and carrageenan are not.
  test("a gum that is no fibre of the US list is carbohydrate there", () => {
    const of = (name: string) =>
      usPanel(
        makeProduct("x", [
          baseComponent({
            name: "x",
            lines: [
              {ingredient: {name, composition: {stabiliser: 100}}, grams: 5},
              {ingredient: milk, grams: 95},
            ],
          }),
        ]),
      ).nutrients.find((line) => line.name === "Dietary Fiber")!.amounts[0];
    expect(of("guar gum")).not.toBe("0g");
    expect(of("xanthan gum")).toBe("0g");
  });
});
