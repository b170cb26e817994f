import {expect, test} from "vitest";
import {alikeOf} from "../../notebooks/kit/replace/alike.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";

const pantry = includedPantry();
const lines = ["whole milk", "cream 36 %", "sucrose"].map((name) => ({
  ingredient: findIngredient(pantry, name),
  grams: 100,
}));

test("no cream at all is no cream of another fat either, and nothing that is not cream", () => {
  const alike = alikeOf(["cream 36 %"], {lines}, pantry.ingredients);
  expect(alike).toContain("cream 40 %");
  expect(alike).not.toContain("cream 36 %");
  // Cream by another name, sweet or sour; mascarpone and cream cheese are cheeses (common practice, no source).
  expect(alike).toEqual(expect.arrayContaining(["clotted cream", "soured cream", "lactose-free cream 35 %"]));
  expect(alike.filter((name) => !name.includes("cream")).toSorted()).toEqual([
    "crème fraîche",
    "half-and-half",
    "half-fat crème fraîche",
  ]);
  for (const other of ["whole milk", "mascarpone", "cream cheese", "unsalted butter"])
    expect(alike).not.toContain(other);
});

test("butter is ghee too, and no buttermilk; yoghurt is yoghurt of any milk", () => {
  const of = (name: string) =>
    alikeOf([name], {lines: [{ingredient: findIngredient(pantry, name), grams: 50}]}, pantry.ingredients);
  expect(of("unsalted butter")).toEqual(expect.arrayContaining(["salted butter", "ghee 98 %", "butter oil"]));
  expect(of("unsalted butter")).not.toContain("buttermilk");
  expect(of("whole-milk yoghurt")).toEqual(
    expect.arrayContaining(["greek-style yoghurt 10 %", "goat's milk yoghurt"]),
  );
});

test("what the recipe has of it is out too", () => {
  const two = [...lines, {ingredient: findIngredient(pantry, "cream 40 %"), grams: 50}];
  expect(alikeOf(["cream 36 %"], {lines: two}, [])).toEqual(["cream 40 %"]);
  expect(alikeOf(["sucrose"], {lines}, pantry.ingredients)).toEqual([]);
});
