import {expect, test} from "vitest";
import {ownFirst} from "../../lib/io/csv/own-first.ts";
import {findIngredient, pantryOf} from "../../lib/pantry/pantry.ts";

const included = [
  {name: "whole milk", aliases: ["milk"], group: "dairy", price: 1, composition: {water: 100}},
  {name: "sugar", composition: {sucrose: 100}},
];

test("one's own takes the place of the included one, with its aliases and group where it has none", () => {
  const rich = {
    name: "Whole Milk",
    composition: {water: 85, milkFat: 6, milkProtein: 3.3, lactose: 5, milkSalts: 0.7},
  };
  const pantry = pantryOf(ownFirst([rich], included));
  expect(pantry.ingredients.map(({name}) => name)).toEqual(["Whole Milk", "sugar"]);
  // Composition and price are the own one's alone: another milk costs something else.
  expect(findIngredient(pantry, "milk", "brief")).toEqual({...rich, aliases: ["milk"], group: "dairy"});
});

test("what one's own says of itself stays", () => {
  const own = {name: "whole milk", aliases: ["Daisy's"], group: "farm", composition: {water: 100}};
  expect(ownFirst([own], included)).toEqual([own, included[1]]);
});
