import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import {balance} from "../../../lib/balance/balance.ts";
import {costMap, costMapSteps} from "../../../lib/balance/trade-off/cost-map.ts";
import {feasibleRegion} from "../../../lib/balance/trade-off/feasible-region.ts";
import {formulate} from "../../../lib/balance/program/formulate.ts";
import {cornersOf, type Point} from "../../../lib/balance/trade-off/hull.ts";
import {holdingShape} from "../../../lib/balance/mix/hold-shape.ts";
import {finish, inChunks, type Progress, type Steps} from "../../../lib/core/in-chunks.ts";
import {mixOf} from "../../../lib/balance/mix/mix-report.ts";
import {valueOf} from "../../../lib/balance/measure/of-subject.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import type {Subject} from "../../../lib/balance/measure/measures.ts";
import {sweep} from "../../../lib/balance/trade-off/sweep.ts";
import {tradeOff, tradeOffSteps} from "../../../lib/balance/trade-off/trade-off.ts";
import type {FrontPoint, TradeOffAxes} from "../../../lib/balance/trade-off/trade-off-types.ts";
import {firmness} from "../../../lib/freezing/firmness.ts";
import {verdictBands} from "../../../lib/freezing/scoop.ts";
import {seededRandom} from "../../../lib/core/random.ts";
import {loadHighs, referenceOf} from "../../support/reference-lp.ts";
import {demoPantry, realPantry} from "../../support/pantry.ts";
import {randomBrief} from "../../support/random-brief.ts";
import {within} from "../../support/within.ts";
import {COST, FAT, HARD, SUGARS, along, frontOf, input, leastByHighs, pear} from "../../support/trade-off.ts";

const highs = await loadHighs();

/** The demo brief with the limits that keep a front's mixes as scoopable as its answer: what the reference is asked too. */
const shapely = holdingShape(pear);

// Reference throughout: HiGHS (npm `highs`), an independent open-source solver, at tolerances of 1e-9.

/** Whether each value is above the one before. */
function isRising(values: readonly number[]): boolean {
  return values.every((value, k) => k === 0 || value > values[k - 1]!);
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
      within(best, leastByHighs(shapely, costs), 1e-6, `weights ${wx}, ${wy}`);
    }
    const turned = points.map((point) => ({x: sx * point.x, y: sy * point.y}));
    const [low, high] = [turned[0]!.x, turned.at(-1)!.x];
    for (let i = 0; i < solves; i++) {
      const limit = low + (high - low) * next();
      const row = {name: "limit", coefficients: along(pear, [[x, sx]]), upper: limit};
      const least = leastByHighs(shapely, along(pear, [[y, sy]]), [row]);
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
        within(best, leastByHighs(holdingShape(brief), costs), 1e-6, `seed ${seed}, weight ${weight}`);
      }
    }
    expect(fronts).toBeGreaterThanOrEqual(15);
  });

  test("each corner's recipe has the corner's values, and corners fall from left to right", () => {
    const {points} = frontOf(pear, {x: "cost", y: {hardPhase: {at: -18}}});
    for (const {x, y, mix} of points) {
      const made = mixOf(
        pear,
        mix.amounts.map(({percent}) => percent / 100),
      );
      within(valueOf(COST, made), x, 1e-9, "cost");
      within(valueOf(HARD, made), y, 1e-9, "hard phase");
    }
    const [xs, ys] = [points.map(({x}) => x), points.map(({y}) => y)];
    expect(isRising(xs) && isRising(ys.reverse())).toBe(true);
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
      within(valueOf(COST, half), (before.x + after.x) / 2, 1e-9, "cost");
      within(valueOf(HARD, half), (before.y + after.y) / 2, 1e-9, "hard phase");
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
        // With 8 the rest of the solids would have to be egg beyond its customary dose.
        maxIngredients: 9,
      },
      demoPantry,
    );
    const front = frontOf(stepped, {x: "sugars", y: "cost"});
    expect(front.leftOut).toEqual([
      "egg yolk, if used, at least 150 g",
      "sucrose in steps of 100 g",
      "at most 9 ingredients",
    ]);
    const {program} = formulate(stepped, {sense: "minimise", subject: COST});
    const {status, objective} = referenceOf(highs, program);
    expect(status).toBe("optimal");
    expect(Math.min(...front.points.map(({y}) => y))).toBeLessThanOrEqual(objective + 1e-9);
  });
});

describe("what a front offers", () => {
  test("no mix has a worse verdict in the freezer than the brief's answer, softest and hardest included", () => {
    const answer = balance(input, {pantry: demoPantry});
    if (answer.status !== "optimal") throw new Error(answer.status);
    expect(answer.scoop.verdict).toBe("scoops");
    for (const axes of [
      {x: {hardPhase: {at: -18}}, y: "cost"},
      {x: {maximise: {hardPhase: {at: -18}}}, y: "cost"},
      {x: "scoopTemperature", y: "sweetness"},
    ] as TradeOffAxes[]) {
      const {points} = frontOf(pear, axes);
      for (const {mix} of points) expect(mix.scoop.verdict).toBe("scoops");
    }
  });

  test("a brief without prices keeps what holds its shape where that can be had, and loses nothing where not", () => {
    const ingredients = ["water", "sucrose", "fructose", "cream 40 %"];
    const may = readBrief({ingredients, targets: {fat: {max: 12}}}, realPantry);
    expect(holdingShape(may).targets).toHaveLength(2);
    for (const {mix} of frontOf(may, {x: "scoopTemperature", y: "water"}).points)
      expect(mix.scoop.verdict).not.toBe("soft");
    const cannot = readBrief({ingredients, targets: {fructose: {min: 60}}}, realPantry);
    expect(holdingShape(cannot)).toBe(cannot);
  });

  test.each([-18, -14])("without prices it ends where a tub just holds its shape at %d °C", (freezer) => {
    const brief = readBrief(
      {freezer, ingredients: ["fructose", "water"], targets: {fructose: {min: 10}}},
      realPantry,
    );
    const [softest] = frontOf(brief, {x: "scoopTemperature", y: "water"}).points;
    const least = verdictBands({overrun: 30}).find(({verdict}) => verdict === "scoops")!.from;
    within(firmness(softest!.mix.composition, freezer), least, 1e-6, "firmness in the freezer");
  });

  test("no mix is softer than a brief's own answer that is soft", () => {
    const ingredients = [
      {name: "water", price: 0},
      {name: "fructose", price: 1},
    ];
    const soft = readBrief({ingredients, targets: {fructose: {min: 45, max: 60}}}, realPantry);
    for (const {mix} of frontOf(soft, {x: "scoopTemperature", y: "water"}).points)
      within(mix.shares.fructose, 45, 1e-6, "fructose, as in the cheapest");
  });
});

describe("a front with a temperature", () => {
  test("cost against scoop temperature: each point the cheapest at its temperature by HiGHS, lines within twice the error", () => {
    const {points, exact, error} = frontOf(pear, {x: "scoopTemperature", y: "cost"});
    expect(exact).toBe(false);
    expect(error).toBeLessThan(0.005);
    const cheapest = (at: number) => {
      const {program} = formulate(shapely, {sense: "minimise", subject: COST}, [
        {subject: {kind: "scoopTemperature"}, max: at},
      ]);
      return referenceOf(highs, program).objective;
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
    for (const {mix, y} of points) within(mix.freezing.initialFreezingPoint, y, 1e-6, "freezing point");
    expect(isRising(points.map(({y}) => y))).toBe(true);
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
        expect(corners.length === 1).toBe(distinct.size === 1);
        const cross = (a: Point, b: Point, c: Point) => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
        const around = corners.map((a, k) => [a, corners[(k + 1) % corners.length]!] as const);
        const turns = around.map(([a, b], k) => cross(a, b, corners[(k + 2) % corners.length]!));
        expect(turns.every((turn) => turn > 0)).toBe(corners.length > 2);
        expect(around.every(([a, b]) => points.every((point) => cross(a, b, point) >= 0))).toBe(true);
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

describe("long runs", () => {
  const axes = {x: "cost", y: {hardPhase: {at: -18}}} as const;

  test("in chunks come to the same and tell how far they are", async () => {
    const told: Progress[] = [];
    let pauses = 0;
    const found = await inChunks(tradeOffSteps(pear, axes), {
      size: 2,
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
    ["no values", () => sweep(input, "targets.fat.min", [], {pantry: demoPantry}), /^values: too few.*got 0/],
    [
      "more values than anyone reads",
      () => sweep(input, "targets.fat.min", Array<number>(10_001).fill(7), {pantry: demoPantry}),
      /^values: .*too many.*got 10001/,
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

  test("chunks of no step, and options of another kind, before the first step", async () => {
    await expect(inChunks(tradeOffSteps(pear, {x: "fat", y: "cost"}), {size: 0})).rejects.toThrow(/^size/);
    let begun = false;
    function* steps(): Steps<number> {
      begun = true;
      yield {solved: 1};
      return 1;
    }
    for (const [options, says] of [
      [{signal: new AbortController()}, /^signal\.throwIfAborted: not a function/],
      [{signal: 3}, /^signal: not an object by name \(got 3\); give an AbortSignal/],
      [{pause: 3}, /^pause: not a function \(got 3\)/],
      [{onProgress: "log"}, /^onProgress: not a function \(got "log"\)/],
    ] as const) {
      const refused = inChunks(steps(), options as never);
      await expect(refused).rejects.toMatchObject({name: "InputError"});
      await expect(refused).rejects.toThrow(says);
    }
    expect(begun).toBe(false);
  });
});
