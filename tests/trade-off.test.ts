import {readFileSync} from "node:fs";
import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import type {BriefInput} from "../lib/balance/brief-schema.ts";
import type {Brief} from "../lib/balance/brief.ts";
import {coefficientOf} from "../lib/balance/coefficient.ts";
import {costMap, costMapSteps} from "../lib/balance/cost-map.ts";
import {feasibleRegion} from "../lib/balance/feasible-region.ts";
import {formulate} from "../lib/balance/formulate.ts";
import {cornersOf, type Point} from "../lib/balance/hull.ts";
import {finish, inChunks, type Progress} from "../lib/balance/in-chunks.ts";
import {measure, mixOf} from "../lib/balance/mix-report.ts";
import {readBrief} from "../lib/balance/read-brief.ts";
import type {Subject} from "../lib/balance/subject.ts";
import {sweep} from "../lib/balance/sweep.ts";
import {tradeOff, tradeOffSteps} from "../lib/balance/trade-off.ts";
import type {FrontPoint, TradeOff, TradeOffAxes} from "../lib/balance/trade-off-types.ts";
import {seededRandom} from "../lib/core/random.ts";
import type {LinearProgram, Row} from "../lib/lp/program.ts";
import {solveByHighs} from "./support/highs.ts";
import {demoPantry, realPantry} from "./support/pantry.ts";
import {randomBrief} from "./support/random-brief.ts";
import {within} from "./support/within.ts";

// Reference throughout: HiGHS (npm `highs`), an independent open-source solver, at tolerances of 1e-9.

const input = JSON.parse(
  readFileSync(new URL("../datasets/demo/pear-base.json", import.meta.url), "utf8"),
) as BriefInput;
const pear = readBrief(input, demoPantry);

const COST: Subject = {kind: "cost"};
const SUGARS: Subject = {kind: "quantity", quantity: "sugars"};
const HARD: Subject = {kind: "hardPhase", at: -18};
const FAT: Subject = {kind: "quantity", quantity: "fat"};

/** The front, or a failed test. */
function frontOf(brief: Brief, axes: TradeOffAxes): Extract<TradeOff, {status: "front"}> {
  const found = tradeOff(brief, axes);
  if (found.status !== "front") throw new Error(found.reason);
  return found;
}

/** What each ingredient brings to a weighted sum of two subjects. Every mix here has ice, so nothing is cut off. */
function along(
  {ingredients}: Brief,
  weights: readonly (readonly [subject: Subject, weight: number])[],
): number[] {
  return ingredients.map(({ingredient}) =>
    weights.reduce((sum, [subject, weight]) => sum + weight * coefficientOf(subject, ingredient), 0),
  );
}

/** Least value of a weighted sum over the mixes of a brief and further rows, by HiGHS. */
function leastByHighs(brief: Brief, costs: readonly number[], rows: readonly Row[] = []): number {
  const {aim: _aim, ...limits} = brief;
  const {program} = formulate(limits);
  const changed: LinearProgram = {
    variables: program.variables.map((variable, j) => ({...variable, cost: costs[j]!})),
    rows: [...program.rows, ...rows],
  };
  const {status, objective} = solveByHighs(changed);
  return status === "Optimal" ? objective : NaN;
}

/** Height of a front at `x`, on the straight line between its neighbours. */
function heightAt(points: readonly Point[], x: number): number {
  const sorted = points.toSorted((a, b) => a.x - b.x);
  const k = sorted.findIndex((point) => point.x >= x);
  const after = sorted[k]!;
  const before = sorted[k - 1];
  if (!before) return after.y;
  return before.y + ((after.y - before.y) * (x - before.x)) / (after.x - before.x);
}

const PAIRS: [
  name: string,
  solves: number,
  axes: TradeOffAxes,
  x: [Subject, 1 | -1],
  y: [Subject, 1 | -1],
][] = [
  ["cost against hard phase", 100, {x: "cost", y: {hardPhase: {at: -18}}}, [COST, 1], [HARD, 1]],
  ["sugars against hard phase", 25, {x: "sugars", y: {hardPhase: {at: -18}}}, [SUGARS, 1], [HARD, 1]],
  ["as much fat for as little money as can be", 25, {x: {maximise: "fat"}, y: "cost"}, [FAT, -1], [COST, 1]],
];

describe("an exact front", () => {
  test.each(PAIRS)("%s: weighted sums and limits by HiGHS, to 1e-6", (_, solves, axes, [x, sx], [y, sy]) => {
    const {points, exact} = frontOf(pear, axes);
    expect(exact).toBe(true);
    const next = seededRandom(1);
    for (let i = 0; i < solves; i++) {
      const angle = (Math.PI / 2) * next();
      const [wx, wy] = [sx * Math.cos(angle), sy * Math.sin(angle)];
      const best = Math.min(...points.map((point) => wx * point.x + wy * point.y));
      const costs = along(pear, [
        [x, wx],
        [y, wy],
      ]);
      within(best, leastByHighs(pear, costs), 1e-6, `weights ${wx}, ${wy}`);
    }
    const turned = points.map((point) => ({x: sx * point.x, y: sy * point.y}));
    const [low, high] = [turned[0]!.x, turned.at(-1)!.x];
    for (let i = 0; i < solves; i++) {
      const limit = low + (high - low) * next();
      const row = {name: "limit", coefficients: along(pear, [[x, sx]]), upper: limit};
      const least = leastByHighs(pear, along(pear, [[y, sy]]), [row]);
      within(heightAt(turned, limit), least, 1e-6, `y at x = ${limit}`);
    }
  });

  test("30 random briefs: no weighted sum of cost and sweetness gets below the front", () => {
    let fronts = 0;
    const sweet: Subject = {kind: "quantity", quantity: "sweetness"};
    for (let seed = 1; seed <= 30; seed++) {
      const brief = readBrief(randomBrief(seed), realPantry);
      const found = tradeOff(brief, {x: "cost", y: "sweetness"});
      const least = leastByHighs(brief, along(brief, [[COST, 1]]));
      expect(found.status === "front").toBe(!Number.isNaN(least));
      if (found.status !== "front") continue;
      fronts++;
      const next = seededRandom(seed);
      for (let i = 0; i < 5; i++) {
        const weight = next();
        const best = Math.min(...found.points.map(({x, y}) => weight * x + (1 - weight) * y));
        const costs = along(brief, [
          [COST, weight],
          [sweet, 1 - weight],
        ]);
        within(best, leastByHighs(brief, costs), 1e-6, `seed ${seed}, weight ${weight}`);
      }
    }
    expect(fronts).toBeGreaterThanOrEqual(15);
  });

  test("each corner's recipe has the corner's values, and corners fall from left to right", () => {
    const {points} = frontOf(pear, {x: "cost", y: {hardPhase: {at: -18}}});
    for (const [k, {x, y, mix}] of points.entries()) {
      const made = mixOf(
        pear,
        mix.amounts.map(({percent}) => percent / 100),
      );
      within(measure(COST, made), x, 1e-9, "cost");
      within(measure(HARD, made), y, 1e-9, "hard phase");
      if (k > 0) {
        expect(x).toBeGreaterThan(points[k - 1]!.x);
        expect(y).toBeLessThan(points[k - 1]!.y);
      }
    }
  });

  test("half of one recipe and half of the next lies on the front, halfway", () => {
    const {points} = frontOf(pear, {x: "cost", y: {hardPhase: {at: -18}}});
    for (const [k, after] of points.entries()) {
      const before = points[k - 1];
      if (!before) continue;
      const half = mixOf(
        pear,
        before.mix.amounts.map(({percent}, j) => (percent + after.mix.amounts[j]!.percent) / 200),
      );
      within(measure(COST, half), (before.x + after.x) / 2, 1e-9, "cost");
      within(measure(HARD, half), (before.y + after.y) / 2, 1e-9, "hard phase");
    }
  });

  test("what enters and leaves from corner to corner adds up to the last corner's recipe", () => {
    const {points} = frontOf(pear, {x: "cost", y: {hardPhase: {at: -18}}});
    const used = ({mix}: FrontPoint) =>
      mix.amounts.filter(({grams}) => grams > 1e-4).map(({ingredient}) => ingredient);
    let there = new Set(used(points[0]!));
    for (const {turnover} of points.slice(1)) {
      there = new Set([...there].filter((name) => !turnover!.leaves.includes(name)));
      for (const name of turnover!.enters) there.add(name);
    }
    expect([...there].sort()).toEqual(used(points.at(-1)!).sort());
  });

  test("ice that is not there cannot pay: with none possible, least hard phase is the fat's alone", () => {
    const sweet = readBrief(
      {
        ingredients: [
          {name: "fructose", price: 3},
          {name: "water", price: 0.1},
          {name: "cocoa butter", price: 9},
        ],
      },
      realPantry,
    );
    const {points} = frontOf(sweet, {x: {hardPhase: {at: -2}}, y: "cost"});
    within(points[0]!.x, 0, 1e-9, "no ice and no fat");
    expect(points.every(({x}) => x >= 0)).toBe(true);
    // The cheapest mix without ice is no more fructose than holds all the water.
    const row = {name: "ice", coefficients: along(sweet, [[{kind: "ice", at: -2}, 1]]), upper: 0};
    within(points[0]!.y, leastByHighs(sweet, along(sweet, [[COST, 1]]), [row]), 1e-6, "its cost");
  });

  test("whole steps are left out and named, and no mix in steps passes the front", () => {
    const stepped = readBrief(
      {
        ...input,
        ingredients: input.ingredients.map((entry) =>
          entry === "sucrose"
            ? {name: "sucrose", step: 100}
            : entry === "egg yolk"
              ? {name: "egg yolk", minIfUsed: 150}
              : entry,
        ),
        maxIngredients: 8,
      },
      demoPantry,
    );
    const front = frontOf(stepped, {x: "sugars", y: "cost"});
    expect(front.leftOut).toEqual([
      "egg yolk, if used, at least 150 g",
      "sucrose in steps of 100 g",
      "at most 8 ingredients",
    ]);
    const {program} = formulate(stepped, {sense: "minimise", subject: COST});
    const {status, objective} = solveByHighs(program);
    expect(status).toBe("Optimal");
    expect(Math.min(...front.points.map(({y}) => y))).toBeLessThanOrEqual(objective + 1e-9);
  });
});

describe("a front with a temperature", () => {
  test("cost against scoop temperature: each point the cheapest at its temperature by HiGHS, lines within twice the error", () => {
    const {points, exact, error} = frontOf(pear, {x: "scoopTemperature", y: "cost"});
    expect(exact).toBe(false);
    expect(error).toBeLessThan(0.005);
    const cheapest = (at: number) => {
      const {program} = formulate(pear, {sense: "minimise", subject: COST}, [
        {subject: {kind: "scoopTemperature"}, max: at},
      ]);
      return solveByHighs(program).objective;
    };
    const width = points.at(-1)!.x - points[0]!.x;
    const height = points[0]!.y - points.at(-1)!.y;
    for (const [k, point] of points.entries()) {
      within(point.mix.scoop.temperature, point.x, 1e-6, "scoop temperature of the recipe");
      within(point.y, cheapest(point.x + 1e-7), 1e-5, `cost at ${point.x} °C`);
      const before = points[k - 1];
      if (!before) continue;
      const middle = {x: (before.x + point.x) / 2, y: (before.y + point.y) / 2};
      const [dx, dy] = [(point.x - before.x) / width, (point.y - before.y) / height];
      const off = Math.abs(((cheapest(middle.x) - middle.y) / height) * dx) / Math.hypot(dx, dy);
      expect(off).toBeLessThanOrEqual(2 * error);
    }
  });

  test("axes may be swapped", () => {
    const one = frontOf(pear, {x: "freezingPoint", y: "cost"});
    const other = frontOf(pear, {x: "cost", y: "freezingPoint"});
    for (const [a, b] of [
      [one.points[0]!, other.points.at(-1)!],
      [one.points.at(-1)!, other.points[0]!],
    ] as const) {
      within(a.x, b.y, 1e-6, "freezing point");
      within(a.y, b.x, 1e-6, "cost");
    }
  });

  test("two temperatures: the warmest start of freezing for every scoop temperature", () => {
    const {points} = frontOf(pear, {x: "scoopTemperature", y: {maximise: "freezingPoint"}});
    for (const [k, point] of points.entries()) {
      within(point.mix.freezing.initialFreezingPoint, point.y, 1e-6, "freezing point");
      if (k > 0) expect(point.y).toBeGreaterThan(points[k - 1]!.y);
    }
  });
});

describe("the corners of a convex set", () => {
  const cloud = fc.array(
    fc.record({x: fc.integer({min: -50, max: 50}), y: fc.integer({min: -50, max: 50})}),
    {
      minLength: 1,
      maxLength: 40,
    },
  );
  const farthestOf = (points: readonly Point[]) => (direction: Point) =>
    points.reduce((best, point) =>
      direction.x * point.x + direction.y * point.y > direction.x * best.x + direction.y * best.y
        ? point
        : best,
    );

  test("of any cloud of points: all points within, each corner strictly a corner, anticlockwise", () => {
    fc.assert(
      fc.property(cloud, (points) => {
        let asked = 0;
        const farthest = farthestOf(points);
        const steps = cornersOf((direction) => {
          asked++;
          return farthest(direction);
        });
        let step = steps.next();
        while (!step.done) step = steps.next();
        const corners = step.value;
        expect(asked).toBeLessThanOrEqual(4 + 2 * (corners.length + 4));
        const distinct = new Set(points.map(({x, y}) => `${x} ${y}`));
        if (distinct.size === 1) expect(corners).toHaveLength(1);
        const cross = (a: Point, b: Point, c: Point) => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
        if (corners.length >= 3) {
          for (const [k, a] of corners.entries()) {
            const b = corners[(k + 1) % corners.length]!;
            expect(cross(a, b, corners[(k + 2) % corners.length]!)).toBeGreaterThan(0);
            for (const point of points) expect(cross(a, b, point)).toBeGreaterThanOrEqual(0);
          }
        } else if (corners.length === 2) {
          for (const point of points) expect(Math.abs(cross(corners[0]!, corners[1]!, point))).toBe(0);
        }
        for (let k = 0; k < 12; k++) {
          const direction = {x: Math.cos(k / 2), y: Math.sin(k / 2)};
          const reach = (of: readonly Point[]) =>
            Math.max(...of.map((p) => direction.x * p.x + direction.y * p.y));
          within(reach(corners), reach(points), 1e-9, "reach");
        }
      }),
      {numRuns: 500, seed: 1},
    );
  });
});

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
        const value = measure(subject, mix)!;
        return value < min - 1e-6 || value > max + 1e-6;
      });
      expect(failed).toEqual([]);
      expect(outside(corners, {x: measure(FAT, mix)!, y: measure(HARD, mix)!})).toBeLessThanOrEqual(1e-7);
    }
  });

  test("each corner is a mix with these values", () => {
    for (const {x, y, amounts} of corners) {
      const mix = mixOf(
        pear,
        amounts.map(({percent}) => percent / 100),
      );
      within(measure(FAT, mix), x, 1e-9, "fat");
      within(measure(HARD, mix), y, 1e-9, "hard phase");
    }
  });

  test("of a temperature: least and most fat at each scoop temperature by HiGHS", () => {
    const sliced = feasibleRegion(pear, {x: "scoopTemperature", y: "fat"});
    if (sliced.status !== "region") throw new Error(sliced.reason);
    expect(sliced.exact).toBe(false);
    for (const {x, y} of sliced.corners) {
      const ends = (["minimise", "maximise"] as const).map((sense) => {
        const room = 1e-6;
        const {program} = formulate(pear, {sense, subject: FAT}, [
          {subject: {kind: "scoopTemperature"}, min: x - room, max: x + room},
        ]);
        return solveByHighs(program).objective;
      });
      expect(Math.min(...ends.map((end) => Math.abs(end - y)))).toBeLessThan(1e-4);
    }
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
    let inside = 0;
    for (const [row, y] of map.y.entries()) {
      for (const [column, x] of map.x.entries()) {
        const cell = map.cells[row]![column];
        const off = outside(corners, {x, y});
        if (off > 1e-6) expect(cell).toBeUndefined();
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
      within(measure({kind: "scoopTemperature"}, mix), x, 1e-5, "scoop temperature");
      within(measure(FAT, mix), y, 1e-6, "fat");
      within(measure(COST, mix), cell!.cost, 1e-9, "cost");
    }
  });
});

describe("a sweep", () => {
  const values = Array.from({length: 41}, (_, k) => 5 + k / 10);

  test("of a limit: each value as HiGHS has it; cost rises and bends up; straight where nothing changes", () => {
    const points = sweep(input, "targets.fat.min", values, {pantry: demoPantry});
    const costs = points.map(({solution}) => (solution.status === "optimal" ? solution.cost! / 5 : NaN));
    for (const [k, value] of values.entries()) {
      const brief = readBrief({...input, targets: {...input.targets, fat: {min: value, max: 9}}}, demoPantry);
      const least = leastByHighs(brief, along(brief, [[COST, 1]]));
      within(costs[k], least, 1e-6, `cost at ${value}`);
      if (k > 0) expect(costs[k]!).toBeGreaterThanOrEqual(costs[k - 1]! - 1e-9);
      if (k > 1) {
        const bend = costs[k]! - 2 * costs[k - 1]! + costs[k - 2]!;
        expect(bend).toBeGreaterThanOrEqual(-1e-9);
        if (!points[k]!.changed && !points[k - 1]!.changed) expect(Math.abs(bend)).toBeLessThan(1e-9);
      }
    }
    expect(points.filter(({changed}) => changed).length).toBeGreaterThan(0);
  });

  test("of a price: cost rises and bends down, the dearer the less of it is used", () => {
    const prices = Array.from({length: 21}, (_, k) => 0.5 + k / 5);
    const points = sweep(input, "ingredients[sucrose].price", prices, {pantry: demoPantry});
    const mixes = points.map(({solution}) => {
      if (solution.status !== "optimal") throw new Error(solution.status);
      const grams = solution.amounts.find(({ingredient}) => ingredient === "sucrose")!.grams;
      return {cost: solution.cost!, grams};
    });
    for (const [k, {cost, grams}] of mixes.entries()) {
      const before = mixes[k - 1];
      if (!before) continue;
      expect(cost).toBeGreaterThanOrEqual(before.cost);
      expect(grams).toBeLessThanOrEqual(before.grams + 1e-6);
      if (!points[k]!.changed) within(grams, before.grams, 1e-6, "sucrose between changes");
    }
    expect(points.some(({changed}) => changed)).toBe(true);
  });

  test("says where the brief can no longer be met, and makes a limit that the brief does not have", () => {
    const points = sweep(input, "targets.hardPhase[0].max", [60, 52, 40, 30], {pantry: demoPantry});
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

describe("long runs", () => {
  const axes = {x: "cost", y: {hardPhase: {at: -18}}} as const;

  test("in chunks come to the same and tell how far they are", async () => {
    const told: Progress[] = [];
    let pauses = 0;
    const found = await inChunks(tradeOffSteps(pear, axes), {
      size: 3,
      onProgress: (progress) => told.push(progress),
      pause: async () => {
        pauses++;
      },
    });
    expect(found).toEqual(tradeOff(pear, axes));
    expect(told.length).toBe(pauses);
    expect(told.length).toBeGreaterThan(3);
    expect(told.map(({solved}) => solved)).toEqual(told.map(({solved}) => solved).toSorted((a, b) => a - b));
  });

  test("say how much there is where they know it", () => {
    const steps = costMapSteps(pear, axes, {columns: 4, rows: 4});
    let last: Progress | undefined;
    for (let step = steps.next(); !step.done; step = steps.next()) last = step.value;
    expect(last!.of).toBe(last!.solved);
    expect(finish(costMapSteps(pear, axes, {columns: 4, rows: 4})).status).toBe("map");
  });

  test("end when they are cancelled", async () => {
    const controller = new AbortController();
    let chunks = 0;
    const run = inChunks(costMapSteps(pear, axes, {columns: 50, rows: 50}), {
      signal: controller.signal,
      onProgress: () => {
        if (++chunks === 2) controller.abort();
      },
    });
    await expect(run).rejects.toThrow(expect.objectContaining({name: "AbortError"}));
    expect(chunks).toBe(2);
  });
});

describe("mistakes", () => {
  const cases: [string, () => unknown, RegExp][] = [
    [
      "an unknown axis",
      () => tradeOff(pear, {x: "fta", y: "cost"}),
      /^x: minimise: unknown quantity \(got "fta"\)/,
    ],
    [
      "an axis without a temperature",
      () => tradeOff(pear, {x: "cost", y: "ice"}),
      /^y: minimise: needs a temperature/,
    ],
    ["a temperature out of range", () => tradeOff(pear, {x: "cost", y: {ice: {at: -60}}}), /^y/],
    [
      "an unknown key",
      () => tradeOff(pear, {x: {minimize: "cost"} as never, y: "fat"}),
      /unknown key "minimize"; did you mean minimise/,
    ],
    [
      "a missing price",
      () => tradeOff(readBrief({ingredients: ["whole milk"]}, realPantry), {x: "cost", y: "fat"}),
      /no price for whole milk/,
    ],
    [
      "two temperatures of a region",
      () => feasibleRegion(pear, {x: "freezingPoint", y: "scoopTemperature"}),
      /hardPhase/,
    ],
    [
      "a grid of one column",
      () => costMap(pear, {x: "fat", y: "cost"}, {columns: 1, rows: 5}),
      /^grid\.columns: .*got 1.*2 to 500/,
    ],
    [
      "a path to nowhere",
      () => sweep(input, "batch", [1], {pantry: demoPantry}),
      /^path: not a place in a brief/,
    ],
    [
      "an unknown ingredient in a path",
      () => sweep(input, "ingredients[sukrose].price", [1], {pantry: demoPantry}),
      /did you mean sucrose/,
    ],
    [
      "an unknown key in a path",
      () => sweep(input, "ingredients[0].prize", [1], {pantry: demoPantry}),
      /price/,
    ],
    [
      "a path through a number",
      () => sweep(input, "targets.fat.min.x", [1], {pantry: demoPantry}),
      /nothing can stand below 7/,
    ],
    [
      "a value that is no number",
      () => sweep(input, "targets.fat.min", [NaN], {pantry: demoPantry}),
      /^values\[0\]/,
    ],
    ["no values", () => sweep(input, "targets.fat.min", [], {pantry: demoPantry}), /^values: too few/],
  ];
  test.each(cases)("%s", (_, run, message) => {
    expect(run).toThrow(message);
    expect(run).toThrow(expect.objectContaining({name: "InputError"}));
  });

  test("chunks of no step", async () => {
    await expect(inChunks(tradeOffSteps(pear, {x: "fat", y: "cost"}), {size: 0})).rejects.toThrow(/^size/);
  });
});
