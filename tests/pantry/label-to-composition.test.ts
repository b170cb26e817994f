import {describe, expect, test} from "vitest";
import {InputError} from "../../lib/core/errors.ts";
import {sum} from "../../lib/core/numbers.ts";
import {initialFreezingPoint} from "../../lib/freezing/ice.ts";
import {readComposition} from "../../lib/pantry/composition.ts";
import {fromLabel, INGREDIENT_CLASSES, type IngredientClass} from "../../lib/pantry/from-label.ts";
import {LABEL_RULES} from "../../lib/pantry/label-rules.ts";
import {PARTS} from "../../lib/pantry/parts.ts";
import type {Label} from "../../lib/pantry/read-label.ts";
import {LABELLED_FOODS} from "../support/labels.ts";
import {within} from "../support/within.ts";

/** Parts of the foods' compositions that lie within the stated uncertainty of those from their labels, and all of them. */
function coverage(withFibre: boolean): {covered: number; all: number} {
  let [covered, all] = [0, 0];
  for (const {label, ingredient, ingredientClass} of LABELLED_FOODS) {
    const {fibre = 0, ...rest} = label;
    const found = fromLabel(withFibre ? {...rest, fibre} : rest, ingredientClass);
    for (const part of PARTS) {
      const truth = ingredient.composition[part] ?? 0;
      const estimate = found.ingredient.composition[part] ?? 0;
      const plusMinus = found.uncertainty[part] ?? 0;
      if (!truth && !estimate && !plusMinus) continue;
      all++;
      if (Math.abs(truth - estimate) <= plusMinus + 1e-9) covered++;
    }
  }
  return {covered, all};
}

const milk: Label = {name: "milk", fat: 3.6, carbohydrate: 4.8, sugars: 4.8, protein: 3.4, salt: 0.1};

describe("a composition from a label", () => {
  test("lies within its stated uncertainty for 19 parts in 20 of the published foods (USDA SR28, CoFID 2021, CIQUAL 2020)", () => {
    expect(LABELLED_FOODS.length).toBeGreaterThan(130);
    const full = coverage(true);
    expect(full.covered / full.all).toBeGreaterThan(0.95);
    const withoutFibre = coverage(false);
    expect(withoutFibre.covered / withoutFibre.all).toBeGreaterThan(0.93);
  });

  test("is complete: parts that a reader accepts, together 100 g", () => {
    for (const {label, ingredientClass} of LABELLED_FOODS) {
      const {composition} = fromLabel(label, ingredientClass).ingredient;
      const total = sum(PARTS.map((part) => composition[part] ?? 0));
      within(total, 100, 1e-9, `sum of ${label.name}`);
      expect(readComposition(composition, label.name)).toEqual(composition);
    }
  });

  test("says little of what the label says itself, more of what it must guess", () => {
    const {uncertainty} = fromLabel(milk, "dairy");
    // The label's own roundings, and 8 % ash in MSNF (H. D. Goff, Ice Cream Technology, University of Guelph e-book).
    within(uncertainty.milkFat, 0.05, 1e-12, "fat of milk");
    expect(uncertainty.milkSalts).toBeGreaterThan(0.1);
    expect(uncertainty.water).toBeLessThan(0.6);
  });

  test("freezes as the full composition does: half of the foods that hold water within 0.1 °C, nine in ten within 0.6 °C", () => {
    const errors = LABELLED_FOODS.flatMap(({label, ingredient, ingredientClass}) => {
      const truth = initialFreezingPoint(ingredient.composition);
      const found = initialFreezingPoint(fromLabel(label, ingredientClass).ingredient.composition);
      const wet = (ingredient.composition.water ?? 0) > 50;
      return wet && truth !== undefined && found !== undefined ? [Math.abs(found - truth)] : [];
    }).sort((a, b) => a - b);
    expect(errors.length).toBeGreaterThan(60);
    expect(errors[Math.floor(errors.length / 2)]).toBeLessThan(0.1);
    expect(errors[Math.floor(errors.length * 0.9)]).toBeLessThan(0.6);
  });

  test("energy that agrees changes nothing: 9 kcal per g of fat, 4 of carbohydrate and protein (Annex XIV)", () => {
    const told = fromLabel({...milk, kilojoules: 272, kilocalories: 65}, "dairy");
    expect(told.ingredient.composition).toEqual(fromLabel(milk, "dairy").ingredient.composition);
  });

  test("shares a label out as the rule says", () => {
    const {ingredient} = fromLabel(milk, "dairy");
    const {composition} = ingredient;
    expect(ingredient).toMatchObject({name: "milk", grade: "label"});
    expect(composition.milkFat).toBe(3.6);
    expect(composition.lactose).toBe(4.8);
    within(composition.milkSalts, (3.4 * 8) / 38, 1e-12, "8 g of ash to 38 g of protein");
    expect(composition.salt).toBeUndefined();
    within(composition.water, 100 - 3.6 - 4.8 - 3.4 - (3.4 * 8) / 38 - 0.1 + 0.1, 0.11, "what is left");
  });

  test("takes the dextrose equivalent of a syrup from its sugars, and coconut fat from its saturates", () => {
    const syrup = fromLabel(
      {name: "syrup", fat: 0, carbohydrate: 80, sugars: 32, protein: 0, salt: 0},
      "glucose syrup",
    );
    expect(syrup.ingredient.composition.dextroseEquivalent).toBe(40);
    expect(syrup.uncertainty.dextroseEquivalent).toBe(9);
    const fat = {name: "fat", fat: 100, carbohydrate: 0, sugars: 0, protein: 0, salt: 0};
    expect(fromLabel({...fat, saturates: 87}, "oil").ingredient.composition).toEqual({coconutFat: 100});
    expect(fromLabel({...fat, saturates: 14}, "oil").ingredient.composition).toEqual({otherFat: 100});
  });

  test("has rules whose shares sum to 1", () => {
    expect(INGREDIENT_CLASSES.length).toBeGreaterThan(25);
    for (const [name, rule] of Object.entries(LABEL_RULES)) {
      for (const split of [rule.fat, rule.protein, rule.sugars, rule.rest])
        within(sum(Object.values(split).map(([share]) => share)), 1, 1e-9, name);
    }
  });
});

describe("a mistake in a label names the figure", () => {
  test.each<[what: string, label: unknown, ingredientClass: string, says: RegExp]>([
    ["no object", 5, "dairy", /^label: not an object/],
    ["no name", {...milk, name: ""}, "dairy", /^label.name: no name/],
    ["a missing figure", {...milk, salt: undefined}, "dairy", /label "milk": salt: not a finite number/],
    ["a negative figure", {...milk, fat: -1}, "dairy", /fat: out of range \(got -1\)/],
    ["a typing error", {...milk, fatt: 1}, "dairy", /unknown figure \(got "fatt"\); did you mean fat/],
    ["more saturates than fat", {...milk, saturates: 20}, "dairy", /saturates: more than the fat/],
    ["more sugars than carbohydrate", {...milk, sugars: 12}, "dairy", /exceed the carbohydrate/],
    ["over 100 g", {...milk, fat: 99}, "dairy", /do not sum to 100/],
    ["water that leaves a gap", {...milk, water: 20}, "dairy", /do not sum to 100/],
    ["a lost decimal point", {...milk, fat: 360}, "dairy", /fat: out of range \(got 360\).*missing \(36\)/],
    [
      "saturates without their point",
      {...milk, saturates: 23},
      "dairy",
      /more than the fat of 3\.6 g \(got 23\).*\(2\.3\)/,
    ],
    [
      "sugars for carbohydrate",
      {...milk, sugars: 6},
      "dairy",
      /exceed the carbohydrate of 4\.8 g \(got 6\).*swapped/,
    ],
    [
      "fat without its point in the sum",
      {...milk, fat: 96},
      "dairy",
      /sum to 100 g \(got 10\d.*fat missing \(96, 9\.6\)/,
    ],
    // 1 kcal is 4.184 kJ.
    [
      "kJ that are no kcal",
      {...milk, kilojoules: 268, kilocalories: 94},
      "dairy",
      /not 4\.184 times the 94 kcal \(got 268\)/,
    ],
    ["kJ and kcal swapped", {...milk, kilojoules: 65, kilocalories: 271}, "dairy", /swapped/],
    ["kJ given as kcal", {...milk, kilocalories: 271}, "dairy", /about 65 kcal.*swapped/],
    ["energy of a portion", {...milk, kilocalories: 163}, "dairy", /about 65 kcal.*\(got 163\).*per portion/],
    ["energy with a point too few", {...milk, kilocalories: 650}, "dairy", /decimal point/],
    ["energy below none", {...milk, kilocalories: -1}, "dairy", /kilocalories: out of range/],
    ["an unknown class", milk, "diary", /unknown class \(got "diary"\); did you mean dairy/],
    ["a class of the prototype", milk, "constructor", /unknown class/],
  ])("%s", (_, label, ingredientClass, says) => {
    const call = () => fromLabel(label as Label, ingredientClass as IngredientClass);
    expect(call).toThrow(InputError);
    expect(call).toThrow(says);
  });
});
