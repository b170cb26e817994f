import {describe, expect, test} from "vitest";
import {ProgramBuilder} from "../../lib/lp/program/builder.ts";
import {OutOfTime} from "../../lib/lp/program/deadline.ts";
import type {LinearProgram} from "../../lib/lp/program/program.ts";
import {withCosts} from "../../lib/lp/program/with-costs.ts";
import {solve} from "../../lib/lp/solve/solve.ts";

// Small programs written out by hand beside what the builder makes of them.

function valuesOf(program: LinearProgram): readonly number[] {
  const outcome = solve(program);
  if (outcome.status !== "optimal") throw new Error(outcome.status);
  return outcome.values;
}

describe("a program built by variables and terms", () => {
  test("has a coefficient for every variable in every row, those added later too", () => {
    const builder = new ProgramBuilder<string>();
    const x = builder.variable({name: "x", cost: 1});
    builder.row({name: "first", terms: [[x, 2]], lower: 1}, "of x alone");
    const y = builder.variable({name: "y", cost: 3, upper: 9});
    builder.row(
      {
        name: "second",
        terms: [
          [y, 1],
          [x, -1],
          [y, 0.5],
        ],
        upper: 4,
      },
      "of both",
    );
    expect(builder.build("maximise")).toEqual({
      program: {
        sense: "maximise",
        variables: [
          {name: "x", cost: 1},
          {name: "y", cost: 3, upper: 9},
        ],
        rows: [
          {name: "first", coefficients: [2, 0], lower: 1},
          {name: "second", coefficients: [-1, 1.5], upper: 4},
        ],
      },
      origins: ["of x alone", "of both"],
    });
  });

  test("goes on from a program that is there, which stays what it was", () => {
    const there: LinearProgram = {
      sense: "maximise",
      variables: [{name: "x", cost: 1}],
      rows: [{name: "limit", coefficients: [1], upper: 3}],
    };
    const builder = new ProgramBuilder<string>(there, ["old"]);
    const y = builder.variable({name: "y", cost: 1});
    builder.row(
      {
        name: "sum",
        terms: [
          [builder.variableAt(0), 1],
          [y, 1],
        ],
        upper: 5,
      },
      "new",
    );
    const {program, origins} = builder.build();
    expect(program.rows.map(({coefficients}) => coefficients)).toEqual([
      [1, 0],
      [1, 1],
    ]);
    expect(program.sense).toBe("maximise");
    expect(origins).toEqual(["old", "new"]);
    expect(there.rows[0]!.coefficients).toEqual([1]);
  });

  test("stops at a deadline", () => {
    const builder = new ProgramBuilder();
    const x = builder.variable({name: "x", cost: 1});
    for (let i = 0; i < 100; i++) builder.row({name: "row", terms: [[x, 1]], upper: i});
    expect(() => builder.build("minimise", {left: () => 0})).toThrow(OutOfTime);
    expect(builder.build("minimise", {left: () => 1}).program.rows).toHaveLength(100);
  });
});

describe("a row that may be missed", () => {
  /** x at most 2 and at least 5, by two rows. */
  const torn = (tooMuch: number, tooLittle: number) => {
    const builder = new ProgramBuilder();
    const x = builder.variable({name: "x", cost: 0});
    const most = builder.row({name: "most", terms: [[x, 1]], upper: 2});
    const least = builder.row({name: "least", terms: [[x, 1]], lower: 5});
    const above = builder.elastic(most, "upper", {name: "above", cost: tooMuch});
    const below = builder.elastic(least, "lower", {name: "below", cost: tooLittle});
    const values = valuesOf(builder.build().program);
    return {x: values[x], above: values[above], below: values[below]};
  };

  test("gives way where that is cheaper, by what is missing", () => {
    expect(torn(1, 2)).toEqual({x: 5, above: 3, below: 0});
    expect(torn(2, 1)).toEqual({x: 2, above: 0, below: 3});
  });
});

test.each([
  [3, 1],
  [9, 2],
])("the distance of a sum held at %d from 7, in units of its own", (held, expected) => {
  const builder = new ProgramBuilder();
  const x = builder.variable({name: "x", cost: 0, lower: held, upper: held});
  const steps = builder.distance({name: "steps", cost: 1}, [[x, 1]], 7, undefined, held < 7 ? 4 : 1);
  expect(valuesOf(builder.build().program)[steps]).toBe(expected);
});

test("other costs leave the limits as they are", () => {
  const program: LinearProgram = {
    sense: "maximise",
    variables: [
      {name: "x", cost: 1, upper: 2},
      {name: "y", cost: 1, upper: 3},
    ],
    rows: [{name: "sum", coefficients: [1, 1], upper: 4}],
  };
  expect(withCosts(program, (j) => (j === 1 ? -1 : 0))).toEqual({
    ...program,
    sense: "minimise",
    variables: [
      {name: "x", cost: 0, upper: 2},
      {name: "y", cost: -1, upper: 3},
    ],
  });
});
