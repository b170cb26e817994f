import {beforeAll, describe, expect, test} from "vitest";
import {InputError} from "../../lib/core/errors.ts";
import {loadHighs, type Highs} from "../../lib/lp/engines/engine-highs.ts";
import type {LinearProgram, Outcome, Variable} from "../../lib/lp/program/program.ts";
import {solve} from "../../lib/lp/solve/solve.ts";
import {solveAsync} from "../../lib/lp/solve/solve-async.ts";
import {faultsOf} from "../support/optimality.ts";
import {
  blend,
  KINDS,
  plainlyScaled,
  programOf,
  scaledRow,
  widened,
  wholeProgram,
} from "../support/programs.ts";
import {compare, referenceOf} from "../support/reference-lp.ts";
import {sample} from "../support/sample.ts";
import {within} from "../support/within.ts";

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

const variable = (cost: number, lower?: number, upper?: number): Variable => ({
  name: "x",
  cost,
  ...(lower !== undefined && {lower}),
  ...(upper !== undefined && {upper}),
});

function optimum(outcome: Outcome): Extract<Outcome, {status: "optimal"}> {
  if (outcome.status !== "optimal") throw new Error(`${outcome.status} where an optimum was due`);
  return outcome;
}

describe("published programs", () => {
  // V. Chvátal, Linear Programming (1983), chapter 1, first example: maximum 13 at (2, 0, 1); dual prices 1, 0, 1 (chapter 5).
  const chvatal: LinearProgram = {
    sense: "maximise",
    variables: [variable(5), variable(4), variable(3)],
    rows: [
      {name: "a", coefficients: [2, 3, 1], upper: 5},
      {name: "b", coefficients: [4, 1, 2], upper: 11},
      {name: "c", coefficients: [3, 4, 2], upper: 8},
    ],
  };

  test("gives Chvátal's optimum and prices", () => {
    const {objective, values, duals, reducedCosts} = optimum(solve(chvatal));
    within(objective, 13, 1e-12, "objective");
    expect(values.map((value) => Math.round(value * 1e9) / 1e9)).toEqual([2, 0, 1]);
    expect(duals!.map((price) => Math.round(price * 1e9) / 1e9)).toEqual([1, 0, 1]);
    within(reducedCosts![1], -3, 1e-12, "reduced cost of the unused variable");
  });

  // E. M. L. Beale, Cycling in the dual simplex algorithm, Naval Research Logistics Quarterly 2 (1955): the textbook rule cycles;
  // minimum -1/20 at (1/25, 0, 1, 0), as in Bertsimas & Tsitsiklis (1997), example 3.6 (there in other units).
  test("does not cycle on Beale's example", () => {
    const outcome = optimum(
      solve({
        variables: [variable(-0.75), variable(150), variable(-0.02), variable(6)],
        rows: [
          {name: "a", coefficients: [0.25, -60, -0.04, 9], upper: 0},
          {name: "b", coefficients: [0.5, -90, -0.02, 3], upper: 0},
          {name: "c", coefficients: [0, 0, 1, 0], upper: 1},
        ],
      }),
    );
    within(outcome.objective, -0.05, 1e-12, "objective");
    within(outcome.values[0], 0.04, 1e-12, "first value");
  });

  // V. Klee & G. J. Minty (1972), as in Bertsimas & Tsitsiklis (1997), section 3.7: the optimum is 100^(n-1).
  test("solves a cube of Klee and Minty", () => {
    const n = 6;
    const rows = Array.from({length: n}, (_, i) => ({
      name: `face ${i}`,
      coefficients: Array.from({length: n}, (_, j) => (j < i ? 2 * 10 ** (i - j) : j === i ? 1 : 0)),
      upper: 100 ** i,
    }));
    const variables = Array.from({length: n}, (_, j) => variable(10 ** (n - 1 - j)));
    within(
      optimum(solve({sense: "maximise", variables, rows})).objective / 100 ** (n - 1),
      1,
      1e-9,
      "objective",
    );
  });

  // G. J. Stigler, The cost of subsistence, Journal of Farm Economics 27 (1945), in miniature: two foods, two nutrients, by hand.
  test("prices a diet by hand", () => {
    const outcome = optimum(
      solve({
        variables: [variable(2), variable(3)],
        rows: [
          {name: "protein", coefficients: [1, 2], lower: 8},
          {name: "energy", coefficients: [3, 1], lower: 9},
        ],
      }),
    );
    within(outcome.objective, 13, 1e-12, "cost: x = (2, 3)");
    within(outcome.duals![0], 1.4, 1e-12, "protein: y1 + 3 y2 = 2, 2 y1 + y2 = 3");
    within(outcome.duals![1], 0.2, 1e-12, "energy");
  });
});

describe("forms of programs", () => {
  const forms: [string, LinearProgram, Outcome["status"], number?][] = [
    ["nothing at all", {variables: [], rows: []}, "optimal", 0],
    [
      "no variables and an impossible row",
      {variables: [], rows: [{name: "r", coefficients: [], lower: 1}]},
      "infeasible",
    ],
    ["no rows", {variables: [variable(1), variable(-1, 0, 4)], rows: []}, "optimal", -4],
    ["no rows and no end", {variables: [variable(-1)], rows: []}, "unbounded"],
    [
      "a row of zeros",
      {variables: [variable(1)], rows: [{name: "r", coefficients: [0], lower: 1}]},
      "infeasible",
    ],
    [
      "a single coefficient of zero beside a bound",
      {
        variables: [variable(1, 0, 0.9), variable(2)],
        rows: [
          {name: "sum", coefficients: [1, 1], lower: 1, upper: 1},
          {name: "none", coefficients: [0, 0], upper: 0.05},
        ],
      },
      "optimal",
      1.1,
    ],
    [
      "a fixed variable",
      {
        variables: [variable(10, 0.3, 0.3), variable(1)],
        rows: [{name: "r", coefficients: [1, 1], lower: 1, upper: 1}],
      },
      "optimal",
      3.7,
    ],
    [
      "a free variable below 0",
      {
        sense: "maximise",
        variables: [variable(1, -Infinity)],
        rows: [{name: "r", coefficients: [1], upper: -5}],
      },
      "optimal",
      -5,
    ],
    [
      "a free variable without cost",
      {variables: [variable(0, -Infinity)], rows: [{name: "r", coefficients: [1], lower: -5, upper: -2}]},
      "optimal",
      0,
    ],
    ["only an upper bound", {variables: [variable(-1, -Infinity, 3)], rows: []}, "optimal", -3],
    [
      "a row without limits",
      {variables: [variable(1, 2)], rows: [{name: "r", coefficients: [5]}]},
      "optimal",
      2,
    ],
    [
      "improvement without end along an edge",
      {
        sense: "maximise",
        variables: [variable(1), variable(1, -Infinity)],
        rows: [{name: "r", coefficients: [1, -1], upper: 3}],
      },
      "unbounded",
    ],
    [
      "limits eleven orders apart",
      {
        variables: [variable(1), variable(2)],
        rows: [
          {name: "much", coefficients: [1, 1], lower: 1e8},
          {name: "little", coefficients: [1, 0], upper: 1e-3},
        ],
      },
      "optimal",
      2e8 - 1e-3,
    ],
    [
      "windows that exclude each other",
      {
        variables: [variable(1, 0, 0.5), variable(1, 0, 0.4)],
        rows: [{name: "batch", coefficients: [1, 1], lower: 1, upper: 1}],
      },
      "infeasible",
    ],
  ];

  test.each(forms)("%s", (_, program, status, objective) => {
    const outcome = solve(program);
    expect(outcome.status).toBe(status);
    expect(faultsOf(program, outcome)).toEqual([]);
    if (objective !== undefined)
      within(optimum(outcome).objective, objective, 1e-9 * Math.max(1, Math.abs(objective)), "objective");
  });

  test("keeps names out of the engine", () => {
    const names = ["feasible", "result", "bounded", "isIntegral", "__proto__", "constructor"];
    const program: LinearProgram = {
      variables: names.map((name, j) => ({name, cost: j + 1})),
      rows: [...names, "cost"].map((name, i) => ({
        name,
        coefficients: names.map((_, j) => (i === j || i === names.length ? 1 : 0)),
        lower: i < names.length ? 0.1 : 1,
      })),
    };
    const outcome = optimum(solve(program));
    expect(faultsOf(program, outcome)).toEqual([]);
    within(outcome.objective, 0.5 + 0.1 * (2 + 3 + 4 + 5 + 6), 1e-12, "objective");
  });

  test("says which limit of degenerate vertices is in doubt, and which vertices are not degenerate", () => {
    const corner = (third: number): LinearProgram => ({
      sense: "maximise",
      variables: [variable(1), variable(1)],
      rows: [
        {name: "a", coefficients: [1, 2], upper: 3},
        {name: "b", coefficients: [2, 1], upper: 3},
        {name: "c", coefficients: [1, 1], upper: third},
      ],
    });
    expect(optimum(solve(corner(2))).degenerate).toBe(true);
    expect(optimum(solve(corner(2.5))).degenerate).toBe(false);
  });

  test("names the engine and shows what it checked", () => {
    const {engine, check} = optimum(solve(blend(30, 1).program));
    expect(engine).toBe("javascript-lp-solver");
    expect(Math.max(check.residual, check.gap!)).toBeLessThan(1e-9);
  });
});

describe("mistakes", () => {
  const row = {name: "r", coefficients: [1], upper: 1};
  const mistakes: [string, LinearProgram, string][] = [
    ["a cost that is no number", {variables: [variable(NaN)], rows: [row]}, "variables[0].cost"],
    [
      "an endless coefficient",
      {variables: [variable(1)], rows: [{...row, coefficients: [Infinity]}]},
      "rows[0].coefficients[0]",
    ],
    [
      "a text for a coefficient",
      {variables: [variable(1)], rows: [{...row, coefficients: ["1" as never]}]},
      "rows[0].coefficients[0]",
    ],
    ["a short row", {variables: [variable(1), variable(1)], rows: [row]}, "rows[0].coefficients"],
    ["crossed limits", {variables: [variable(1)], rows: [{...row, lower: 2}]}, "rows[0]"],
    ["crossed bounds", {variables: [variable(1, 2, 1)], rows: []}, "variables[0]"],
    ["a lower limit at infinity", {variables: [variable(1, Infinity)], rows: []}, "variables[0].lower"],
    ["a limit that is no number", {variables: [variable(1, 0, NaN)], rows: []}, "variables[0].upper"],
    ["an unknown sense", {sense: "min" as never, variables: [], rows: []}, "sense"],
  ];
  test.each(mistakes)("%s is named", (_, program, place) => {
    expect(() => solve(program)).toThrow(InputError);
    expect(() => solve(program)).toThrow(`${place}:`);
  });
  test("limits of a search are checked", () => {
    expect(() => solve({variables: [], rows: []}, {timeLimit: 0})).toThrow("timeLimit");
    expect(() => solve({variables: [], rows: []}, {maxNodes: NaN})).toThrow("maxNodes");
  });
});

describe("random programs of every awkward kind, against HiGHS", () => {
  test.each(KINDS)("%s", (kind) => {
    for (let k = 0; k < sample(30); k++) {
      const count = [10, 30, 100][k % 3]!;
      const program = programOf(kind, count, 500 + k, (oracle) => referenceOf(highs, oracle).objective);
      const outcome = solve(program);
      const reference = referenceOf(highs, plainlyScaled(kind, program, count, 500 + k));
      expect(compare(program, outcome, reference), `${count} ingredients, seed ${500 + k}`).not.toMatch(
        /wrong|undecided/,
      );
    }
  });
});

describe("what must not change an answer", () => {
  const seeds = Array.from({length: sample(8)}, (_, k) => k + 1);
  const same = (program: LinearProgram, changed: LinearProgram, factor = 1) => {
    const [before, after] = [optimum(solve(program)), optimum(solve(changed))];
    expect(faultsOf(changed, after)).toEqual([]);
    within(
      after.objective,
      before.objective * factor,
      1e-9 * Math.abs(before.objective * factor),
      "objective",
    );
  };

  test.each(seeds)("another unit for every row, money and mass, seed %i", (seed) => {
    const {program} = blend(30, seed);
    same(program, {...program, rows: program.rows.map((row, i) => scaledRow(row, 10 ** ((i % 5) - 2)))});
    same(program, {...program, variables: program.variables.map((v) => ({...v, cost: v.cost * 1000}))}, 1000);
    const grams = program.variables.map((v) => ({...v, lower: v.lower! * 5000, upper: v.upper! * 5000}));
    const rows = program.rows.map((row) => ({
      ...row,
      lower: (row.lower ?? -Infinity) * 5000,
      upper: (row.upper ?? Infinity) * 5000,
    }));
    same(program, {variables: grams, rows}, 5000);
  });

  test.each(seeds)("another order, seed %i", (seed) => {
    const {program} = blend(30, seed);
    same(program, {
      variables: program.variables.toReversed(),
      rows: program.rows.toReversed().map((row) => ({...row, coefficients: row.coefficients.toReversed()})),
    });
  });

  test.each(seeds)("the sense, with costs negated, seed %i", (seed) => {
    const {program} = blend(30, seed);
    const negated = {
      ...program,
      sense: "maximise" as const,
      variables: program.variables.map((v) => ({...v, cost: -v.cost})),
    };
    same(program, negated, -1);
    const [low, high] = [optimum(solve(program)), optimum(solve(negated))];
    const prices = (duals: readonly number[]) => duals.map((dual) => Math.round(dual * 1e6) + 0);
    const expected = low.degenerate ? high.duals! : low.duals!.map((dual) => -dual);
    expect(prices(high.duals!)).toEqual(prices(expected));
  });

  test.each(seeds)("wider limits never cost more, and prices foretell small moves, seed %i", (seed) => {
    const {program} = blend(30, seed);
    const before = optimum(solve(program));
    const wider = optimum(
      solve({...program, rows: program.rows.map((row, i) => (i === 0 ? row : widened(row, 0.01)))}),
    );
    expect(wider.objective).toBeLessThanOrEqual(before.objective + 1e-12);
    for (const [i, row] of program.rows.entries()) {
      if (before.degenerate || before.duals![i] === 0) continue;
      const step = 1e-6;
      const moved = {
        ...row,
        ...(row.lower !== undefined && {lower: row.lower + step}),
        ...(row.upper !== undefined && {upper: row.upper + step}),
      };
      const after = solve({...program, rows: program.rows.with(i, moved)});
      if (after.status === "optimal") {
        within(
          after.objective - before.objective,
          before.duals![i]! * step,
          1e-3 * Math.abs(before.duals![i]! * step) + 1e-12,
          row.name,
        );
      }
    }
  });
});

describe("whole values", () => {
  // Wolsey, Integer Programming (1998), chapter 7, example 7.2: maximise 4 x1 - x2; optimum 7 at (2, 1).
  test("gives Wolsey's optimum", () => {
    const outcome = optimum(
      solve({
        sense: "maximise",
        variables: [
          {...variable(4), integer: true},
          {...variable(-1), integer: true},
        ],
        rows: [
          {name: "a", coefficients: [7, -2], upper: 14},
          {name: "b", coefficients: [0, 1], upper: 3},
          {name: "c", coefficients: [2, -2], upper: 3},
        ],
      }),
    );
    within(outcome.objective, 7, 1e-12, "objective");
    expect(outcome.values).toEqual([2, 1]);
    expect(outcome.check).toEqual({residual: 0, fraction: 0});
  });

  test("finds conflict and endlessness among whole values", () => {
    const whole = {...variable(1), integer: true};
    const between: LinearProgram = {
      variables: [whole],
      rows: [{name: "between", coefficients: [1], lower: 0.2, upper: 0.8}],
    };
    expect(solve(between).status).toBe("infeasible");
    const endless: LinearProgram = {
      ...between,
      sense: "maximise",
      rows: [{name: "r", coefficients: [1], lower: 0.5}],
    };
    expect(solve(endless)).toMatchObject({status: "unbounded", ray: [1]});
    expect(solve(endless, {highs}).status).toBe("unbounded");
  });

  test.each([1, 2, 3, 4, 5, 6, 7, 8])(
    "a blend of few ingredients agrees with HiGHS, seed %i",
    async (seed) => {
      const program = wholeProgram(12, seed, 5, seed % 2 === 0);
      const reference = referenceOf(highs, program);
      expect(compare(program, solve(program), reference)).toBe(reference.status);
      expect(compare(program, await solveAsync(program), reference)).toBe(reference.status);
    },
  );

  test("hands large programs to HiGHS and checks what comes back", async () => {
    const program = wholeProgram(300, 3, 8);
    const outcome = await solveAsync(program, {timeLimit: 20_000});
    expect(compare(program, outcome, referenceOf(highs, program))).toBe("optimal");
    expect(outcome).toMatchObject({engine: "HiGHS"});
  });

  test("stops at its limits and says so", () => {
    const program = wholeProgram(30, 2, 4);
    expect(solve(program, {maxNodes: 3}).status).toBe("undecided");
    let clock = 0;
    expect(solve(program, {timeLimit: 5, now: () => clock++}).status).toBe("undecided");
  });
});
