import {describe, expect, test} from "vitest";
import {seededRandom} from "../../lib/core/random.ts";
import {denseForm, type DenseProgram} from "../../lib/lp/program/dense.ts";
import {loadHighs} from "../../lib/lp/engines/engine-highs.ts";
import type {LinearProgram, Outcome, Row, Variable} from "../../lib/lp/program/program.ts";
import {scale} from "../../lib/lp/program/scale.ts";
import {primalSimplex} from "../../lib/lp/engines/simplex.ts";
import {fixWhole} from "../../lib/lp/solve/fix-whole.ts";
import {solve, type SolveOptions} from "../../lib/lp/solve/solve.ts";
import {basisByTableau} from "../../lib/lp/engines/standard-form.ts";
import {proofOf} from "../../lib/lp/proof/proof-of.ts";
import {AT_LOWER, AT_UPPER, AT_ZERO, BASIC, type Basis} from "../../lib/lp/proof/vertex.ts";
import {faultsOf} from "../support/optimality.ts";
import {KINDS, programOf} from "../support/programs.ts";
import {referenceOf} from "../support/reference-lp.ts";
import {sample} from "../support/sample.ts";
import {within} from "../support/within.ts";

// Where one engine fails the next takes over, which hides mistakes of either: here each has to do alone. Reference: HiGHS (npm
// `highs`), an independent open-source solver.

const highs = await loadHighs();
const INF = Infinity;
const PLAIN = KINDS.filter((kind) => kind !== "badly scaled" && kind !== "nearly infeasible");
const programs = PLAIN.flatMap((kind) =>
  Array.from({length: sample(3)}, (_, k) => k + 1).map((seed) => {
    const program = programOf(kind, 10, 900 + seed, (oracle) => referenceOf(highs, oracle).objective);
    const {dense, objective} = scale(denseForm(program));
    return {name: `${kind}, seed ${seed}`, program, dense, objective};
  }),
);

/** Programs that the kinds have none of: values that are fixed, and so many far bounds that those which a row implies are left out. */
const further = [
  [
    "fixed values",
    {
      variables: [
        {name: "fixed", cost: 4, lower: 2, upper: 2},
        {name: "x", cost: 1, upper: 9},
        {name: "below", cost: -1, lower: -3, upper: -3},
        {name: "y", cost: 2},
      ],
      // x + y are at least 5 - 2 + 3 = 6, and x at most 4.5 + 3 y: y = 0.375.
      rows: [
        {name: "sum", coefficients: [1, 1, 1, 1], lower: 5},
        {name: "some y", coefficients: [2, -1, -1, 3], lower: 2.5},
      ],
    },
  ],
  ["many bounds", manyBounds(120, 1)],
  ["many bounds, downwards", manyBounds(120, -1)],
].map(([name, program]) => {
  const {dense, objective} = scale(denseForm(program as LinearProgram));
  return {name: name as string, program: program as LinearProgram, dense, objective};
});

/**
 * A blend of shares that sum to 1, cheapest first, in which the first ones stand at bounds of their own. Of the others every second
 * bound follows from the batch. `sense` -1 writes its rows with all signs turned.
 */
function manyBounds(count: number, sense: 1 | -1): LinearProgram {
  const numbers = Array.from({length: count}, (_, j) => j);
  const upper = (j: number) => [0.45, 0.2, 0.05][j] ?? (j % 2 ? 0.15 : 1.5);
  const row = (name: string, coefficientOf: (j: number) => number, lower: number, high: number): Row => ({
    name,
    coefficients: numbers.map((j) => sense * coefficientOf(j)),
    ...(sense > 0 ? {lower, upper: high} : {lower: -high, upper: -lower}),
  });
  return {
    variables: numbers.map((j) => ({
      name: `x${j}`,
      cost: 1 + j / 100,
      lower: [0.3, 0.001, 0.05][j] ?? 0.001,
      upper: upper(j),
    })),
    rows: [
      row("batch", () => 1, 1, 1),
      // Some shares count against the first, so that this limits it to 0.1 + 3 x 0.4 and not to 0.1.
      row("balance", (j) => (j === 0 ? 1 : j < 4 ? -3 : 0), -INF, 0.1),
      // 0.5 of these, of which the first stands at its own 0.15.
      row("a part", (j) => (j % 10 === 3 ? 0.3 : 0), -INF, 0.15),
    ],
  };
}

/** What a basis proves, with the objective in the program's units, beside what HiGHS says. */
function judged({program, dense, objective}: (typeof programs)[number], basis: Basis | undefined) {
  const proof = basis && proofOf(dense, basis);
  const {status, objective: theirs} = referenceOf(highs, program);
  const sign = program.sense === "maximise" ? -1 : 1;
  const ours =
    proof?.status === "optimal"
      ? sign * objective * proof.values.reduce((sum, value, j) => sum + value * dense.cost[j]!, 0)
      : undefined;
  return {found: proof?.status, status, ours, theirs};
}

function expectRight(one: (typeof programs)[number], basis: Basis | undefined) {
  const {found, status, ours, theirs} = judged(one, basis);
  expect(found, one.name).toBe(status);
  if (ours !== undefined) within(ours, theirs, 1e-6 * Math.max(1, Math.abs(theirs)), one.name);
}

describe("a basis from javascript-lp-solver alone", () => {
  test.each(programs)("is one that proves the answer: $name", (one) => {
    expectRight(one, basisByTableau(one.dense));
  });

  test.each(further)("is one too with $name", (one) => {
    expectRight(one, basisByTableau(one.dense));
    expectRight(one, primalSimplex(one.dense));
  });

  test("is none of a program too large for a table", () => {
    const wide = (count: number) => {
      const row = {name: "sum", coefficients: Array.from({length: count}, () => 1), lower: 1};
      const variables = row.coefficients.map((cost) => ({name: "x", cost}));
      return basisByTableau(denseForm({variables, rows: Array.from({length: 10}, () => row)}));
    };
    expect(wide(20)).toBeDefined();
    expect(wide(30_000)).toBeUndefined();
  });
});

describe("the simplex alone", () => {
  test.each(programs)("ends at a basis that proves the answer, from nothing: $name", (one) => {
    expectRight(one, primalSimplex(one.dense));
  });

  test.each(programs)("and from any basis, however wrong: $name", (one) => {
    const random = seededRandom(one.name.length);
    const {columns: n, rows: m} = one.dense;
    for (let k = 0; k < sample(5); k++) {
      const start = Uint8Array.from({length: n + m}, () =>
        random() < m / (n + m) ? BASIC : random() < 0.5 ? AT_LOWER : AT_UPPER,
      );
      expectRight(one, primalSimplex(one.dense, start));
    }
  });

  test("stays at the basis that it starts from where nothing is to be gained", () => {
    for (const one of [...programs, ...further]) {
      const start = primalSimplex(one.dense);
      if (proofOf(one.dense, start)?.status !== "optimal") continue;
      const idle = {...one.dense, cost: new Float64Array(one.dense.columns)};
      expect(primalSimplex(idle, start), one.name).toEqual(start);
    }
  });

  test("has nothing to do where it starts at the optimum", () => {
    for (const one of programs) {
      const end = primalSimplex(one.dense);
      if (proofOf(one.dense, end)?.status !== "optimal") continue;
      expect(primalSimplex(one.dense, end), one.name).toEqual(end);
    }
  });
});

describe("programs without end", () => {
  const variable = (cost: number, lower?: number, upper?: number): Variable => ({
    name: "x",
    cost,
    ...(lower !== undefined && {lower}),
    ...(upper !== undefined && {upper}),
  });
  const row = (coefficients: number[], limits: Omit<Row, "name" | "coefficients">): Row => ({
    name: "row",
    coefficients,
    ...limits,
  });
  const endless: [string, LinearProgram][] = [
    ["a variable", {variables: [variable(-1)], rows: [row([-1], {upper: 3})]}],
    ["a variable, downwards", {variables: [variable(1, -Infinity, 5)], rows: [row([1], {upper: 3})]}],
    ["a free variable", {variables: [variable(1, -Infinity)], rows: [row([1], {upper: 3})]}],
    // The best direction leaves a row's limit: x - y stays at 1 only while it costs nothing.
    [
      "a row's lower limit is left",
      {variables: [variable(-2), variable(1)], rows: [row([1, -1], {lower: 1}), row([0, 1], {upper: 4})]},
    ],
    [
      "a row's upper limit is left",
      {variables: [variable(1, -Infinity), variable(0, 0, 2)], rows: [row([1, 1], {upper: 7})]},
    ],
    ["two at once", {variables: [variable(-1), variable(-1)], rows: [row([1, -1], {lower: 0, upper: 0})]}],
  ];

  test.each(endless)("%s: the ray keeps every limit and pays", (_, program) => {
    const outcome: Outcome = solve(program);
    expect(outcome.status).toBe("unbounded");
    expect(faultsOf(program, outcome)).toEqual([]);
    const {dense} = scale(denseForm(program));
    expect(proofOf(dense, primalSimplex(dense))?.status).toBe("unbounded");
  });

  test.each(endless)("%s: with whole values too, and with HiGHS at hand", (_, {variables, rows}) => {
    const whole = {rows, variables: variables.map((one) => ({...one, integer: true}))};
    expect(solve(whole).status).toBe("unbounded");
    // So many whole variables that HiGHS is asked at once.
    const more = Array.from({length: 41}, () => ({...variable(0, 0, 3), integer: true}));
    const large = {
      variables: [...whole.variables, ...more],
      rows: rows.map((one) => ({...one, coefficients: [...one.coefficients, ...more.map(() => 0)]})),
    };
    expect(solve(large, {highs}).status).toBe("unbounded");
  });

  test("is no end but a conflict where no whole values exist, with HiGHS at hand", () => {
    const many = Array.from({length: 41}, () => ({...variable(0, 0, 3), integer: true}));
    const between = [{...variable(-1), integer: true}, {...variable(0), integer: true}, ...many];
    const odd = row([0, 2, ...many.map(() => 0)], {lower: 1, upper: 1});
    expect(solve({variables: between, rows: [odd]}, {highs}).status).toBe("infeasible");
    const crossed = [{...variable(1, 0.2, 0.8), integer: true}, ...many];
    expect(solve({variables: crossed, rows: []}, {highs}).status).toBe("infeasible");
  });
});

describe("whole values", () => {
  test.each([1, 2, 3, 4, 5, 6])("of a knapsack are those of trying all, seed %i", (seed) => {
    const random = seededRandom(seed);
    const count = 8;
    const [values, weights] = [0, 1].map(() =>
      Array.from({length: count}, () => 1 + Math.floor(random() * 30)),
    ) as [number[], number[]];
    const room = Math.floor(weights.reduce((a, b) => a + b) / 2);
    let best = 0;
    for (let chosen = 0; chosen < 2 ** count; chosen++) {
      const sum = (of: number[]) => of.reduce((total, one, j) => total + (chosen & (1 << j) ? one : 0), 0);
      if (sum(weights) <= room) best = Math.max(best, sum(values));
    }
    const program: LinearProgram = {
      sense: "maximise",
      variables: values.map((cost, j) => ({name: `x${j}`, cost, upper: 1, integer: true})),
      rows: [{name: "room", coefficients: weights, upper: room}],
    };
    const outcome = solve(program);
    if (outcome.status !== "optimal") throw new Error(outcome.status);
    within(outcome.objective, best, 1e-9, "value");
    expect(faultsOf(program, outcome)).toEqual([]);
  });

  test("are fixed at the nearest, and the rest is the best there is with them, by hand", () => {
    // x near 2.2 is 2. From x + 4 y between 10 and 18, y is 2 to 4; from x - 4 y between -14 and 0 it is 0.5 to 4; y + z is at least 5.
    const withCost = (cost: number) => {
      const dense = denseForm({
        variables: [
          {name: "x", cost: 0, upper: 9, integer: true},
          {name: "y", cost, upper: 9},
          {name: "z", cost: 3 * cost, upper: 7},
        ],
        rows: [
          {name: "up", coefficients: [1, 4, 0], lower: 10, upper: 18},
          {name: "down", coefficients: [1, -4, 0], lower: -14, upper: 0},
          {name: "both", coefficients: [0, 1, 1], lower: 5},
        ],
      });
      const point = fixWhole(dense, Float64Array.of(1, 1, 1), [0], Float64Array.of(2.2, 0, 0));
      return point && [...point.values, ...point.activities];
    };
    expect(withCost(1)).toEqual([2, 4, 1, 18, -14, 5]);
    expect(withCost(-1)).toEqual([2, 4, 7, 18, -14, 11]);
    expect(withCost(0)?.slice(0, 1)).toEqual([2]);
    // 2 x at most 5: 3 is too many.
    const none = denseForm({
      variables: [{name: "x", cost: 0, upper: 9, integer: true}],
      rows: [{name: "limit", coefficients: [2], upper: 5}],
    });
    expect(fixWhole(none, Float64Array.of(1), [0], Float64Array.of(2.6))).toBeUndefined();
    expect(fixWhole(none, Float64Array.of(1), [0], Float64Array.of(2.4))?.values[0]).toBe(2);
  });

  test("that even fractions cannot have are a conflict before HiGHS is asked: 41 of at most 1 are never 42", () => {
    const wide: LinearProgram = {
      variables: Array.from({length: 41}, (_, j) => ({name: `x${j}`, cost: 1, upper: 1, integer: true})),
      rows: [{name: "sum", coefficients: Array.from({length: 41}, () => 1), lower: 42}],
    };
    expect(solve(wide, {highs})).toMatchObject({status: "infeasible", engine: "javascript-lp-solver"});
  });

  test("stops where it is told to, with the best point so far or none", () => {
    const program: LinearProgram = {
      sense: "maximise",
      variables: Array.from({length: 12}, (_, j) => ({name: `x${j}`, cost: 2, upper: 1, integer: true})),
      // Pairs can never fill an odd room, which only trying shows.
      rows: [{name: "room", coefficients: Array.from({length: 12}, () => 2), lower: 11, upper: 11}],
    };
    expect(solve(program, {maxNodes: 3}).status).toBe("undecided");
    let calls = 0;
    expect(solve(program, {now: () => 1500 * calls++, timeLimit: 2000}).status).toBe("undecided");
    expect(calls).toBeLessThan(5);
    expect(solve(program, {maxNodes: 1e5}).status).toBe("infeasible");
  });
});

describe("the options of a solver", () => {
  const {program} = programs[0]!;
  const mistakes: [SolveOptions | object, string][] = [
    [{timeLimit: 0}, "timeLimit: not a time"],
    [{timeLimit: "9"}, "timeLimit: not a time"],
    [{timeLimit: NaN}, "timeLimit: not a time"],
    [{maxNodes: 0}, "maxNodes: not a count"],
    [{maxNodes: INF}, "maxNodes: not a count"],
    [{maxNodes: "9"}, "maxNodes: not a count"],
    [{now: 7}, "now: "],
    [{deadline: {left: 7}}, "deadline.left: "],
    [{highs: 7}, "highs: "],
    [{nodes: 7}, "nodes"],
  ];
  test.each(mistakes)("%j is refused", (options, place) => {
    // Beside a deadline, time and clock count for nothing, but are no better for that.
    expect(() => solve(program, {deadline: {left: () => 1e4}, ...options} as SolveOptions)).toThrow(place);
  });

  test("end it at a deadline that is over, before a long program is read and after a short one", () => {
    const late = {status: "undecided", reason: "the time limit came before an answer"};
    const long = {...program, rows: Array.from({length: 70}, () => program.rows[0]!)};
    for (const one of [program, long]) expect(solve(one, {deadline: {left: () => 0}})).toEqual(late);
  });
});

describe("a basis read back", () => {
  test("has as many basic places as there are rows, and no place that its limits lack", () => {
    for (const {dense, name} of programs) {
      for (const basis of [basisByTableau(dense)!, primalSimplex(dense)]) {
        expect(basis.filter((place) => place === BASIC).length, name).toBe(dense.rows);
        basis.forEach((place, v) => expect(holds(dense, place, v), `${name}, place ${v}`).toBe(true));
      }
    }
  });
});

function holds(
  {columns: n, lower, upper, rowLower, rowUpper}: DenseProgram,
  place: number,
  v: number,
): boolean {
  const [low, high] = v < n ? [lower[v]!, upper[v]!] : [rowLower[v - n]!, rowUpper[v - n]!];
  if (place === AT_ZERO) return low === -Infinity && high === Infinity;
  return place === BASIC || Number.isFinite(place === AT_LOWER ? low : high);
}
