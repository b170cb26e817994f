import {describe, expect, test} from "vitest";
import {InputError} from "../../lib/core/errors.ts";
import {ProgramBuilder} from "../../lib/lp/program/builder.ts";
import {
  beforeTime,
  checkTime,
  deadlineIn,
  deadlineOf,
  NO_DEADLINE,
  OutOfTime,
  partOfTime,
} from "../../lib/lp/program/deadline.ts";
import {denseForm} from "../../lib/lp/program/dense.ts";
import {expectProgram} from "../../lib/lp/program/expect-program.ts";
import {limitsOf, limitValue, withoutLimits} from "../../lib/lp/program/limits.ts";
import type {LinearProgram} from "../../lib/lp/program/program.ts";
import {scale} from "../../lib/lp/program/scale.ts";

const INF = Infinity;

// By hand, each factor the power of two nearest by ratio. Rows: 96 -> 128, 5 -> 4, and none for the empty row. Columns: 5/4 -> 1,
// 3/128 -> 1/32, so 32, and none for the empty one. Sizes of the limits in these units: 40, 64/32 = 2, 10/4 = 2.5, 6, 960/128 = 7.5;
// the middle one, 6, -> 8, which multiplies all columns and the rows that have coefficients. Costs then are 8, 3 x 256 and 4: -> 1024.
const BY_HAND: LinearProgram = {
  sense: "maximise",
  variables: [
    {name: "a", cost: -1, upper: 40},
    {name: "b", cost: -3, upper: 64},
    {name: "empty", cost: 0.5, lower: -INF},
  ],
  rows: [
    {name: "large", coefficients: [96, 3, 0], upper: 960},
    {name: "small", coefficients: [-5, 0, 0], lower: 10},
    {name: "empty", coefficients: [0, 0, 0], lower: -6},
  ],
};

describe("scaling", () => {
  test("divides by powers of two, as worked out by hand", () => {
    const {dense, column, row, objective} = scale(denseForm(BY_HAND));
    expect([...column]).toEqual([8, 256, 8]);
    expect([...row]).toEqual([1024, 32, 1]);
    expect(objective).toBe(1024);
    expect([...dense.matrix]).toEqual([0.75, 0.75, 0, -1.25, 0, 0, 0, 0, 0]);
    expect([...dense.cost]).toEqual([8 / 1024, 768 / 1024, -4 / 1024]);
    expect([dense.lower, dense.upper].map((limits) => [...limits])).toEqual([
      [0, 0, -INF],
      [5, 0.25, INF],
    ]);
    expect([...dense.rowLower]).toEqual([-INF, 10 / 32, -6]);
    expect([...dense.rowUpper]).toEqual([960 / 1024, INF, INF]);
  });

  test("leaves a program without limits and costs in its own units, and values without costs in those of the limits", () => {
    const row = {name: "r", coefficients: [1, 1]};
    const variables = [0, 0].map((cost) => ({name: "x", cost, lower: -INF}));
    const free = scale(denseForm({variables, rows: [row]}));
    expect([free.objective, ...free.column, ...free.row]).toEqual([1, 1, 1, 1]);
    const limited = scale(denseForm({variables, rows: [{...row, lower: 3, upper: 1000}]}));
    expect([limited.objective, ...limited.column, ...limited.row]).toEqual([1024, 1024, 1024, 1024]);
  });
});

describe("the time that a run has", () => {
  /** A clock that is read from a list, and the number of times that it was read. */
  const clockOf = (...times: number[]) => {
    const clock = {reads: 0, now: () => times[Math.min(clock.reads++, times.length - 1)]!};
    return clock;
  };

  test("ends so many milliseconds after its beginning", () => {
    const {left} = deadlineIn(50, clockOf(1000, 1010, 1050, 1060).now);
    expect([left(), left(), left()]).toEqual([40, 0, -10]);
    expect(deadlineIn(INF, () => 7).left()).toBe(INF);
    const usual = deadlineIn(60_000).left();
    expect(usual > 0 && usual <= 60_000).toBe(true);
  });

  test("has no end without a clock, unless one is given", () => {
    const {performance} = globalThis;
    try {
      Object.assign(globalThis, {performance: undefined});
      expect(deadlineIn(5)).toBe(NO_DEADLINE);
      expect(deadlineIn(5, () => 3).left()).toBe(5);
    } finally {
      Object.assign(globalThis, {performance});
    }
    expect(NO_DEADLINE.left()).toBe(INF);
  });

  test.each([0, -1, NaN, "5", true, null])("is refused where it is %j", (time) => {
    expect(() => deadlineIn(time as number)).toThrow("timeLimit: not a time");
    expect(() => deadlineOf({deadline: time as number, now: () => 0})).toThrow("deadline: not a time");
  });

  test("asks for a clock that can be read, even where there is no limit", () => {
    expect(() => deadlineIn(5, 5 as unknown as () => number)).toThrow("now: not a clock");
    expect(() => deadlineOf({now: "noon" as unknown as () => number})).toThrow("now: not a clock");
    expect(deadlineOf({now: () => 5})).toBeUndefined();
    expect(deadlineOf({deadline: 8, now: clockOf(1, 2).now})!.left()).toBe(7);
  });

  test("is given out in parts: of 100 ms a quarter ends when 75 are left", () => {
    const whole = deadlineIn(100, clockOf(0, 0, 10, 25, 30).now);
    const part = partOfTime(whole, 0.25);
    expect([part.left(), part.left(), part.left()]).toEqual([15, 0, -5]);
    expect(partOfTime(NO_DEADLINE, 0.25)).toBe(NO_DEADLINE);
  });

  test("is up at 0, which turns into a substitute; other mistakes pass through", () => {
    expect(() => checkTime({left: () => 1e-9})).not.toThrow();
    expect(() => checkTime({left: () => 0})).toThrow(OutOfTime);
    expect(() => checkTime({left: () => NaN})).toThrow(OutOfTime);
    const late = () => checkTime({left: () => -1});
    expect(beforeTime(late, () => "late")).toBe("late");
    expect(beforeTime(() => "done", late)).toBe("done");
    const mistake = () => {
      throw new InputError("x", "wrong", 1, "mend it");
    };
    expect(() => beforeTime(mistake, () => "late")).toThrow(InputError);
  });

  test("is looked at now and then while a program is written, not at each of its rows", () => {
    const count = 200;
    const builder = new ProgramBuilder<undefined>();
    const x = builder.variable({name: "x", cost: 1});
    for (let i = 0; i < count; i++) builder.row({name: "r", terms: [[x, 1]], upper: i}, undefined);
    const {program} = builder.build();
    const dense = denseForm(program);
    const loops: [string, number, (left: () => number) => unknown][] = [
      ["build", 1, (left) => builder.build("minimise", {left})],
      ["dense form", 1, (left) => denseForm(program, {left})],
      ["scale", 2, (left) => scale(dense, {left})],
    ];
    for (const [name, passes, run] of loops) {
      let looks = 0;
      run(() => ++looks);
      expect(looks, name).toBeGreaterThanOrEqual(passes * Math.floor(count / 64));
      expect(looks, name).toBeLessThan(passes * (count / 16));
      expect(() => run(() => 0), name).toThrow(OutOfTime);
    }
  });
});

describe("limits", () => {
  const program: LinearProgram = {
    variables: [
      {name: "x", cost: 1},
      {name: "y", cost: 1, lower: -INF, upper: 4},
    ],
    rows: [
      {name: "least", coefficients: [1, 1], lower: 5},
      {name: "none", coefficients: [1, 0]},
      {name: "exact", coefficients: [0, 1], lower: 2, upper: 2},
    ],
  };

  test("are listed rows first; a variable without a lower one has 0", () => {
    expect(limitsOf(program).map(({of, index, side}) => `${of} ${index} ${side}`)).toEqual([
      "row 0 lower",
      "row 2 lower",
      "row 2 upper",
      "variable 0 lower",
      "variable 1 upper",
    ]);
  });

  test("have a value, infinite where there is none", () => {
    const values = (of: "row" | "variable", index: number) =>
      (["lower", "upper"] as const).map((side) => limitValue(program, {of, index, side}));
    expect([0, 1, 2].map((i) => values("row", i))).toEqual([
      [5, INF],
      [-INF, INF],
      [2, 2],
    ]);
    expect([0, 1].map((j) => values("variable", j))).toEqual([
      [0, INF],
      [-INF, 4],
    ]);
    expect(limitsOf(withoutLimits(program, limitsOf(program)))).toEqual([]);
  });

  test("are open from 1e20 on, as solvers have it, and must be numbers in order", () => {
    const one = (lower: unknown, upper: unknown) => {
      const limits = {lower: lower as number, upper: upper as number};
      const dense = denseForm({
        variables: [{name: "x", cost: 1, ...limits}],
        rows: [{name: "r", coefficients: [1], ...limits}],
      });
      expect([dense.rowLower[0], dense.rowUpper[0]]).toEqual([dense.lower[0], dense.upper[0]]);
      return [dense.lower[0], dense.upper[0]];
    };
    expect(one(-1e20, 1e20)).toEqual([-INF, INF]);
    expect(one(-9.9e19, 9.9e19)).toEqual([-9.9e19, 9.9e19]);
    expect(() => one(1e20, INF)).toThrow(
      "variables[0].lower: not a lower limit (got 100000000000000000000); give a number below 1e20, or -Infinity",
    );
    expect(() => one(-INF, -1e20)).toThrow(
      "variables[0].upper: not an upper limit (got -100000000000000000000); give a number above -1e20, or Infinity",
    );
    expect(() => one("1", 2)).toThrow("variables[0].lower: not a lower limit");
    expect(() => one(1, "2")).toThrow("variables[0].upper: not an upper limit");
    expect(() => one(3, 2)).toThrow("variables[0]: lower limit 3 above upper limit");
  });
});

test("a program must be one: lists of variables and rows, each row with its coefficients", () => {
  for (const wrong of [
    undefined,
    {rows: []},
    {variables: []},
    {variables: [], rows: [{name: "r"}]},
    {variables: [5], rows: []},
  ])
    expect(() => expectProgram(wrong as unknown as LinearProgram)).toThrow(InputError);
  expect(() => expectProgram({variables: [], rows: []})).not.toThrow();
});

test("a built row has the limits that it was given and no others", () => {
  const builder = new ProgramBuilder<undefined>();
  const x = builder.variable({name: "x", cost: 1});
  for (const limits of [{}, {lower: 1}, {upper: 2}])
    builder.row({name: "r", terms: [[x, 3]], ...limits}, undefined);
  expect(builder.build().program.rows).toStrictEqual([
    {name: "r", coefficients: [3]},
    {name: "r", coefficients: [3], lower: 1},
    {name: "r", coefficients: [3], upper: 2},
  ]);
  expect(new ProgramBuilder().build().program).toMatchObject({variables: [], rows: []});
});
