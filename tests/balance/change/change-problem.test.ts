import {describe, expect, test} from "vitest";
import {readChange} from "../../../lib/balance/change/change-problem.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {findIngredient} from "../../../lib/pantry/pantry.ts";
import {realPantry} from "../../support/pantry.ts";
import {within} from "../../support/within.ts";

const find = (name: string) => findIngredient(realPantry, name);
const recipeOf = (grams: Readonly<Record<string, number>>) => ({
  name: "of ours",
  lines: Object.entries(grams).map(([name, mass]) => ({ingredient: find(name), grams: mass})),
});
const ice = recipeOf({
  "whole milk": 600,
  "cream 36 %": 200,
  sucrose: 170,
  pear: 20,
  "guar gum": 3,
  "egg yolk": 40,
});
const namesOf = (lines: readonly {readonly ingredient: Ingredient}[]) =>
  lines.map(({ingredient}) => ingredient.name);

describe("what may come in", () => {
  const comesIn = (ingredient: Ingredient) => readChange(ice, {from: [ingredient]}).others.length === 1;

  test.each([
    ["skimmed milk powder", "of a group that the recipe has, its allergen too"],
    ["dextrose monohydrate", "a sugar that tastes of nothing but sweet"],
    ["glucose syrup 42 DE", "a syrup of nothing but sugars"],
    ["water", "water"],
  ])("%s: %s", (name) => {
    expect(comesIn(find(name))).toBe(true);
  });

  test.each([
    ["whole milk", "it is there already"],
    ["honey", "it tastes of itself"],
    ["maltodextrin 18 DE", "a powder for body"],
    ["sorbitol", "no sugar, and taken by the dose"],
    ["egg yolk", "an egg"],
    ["strawberry", "a flavour"],
    ["coconut oil", "of a group that the recipe has not"],
    ["locust bean gum", "taken by the pinch"],
  ])("not %s: %s", (name) => {
    expect(comesIn(find(name))).toBe(false);
  });

  test("nothing with an allergen that the recipe has not, nothing out of stock, and what is of no group", () => {
    const syrup: Ingredient = {...find("glucose syrup 42 DE"), name: "our syrup"};
    expect(comesIn(syrup)).toBe(true);
    expect(comesIn({...syrup, allergens: ["gluten"]})).toBe(false);
    expect(comesIn({...syrup, allergens: ["milk"]})).toBe(true);
    expect(comesIn({...syrup, stock: 0})).toBe(false);
    expect(comesIn({...syrup, stock: 5})).toBe(true);
    const {group: _, ...plain} = find("skimmed milk");
    expect(comesIn({...plain, name: "our milk"})).toBe(true);
  });

  test("a newcomer has its limits: its stock, 12 % of the mix, of a sugar half of all sugars", () => {
    const most = (ingredient: Ingredient) => readChange(ice, {from: [ingredient]}).others[0]!.max;
    const batch = 1033;
    within(most(find("skimmed milk powder")), 0.12 * batch, 1e-9, "g");
    expect(most({...find("skimmed milk powder"), stock: 7})).toBe(7);
    const little = recipeOf({"whole milk": 900, sucrose: 10});
    // The lactose of milk is none of the sugars that sweeten.
    within(readChange(little, {from: [find("dextrose")]}).others[0]!.max, 10 / 2, 1e-9, "g");
  });
});

describe("what stays, and how far the rest may move", () => {
  test("flavours, eggs, what is a pinch and what is locked stay", () => {
    const {kept, own} = readChange(ice, {locked: ["cream 36 %"]});
    expect(new Set(namesOf(kept))).toEqual(new Set(["cream 36 %", "pear", "guar gum", "egg yolk"]));
    expect(namesOf(own)).toEqual(["whole milk", "sucrose"]);
  });

  test("a pinch is below one part in a hundred; coconut moves where it is the body", () => {
    const salted = (salt: number) =>
      namesOf(readChange(recipeOf({"whole milk": 1000 - salt, dextrose: salt}), {}).kept);
    expect(salted(9)).toEqual(["dextrose monohydrate"]);
    expect(salted(11)).toEqual([]);
    const coconut = (mass: number) =>
      namesOf(readChange(recipeOf({"coconut milk": mass, water: 800 - mass, sucrose: 200}), {}).kept);
    expect(coconut(450)).toEqual(["coconut milk"]);
    expect(coconut(550)).toEqual([]);
  });

  test("from a third to twice, or a tenth of the mix more; to no more than there is, but what the recipe has", () => {
    const limits = (stock?: number) => {
      const from = [{...find("sucrose"), ...(stock !== undefined && {stock})}];
      const {own} = readChange(recipeOf({"whole milk": 950, sucrose: 50}), {from});
      return own.map(({min, max}) => [min!.toFixed(6), max]);
    };
    expect(limits()).toEqual([
      ["316.666667", 1900],
      ["16.666667", 150],
    ]);
    expect(limits(80)[1]).toEqual(["16.666667", 80]);
    expect(limits(20)[1]).toEqual(["16.666667", 50]);
  });

  test("the freezer, the overrun and what was learned go along", () => {
    const learned = {reports: 3, shift: 0.5, narrowing: 0.8, scatter: 0.3};
    const problem = readChange({...ice, overrun: 45}, {freezer: -16, learned});
    expect(problem).toMatchObject({freezer: -16, overrun: 45, learned, batch: 1033});
    expect(problem.before).not.toHaveProperty("learned");
    const airy = readChange(ice, {overrun: 80});
    expect([airy.overrun, airy.before.overrun]).toEqual([80, 80]);
    expect(airy).not.toHaveProperty("learned");
    expect(readChange(ice, {}).before).not.toHaveProperty("overrun");
  });
});
