import {describe, expect, test} from "vitest";
import {balance} from "../lib/balance/balance.ts";
import type {ConflictingLimit, Relaxation} from "../lib/balance/answer.ts";
import type {BriefInput} from "../lib/balance/brief-schema.ts";
import type {Brief, Choice, Target} from "../lib/balance/brief.ts";
import {explainConflict} from "../lib/balance/conflict.ts";
import {targetPath} from "../lib/balance/limit-path.ts";
import {readBrief} from "../lib/balance/read-brief.ts";
import {solveBrief} from "../lib/balance/solve-brief.ts";
import {subjectName} from "../lib/balance/subject.ts";
import {DOSES} from "../lib/pantry/doses.ts";
import {pantryOf} from "../lib/pantry/pantry.ts";
import {realPantry} from "./support/pantry.ts";
import {randomBrief} from "./support/random-brief.ts";
import {within} from "./support/within.ts";

const nothing = pantryOf([]);

/** Why a brief cannot be met, with the whole shelf to add from. */
function explained(brief: BriefInput) {
  const answer = balance(brief, {pantry: realPantry});
  if (answer.status !== "infeasible") throw new Error(answer.status);
  return answer;
}

/** A brief with only those of its limits that a list names. */
function onlyThese(brief: Brief, limits: readonly ConflictingLimit[]): Brief {
  const has = (path: string, side: "min" | "max") =>
    limits.some((limit) => limit.path === path && (limit.bound === side || limit.bound === "equal"));
  return {
    ...brief,
    doses: (brief.doses ?? []).filter(({index}) => has(`doses.${DOSES[index]!.key}`, "max")),
    targets: brief.targets.flatMap((target): Target[] => {
      const {subject, min, max} = target;
      const path = targetPath(brief, target);
      const kept = {
        ...(min !== undefined && has(path, "min") && {min}),
        ...(max !== undefined && has(path, "max") && {max}),
      };
      return Object.keys(kept).length ? [{subject, ...kept}] : [];
    }),
    ingredients: brief.ingredients.map((choice, j): Choice => ({
      ...choice,
      min: has(`ingredients[${j}]`, "min") ? choice.min : 0,
      max: has(`ingredients[${j}]`, "max") ? choice.max : Infinity,
    })),
  };
}

/** A brief with its limits moved as told, and a hair more for rounding. */
function moved(brief: Brief, relaxations: readonly Relaxation[]): Brief {
  const move = (name: string, limits: {min?: number; max?: number}) => {
    const moves = relaxations.filter(({target}) => target === name);
    const result = {...limits};
    for (const {bound, from, to} of moves) {
      if (result.min === from && bound !== "max" && to < from)
        result.min = to - 1e-6 * Math.max(1, Math.abs(to));
      if (result.max === from && bound !== "min" && to > from)
        result.max = to + 1e-6 * Math.max(1, Math.abs(to));
    }
    return result;
  };
  return {
    ...brief,
    targets: brief.targets
      .map((target) => ({...target, ...move(subjectName(target.subject), target)}))
      // Every mix freezes below 0 °C: a freezing point that had to give way that far limits nothing.
      .filter(({subject, max}) => subject.kind !== "freezingPoint" || max === undefined || max < -0.01),
    ingredients: brief.ingredients.map((choice) => ({...choice, ...move(choice.ingredient.name, choice)})),
  };
}

describe("random impossible briefs", () => {
  const impossible = Array.from({length: 400}, (_, seed) =>
    readBrief(randomBrief(seed + 1000), realPantry),
  ).filter((brief) => solveBrief(brief).status === "infeasible");

  test("there are enough of them to mean something", () => {
    expect(impossible.length).toBeGreaterThan(40);
  });

  test("the limits named conflict by themselves, and no longer without any one of them", () => {
    for (const brief of impossible) {
      const {targets} = explainConflict(brief, nothing);
      expect(targets.length).toBeGreaterThan(0);
      expect(solveBrief(onlyThese(brief, targets)).status).toBe("infeasible");
      for (const left of targets) {
        const rest = targets.filter((limit) => limit !== left);
        expect(solveBrief(onlyThese(brief, rest)).status, `${brief.name} without ${left.target}`).toBe(
          "optimal",
        );
      }
    }
  });

  test("the change proposed is enough", () => {
    for (const brief of impossible) {
      const {relaxations} = explainConflict(brief, nothing);
      expect(relaxations.length).toBeGreaterThan(0);
      expect(solveBrief(moved(brief, relaxations)).status).toBe("optimal");
    }
  });
});

test("a limit that nothing bears on does not drown the others: 50 to 40 % sugar is less, by proportion, than 40 to 50 % solids", () => {
  const targets = {msnf: {equal: 0}, totalSolids: {max: 40}, sugars: {min: 50}};
  const answer = balance({ingredients: ["sucrose", "water"], targets}, {pantry: realPantry});
  if (answer.status !== "infeasible") throw new Error(answer.status);
  expect(answer.conflict.relaxations).toEqual([
    {
      of: "target",
      path: "targets.sugars",
      target: "sugars",
      bound: "min",
      from: 50,
      to: expect.closeTo(40, 6),
    },
  ]);
});

describe("impossible briefs a cook would write", () => {
  const milk = {name: "milk", composition: {water: 87.5, milkFat: 3.5, msnf: 9}, price: 1};
  const cream = {name: "cream", composition: {water: 54.6, milkFat: 40, msnf: 5.4}, price: 4};
  const sugar = {name: "sugar", composition: {sucrose: 100}, price: 1.2};

  test("more fat than the cream has: how far it reaches, and what would help", () => {
    const answer = balance(
      {ingredients: [milk, cream, sugar], targets: {fat: {min: 45}}},
      {pantry: realPantry},
    );
    if (answer.status !== "infeasible") throw new Error(answer.status);
    expect(answer.conflict.targets).toEqual([
      {of: "target", path: "targets.fat", target: "fat", bound: "min", limit: 45},
    ]);
    within(answer.conflict.reach?.best, 40, 1e-6, "most fat");
    expect(answer.conflict.relaxations).toHaveLength(1);
    within(answer.conflict.relaxations[0]!.to, 40, 1e-6, "fat that can be had");
    expect(answer.conflict.openers).not.toHaveLength(0);
  });

  test("nothing is named that would have to be overdosed", () => {
    // Soft without sugars: half a kilogram of salt or citric acid would do it.
    const brief = {
      batch: 3000,
      ingredients: [milk, cream, sugar],
      targets: {sugars: {max: 12}, fat: {min: 8, max: 12}, scoopTemperature: {max: -20}},
    };
    const {conflict} = explained(brief);
    expect(conflict.openers).not.toContain("salt");
    expect(conflict.openers).not.toContain("citric acid");
    // Without the dose, salt alone makes the brief possible; with it, the conflict names the dose.
    const salted = {...brief, ingredients: [...brief.ingredients, {name: "salt", price: 1}]};
    expect(balance({...salted, doses: "none"}, {pantry: realPantry}).status).toBe("optimal");
    expect(explained(salted).conflict.targets).toContainEqual({
      of: "dose",
      path: "doses.salt",
      target: "salt",
      bound: "max",
      limit: 0.5,
    });
  });

  test("stock limits what a larger max allows, and is named as the reason", () => {
    const brief = {
      batch: 1000,
      ingredients: [{...milk, max: 2000}, {...cream, stock: 100, max: 900}, sugar],
      targets: {fat: {min: 10}},
    };
    const {conflict} = explained(brief);
    expect(conflict.targets).toContainEqual({
      of: "ingredient",
      path: "ingredients[1]",
      target: "cream",
      bound: "max",
      limit: 100,
      inStock: true,
    });
    // 100 g of cream and 900 of milk: 40 + 31.5 g of fat.
    within(conflict.relaxations[0]?.to, 7.15, 1e-6, "fat that can be had");
    const enough = balance({...brief, targets: {fat: {min: 7.15}}});
    if (enough.status !== "optimal") throw new Error(enough.status);
    expect(enough.binding).toContainEqual(
      expect.objectContaining({target: "cream", limit: 100, inStock: true}),
    );
  });

  test("stock that does not fill the batch", () => {
    const answer = balance({
      batch: 1000,
      ingredients: [
        {...milk, max: 300},
        {...sugar, max: 100},
      ],
    });
    if (answer.status !== "infeasible") throw new Error(answer.status);
    expect(answer.conflict.targets.map(({target}) => target)).toEqual(["milk", "sugar"]);
    within(
      answer.conflict.relaxations.reduce((total, {from, to}) => total + to - from, 0),
      600,
      1e-6,
      "g missing",
    );
  });

  test("two wishes for the same solids", () => {
    const answer = balance({
      ingredients: [milk, cream, sugar],
      targets: {sugars: {min: 30}, totalSolids: {max: 25}},
    });
    if (answer.status !== "infeasible") throw new Error(answer.status);
    expect(new Set(answer.conflict.targets.map(({target}) => target))).toEqual(
      new Set(["sugars", "totalSolids"]),
    );
  });
});
