import {describe, expect, test} from "vitest";
import {balance, InputError, readBrief} from "../../lib/index.ts";
import {realPantry} from "../support/pantry.ts";

/** The mistake that a brief meets. */
function mistakeIn(brief: unknown): InputError {
  try {
    readBrief(brief, realPantry);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error("no mistake found");
}

const milk = {name: "whole milk", price: 1};

describe("a mistake says where it is as data too", () => {
  test.each<[what: string, brief: unknown, path: readonly (string | number)[], code: string]>([
    ["a wrong type", {ingredients: [milk], batch: "5 kg"}, ["batch"], "wrong type"],
    ["nothing at all", {}, ["ingredients"], "missing"],
    ["an unknown key", {ingredients: [{...milk, prise: 2}]}, ["ingredients", 0, "prise"], "unknown key"],
    [
      "a number out of range",
      {ingredients: [{...milk, price: -1}]},
      ["ingredients", 0, "price"],
      "out of range",
    ],
    ["a name that no pantry has", {ingredients: ["mlik"]}, ["ingredients", 0], "unknown name"],
    [
      "limits the wrong way round",
      {ingredients: [milk], targets: {fat: {min: 9, max: 8}}},
      ["targets", "fat", "min"],
      "invalid",
    ],
    [
      "a limit at a temperature out of range",
      {ingredients: [milk], targets: {ice: [{at: -18, max: 400}]}},
      ["targets", "ice", 0, "max"],
      "out of range",
    ],
    [
      "a target whose name has full stops and brackets",
      {ingredients: [{...milk, properties: {"a.b[0]": 1}}], targets: {"a.b[0]": {min: 2, max: 1}}},
      ["targets", "a.b[0]", "min"],
      "invalid",
    ],
    [
      "a part that is missing behind a name with quotes and full stops",
      {ingredients: [{name: 'dr. "x": syrup', composition: {water: 20, glucoseSyrupSolids: 80}}]},
      ["ingredients", 0, "composition", "dextroseEquivalent"],
      "missing",
    ],
    ["an unknown aim", {ingredients: [milk], minimise: "costt"}, ["minimise"], "unknown name"],
    [
      "a rule that names nobody",
      {ingredients: [milk, {name: "sucrose", onlyWith: {ingredient: "salt", min: 1}}]},
      ["ingredients", 1, "onlyWith", "ingredient"],
      "unknown name",
    ],
  ])("%s", (_, brief, path, code) => {
    expect(mistakeIn(brief)).toMatchObject({path, code});
  });

  test("all mistakes of a brief at once, the first in the sentence", () => {
    const error = mistakeIn({
      ingredients: [{...milk, price: -1, prise: 1, stok: 2}],
      batch: "5 kg",
      targets: {fat: {min: "much"}},
    });
    expect(error.mistakes.map(({path}) => path.join("."))).toEqual([
      "batch",
      "ingredients.0.price",
      "ingredients.0.prise",
      "ingredients.0.stok",
      "targets.fat.min",
    ]);
    expect(error.mistakes[0]).toBe(error);
    expect(error.message).toMatch(/^brief\.batch: not a finite number .*\(and 4 more mistakes\)$/);
    expect(mistakeIn({}).message).not.toMatch(/and/);
    expect(mistakeIn({}).mistakes).toHaveLength(1);
  });

  test("no more than a hundred are told apart, and all are counted", () => {
    const error = mistakeIn({ingredients: Array.from({length: 500}, () => 5)});
    expect(error.mistakes).toHaveLength(100);
    expect(error.message).toMatch(/\(and 499 more mistakes\)$/);
  });
});

describe("a mistake can be sent on", () => {
  const error = mistakeIn({ingredients: [milk], batch: "5 kg"});
  const data = {
    name: "InputError",
    message: error.message,
    code: "wrong type",
    place: "brief.batch",
    path: ["batch"],
    problem: "not a finite number",
    value: "5 kg",
    advice: "give a finite number",
  };

  test("as JSON", () => {
    expect(JSON.parse(JSON.stringify(error))).toEqual(data);
    expect(JSON.parse(JSON.stringify(new InputError("x", "odd", () => 5, "mend it")))).toMatchObject({
      value: "a function",
    });
    expect(
      JSON.parse(JSON.stringify(mistakeIn({ingredients: [milk], batch: "5 kg", freezer: "cold"}))),
    ).toMatchObject({more: [{place: "brief.freezer", value: "cold"}]});
  });

  test("between workers, where its message and the data come through", () => {
    const clone = structuredClone(error);
    expect(clone).toBeInstanceOf(Error);
    expect(clone.message).toBe(error.message);
    expect(clone.cause).toEqual(data);
    expect(structuredClone(new InputError("x", "odd", () => 5, "mend it")).message).toBe(
      "x: odd (got a function); mend it",
    );
  });

  test("and is short, whatever came in", () => {
    const long = "x".repeat(10_000_000);
    for (const brief of [
      {ingredients: [{name: "x", composition: {[long]: 1}}]},
      {ingredients: [milk], [long]: 1},
      {ingredients: [milk], minimise: long},
      {ingredients: [milk], targets: {[long]: {min: 5}}},
      {ingredients: [milk], near: {[long]: 5}},
    ]) {
      const error = mistakeIn(brief);
      expect(error.place.length).toBeLessThanOrEqual(200);
      expect(error.message.length).toBeLessThan(3000);
      expect(JSON.stringify(error).length).toBeLessThan(6000);
    }
    expect(() => balance({ingredients: [long]}, {pantry: realPantry, place: long})).toThrow(InputError);
  });
});
