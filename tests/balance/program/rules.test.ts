import {expect, test} from "vitest";
import {formulate} from "../../../lib/balance/program/formulate.ts";
import {withoutWholeValues} from "../../../lib/balance/program/without-whole-values.ts";
import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {pantryOf} from "../../../lib/pantry/pantry.ts";

const water = {name: "water", composition: {water: 100}};
const cream = {name: "cream", composition: {water: 60, milkFat: 40}};
const sugar = {name: "sugar", composition: {sucrose: 100}};
const read = (ingredients: BriefInput["ingredients"], more: Partial<BriefInput> = {}) =>
  readBrief({batch: 1000, ingredients, targets: {fat: {min: 8}}, doses: "none", ...more}, pantryOf([]));

test("a brief without rules is one row for the batch and one for its target", () => {
  expect(formulate(read([water, cream, sugar])).origins.map(({kind}) => kind)).toEqual(["batch", "target"]);
});

test("a rule is told as the cook gave it: in per cent where it was in per cent", () => {
  const rules = (amount: number | string) =>
    formulate(
      read([{...cream, minIfUsed: amount}, {...sugar, onlyWith: {ingredient: "cream", min: amount}}, water]),
    ).origins.filter((origin) => origin.kind === "rule");
  const paths = ["ingredients[0].minIfUsed", "ingredients[1].onlyWith"];
  expect(rules("5 %")).toMatchObject(paths.map((path) => ({path, limit: 50, percent: 5})));
  expect(rules(50)).toMatchObject(paths.map((path) => ({path, limit: 50})));
  for (const rule of rules(50)) expect(rule).not.toHaveProperty("percent");
});

test("rules that need whole numbers are left out by name, and no others", () => {
  const {brief, leftOut} = withoutWholeValues(
    read(
      [
        {...cream, step: 5},
        {...sugar, minIfUsed: 30, onlyWith: {ingredient: "cream", min: 100}},
        {...water, ratio: {to: "sugar", grams: 2}},
      ],
      {maxIngredients: 2},
    ),
  );
  expect(leftOut).toEqual([
    "cream in steps of 5 g",
    "sugar, if used, at least 30 g",
    "sugar only with cream",
    "at most 2 ingredients",
  ]);
  expect(formulate(brief).program.variables.some(({integer}) => integer)).toBe(false);
  expect(brief.ingredients[2]?.ratio).toEqual({index: 1, grams: 2});
  expect(withoutWholeValues(brief).leftOut).toEqual([]);
});
