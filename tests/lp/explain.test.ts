import {beforeAll, describe, expect, test} from "vitest";
import {InputError} from "../../lib/core/errors.ts";
import {irreducibleConflict} from "../../lib/lp/explain/conflict.ts";
import {loadHighs, type Highs} from "../../lib/lp/engines/engine-highs.ts";
import {limitsOf, limitValue, withoutLimits, type Limit} from "../../lib/lp/program/limits.ts";
import type {LinearProgram} from "../../lib/lp/program/program.ts";
import {leastRelaxation} from "../../lib/lp/explain/relaxation.ts";
import {sensitivity} from "../../lib/lp/explain/sensitivity.ts";
import {solve} from "../../lib/lp/solve/solve.ts";
import {faultsOf} from "../support/optimality.ts";
import {blend, programOf} from "../support/programs.ts";
import {referenceOf, withReference} from "../support/reference-lp.ts";
import {sample} from "../support/sample.ts";
import {within} from "../support/within.ts";

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

const seeds = Array.from({length: sample(12)}, (_, k) => k + 1);
const infeasible = (seed: number, count = 30) =>
  programOf("infeasible", count, seed, (oracle) => referenceOf(highs, oracle).objective);

// Two foods of 1 and 3 parts fat; at least 2 of a batch of 1 asks for more of the second than its bound of 0.4 allows.
const small: LinearProgram = {
  variables: [
    {name: "lean", cost: 1},
    {name: "rich", cost: 2, upper: 0.4},
  ],
  rows: [
    {name: "batch", coefficients: [1, 1], lower: 1, upper: 1},
    {name: "fat", coefficients: [1, 3], lower: 2},
    {name: "idle", coefficients: [1, 0], upper: 5},
  ],
};

describe("irreducible conflict", () => {
  test("finds the one conflict of a small program", () => {
    expect(irreducibleConflict(small)).toEqual({
      limits: [
        {of: "row", index: 0, side: "upper"},
        {of: "row", index: 1, side: "lower"},
        {of: "variable", index: 1, side: "upper"},
      ],
      irreducible: true,
    });
  });

  test("leaves out what must hold", () => {
    const conflict = irreducibleConflict(small, ({of, index}) => of === "row" && index === 0);
    expect(conflict?.limits.map(({of, index}) => `${of} ${index}`)).toEqual(["row 1", "variable 1"]);
  });

  test("finds none in a feasible program", () => {
    expect(irreducibleConflict(blend(10, 1).program)).toBeUndefined();
  });

  test("works with whole values", () => {
    const program: LinearProgram = {
      variables: [{name: "x", cost: 0, integer: true, upper: 9}],
      rows: [{name: "between", coefficients: [2], lower: 1, upper: 1}],
    };
    expect(irreducibleConflict(program)?.limits.map(({of, side}) => `${of} ${side}`)).toEqual([
      "row lower",
      "row upper",
    ]);
  });

  test("leaves out together what belongs together", () => {
    // "Firm" is the larger of two sums: lean at most 0.4 (or 0.3) and rich at most 0.8 (or 0.5).
    const pieces = (lean: number, rich: number, least: number): LinearProgram => ({
      variables: small.variables.map(({name, cost}) => ({name, cost})),
      rows: [
        {name: "batch", coefficients: [1, 1], lower: 1, upper: 1},
        {name: "firm", coefficients: [1, 0], upper: lean},
        {name: "firm", coefficients: [0, 1], upper: rich},
        {name: "lean", coefficients: [1, 0], lower: least},
      ],
    });
    const rowsOf = (program: LinearProgram, together?: (limit: Limit) => unknown) => {
      const isHard = ({of, index}: Limit) => of === "variable" || index === 0;
      const {limits, irreducible} = irreducibleConflict(program, isHard, {}, together)!;
      expect(irreducible).toBe(true);
      return limits.map(({index}) => index).toSorted();
    };
    const one = pieces(0.4, 0.8, 0.5);
    const byName = ({index}: Limit) => one.rows[index]!.name;
    expect(rowsOf(one)).toEqual([1, 3]);
    expect(rowsOf(one, byName)).toEqual([1, 2, 3]);
    // Both sums are needed here, and nothing else: the target cannot be met by itself.
    expect(rowsOf(pieces(0.3, 0.5, 0.1), byName)).toEqual([1, 2]);
  });

  test.each(seeds)("cannot hold together, and can without any one limit, by HiGHS, seed %i", (seed) => {
    const program = infeasible(seed);
    const conflict = irreducibleConflict(program)!;
    expect(conflict.irreducible).toBe(true);
    const key = ({of, index, side}: Limit) => `${of} ${index} ${side}`;
    const kept = new Set(conflict.limits.map(key));
    const others = limitsOf(program).filter((limit) => !kept.has(key(limit)));
    const only = withoutLimits(program, others);
    const free = {...only, variables: only.variables.map((variable) => ({...variable, cost: 0}))};
    expect(solve(free).status).toBe("infeasible");
    expect(faultsOf(free, solve(free))).toEqual([]);
    for (const limit of conflict.limits) {
      expect(referenceOf(highs, withoutLimits(free, [limit])).status, `without ${key(limit)}`).toBe(
        "optimal",
      );
    }
  });
});

describe("least relaxation", () => {
  const softRows = ({of}: Limit) => (of === "row" ? 1 : undefined);

  test("moves the cheaper limit, just as far as needed", () => {
    const relaxed = leastRelaxation(small, ({of, index}) =>
      of === "row" && index === 0 ? undefined : of === "row" ? 1 : 10,
    );
    if (!("moves" in relaxed)) throw new Error(relaxed.status);
    // 0.6 lean and 0.4 rich give 1.8 of fat: 0.2 less than wanted.
    expect(relaxed.moves.map(({limit}) => limit)).toEqual([{of: "row", index: 1, side: "lower"}]);
    within(relaxed.moves[0]!.by, 0.2, 1e-12, "move");
    within(relaxed.total, 0.2, 1e-12, "total");
    expect(relaxed.outcome.status).toBe("optimal");
    if (relaxed.outcome.status === "optimal") within(relaxed.outcome.values[1], 0.4, 1e-9, "rich");
  });

  test("moves bounds of variables too", () => {
    const relaxed = leastRelaxation(small, ({of, index}) =>
      of === "variable" && index === 1 ? 1 : undefined,
    );
    if (!("moves" in relaxed)) throw new Error(relaxed.status);
    expect(relaxed.moves.map(({limit}) => limit)).toEqual([{of: "variable", index: 1, side: "upper"}]);
    within(relaxed.moves[0]!.by, 0.1, 1e-12, "half of each is needed");
  });

  test("moves nothing where all can hold", () => {
    const {program} = blend(10, 1);
    const relaxed = leastRelaxation(program, softRows);
    if (!("moves" in relaxed)) throw new Error(relaxed.status);
    expect(relaxed.moves).toEqual([]);
    expect(relaxed.outcome).toEqual(solve(program));
  });

  test("has the program as it then is: rich raised from 0.4 to 0.5, half of the batch each", () => {
    const relaxation = leastRelaxation(small, ({of, side}) =>
      of === "variable" && side === "upper" ? 1 : undefined,
    );
    if (!("moves" in relaxation)) throw new Error(relaxation.status);
    expect(limitValue(relaxation.program, {of: "variable", index: 1, side: "upper"})).toBeCloseTo(0.5, 9);
    expect(relaxation.outcome.status).toBe("optimal");
    within((relaxation.outcome as {objective: number}).objective, 0.5 * 1 + 0.5 * 2, 1e-9, "cost");
  });

  test("ends at its deadline, in the solving or before it", () => {
    const soft = () => 1;
    expect(leastRelaxation(small, soft, {deadline: {left: () => 0}})).toMatchObject({status: "undecided"});
    let clock = 0;
    expect(leastRelaxation(small, soft, {timeLimit: 2, now: () => clock++})).toMatchObject({
      status: "undecided",
    });
    expect(leastRelaxation(small, soft, {timeLimit: 2, now: () => 0})).toHaveProperty("moves");
    const long = {...small, rows: Array.from({length: 70}, () => small.rows[1]!)};
    expect(leastRelaxation(long, soft, {deadline: {left: () => 0}})).toEqual({
      status: "undecided",
      reason: "the time limit came before a relaxation",
    });
  });

  test.each([0, -1, NaN, Infinity])("refuses a price of %d", (price) => {
    expect(() => leastRelaxation(small, () => price)).toThrow("no price for the lower limit of row 0");
  });

  test("says where even the rest conflicts, and refuses prices that are none", () => {
    expect(leastRelaxation(small, () => undefined)).toMatchObject({status: "infeasible"});
    expect(() => leastRelaxation(small, () => 0)).toThrow(InputError);
  });

  test.each(seeds)(
    "agrees with HiGHS on the least total, and the relaxed program has an optimum, seed %i",
    (seed) => {
      const program = infeasible(seed);
      const relaxed = leastRelaxation(program, (limit) => (limit.index > 0 ? softRows(limit) : undefined));
      if (!("moves" in relaxed)) throw new Error(relaxed.status);
      expect(relaxed.outcome.status).toBe("optimal");
      expect(faultsOf(relaxed.program, relaxed.outcome)).toEqual([]);
      const least = withReference(highs, program, {}, (model) => {
        model.changeColsCost(
          {kind: "range", from: 0, to: program.variables.length - 1},
          program.variables.map(() => 0),
        );
        model.feasibilityRelaxation({
          globalLowerPenalty: -1,
          globalUpperPenalty: -1,
          globalRowPenalty: 1,
          localRowPenalty: program.rows.map((_, i) => (i === 0 ? -1 : 1)),
        });
        return model.getObjectiveValue();
      });
      within(relaxed.total, least, 1e-7 * Math.max(1, least), "least total");
    },
  );
});

describe("sensitivity", () => {
  // F. S. Hillier & G. J. Lieberman, Introduction to Operations Research, Wyndor Glass example (chapters 3 and 6): maximise 3 x1 + 5 x2 with
  // x1 <= 4, 2 x2 <= 12, 3 x1 + 2 x2 <= 18; optimum 36 at (2, 6), shadow prices 0, 3/2, 1; b2 from 6 to 18, b3 from 12 to 24; c1 from
  // 0 to 7.5, c2 from 2 up.
  test("gives the ranges of the Wyndor example", () => {
    const program: LinearProgram = {
      sense: "maximise",
      variables: [
        {name: "doors", cost: 3},
        {name: "windows", cost: 5},
      ],
      rows: [
        {name: "plant 1", coefficients: [1, 0], upper: 4},
        {name: "plant 2", coefficients: [0, 2], upper: 12},
        {name: "plant 3", coefficients: [3, 2], upper: 18},
      ],
    };
    const found = sensitivity(program, solve(program));
    const close = (value: number) => Math.round(value * 1e9) / 1e9;
    expect(
      found.rows.map(({index, side, price, from, to}) => [index, side, close(price), close(from), close(to)]),
    ).toEqual([
      [1, "upper", 1.5, 6, 18],
      [2, "upper", 1, 12, 24],
    ]);
    expect(found.costs.map(({from, to}) => [close(from), close(to)])).toEqual([
      [0, 7.5],
      [2, Infinity],
    ]);
    expect(found.bounds).toEqual([]);
    expect(found.degenerate).toBe(false);
  });

  test("tells at which price an unused variable enters, and what a bound on a used one costs", () => {
    const program: LinearProgram = {
      variables: [
        {name: "cheap", cost: 1, upper: 0.25},
        {name: "fair", cost: 2},
        {name: "dear", cost: 5},
      ],
      rows: [{name: "batch", coefficients: [1, 1, 1], lower: 1, upper: 1}],
    };
    const {rows, bounds, costs} = sensitivity(program, solve(program));
    expect(rows).toEqual([{index: 0, side: "equal", price: 2, from: 0.25, to: Infinity}]);
    expect(bounds).toEqual([
      {index: 0, side: "upper", price: -1, from: 0, to: 1},
      {index: 2, side: "lower", price: 3, from: -Infinity, to: 0.75},
    ]);
    expect(costs).toEqual([
      {index: 0, cost: 1, from: -Infinity, to: 2},
      {index: 1, cost: 2, from: 1, to: 5},
      {index: 2, cost: 5, from: 2, to: Infinity},
    ]);
  });

  test("lets a bound rise as far as a row with room to spare allows, worked by hand", () => {
    // At 4 and 3 the row holds 4 + 2 x 3 = 10 of 12: the first may rise by 2, the second by 1, before it binds.
    const program: LinearProgram = {
      sense: "maximise",
      variables: [
        {name: "first", cost: 1, upper: 4},
        {name: "second", cost: 1, upper: 3},
      ],
      rows: [{name: "room", coefficients: [1, 2], upper: 12}],
    };
    const {rows, bounds} = sensitivity(program, solve(program));
    expect(rows).toEqual([]);
    expect(bounds).toEqual([
      {index: 0, side: "upper", price: 1, from: 0, to: 6},
      {index: 1, side: "upper", price: 1, from: 0, to: 4},
    ]);
  });

  test("knows values that are fixed, free ones that nothing holds, and a row between two limits, worked by hand", () => {
    // x + 2 + w at least 3: x = 1 at the least cost. The row's price is x's cost, from x = 0 (2) up to its other limit, 5.
    const program: LinearProgram = {
      variables: [
        {name: "x", cost: 1},
        {name: "free", cost: 0, lower: -Infinity},
        {name: "fixed", cost: 7, lower: 2, upper: 2},
        {name: "w", cost: 4},
      ],
      rows: [
        {name: "between", coefficients: [1, 0, 1, 1], lower: 3, upper: 5},
        {name: "idle", coefficients: [1, 0, 0, 2], upper: 10},
      ],
    };
    const {rows, bounds, costs} = sensitivity(program, solve(program));
    expect(rows).toEqual([{index: 0, side: "lower", price: 1, from: 2, to: 5}]);
    expect(bounds).toEqual([
      // One more saves one of x, to x = 0; nine less, and x fills the idle row.
      {index: 2, side: "equal", price: 7 - 1, from: 2 - 9, to: 3},
      // One more makes x 0.
      {index: 3, side: "lower", price: 4 - 1, from: -Infinity, to: 1},
    ]);
    expect(costs).toEqual([
      {index: 0, cost: 1, from: 0, to: 4},
      {index: 1, cost: 0, from: 0, to: 0},
      {index: 2, cost: 7, from: -Infinity, to: Infinity},
      {index: 3, cost: 4, from: 1, to: Infinity},
    ]);
  });

  test("refuses what has no prices", () => {
    expect(() => sensitivity(small, solve(small))).toThrow(InputError);
    const {program} = blend(10, 1);
    expect(() => sensitivity(small, solve(program))).toThrow(InputError);
  });

  test.each(seeds)("agrees with HiGHS where the vertex is not degenerate, both senses, seed %i", (seed) => {
    const {program: cheapest} = blend(30, seed);
    const dearest = {...cheapest, sense: "maximise" as const};
    for (const program of [cheapest, dearest]) {
      const outcome = solve(program);
      if (outcome.status !== "optimal" || outcome.degenerate) continue;
      if (
        outcome.reducedCosts!.some(
          (cost, j) => outcome.basis!.variables[j] !== "basic" && Math.abs(cost) < 1e-7,
        )
      )
        continue;
      const found = sensitivity(program, outcome);
      const ranging = withReference(highs, program, {}, (model) => model.getRanging());
      const same = (actual: number, expected: number, what: string) => {
        const [a, b] = [actual, expected].map((value) =>
          Math.abs(value) > 1e15 ? Math.sign(value) * Infinity : value,
        );
        expect(
          a === b || Math.abs(a! - b!) <= 1e-6 * Math.max(1, Math.abs(b!)),
          `${what}: ${a}, HiGHS says ${b}`,
        ).toBe(true);
      };
      for (const {index, from, to} of found.rows) {
        same(from, ranging.rowBoundDown.value[index]!, `row ${index} from`);
        same(to, ranging.rowBoundUp.value[index]!, `row ${index} to`);
      }
      for (const {index, from, to} of found.costs) {
        same(from, ranging.colCostDown.value[index]!, `cost ${index} from`);
        same(to, ranging.colCostUp.value[index]!, `cost ${index} to`);
      }
    }
  });
});
