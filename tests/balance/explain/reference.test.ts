import {describe, expect, test} from "vitest";
import {balance} from "../../../lib/balance/balance.ts";
import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import {pricesOf} from "../../../lib/balance/explain/prices.ts";
import type {LimitReference} from "../../../lib/balance/mix/answer.ts";
import {realPantry} from "../../support/pantry.ts";

const milk = {name: "milk", composition: {water: 87.5, milkFat: 3.5, msnf: 9}, price: 1};
const cream = {name: "cream", composition: {water: 54.6, milkFat: 40, msnf: 5.4}, price: 4};
const sugar = {name: "sugar", composition: {sucrose: 100}, price: 1.2};

/** What the limits are on that a mix meets exactly, or that conflict. */
function limitsOf(brief: BriefInput): LimitReference[] {
  const answer = balance(brief, {pantry: realPantry});
  if (answer.status === "optimal") return answer.binding.map(({on}) => on);
  if (answer.status !== "infeasible") throw new Error(answer.status);
  return answer.conflict.targets.map(({on}) => on);
}

describe("a limit says what it is on, for code", () => {
  test("a quantity, by its key", () => {
    expect(limitsOf({ingredients: [milk, cream, sugar], targets: {fat: {min: 8}}})).toContainEqual({
      kind: "measure",
      key: "fat",
      subject: {kind: "quantity", quantity: "fat"},
    });
  });

  test("a measure at a temperature, with the temperature as a number", () => {
    const brief = {
      ingredients: [milk, sugar],
      targets: {ice: [{at: -14, max: 50}]},
      minimise: "sugars",
    } as const;
    expect(limitsOf(brief)).toContainEqual({kind: "measure", key: "ice", subject: {kind: "ice", at: -14}});
  });

  test("an ingredient by name and place, though two limits share the name of a quantity", () => {
    const protein = {...cream, name: "fat", max: 100};
    const on = limitsOf({ingredients: [milk, protein, sugar], targets: {fat: {min: 20}}});
    expect(on).toContainEqual({kind: "ingredient", ingredient: "fat", index: 1});
    expect(on).toContainEqual({kind: "measure", key: "fat", subject: {kind: "quantity", quantity: "fat"}});
  });

  test("a dose by its key, as a brief sets it", () => {
    const salt = {name: "salt", price: 1};
    const on = limitsOf({
      ingredients: [milk, sugar, salt],
      targets: {sugars: {max: 9}, scoopTemperature: {max: -20}},
    });
    expect(on).toContainEqual({kind: "dose", dose: "salt"});
  });

  test.each<[string, BriefInput, LimitReference]>([
    [
      "the number of ingredients",
      {ingredients: [milk, cream, sugar], targets: {fat: {min: 8}, sugars: {min: 15}}, maxIngredients: 1},
      {kind: "rule", rule: "maxIngredients"},
    ],
    [
      "a least amount if used",
      {ingredients: [{...milk, minIfUsed: 980}, sugar], targets: {sucrose: {equal: 10}}},
      {kind: "rule", rule: "minIfUsed", ingredient: "milk"},
    ],
    [
      "an ingredient only beside another",
      {
        ingredients: [milk, {...sugar, onlyWith: {ingredient: "cream", min: 500}}, {...cream, max: 400}],
        targets: {sucrose: {equal: 10}},
      },
      {kind: "rule", rule: "onlyWith", ingredient: "sugar", other: "cream"},
    ],
    [
      "an ingredient in proportion to another",
      {ingredients: [milk, {...sugar, ratio: {to: "milk", grams: 0.1}}], targets: {sucrose: {min: 50}}},
      {kind: "rule", rule: "ratio", ingredient: "sugar", other: "milk"},
    ],
  ])("a rule by its key: %s", (_, brief, on) => {
    expect(limitsOf(brief)).toContainEqual(on);
  });

  test("in prices and least changes too, and the compiler narrows it", () => {
    const [limit] = pricesOf({ingredients: [{...milk, max: 500}, cream], targets: {}}).limits;
    expect(limit!.on.kind === "ingredient" && limit!.on.ingredient).toBe("milk");
    const answer = balance({ingredients: [milk], targets: {fat: {min: 10}}});
    const [change] = answer.status === "infeasible" ? answer.conflict.relaxations : [];
    expect(change!.on.kind === "measure" && change!.on.key).toBe("fat");
  });
});
