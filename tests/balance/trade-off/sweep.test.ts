import {describe, expect, test} from "vitest";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {sweep} from "../../../lib/balance/trade-off/sweep.ts";
import {demoPantry} from "../../support/pantry.ts";
import {within} from "../../support/within.ts";
import {COST, along, input, leastByHighs} from "../../support/trade-off.ts";

// Reference throughout: HiGHS (npm `highs`), an independent open-source solver, at tolerances of 1e-9.

describe("a sweep", () => {
  const values = Array.from({length: 41}, (_, k) => 5 + k / 10);

  test("of a limit: each value as HiGHS has it; cost rises and bends up; straight where nothing changes", () => {
    const points = sweep(input, "targets.fat.min", values, {pantry: demoPantry});
    const costs = points.map(({solution}) => (solution.status === "optimal" ? solution.cost! / 5 : NaN));
    for (const [k, value] of values.entries()) {
      const brief = readBrief({...input, targets: {...input.targets, fat: {min: value, max: 9}}}, demoPantry);
      const least = leastByHighs(brief, along(brief, [[COST, 1]]));
      within(costs[k], least, 1e-6, `cost at ${value}`);
    }
    const bends = costs.map((cost, k) => cost - 2 * costs[k - 1]! + costs[k - 2]!).slice(2);
    expect(costs.every((cost, k) => k === 0 || cost >= costs[k - 1]! - 1e-9)).toBe(true);
    expect(bends.every((bend) => bend >= -1e-9)).toBe(true);
    const straight = bends.filter((_, k) => !points[k + 2]!.changed && !points[k + 1]!.changed);
    expect(straight.length).toBeGreaterThan(10);
    expect(straight.every((bend) => Math.abs(bend) < 1e-9)).toBe(true);
    expect(points.filter(({changed}) => changed).length).toBeGreaterThan(0);
  });

  test("of a price: cost rises and bends down, the dearer the less of it is used", () => {
    const prices = Array.from({length: 21}, (_, k) => 0.5 + k / 5);
    const points = sweep(input, "ingredients[dried glucose syrup 38 DE].price", prices, {pantry: demoPantry});
    const mixes = points.map(({solution}) => {
      if (solution.status !== "optimal") throw new Error(solution.status);
      const grams = solution.amounts.find(
        ({ingredient}) => ingredient === "dried glucose syrup 38 DE",
      )!.grams;
      return {cost: solution.cost!, grams};
    });
    for (const [k, {cost, grams}] of mixes.entries()) {
      const before = mixes[k - 1];
      if (!before) continue;
      expect(cost).toBeGreaterThanOrEqual(before.cost);
      expect(grams).toBeLessThanOrEqual(before.grams + 1e-6);
      if (!points[k]!.changed) within(grams, before.grams, 1e-6, "syrup between changes");
    }
    expect(points.some(({changed}) => changed)).toBe(true);
  });

  test("says where the brief can no longer be met, and makes a limit that the brief does not have", () => {
    const points = sweep(input, "targets.scoopTemperature.max", [-10, -13, -15, -20], {pantry: demoPantry});
    expect(points.map(({solution}) => solution.status)).toEqual([
      "optimal",
      "optimal",
      "infeasible",
      "infeasible",
    ]);
    expect(points.map(({changed}) => changed)).toEqual([false, true, true, false]);
    const [point] = sweep(input, "targets.lactose.max", [4], {pantry: demoPantry});
    expect(point!.solution.status === "optimal" && point!.solution.shares.lactose! <= 4 + 1e-9).toBe(true);
  });
});
