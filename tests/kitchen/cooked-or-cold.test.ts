import {describe, expect, test} from "vitest";
import {baseProcess} from "../../lib/kitchen/cooking/base-process.ts";
import {mixPairs} from "../../lib/kitchen/cooking/mix-pairs.ts";
import {followProcess} from "../../lib/kitchen/cooking/follow-process.ts";
import {baseComponent, makeProduct} from "../../lib/kitchen/product/product.ts";
import {cautionsFor} from "../../lib/kitchen/safety/cautions.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import type {RecipeLine} from "../../lib/pantry/recipe.ts";
import {realPantry} from "../support/pantry.ts";

/** Lines of the shelf. */
const shelfLines = (grams: Readonly<Record<string, number>>): RecipeLine[] =>
  Object.entries(grams).map(([name, g]) => ({ingredient: findIngredient(realPantry, name, name), grams: g}));

/** Steps of a base in words, and its cautions. */
function madeOf(
  grams: Readonly<Record<string, number>>,
  making: Partial<Parameters<typeof baseProcess>[1]> = {},
) {
  const recipe = {name: "base", lines: shelfLines(grams)};
  const report = followProcess(recipe, baseProcess(recipe.lines, {way: "pot", ...making}));
  const cautions = cautionsFor(makeProduct("x", [baseComponent(recipe)]), report);
  return {
    report,
    cautions,
    steps: report.steps.map(({text}) => text),
    says: (topic: string) => cautions.find((one) => one.topic === topic)?.text,
  };
}

// Common practice, no source: it is too sour, hard or starchy to be eaten raw; raw elderberries are unwholesome (from memory).
describe("fruit that nobody eats raw", () => {
  const creamy = {rhubarb: 400, sucrose: 200, "cream 36 %": 300, "cream cheese": 100};

  test("is cooked by itself before a base of milk or egg, and stirred in cold", () => {
    const {steps, report, says} = madeOf(creamy);
    expect(steps).toEqual([
      "Heat rhubarb to 95 °C, hold 10 min",
      "Cool the cooked fruit to 4 °C",
      "Heat cream 36 %, cream cheese and sucrose to 82 °C, hold 30 s",
      "Cool mix to 4 °C",
      "Stir the cooked fruit into the cold mix",
      "Cool whole mix to 4 °C",
    ]);
    expect(report.untreated).toEqual([]);
    expect(says("unheated")).toBeUndefined();
    expect(madeOf(creamy, {way: "cold"}).steps[0]).toBe("Heat rhubarb to 95 °C, hold 10 min");
    expect(madeOf({...creamy, quince: 100}).steps[0]).toBe("Heat rhubarb and quince to 95 °C, hold 40 min");
  });

  test("is cooked with the rest of a sorbet", () => {
    expect(madeOf({quince: 400, water: 300, sucrose: 200, "lemon juice": 20}).steps).toEqual([
      "Heat quince, water and sucrose to 95 °C, hold 40 min",
      "Cool mix to 4 °C",
      "Stir lemon juice into the cold mix",
      "Cool whole mix to 4 °C",
    ]);
  });

  test("is told by its name, unless that says that it is cooked or dried", () => {
    const first = (name: string) => {
      const own: RecipeLine = {
        ingredient: {name, group: "fruit", composition: {water: 90, fructose: 10}},
        grams: 200,
      };
      const lines = [...shelfLines({"whole milk": 500}), own];
      return followProcess({name: "base", lines}, baseProcess(lines, {way: "pot"})).steps[0]!.text;
    };
    for (const name of [
      "rhubarb",
      "quinces",
      "gooseberries",
      "cranberry",
      "elderberries",
      "plantain",
      "sloes",
    ])
      expect(first(name)).toMatch(new RegExp(`^Heat ${name} to 95 °C`));
    for (const name of [
      "stewed rhubarb",
      "quince paste",
      "dried cranberries",
      "dessert gooseberry",
      "strawberry",
    ])
      expect(first(name)).not.toContain("95 °C");
  });

  test("goes in as the cook says, with a word where that is raw", () => {
    const {steps, says} = madeOf(creamy, {late: ["rhubarb"]});
    expect(steps).toContain("Stir rhubarb into the cold mix");
    expect(says("unheated")).toBe("rhubarb: not fit to be eaten raw. Cook it first.");
    expect(madeOf(creamy, {heated: ["rhubarb"]}).steps[0]).toMatch(/^Heat rhubarb, .* to 82 °C/);
  });
});

// Common practice, no source: it curdles, and what lives in it dies.
describe("what is only stirred together", () => {
  test("sugar is not heated by itself; what swells or melts only when hot is heated with the fruit, spirits apart", () => {
    const {steps} = madeOf({strawberry: 700, sucrose: 180, "lemon juice": 30});
    expect(steps).toEqual(["Pour strawberry and lemon juice onto sucrose", "Cool mix to 4 °C"]);
    const set = madeOf({strawberry: 700, sucrose: 180, gelatine: 6, "rum 40 % vol": 20});
    expect(set.steps[0]).toMatch(/^Heat strawberry, sucrose and gelatine to 82 °C/);
    expect(set.steps).toContainEqual(expect.stringMatching(/^Stir spirit .*into the cold mix$/));
  });

  test("what is pressed, dried or brewed is not to be peeled", () => {
    const {cautions} = madeOf({
      "whole milk": 500,
      sucrose: 100,
      strawberry: 100,
      "lemon juice": 30,
      raisins: 50,
    });
    const unheated = cautions.filter(({topic}) => topic === "unheated").map(({text}) => text);
    expect(unheated).toEqual([
      "strawberry: not heated. Take what is fit to be eaten raw, wash and peel it well, and keep it cold.",
      "lemon juice: not heated. Press it from washed fruit, or take juice that was pasteurised, and keep it cold.",
      "raisins: not heated with the mix. Take what is fit to be eaten as it is, and keep it clean.",
    ]);
  });
});

describe("fruit that is cooked first makes nothing else safe", () => {
  const creamy = {"whole milk": 500, "cream 36 %": 250, "egg yolk": 85, sucrose: 130, rhubarb: 300};

  test("neither the pairs of the mix nor the caution on milk are the fruit's", () => {
    const {report, says} = madeOf(creamy, {way: "pot", to: 65, hold: 0});
    expect(report.steps[0]!.pairs.length).toBeGreaterThan(0);
    expect(mixPairs(report)).toEqual([]);
    expect(says("milk")).toBe(
      "whole milk, cream 36 %: use only what was pasteurised when bought, or heat the mix to a published pair.",
    );
    const hot = madeOf(creamy, {way: "pot", to: 82, hold: 30}).report;
    expect(mixPairs(hot)).toEqual(hot.steps.find(({step}) => step.into === "mix")!.pairs);
  });
});

describe("sour milk", () => {
  test("is not told to be heated with the mix where no steps are known", () => {
    const lines = shelfLines({"whole milk": 500, "greek yoghurt": 200, sucrose: 120});
    const cautions = cautionsFor(makeProduct("x", [baseComponent({name: "base", lines})]));
    expect(cautions.filter(({topic}) => topic === "milk").map(({text}) => text)).toEqual([
      "whole milk: use only what was pasteurised when bought, or heat the mix to a published pair.",
      "greek yoghurt: goes in cold, so buy what was pasteurised.",
    ]);
  });

  test("double cream is a liquid to heat: buttermilk goes in cold beside it, and gelatine is heated", () => {
    const {steps} = madeOf({"greek yoghurt": 500, "cream 48 %": 200, sucrose: 140, gelatine: 6});
    expect(steps[0]).toMatch(/^Heat cream 48 %, sucrose and gelatine to 82 °C/);
    expect(steps).toContain("Stir greek yoghurt into the cold mix");
  });

  const tangy = {"whole milk": 300, "cream 48 %": 200, "greek yoghurt": 300, sucrose: 120};

  test("goes in cold, with a word that this heat does not pasteurise it", () => {
    const {steps, report, says} = madeOf(tangy);
    expect(steps).toEqual([
      "Heat whole milk, cream 48 % and sucrose to 82 °C, hold 30 s",
      "Cool mix to 4 °C",
      "Stir greek yoghurt into the cold mix",
      "Cool whole mix to 4 °C",
    ]);
    expect(report.steps[2]!.notes).toContain(
      "What goes in cold is not pasteurised by this heat: it must have been when bought.",
    );
    expect(says("milk")).toBe(
      "greek yoghurt: what goes in cold is not pasteurised by this heat. Use only what was pasteurised when bought.",
    );
  });

  test("goes in cold after milk that is only scalded, which pasteurises nothing", () => {
    const {steps, report, says} = madeOf({...tangy, "egg yolk": 60}, {way: "scald", scald: 90});
    expect(steps[0]).toBe("Heat whole milk and cream 48 % to 90 °C");
    expect(report.untreated).toContain("whole milk");
    expect(says("milk")).toContain("or heat the mix to a published pair");
  });

  test.each([
    "buttermilk",
    "kefir",
    "soured cream",
    "crème fraîche",
    "skyr",
    "quark",
    "labneh",
    "petit-suisse 10 %",
    "fresh goat's cheese",
  ])("such as %s", (name) => {
    const {ingredient} = shelfLines({[name]: 200})[0]!;
    expect(madeOf({"whole milk": 500, sucrose: 100, [name]: 200}).report.untreated).toEqual([
      ingredient.name,
    ]);
  });

  test.each(["cream cheese", "mascarpone", "ricotta", "buttermilk powder"])("%s is none", (name) => {
    expect(madeOf({"whole milk": 500, sucrose: 100, [name]: 100}).report.untreated).toEqual([]);
  });

  test("is heated where the cook says so, and where egg has nothing else to be heated in", () => {
    expect(madeOf(tangy, {heated: ["greek yoghurt"]}).report.untreated).toEqual([]);
    expect(madeOf({"greek yoghurt": 700, "egg yolk": 60, sucrose: 200}).report.untreated).toEqual([]);
  });

  test("with nothing to heat, all is stirred together cold", () => {
    const {steps, report} = madeOf({"greek yoghurt": 700, raspberry: 200, sucrose: 200});
    expect(report.heated).toBe(false);
    expect(steps).toEqual(["Pour greek yoghurt and raspberry onto sucrose", "Cool mix to 4 °C"]);
  });
});
