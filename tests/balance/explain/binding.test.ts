import {describe, expect, test} from "vitest";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {solveBrief} from "../../../lib/balance/mix/solve-brief.ts";
import {pricesOf} from "../../../lib/balance/explain/prices.ts";
import type {Brief, Target} from "../../../lib/balance/brief/brief.ts";
import {subjectName} from "../../../lib/balance/measure/of-subject.ts";
import {realPantry} from "../../support/pantry.ts";
import {randomBrief} from "../../support/random-brief.ts";
import {within} from "../../support/within.ts";

function costOf(brief: Brief): number | undefined {
  const mix = solveBrief(brief);
  return mix.status === "optimal" ? (mix.cost! / brief.batch) * 1000 : undefined;
}

/** The brief with one limit of one target moved. */
function nudged(brief: Brief, name: string, bound: "min" | "max" | "equal", by: number): Brief {
  return {
    ...brief,
    targets: brief.targets.map((target): Target => {
      if (subjectName(target.subject) !== name) return target;
      return {
        ...target,
        ...(bound !== "max" && target.min !== undefined && {min: target.min + by}),
        ...(bound !== "min" && target.max !== undefined && {max: target.max + by}),
      };
    }),
  };
}

const briefs = Array.from({length: 150}, (_, seed) => readBrief(randomBrief(seed + 5000), realPantry)).filter(
  ({aim}) => aim?.subject.kind === "cost",
);

describe("the price of a binding limit", () => {
  test("is what moving the limit changes, by differences of the cost", () => {
    let checked = 0;
    for (const brief of briefs) {
      const mix = solveBrief(brief);
      if (mix.status !== "optimal" || mix.degenerate) continue;
      for (const {target, bound, price} of mix.binding) {
        if (!brief.targets.some(({subject}) => subjectName(subject) === target)) continue;
        const step = 1e-5;
        const [less, more] = [
          costOf(nudged(brief, target, bound, -step)),
          costOf(nudged(brief, target, bound, step)),
        ];
        if (less === undefined || more === undefined) continue;
        within(
          price,
          (more - less) / (2 * step),
          2e-4 * Math.max(1, Math.abs(price!)),
          `${brief.batch} ${target} ${bound}`,
        );
        checked++;
      }
    }
    expect(checked).toBeGreaterThan(100);
  });

  test("holds between the limits that are given for it, and an unused ingredient enters below its price", () => {
    let checked = 0;
    for (const brief of briefs) {
      const mix = solveBrief(brief);
      if (mix.status !== "optimal" || mix.degenerate) continue;
      const {limits, ingredients} = pricesOf(brief);
      for (const {target, bound, limit, price, from, to} of limits) {
        if (from === undefined || to === undefined || bound === "equal" || !Number.isFinite(from)) continue;
        if (!brief.targets.some(({subject}) => subjectName(subject) === target) || from < 0) continue;
        const end = costOf(nudged(brief, target, bound, 0.98 * (from - limit)));
        within(
          end,
          (mix.cost! / brief.batch) * 1000 + price! * 0.98 * (from - limit),
          1e-6 * Math.max(1, mix.cost!),
          `${target} down to ${from}`,
        );
        checked++;
      }
      for (const {ingredient, used, price, from} of ingredients) {
        if (used || from <= 0.01 || from > price) continue;
        const at = (money: number) =>
          solveBrief({
            ...brief,
            ingredients: brief.ingredients.map((choice) =>
              choice.ingredient.name === ingredient
                ? {...choice, ingredient: {...choice.ingredient, price: money}}
                : choice,
            ),
          });
        const amount = (money: number) => {
          const answer = at(money);
          return answer.status === "optimal"
            ? answer.amounts.find((a) => a.ingredient === ingredient)!.percent
            : NaN;
        };
        within(amount(from * 1.001), 0, 1e-9, `${ingredient} just above its entering price`);
        expect(amount(from * 0.999)).toBeGreaterThan(0);
        checked++;
      }
    }
    expect(checked).toBeGreaterThan(100);
  });
});

test("an ingredient without a maximum is never said to be at it", () => {
  for (const brief of briefs) {
    const mix = solveBrief(brief);
    if (mix.status !== "optimal") continue;
    for (const {limit} of mix.binding) expect(Number.isFinite(limit)).toBe(true);
  }
});

describe("the range of a limit on ice", () => {
  const range = (...more: string[]) => {
    const brief = {
      ingredients: [
        {name: "water", price: 0},
        {name: "sucrose", price: 1},
        ...more.map((name) => ({name, price: 9})),
      ],
      targets: {ice: [{at: -14, max: 50}]},
    };
    const {limits} = pricesOf(readBrief(brief, realPantry));
    return limits.find(({on}) => on.kind === "measure" && on.key === "ice")!;
  };

  test("reaches below it where nothing crystallises: less ice is more sugar, down to none", () => {
    const {from, to} = range();
    expect(from).toBeLessThan(10);
    // Water alone is 100 g of ice.
    within(to, 100, 1e-6, "ice of water, g per 100 g");
  });

  test("stops at it where a sweetener may crystallise: below, another row may hold", () => {
    expect(range("erythritol").from).toBe(50);
  });
});

describe("the range of a limit on what fat takes part in", () => {
  const NAMES = {hardPhase: "hard phase", firmness: "firmness"};
  const base = {
    ingredients: [
      {name: "water", price: 0},
      {name: "coconut oil", price: 5},
      {name: "spirit 40 % vol", price: 9},
    ],
    batch: 1000,
    doses: "none",
  } as const;

  test.each([
    ["hardPhase", 40],
    ["firmness", 5],
  ] as const)(
    "%s: the price holds down to where it ends, where the spirit has thawed all ice",
    (key, max) => {
      const brief = readBrief({...base, targets: {fat: {equal: 20}, [key]: [{at: -14, max}]}}, realPantry);
      const {limits} = pricesOf(brief);
      const {from, price, limit} = limits.find(({on}) => on.kind === "measure" && on.key === key)!;
      const cost = costOf(brief)!;
      expect(price).toBeLessThan(0);
      for (const part of [0.5, 0.99]) {
        const by = part * (from! - limit);
        within(
          costOf(nudged(brief, `${NAMES[key]} at -14 °C`, "max", by)),
          cost + price! * by,
          1e-6 * cost,
          `${from}`,
        );
      }
    },
  );
});
