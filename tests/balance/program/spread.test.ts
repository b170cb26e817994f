import {expect, test} from "vitest";
import {balance} from "../../../lib/balance/balance.ts";
import {narrowedRows, shifted} from "../../../lib/balance/program/spread.ts";
import type {Target} from "../../../lib/balance/brief/brief.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {pantryOf} from "../../../lib/pantry/pantry.ts";
import {within} from "../../support/within.ts";

const brief = readBrief(
  {
    batch: 1000,
    ingredients: [
      {name: "cream", composition: {water: 54, milkFat: 40, lactose: 6}},
      {name: "milk", composition: {water: 92, milkFat: 4, lactose: 4}},
      {name: "sugar", composition: {sucrose: 100}},
    ],
  },
  pantryOf([]),
);
const spread = {
  parts: new Map([
    ["cream", {milkFat: 1, lactose: 0.5}],
    ["milk", {milkFat: 0.25}],
  ]),
  weighing: 2,
};
const narrowed = (quantity: "fat" | "totalSolids" | "sweetness", limits: Omit<Target, "subject">) =>
  narrowedRows({subject: {kind: "quantity", quantity}, ...limits}, brief, spread);

test("an ingredient with more or less of a part has as much less or more water, and neither falls below 0", () => {
  const [cream] = brief.ingredients;
  const parts = (by: number) => shifted(cream!.ingredient, "milkFat", by).composition;
  expect(parts(1)).toMatchObject({milkFat: 41, water: 53, lactose: 6});
  expect(parts(-1)).toMatchObject({milkFat: 39, water: 55});
  expect(parts(60)).toMatchObject({milkFat: 94, water: 0});
  expect(parts(-60)).toMatchObject({milkFat: 0, water: 94});
  expect(shifted(cream!.ingredient, "sucrose", 3).composition).toMatchObject({sucrose: 3, water: 51});
  expect(shifted({name: "fat", composition: {milkFat: 100}}, "milkFat", 1).composition).toMatchObject({
    milkFat: 100,
    water: 0,
  });
});

test("limits are narrowed by what each ingredient may bring beyond its label and by what the scale may miss, by hand", () => {
  const [most, least, ...others] = narrowed("fat", {min: 8, max: 10});
  expect(others).toEqual([]);
  // Fat of 41 and 4.25 % at worst, and 2 g of 1,000 too much of what has more than 10 % and too little of what has less.
  expect(most?.weights).toEqual([41, 4.25, 0]);
  within(most?.upper, 10 - 0.002 * (30 + 6 + 10), 1e-12, "most fat");
  expect(most).not.toHaveProperty("lower");
  expect(least?.weights).toEqual([39, 3.75, 0]);
  within(least?.lower, 8 + 0.002 * (32 + 4 + 8), 1e-12, "least fat");
  expect(least).not.toHaveProperty("upper");
  // Two parts of the cream may both be off.
  const [solids, ...none] = narrowed("totalSolids", {min: 40});
  expect(none).toEqual([]);
  expect(solids?.weights).toEqual([46 - 1.5, 8 - 0.25, 100]);
});

test("a spread that a brief writes holds its targets at the worst, by hand; a part that is left open is not off", () => {
  const made = balance({
    ingredients: [
      {name: "cream", composition: {water: 54, milkFat: 40, lactose: 6}, price: 4},
      {name: "water", composition: {water: 100}, price: 0},
    ],
    targets: {fat: {min: 8}},
    spread: {parts: {Cream: {milkFat: 1.5, lactose: undefined}}},
    margin: true,
  });
  // Cream of 38.5 % at the worst: 8 / 0.385 g of it in 100 g.
  within(made.status === "optimal" ? made.amounts[0]?.percent : NaN, 8 / 0.385, 1e-9, "cream, %");
});

test("a limit of one exact value stays as it is", () => {
  expect(narrowed("fat", {min: 9, max: 9})).toEqual([{name: "fat", weights: [40, 4, 0], lower: 9, upper: 9}]);
});
