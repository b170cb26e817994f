import {describe, expect, test} from "vitest";
import {
  balance,
  balanceSteps,
  inChunks,
  pantryOf,
  pricesOf,
  readBrief,
  reliability,
  weighable,
} from "../../lib/index.ts";
import {costMap, feasibleRegion, sweep, tradeOff} from "../../lib/explore.ts";
import {loadHighs} from "../../lib/highs.ts";
import {solve} from "../../lib/lp.ts";
import {substitute} from "../../lib/substitute.ts";
import type {BriefInput} from "../../lib/index.ts";

const highs = await loadHighs();

/** Invented syrups of 0 to 50 % sucrose, as many as asked for. */
function syrups(count: number, more: object): BriefInput["ingredients"] {
  return Array.from({length: count}, (_, i) => ({
    name: `syrup ${i}`,
    composition: {water: 50 + (i % 50), sucrose: 50 - (i % 50)},
    ...more,
  }));
}

/** Briefs that once took minutes: large, with whole values, and impossible or nearly so. */
const LARGE: [string, BriefInput][] = [
  [
    "2,000 in steps, with more sugar than any has",
    {ingredients: syrups(2000, {step: 1}), targets: {sugars: {min: 60}}},
  ],
  [
    "300 with a least amount if used",
    {
      ingredients: syrups(300, {minIfUsed: 5}),
      targets: {sugars: {equal: 10}, scoopTemperature: {max: -12}},
    },
  ],
  [
    "1,200 with a least amount if used",
    {
      ingredients: syrups(1200, {minIfUsed: 5}),
      targets: {sugars: {equal: 10}, scoopTemperature: {max: -12}},
    },
  ],
];

/** Dear and cheap syrups in whole steps: a search with answers on its way. */
const search: BriefInput = {
  batch: 1000,
  ingredients: Array.from({length: 6}, (_, i) => ({
    name: `syrup ${i}`,
    composition: {water: 40 + 7 * i, sucrose: 60 - 7 * i},
    price: 1 + ((i * 7) % 11) / 10,
    step: i === 5 ? 10 : 90 + 10 * i,
  })),
  targets: {sugars: {min: 38.2, max: 39.3}},
  minimise: "cost",
};

/** A clock that goes on by 1 ms whenever it is read. */
function counting(): () => number {
  let reads = 0;
  return () => reads++;
}

describe("a deadline", () => {
  // Wide bounds, since other work may share the machine; the fuzz holds the promise itself.
  test.each(LARGE)("ends a brief of %s", (_, brief) => {
    for (const engine of [{}, {highs}]) {
      const start = performance.now();
      const answer = balance(brief, {deadline: 300, search: engine});
      expect(["infeasible", "undecided"]).toContain(answer.status);
      expect(performance.now() - start).toBeLessThan(20_000);
    }
  });

  test("leaves time for the right answer where there is enough", () => {
    const answer = balance(LARGE[0]![1], {deadline: Infinity, search: {highs}});
    if (answer.status !== "infeasible") throw new Error(answer.status);
    expect(answer.conflict.targets).toMatchObject([{target: "sugars", bound: "min", limit: 60}]);
    expect(answer.conflict.cutShort).toBeUndefined();
  });

  test("is told by one clock for all that is done: the more time, the more is known", () => {
    const known = (deadline: number) => {
      let reads = 0;
      const answer = balance(search, {deadline, now: () => reads++});
      // Nothing goes on after the time: what has begun looks once more, and so do those who wait for it.
      expect(reads).toBeLessThanOrEqual(deadline + 5);
      if (answer.status === "optimal") return answer.candidatesCutShort ? "mix" : "all";
      if (answer.status !== "undecided") throw new Error(answer.status);
      return answer.best ? "best so far" : "nothing";
    };
    expect([1, 60, 500, 1e9].map(known)).toEqual(["nothing", "best so far", "mix", "all"]);
  });

  test("gives the best mix so far as a full report that keeps the limits", () => {
    const answer = balance(search, {deadline: 60, now: counting()});
    if (answer.status !== "undecided" || !answer.best) throw new Error(answer.status);
    expect(answer.candidates).toEqual([]);
    const {amounts, shares, cost, freezing, scoop} = answer.best;
    expect(amounts.reduce((total, {grams}) => total + grams, 0)).toBeCloseTo(1000, 5);
    expect(shares.sugars).toBeGreaterThan(38.2 - 1e-6);
    expect(shares.sugars).toBeLessThan(39.3 + 1e-6);
    expect(cost).toBeGreaterThan(0);
    expect(freezing.curve.length).toBeGreaterThan(1);
    expect(scoop).toHaveProperty("verdict");
  });

  test("leaves candidates out where they are not wanted", () => {
    const brief: BriefInput = {
      ingredients: [
        {name: "syrup", composition: {water: 40, sucrose: 60}, price: 1},
        {name: "glucose", composition: {water: 20, dextrose: 80}, price: 2},
        {name: "water", composition: {water: 100}, price: 0},
      ],
      targets: {sugars: {min: 20, max: 40}},
      minimise: "cost",
    };
    expect(balance(brief).candidates.length).toBeGreaterThan(0);
    expect(balance(brief, {candidates: false})).toMatchObject({status: "optimal", candidates: []});
  });

  test("is refused where it is no time", () => {
    for (const deadline of [0, -1, NaN]) expect(() => balance(search, {deadline})).toThrow("deadline");
    expect(() => balance(search, {search: {timeLimit: 0}})).toThrow("timeLimit");
    expect(() => balance(search, {now: 5 as never})).toThrow("clock");
  });
});

describe("other options", () => {
  const sugars: BriefInput = {ingredients: syrups(3, {}), targets: {sugars: {min: 90}}};

  test.each([
    [{place: 5}, "place"],
    [{candidates: "no"}, "candidates"],
    [{search: {nodes: 5}}, "nodes"],
    [{signal: 5}, "signal"],
    [{signal: {}}, "signal.throwIfAborted"],
    [{pantri: 5}, "pantri"],
  ])("%j is refused under its own name", (options, place) => {
    expect(() => balance(search, options as never)).toThrow(place);
  });

  test("a price list that is only named is no mistake where the aim is another than the cost", () => {
    expect(() => balance({...sugars, prices: "prices.csv"})).toThrow("prices: a path");
    expect(balance({...sugars, prices: "prices.csv", minimise: "sugars"}).status).toBe("infeasible");
  });

  test("no time for its reasons leaves a conflict bare", () => {
    const limit = {path: "targets.sugars", bound: "min", limit: 90};
    expect(balance(sugars)).toMatchObject({status: "infeasible", conflict: {targets: [limit]}});
    let time = 0;
    const steps = balanceSteps(sugars, {deadline: 100, now: () => time});
    let step = steps.next();
    while (!step.done) {
      // Proved impossible in time; its reasons come too late.
      if (step.value.solved > 0) time = 1000;
      step = steps.next();
    }
    expect(step.value).toMatchObject({
      status: "infeasible",
      candidates: [],
      conflict: {targets: [], relaxations: [], openers: [], cutShort: true},
    });
  });
});

describe("calls of many programs", () => {
  const brief = readBrief(
    {
      ingredients: Array.from({length: 40}, (_, i) => ({
        name: `syrup ${i}`,
        composition: {water: 50 + i, sucrose: 50 - i},
        price: 1 + ((i * 7) % 11),
      })),
      targets: {sugars: {min: 20, max: 40}},
    },
    pantryOf([]),
  );
  const axes = {x: "cost", y: "sugars"};
  const recipe = {
    name: "syrups",
    lines: brief.ingredients.slice(0, 6).map(({ingredient}) => ({ingredient, grams: 100})),
  };
  const from = brief.ingredients.map(({ingredient}) => ingredient);
  const without = from[2]!.name;

  test("end at their deadline, and say so", () => {
    const limits = () => ({deadline: 3, now: counting()});
    expect(tradeOff(brief, axes, limits())).toMatchObject({status: "undecided"});
    expect(feasibleRegion(brief, axes, limits())).toMatchObject({status: "undecided"});
    expect(costMap(brief, axes, {columns: 5, rows: 5}, limits())).toMatchObject({status: "undecided"});
    expect(substitute(recipe, {without, from, ...limits()})).toMatchObject({
      alternatives: [],
      cutShort: true,
    });
    expect(() => pricesOf(brief, limits())).toThrow("allow more time");
    const swept = sweep(
      {ingredients: syrups(40, {}), targets: {sugars: {min: 20}}},
      "targets.sugars.min",
      [20, 25, 30],
      limits(),
    );
    expect(swept.map(({value}) => value)).toEqual([20, 25, 30]);
    expect(swept.at(-1)!.solution).toMatchObject({status: "undecided"});
  });

  test("keep what was found in time", () => {
    const whole = substitute(recipe, {without, from});
    expect(whole.cutShort).toBeUndefined();
    const some = substitute(recipe, {without, from, deadline: 150, now: counting()});
    expect(some.cutShort).toBe(true);
    expect(some.alternatives.length).toBeGreaterThan(0);
    const swept = sweep(
      {ingredients: syrups(40, {}), targets: {sugars: {min: 20}}},
      "targets.sugars.min",
      Array.from({length: 30}, (_, i) => 10 + i),
      {deadline: 20, now: counting()},
    );
    const known = swept.map(({solution}) => solution.status);
    expect(known[0]).toBe("optimal");
    expect(known.indexOf("undecided")).toBeGreaterThan(0);
    expect(new Set(known.slice(known.indexOf("undecided")))).toEqual(new Set(["undecided"]));
  });

  test("without one they do as ever", () => {
    expect(tradeOff(brief, axes, {deadline: Infinity})).toEqual(tradeOff(brief, axes));
    expect(feasibleRegion(brief, axes, {deadline: 1e9})).toEqual(feasibleRegion(brief, axes));
  });

  test("amounts for the scale are rounded one by one where no time is left", () => {
    const answer = balance({
      ingredients: brief.ingredients.slice(0, 8).map(({ingredient}) => ingredient),
      targets: {sugars: {equal: 45.3}},
      minimise: "cost",
    });
    if (answer.status !== "optimal") throw new Error(answer.status);
    const small = readBrief(
      {
        ingredients: brief.ingredients.slice(0, 8).map(({ingredient}) => ingredient),
        targets: {sugars: {equal: 45.3}},
      },
      pantryOf([]),
    );
    const late = weighable(small, answer.amounts, {scale: 100, deadline: 1, now: counting()});
    for (const [i, {grams}] of late.amounts.entries())
      expect(Math.abs(grams - answer.amounts[i]!.grams)).toBeLessThanOrEqual(50 + 1e-9);
    const few = reliability(small, answer.amounts, {weighing: 1}, {deadline: 30, now: counting()});
    expect(few.error).toBeGreaterThan(0.5 / Math.sqrt(1000));
  });
});

describe("a signal", () => {
  test("ends a call before it begins, and steps between two of them", async () => {
    const stopped = AbortSignal.abort();
    expect(() => balance(search, {signal: stopped})).toThrow("abort");
    const controller = new AbortController();
    const steps = balanceSteps(search, {signal: controller.signal});
    expect(steps.next().done).toBe(false);
    controller.abort();
    expect(() => steps.next()).toThrow("abort");
    const driven = inChunks(balanceSteps(search), {signal: stopped});
    await expect(driven).rejects.toThrow("abort");
  });

  test("steps give what the call gives", () => {
    const brief: BriefInput = {ingredients: syrups(3, {}), targets: {sugars: {equal: 49.5}}};
    const steps = balanceSteps(brief);
    let step = steps.next();
    while (!step.done) step = steps.next();
    expect(step.value).toEqual(balance(brief));
  });
});

describe("numbers that no engine can bear", () => {
  test("HiGHS gives up without an error of its own", () => {
    const tiny = {
      variables: Array.from({length: 41}, (_, j) => ({
        name: "x",
        cost: 1e-320 * (j + 1),
        integer: true,
        upper: 9,
      })),
      rows: [{name: "r", coefficients: Array.from({length: 41}, () => 1), lower: 3}],
    };
    expect(["optimal", "undecided"]).toContain(solve(tiny, {highs}).status);
  });

  test("a batch and a price beyond all measure are refused where they stand", () => {
    const with_ = (batch: number, price: number): BriefInput => ({
      batch,
      ingredients: [{name: "sugar", composition: {sucrose: 100}, price}],
    });
    expect(() => balance(with_(1e300, 1))).toThrow("batch");
    expect(() => balance(with_(1000, 1e308))).toThrow("price");
    expect(() => balance(with_(1000, 1e-320))).toThrow("price");
    expect(balance(with_(1e9, 1e9))).toMatchObject({status: "optimal", cost: 1e15});
    expect(balance(with_(1000, 0))).toMatchObject({status: "optimal", cost: 0});
    expect(balance(with_(1000, 1e-9))).toMatchObject({status: "optimal"});
  });
});
