import {describe, expect, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import {InputError} from "../../lib/core/errors.ts";
import {readIngredient} from "../../lib/io/json/ingredient-json.ts";
import {readPantryCsv} from "../../lib/io/csv/pantry-csv.ts";
import {fromLabel} from "../../lib/pantry/from-label.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {NUTRIENTS, SAID_NUTRIENTS} from "../../lib/pantry/nutrient-keys.ts";
import {mixNutrient} from "../../lib/pantry/mix-nutrient.ts";
import {nutrientOf} from "../../lib/pantry/nutrients.ts";
import {findIngredient, pantryOf} from "../../lib/pantry/pantry.ts";

import {within} from "../support/within.ts";

const pantry = includedPantry();
const find = (name: string) => findIngredient(pantry, name);
const paste = {name: "our paste", composition: {otherFat: 60, fibre: 40}};

describe("nutrients of the included ingredients", () => {
  test.each([
    // USDA National Nutrient Database for Standard Reference, Release 28 (2015), by NDB number.
    ["whole milk", "saturates", 1.865, "01077"],
    ["whole milk", "calcium", 113, "01077"],
    ["salted butter", "saturates", 51.368, "01001"],
    ["unsalted butter", "cholesterol", 215, "01145"],
    ["salted butter", "sodium", 643, "01001"],
    ["egg yolk", "saturates", 9.551, "01125"],
    ["egg yolk", "cholesterol", 1085, "01125"],
    ["egg yolk", "iron", 2.73, "01125"],
    ["skimmed milk powder", "sodium", 535, "01091"],
    ["skimmed milk powder", "potassium", 1794, "01091"],
    ["sweet whey powder", "sodium", 1079, "01115"],
    ["olive oil", "monounsaturates", 72.961, "04053"],
    ["sunflower oil", "vitaminD", 0, "04506"],
    ["salt", "sodium", 39337, "by its formula"],
  ] as const)("%s: %s is %d (SR28, %s)", (name, key, printed, _ndb) => {
    within(nutrientOf(find(name), key)!, printed, 0.006 * printed, `${name}: ${key}`);
  });

  test("have fatty acids that are part of the fat, and sodium that the salt of the parts does not exceed", () => {
    for (const ingredient of pantry.ingredients) {
      const of = (key: Parameters<typeof nutrientOf>[1]) => nutrientOf(ingredient, key);
      const {composition, name} = ingredient;
      const fat = ["milkFat", "eggFat", "cocoaButter", "coconutFat", "otherFat", "emulsifier"] as const;
      const all = fat.reduce((sum, part) => sum + (composition[part] ?? 0), 0);
      const acids = (of("saturates") ?? 0) + (of("monounsaturates") ?? 0) + (of("polyunsaturates") ?? 0);
      expect(acids, name).toBeLessThanOrEqual(1.06 * all + 0.12);
      expect(of("trans") ?? 0, name).toBeLessThanOrEqual(0.15 * all + 0.01);
      // Salt that is a part of its own is sodium chloride, to the 2 % that lie between it and sodium x 2.5.
      const salt = of("saltEquivalent") ?? Infinity;
      expect(0.97 * (composition.salt ?? 0), name).toBeLessThanOrEqual(salt + 0.01);
      expect(of("addedSugars") ?? 0, name).toBeLessThanOrEqual(100);
    }
  });

  test("are unknown where no table has them, and never 0 for that", () => {
    expect(nutrientOf(find("xanthan gum"), "sodium")).toBeUndefined();
    expect(nutrientOf(find("water"), "sodium")).toBe(0);
  });
});

describe("nutrientOf", () => {
  test("reckons energy by Regulation (EU) 1169/2011, Annex XIV: 4 kcal carbohydrate, 9 fat, 7 alcohol, 2.4 polyols, 0 erythritol", () => {
    const of = (composition: object) => nutrientOf({name: "x", composition}, "kilocalories");
    expect(of({sucrose: 100})).toBe(400);
    expect(of({otherFat: 100})).toBe(900);
    expect(of({alcohol: 100})).toBe(700);
    expect(of({maltitol: 100})).toBe(240);
    expect(of({erythritol: 100})).toBe(0);
    expect(of({organicAcids: 100})).toBe(300);
    expect(of({inulin: 100})).toBe(200);
    expect(nutrientOf({name: "x", composition: {milkProtein: 100}}, "kilojoules")).toBe(1700);
  });

  test("knows of itself what a composition leaves no doubt of, and no more", () => {
    const syrup = {name: "syrup", composition: {water: 40, sucrose: 60}};
    expect([nutrientOf(syrup, "sodium"), nutrientOf(syrup, "addedSugars")]).toEqual([0, 60]);
    expect(nutrientOf(syrup, "saturates")).toBe(0);
    expect(nutrientOf(paste, "saturates")).toBeUndefined();
    expect(nutrientOf(paste, "addedSugars")).toBe(0);
    const salty = {name: "brine", composition: {water: 90, salt: 10}};
    within(nutrientOf(salty, "sodium")!, 3934, 1, "sodium chloride: 22.990 of 58.443 g/mol (IUPAC)");
    const starchSyrup = {name: "s", composition: {water: 20, glucoseSyrupSolids: 80, dextroseEquivalent: 42}};
    expect(nutrientOf(starchSyrup, "sodium")).toBeUndefined();
  });

  test("takes what a label says: salt is sodium x 2.5 (Annex I of the Regulation)", () => {
    const label = {name: "paste", fat: 60, saturates: 7, carbohydrate: 10, sugars: 5, protein: 15, salt: 0.5};
    const {ingredient} = fromLabel(label, "nut");
    expect([nutrientOf(ingredient, "saturates"), nutrientOf(ingredient, "sodium")]).toEqual([7, 200]);
    expect(nutrientOf(ingredient, "saltEquivalent")).toBe(0.5);
  });

  test("reads them from CSV and JSON, and refuses what is none", () => {
    const csv = "name,water_g,otherFat_g,saturates (g),Sodium mg,vitamin D µg\nx,40,60,7,120,1.5\n";
    expect(readPantryCsv(csv)[0]?.nutrients).toEqual({saturates: 7, sodium: 120, vitaminD: 1.5});
    expect(() => readPantryCsv("name,water_g,otherFat_g,saturates_g\nx,40,60,700\n")).toThrow(
      /from 0 to 100 g/,
    );
    expect(() => readPantryCsv("name,water_g,sodum_mg\nx,100,1\n")).toThrow(/did you mean sodium_mg/);
    const json = {name: "x", composition: {water: 100}, nutrients: {sodium: 3}};
    expect(readIngredient(json).nutrients).toEqual({sodium: 3});
    expect(() => readIngredient({...json, nutrients: {sodium: -3}})).toThrow(InputError);
    expect(() => readIngredient({...json, nutrients: {natrium: 3}})).toThrow(InputError);
  });

  test("refuses an unknown nutrient with the nearest", () => {
    expect(() => nutrientOf(paste, "saturate" as "saturates")).toThrow(/saturates/);
  });
});

describe("mixNutrient", () => {
  const milk = find("whole milk");

  test("is the mean by mass", () => {
    const parts = [
      {ingredient: milk, grams: 300},
      {ingredient: find("water"), grams: 100},
    ];
    expect(mixNutrient(parts, "sodium")).toEqual({value: 0.75 * 43});
    expect(mixNutrient([], "sodium")).toEqual({value: 0});
  });

  test("names what lacks a figure, but for a trace where the caller allows one", () => {
    const parts = [
      {ingredient: milk, grams: 996},
      {ingredient: paste, grams: 4},
    ];
    expect(mixNutrient(parts, "sodium")).toEqual({lacking: ["our paste"]});
    expect(mixNutrient(parts, "sodium", 0.005)).toEqual({value: 0.996 * 43});
    expect(mixNutrient([{ingredient: paste, grams: 0}], "sodium")).toEqual({value: 0});
  });
});

describe("nutrients as targets and aims", () => {
  const ingredients = ["whole milk", "cream 40 %", "skimmed milk powder", "sugar"];
  const targets = {totalSolids: {min: 35}, sugars: {equal: 15}};
  const solved = (more: object, minimise: "fat" | "saturates" | "kilocalories") => {
    const answer = balance({ingredients, targets: {...targets, ...more}, minimise}, {pantry});
    if (answer.status !== "optimal") throw new Error(answer.status);
    return answer;
  };

  test("hold where they bind, as the mean of the ingredients' own", () => {
    const answer = solved({saturates: {min: 6, max: 6.5}}, "saturates");
    const parts = answer.amounts.map(({ingredient, grams}) => ({ingredient: find(ingredient), grams}));
    expect(mixNutrient(parts, "saturates")).toEqual({value: expect.closeTo(6, 6) as number});
    expect(answer.binding.map(({target}) => target)).toContain("saturates");
  });

  test("energy may be an aim: the leanest mix of enough solids has least", () => {
    const least = solved({}, "kilocalories");
    const rich = solved({fat: {min: 10}}, "kilocalories");
    expect(least.shares.kilocalories ?? least.objective?.value).toBeLessThan(250);
    expect(rich.objective!.value).toBeGreaterThan(least.objective!.value);
  });

  test("an ingredient that does not say is named, with what to do: unknown is not none", () => {
    const brief = {ingredients: [...ingredients, {...paste}], targets: {...targets, saturates: {max: 6}}};
    expect(() => balance(brief, {pantry})).toThrow(
      /saturates not known of our paste.*"nutrients": {"saturates": …}} in g per 100 g/,
    );
    const told = {...paste, nutrients: {saturates: 5}};
    expect(balance({...brief, ingredients: [...ingredients, told], minimise: "fat"}, {pantry}).status).toBe(
      "optimal",
    );
    expect(() =>
      balance({ingredients: [...ingredients, paste], minimise: "saltEquivalent"}, {pantry}),
    ).toThrow(/sodium not known of our paste/);
  });

  test("what does not say is not named as help either, nor counted by name beyond five", () => {
    const plain = {name: "our syrup", composition: {sucrose: 60, water: 40}};
    const rich = {name: "our sweet paste", composition: {otherFat: 30, sucrose: 70}};
    const milk = {
      name: "milk",
      composition: {water: 88, milkFat: 4, milkProtein: 3, lactose: 5},
      nutrients: {saturates: 2.5},
    };
    const stored = pantryOf([milk, plain, rich]);
    const asked = {ingredients: ["milk"], targets: {sugars: {min: 12}}, minimise: "fat"} as const;
    const openers = (limits: object) => {
      const answer = balance({...asked, targets: {...asked.targets, ...limits}}, {pantry: stored});
      if (answer.status !== "infeasible") throw new Error(answer.status);
      return answer.conflict.openers;
    };
    expect([...openers({})].sort()).toEqual(["our sweet paste", "our syrup"]);
    expect(openers({saturates: {max: 6}})).toEqual(["our syrup"]);
    const many = Array.from({length: 6}, (_, k) => ({...paste, name: `paste ${k}`}));
    const named = (count: number) => () =>
      balance({ingredients: many.slice(0, count), minimise: "saturates"}, {pantry});
    expect(named(6)).toThrow("saturates not known of paste 0, paste 1, paste 2, paste 3, paste 4 …");
    expect(named(5)).toThrow(/saturates not known of paste 0, paste 1, paste 2, paste 3, paste 4;/);
  });

  test("every key is a target with a unit of its own", () => {
    for (const key of Object.keys(NUTRIENTS) as (keyof typeof NUTRIENTS)[])
      expect(balance({ingredients, targets: {[key]: {min: 0}}, minimise: "fat"}, {pantry}).status, key).toBe(
        "optimal",
      );
    expect(SAID_NUTRIENTS).toHaveLength(11);
    expect(() => balance({ingredients, targets: {sodium: {max: -1}}}, {pantry})).toThrow(/mg per 100 g/);
    expect(() => balance({ingredients, targets: {saturates: {max: 101}}}, {pantry})).toThrow(/0 to 100/);
  });
});
