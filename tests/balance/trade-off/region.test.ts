import {describe, expect, test} from "vitest";
import {costMap} from "../../../lib/balance/trade-off/cost-map.ts";
import {feasibleRegion} from "../../../lib/balance/trade-off/feasible-region.ts";
import {formulate} from "../../../lib/balance/program/formulate.ts";
import {type Point} from "../../../lib/balance/trade-off/hull.ts";
import {mixOf} from "../../../lib/balance/mix/mix-report.ts";
import {valueOf} from "../../../lib/balance/measure/of-subject.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {tradeOff} from "../../../lib/balance/trade-off/trade-off.ts";
import {seededRandom} from "../../../lib/core/random.ts";
import {loadHighs, referenceOf} from "../../support/reference-lp.ts";
import {demoPantry, realPantry} from "../../support/pantry.ts";
import {within} from "../../support/within.ts";
import {COST, FAT, HARD, along, frontOf, input, leastByHighs, pear} from "../../support/trade-off.ts";

const highs = await loadHighs();

// Reference throughout: HiGHS (npm `highs`), an independent open-source solver, at tolerances of 1e-9.

describe("a feasible region", () => {
  const axes = {x: "fat", y: {hardPhase: {at: -18}}} as const;
  const region = feasibleRegion(pear, axes);
  if (region.status !== "region") throw new Error(region.reason);
  const {corners} = region;
  const outside = (polygon: readonly Point[], {x, y}: Point) =>
    Math.max(
      ...polygon.map((a, k) => {
        const b = polygon[(k + 1) % polygon.length]!;
        const length = Math.hypot(b.x - a.x, b.y - a.y);
        return ((b.y - a.y) * (x - a.x) - (b.x - a.x) * (y - a.y)) / length;
      }),
    );

  test("200 random directions: nothing reachable beyond, by HiGHS", () => {
    const next = seededRandom(2);
    for (let i = 0; i < 200; i++) {
      const angle = 2 * Math.PI * next();
      const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
      const reach = Math.max(...corners.map(({x, y}) => dx * x + dy * y));
      const costs = along(pear, [
        [FAT, -dx],
        [HARD, -dy],
      ]);
      within(reach, -leastByHighs(pear, costs), 1e-6, `reach at ${angle}`);
    }
  });

  test("1000 random mixes that meet the brief: none outside", () => {
    const next = seededRandom(3);
    // Corners of the brief in random directions of all amounts, mixed at random, are random mixes that meet it.
    const found = Array.from({length: 40}, () => {
      const prices = pear.ingredients.map(() => next());
      const priced = {
        ...pear,
        ingredients: pear.ingredients.map((choice, j) => ({
          ...choice,
          ingredient: {...choice.ingredient, price: prices[j]!},
        })),
      };
      const front = frontOf(priced, {x: "cost", y: "sweetness"});
      return front.points[Math.floor(next() * front.points.length)]!.mix.amounts.map(
        ({percent}) => percent / 100,
      );
    });
    for (let i = 0; i < 1000; i++) {
      const weights = found.map(() => (-Math.log(next())) ** 3);
      const total = weights.reduce((sum, weight) => sum + weight, 0);
      const shares = pear.ingredients.map((_, j) =>
        found.reduce((sum, mix, k) => sum + (weights[k]! / total) * mix[j]!, 0),
      );
      const mix = mixOf(pear, shares);
      const failed = pear.targets.filter(({subject, min = -Infinity, max = Infinity}) => {
        const value = valueOf(subject, mix)!;
        return value < min - 1e-6 || value > max + 1e-6;
      });
      expect(failed).toEqual([]);
      expect(outside(corners, {x: valueOf(FAT, mix)!, y: valueOf(HARD, mix)!})).toBeLessThanOrEqual(1e-7);
    }
  });

  test("each corner is a mix with these values", () => {
    for (const {x, y, amounts} of corners) {
      const mix = mixOf(
        pear,
        amounts.map(({percent}) => percent / 100),
      );
      within(valueOf(FAT, mix), x, 1e-9, "fat");
      within(valueOf(HARD, mix), y, 1e-9, "hard phase");
    }
  });

  describe("of a temperature", () => {
    const sliced = feasibleRegion(pear, {x: "scoopTemperature", y: "fat"});
    if (sliced.status !== "region") throw new Error(sliced.reason);
    /** Least and most fat of a mix that scoops at a temperature, °C, by HiGHS. */
    const fatAt = (x: number) =>
      (["minimise", "maximise"] as const).map((sense) => {
        const room = 1e-6;
        const {program} = formulate(pear, {sense, subject: FAT}, [
          {subject: {kind: "scoopTemperature"}, min: x - room, max: x + room},
        ]);
        return referenceOf(highs, program).objective;
      });

    test("least and most fat at each scoop temperature by HiGHS", () => {
      expect(sliced.exact).toBe(false);
      for (const {x, y} of sliced.corners) {
        expect(Math.min(...fatAt(x).map((end) => Math.abs(end - y)))).toBeLessThan(1e-4);
      }
    });

    test("between its corners the lines are as far off as it says, at most", () => {
      const [xs, ys] = [sliced.corners.map(({x}) => x), sliced.corners.map(({y}) => y)];
      const [from, to] = [Math.min(...xs), Math.max(...xs)];
      const height = Math.max(...ys) - Math.min(...ys);
      expect(sliced.error).toBeLessThan(0.005);
      for (const share of [0.03, 0.21, 0.37, 0.52, 0.68, 0.83, 0.97]) {
        const x = from + share * (to - from);
        const crossed = sliced.corners.flatMap((a, k) => {
          const b = sliced.corners[(k + 1) % sliced.corners.length]!;
          return (a.x - x) * (b.x - x) <= 0 && a.x !== b.x
            ? [a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x)]
            : [];
        });
        const room = 2 * sliced.error * height + 1e-3;
        within(Math.min(...crossed), fatAt(x)[0]!, room, `least fat at ${x} °C`);
        within(Math.max(...crossed), fatAt(x)[1]!, room, `most fat at ${x} °C`);
      }
    });

    test("is the same on its side", () => {
      const turned = feasibleRegion(pear, {x: "fat", y: "scoopTemperature"});
      if (turned.status !== "region") throw new Error(turned.reason);
      const key = ({x, y}: Point) => `${x.toFixed(6)} ${y.toFixed(6)}`;
      expect(turned.corners.map(({x, y}) => key({x: y, y: x})).sort()).toEqual(
        sliced.corners.map(key).sort(),
      );
      expect(turned.error).toBeCloseTo(sliced.error, 12);
    });
  });

  test("is empty for a brief that cannot be met, and a point for a recipe that is fixed", () => {
    const impossible = readBrief({...input, targets: {fat: {min: 90}}}, demoPantry);
    expect(feasibleRegion(impossible, axes).status).toBe("infeasible");
    expect(tradeOff(impossible, axes).status).toBe("infeasible");
    const fixed = readBrief({ingredients: [{name: "whole milk", price: 1}]}, realPantry);
    const single = feasibleRegion(fixed, {x: "fat", y: "cost"});
    expect(single).toMatchObject({status: "region", corners: [{x: 3.25, y: 1}]});
    expect(frontOf(fixed, {x: "fat", y: "cost"}).points).toHaveLength(1);
  });

  test("the map over it: the least cost of each pair by HiGHS, nothing outside", () => {
    const map = costMap(pear, axes, {columns: 9, rows: 9});
    if (map.status !== "map") throw new Error(map.reason);
    let [inside, beyond] = [0, 0];
    for (const [row, y] of map.y.entries()) {
      for (const [column, x] of map.x.entries()) {
        const cell = map.cells[row]![column];
        const off = outside(corners, {x, y});
        if (cell && off > 1e-6) beyond++;
        if (off > -1e-6) continue;
        inside++;
        const rows = [
          {name: "fat", coefficients: along(pear, [[FAT, 1]]), lower: x, upper: x},
          {name: "hard", coefficients: along(pear, [[HARD, 1]]), lower: y, upper: y},
        ];
        within(cell?.cost, leastByHighs(pear, along(pear, [[COST, 1]]), rows), 1e-6, `cost at ${x}, ${y}`);
      }
    }
    expect(inside).toBeGreaterThan(30);
    expect(beyond).toBe(0);
  });

  test("the map over a temperature has the cost of its cells' mixes", () => {
    const map = costMap(pear, {x: "scoopTemperature", y: "fat"}, {columns: 6, rows: 6});
    if (map.status !== "map") throw new Error(map.reason);
    const cells = map.cells.flatMap((row, k) => row.map((cell, l) => ({cell, x: map.x[l]!, y: map.y[k]!})));
    const there = cells.filter(({cell}) => cell);
    expect(there.length).toBeGreaterThan(10);
    for (const {cell, x, y} of there) {
      const mix = mixOf(
        pear,
        cell!.amounts.map(({percent}) => percent / 100),
      );
      within(valueOf({kind: "scoopTemperature"}, mix), x, 1e-5, "scoop temperature");
      within(valueOf(FAT, mix), y, 1e-6, "fat");
      within(valueOf(COST, mix), cell!.cost, 1e-9, "cost");
    }
  });
});
