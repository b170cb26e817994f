import {describe, expect, test} from "vitest";
import {balance} from "../../../lib/balance/balance.ts";
import type {BriefInput, IngredientInput} from "../../../lib/balance/brief/brief-schema.ts";
import {pricesOf} from "../../../lib/balance/explain/prices.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {nearestNames} from "../../../lib/core/nearest.ts";
import {answerCsv} from "../../../lib/io/document/answer-out.ts";
import {readIngredient} from "../../../lib/io/json/ingredient-json.ts";
import {textReport} from "../../../lib/io/report/report.ts";
import {pricesText} from "../../../lib/io/report/further-sections.ts";
import {pantryOf} from "../../../lib/pantry/pantry.ts";
import {within} from "../../support/within.ts";

const nothing = pantryOf([]);
const milk = {name: "milk", composition: {water: 87.5, milkFat: 3.5, msnf: 9}, price: 1};
const cream = {name: "cream", composition: {water: 54.6, milkFat: 40, msnf: 5.4}, price: 4};
const sucrose = {name: "sucrose", composition: {sucrose: 100}, price: 0.5};
const syrup = {name: "syrup", composition: {water: 60, sucrose: 40}, price: 3};

function balanced(brief: BriefInput) {
  const answer = balance(brief);
  if (answer.status !== "optimal") throw new Error(answer.status);
  return answer;
}

describe("an ingredient and a target of one name", () => {
  // 1000 g with 8 % sucrose: 60 g of it as such, the other 20 g in 50 g of syrup.
  const brief: BriefInput = {
    ingredients: [milk, {...sucrose, max: 60}, syrup],
    targets: {sucrose: {min: 8}},
  };

  test("are two limits, each with its own price", () => {
    const {binding} = balanced(brief);
    const of = (kind: string) => binding.find((limit) => limit.of === kind);
    expect(of("target")).toMatchObject({path: "targets.sucrose", target: "sucrose", bound: "min", limit: 8});
    expect(of("ingredient")).toMatchObject({
      path: "ingredients[1]",
      target: "sucrose",
      bound: "max",
      limit: 60,
    });
    // One point more is 10 g of sugar in 25 g of syrup in place of milk: (3 - 1) x 0.025 per kg.
    within(of("target")?.price, 0.05, 1e-9, "a point of sucrose");
    // One gram more of sucrose saves 2.5 g of syrup: 0.5 - 2.5 x 3 + 1.5 x 1 a kg.
    within(of("ingredient")?.price, -0.0055, 1e-9, "a gram of sucrose");
  });

  test("stand apart in every report, each in its own unit", () => {
    const answer = balanced(brief);
    const checked = readBrief(brief, nothing);
    const text = textReport(answer, checked);
    expect(text).toMatch(/sucrose at least 8 +one more: \+0\.0500 per kg/);
    expect(text).toMatch(/sucrose at most 60 g +100 g more: −0\.5500 per kg/);
    expect(
      pricesOf(checked)
        .limits.map(({of}) => of)
        .sort(),
    ).toEqual(["ingredient", "target"]);
    expect(pricesText(pricesOf(checked))).toMatch(/sucrose at most 60 g +−0\.5500/);
    expect(answerCsv(answer)).toContain("binding,sucrose max,60,g");
    expect(answerCsv(answer)).toContain("binding,sucrose min,8,g per 100 g\r\n");
  });
});

describe("an amount in per cent of the batch", () => {
  const shares = (batch: number) =>
    balanced({
      batch,
      ingredients: [milk, {...cream, min: "20 %"}, {...sucrose, min: "10.5%", max: "10.5 %"}],
    });

  test("follows the batch, and is told in per cent", () => {
    for (const batch of [1000, 2500, 10_000]) {
      const {amounts, binding} = shares(batch);
      within(amounts[1]?.percent, 20, 1e-9, "cream");
      within(amounts[2]?.percent, 10.5, 1e-9, "sugar");
      expect(binding).toContainEqual(
        expect.objectContaining({path: "ingredients[1]", bound: "min", limit: batch / 5, percent: 20}),
      );
    }
    const brief = readBrief({ingredients: [milk, {...cream, min: "20 %"}]}, nothing);
    expect(brief.ingredients[1]).toMatchObject({min: 200, percents: {min: 20}});
    expect(textReport(balanced({ingredients: [milk, {...cream, min: "20 %"}]}), brief)).toContain(
      "cream at least 20 %",
    );
  });

  test("may be the least if used, and what another is used only with", () => {
    const brief = readBrief(
      {
        batch: 4000,
        ingredients: [
          {...milk, minIfUsed: "30 %"},
          {...cream, onlyWith: {ingredient: "sucrose", min: "5 %"}},
          sucrose,
        ],
      },
      nothing,
    );
    expect(brief.ingredients[0]).toMatchObject({minIfUsed: 1200});
    expect(brief.ingredients[1]?.onlyWith).toEqual({index: 2, min: 200});
  });

  test("grams stay grams", () => {
    expect(readBrief({batch: 500, ingredients: [{...milk, min: 20}]}, nothing).ingredients[0]).toEqual(
      expect.objectContaining({min: 20, max: Infinity}),
    );
  });

  test.each<[Partial<IngredientInput>, RegExp]>([
    [{min: "20%%"}, /ingredients\[0\]\.min: not understood \(got "20%%"\); give g .* such as "20 %"/],
    [{min: "20"}, /not understood \(got "20"\)/],
    [{min: "-3 %"}, /not understood \(got "-3 %"\)/],
    [{min: "120 %"}, /min: more than the whole batch \(got "120 %"\); give at most "100 %"/],
    [{min: "50 %", max: 300}, /min: above max \(got "50 %"\); give at most 300 g/],
    [{min: 500, max: "30 %"}, /min: above max \(got 500\); give at most "30 %", that is 300 g/],
    [{min: "50 %", stock: 100}, /min: more than is in stock \(got "50 %"\); give at most 100 g/],
  ])("%j is refused", (more, said) => {
    expect(() => readBrief({ingredients: [{...milk, ...more}, cream]}, nothing)).toThrow(said);
  });
});

describe("a limit on an amount among those that hold the mix", () => {
  const ingredientsIn = (brief: BriefInput) => balanced(brief).binding.filter(({of}) => of === "ingredient");

  test("is none for what is not used and need not be", () => {
    expect(ingredientsIn({ingredients: [milk, cream]})).toEqual([]);
  });

  test("is one value where both its ends are the same", () => {
    expect(ingredientsIn({ingredients: [milk, {...cream, min: 105, max: 105}]})).toMatchObject([
      {target: "cream", bound: "equal", limit: 105},
    ]);
  });

  test("of whole steps is in grams, and has no price", () => {
    const [most, ...others] = ingredientsIn({
      ingredients: [milk, {...cream, step: 50, max: 100}],
      maximise: "fat",
    });
    expect(most).toMatchObject({target: "cream", bound: "max", limit: 100});
    expect(most).not.toHaveProperty("price");
    expect(others).toEqual([]);
  });
});

test("no name is suggested twice", () => {
  expect(nearestNames("mx", ["max", "max", "min", "max"])).toEqual(["max"]);
});

test("a dextrose equivalent beside the composition is told where it belongs", () => {
  const loose = {name: "own syrup", composition: {water: 20, glucoseSyrupSolids: 80}, dextroseEquivalent: 42};
  const said = /dextroseEquivalent: beside the composition \(got 42\); write it inside: "composition": \{/;
  expect(() => readBrief({ingredients: ["milk", loose]}, nothing, "my.json")).toThrow(said);
  expect(() => readIngredient(loose)).toThrow(said);
});
