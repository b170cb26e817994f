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
  expect(alike.filter((name) => !name.includes("cream"))).toEqual([]);
  for (const other of ["whole milk", "mascarpone", "unsalted butter"]) expect(alike).not.toContain(other);
});

test("what the recipe has of it is out too", () => {
  const two = [...lines, {ingredient: findIngredient(pantry, "cream 40 %"), grams: 50}];
  expect(alikeOf(["cream 36 %"], {lines: two}, [])).toEqual(["cream 40 %"]);
  expect(alikeOf(["sucrose"], {lines}, pantry.ingredients)).toEqual([]);
});
