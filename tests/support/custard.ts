import type {Ingredient} from "../../lib/pantry/ingredient.ts";

// What a custard is made of: USDA SR28 NDB 01077 milk, 01125 yolk (rounded), 19335 sugar.

export const milk: Ingredient = {
  name: "whole milk",
  group: "dairy",
  allergens: ["milk"],
  composition: {water: 88.13, milkFat: 3.25, milkProtein: 3.15, lactose: 4.8, milkSalts: 0.67},
};

export const yolk: Ingredient = {
  name: "egg yolk",
  group: "egg",
  unit: 17,
  allergens: ["eggs"],
  composition: {water: 52.31, eggFat: 26.54, otherProtein: 15.86, dextrose: 3.59, otherSolids: 1.7},
};

export const sugar: Ingredient = {name: "sugar", composition: {sucrose: 100}};
