import {describe, expect, test} from "vitest";
import {OutOfTime} from "../../lib/lp/program/deadline.ts";
import {denseForm, type DenseProgram} from "../../lib/lp/program/dense.ts";
import {proofOf} from "../../lib/lp/proof/proof-of.ts";
import {isOptimal, optimality, provesInfeasible, provesUnbounded} from "../../lib/lp/proof/proof.ts";
import {AT_LOWER, AT_UPPER, BASIC, kernelOf, vertexOf, withoutNoise} from "../../lib/lp/proof/vertex.ts";

// Each figure by hand, from weak duality and Farkas' lemma (D. Bertsimas & J. N. Tsitsiklis, Introduction to Linear Optimization, 1997,
// theorems 4.3 to 4.6), which the comments work out.

const INF = Infinity;
const of = (...numbers: number[]) => Float64Array.from(numbers);

/** Minimise cost . x within limits of the variables and rows, each as `[lower, upper]`. */
function program(
  cost: number[],
  variables: [number, number][],
  rows: [coefficients: number[], lower: number, upper: number][],
): DenseProgram {
  return denseForm({
    variables: cost.map((one, j) => ({
      name: "x",
      cost: one,
      lower: variables[j]![0],
      upper: variables[j]![1],
    })),
    rows: rows.map(([coefficients, lower, upper]) => ({name: "r", coefficients, lower, upper})),
  });
}

describe("a point with its prices", () => {
  /** 2x + 3y, x + y >= 4, x - y <= 1, x to 3, y to 10: least at (2.5, 1.5), where it is 9.5. */
  const mix = program(
    [2, 3],
    [
      [0, 3],
      [0, 10],
    ],
    [
      [[1, 1], 4, INF],
      [[1, -1], -INF, 1],
    ],
  );
  const figures = (point: Float64Array, prices: Float64Array, of = mix) => {
    const {activities, reducedCosts, ...rest} = optimality(of, point, prices);
    return {activities: [...activities], reducedCosts: [...reducedCosts], ...rest};
  };

  test("is proved where the prices reach the objective: 2.5 x 4 - 0.5 x 1 = 9.5", () => {
    expect(figures(of(2.5, 1.5), of(2.5, -0.5))).toEqual({
      activities: [4, 1],
      reducedCosts: [0, 0],
      residual: 0,
      dualResidual: 0,
      gap: 0,
    });
  });

  test("misses by what the prices leave: 2.5 x 4 - 0.5 x 3 = 8.5 of 9.5, over all terms 10 + 1.5 + 5 + 4.5", () => {
    const {gap, reducedCosts, ...rest} = figures(of(2.5, 1.5), of(2.5, 0));
    expect(reducedCosts).toEqual([-0.5, 0.5]);
    expect(rest).toMatchObject({residual: 0, dualResidual: 0});
    expect(gap).toBeCloseTo(1 / 21, 7);
  });

  test("has prices of the wrong sign where no limit stands, relative to their terms", () => {
    // The first row has no upper limit for a price of -0.5, which counts as it is, nor for one of -5, which is all of itself.
    expect(figures(of(2.5, 1.5), of(-0.5, 0)).dualResidual).toBe(0.5);
    expect(figures(of(2.5, 1.5), of(-5, 0)).dualResidual).toBe(1);
    // y without an upper limit has 3 - 4 = -1, of terms of 3 + 4.
    const open = {...mix, upper: of(3, INF)};
    expect(figures(of(2.5, 1.5), of(4, 0), open).dualResidual).toBeCloseTo(1 / 7, 12);
  });

  test("violates limits relative to its terms", () => {
    // x = 4 is 1 of 4 beyond its limit, x - y = 4 is 3 of 4.
    expect(figures(of(4, 0), of(0, 0)).residual).toBe(0.75);
    // x = 5, y = 4.5: 2 of 5 beyond; the rows hold.
    expect(figures(of(5, 4.5), of(0, 0)).residual).toBe(0.4);
    // x + y = 3.5 - 1 misses 4 by 1.5 of terms of 4.5; y = -1 by 1 of 1; x - y = 4.5 by 3.5 of 4.5.
    expect(figures(of(3.5, -1), of(0, 0)).residual).toBe(1);
    // By 0.5, of terms of 0.5 that count as 1.
    expect(figures(of(0, -0.5), of(0, 0)).residual).toBe(4.5);
  });

  test("takes what rounding leaves of a price for none: 0.3 - 3 x 0.1", () => {
    const thirds = program([0.3], [[0, INF]], [[[0.1], 1, INF]]);
    expect(0.3 - 3 * 0.1).not.toBe(0);
    expect(figures(of(10), of(3), thirds)).toMatchObject({reducedCosts: [0], dualResidual: 0});
  });

  test("passes within 1e-9 in each of three figures, and never as no number", () => {
    const none = {activities: of(), reducedCosts: of(), residual: 0, dualResidual: 0, gap: 0};
    expect(isOptimal(none)).toBe(true);
    for (const figure of ["residual", "dualResidual", "gap"])
      expect(
        [1e-9, 1.001e-9, NaN].map((value) => isOptimal({...none, [figure]: value})),
        figure,
      ).toEqual([true, false, false]);
  });
});

describe("multipliers prove a conflict where the rows' sum is beyond the variables", () => {
  const free: [number, number] = [-INF, INF];
  test("from below and from above", () => {
    const least = (y: number) =>
      program(
        [0, 0],
        [
          [0, 1],
          [0, y],
        ],
        [[[1, 1], 4, INF]],
      );
    // 4 of at most 1 + 2; of at most 1 + 3 it can just be had.
    expect(provesInfeasible(least(2), of(1))).toBe(true);
    expect(provesInfeasible(least(3), of(1))).toBe(false);
    // A multiplier that leans on a limit that is not there proves nothing.
    expect(provesInfeasible(least(2), of(-1))).toBe(false);
    expect(provesInfeasible(least(2), of(0))).toBe(false);
    const most = program([0], [[0, INF]], [[[1], -INF, -1]]);
    expect(provesInfeasible(most, of(-1))).toBe(true);
    expect(provesInfeasible({...most, lower: of(-1)}, of(-1))).toBe(false);
  });

  test("by several rows, which must cancel in what is free", () => {
    // x - y >= 1 and y - x >= 1.
    const both = program(
      [0, 0],
      [free, free],
      [
        [[1, -1], 1, INF],
        [[-1, 1], 1, INF],
      ],
    );
    expect(provesInfeasible(both, of(1, 1))).toBe(true);
    expect(provesInfeasible(both, of(1, 2))).toBe(false);
    expect(provesInfeasible(both, of(1, 0))).toBe(false);
    // 0.1x >= 1 three times and 0.3x <= 2: what rounding leaves of 3 x 0.1 - 0.3 is nothing.
    const thirds = program(
      [0],
      [free],
      [
        [[0.1], 1, INF],
        [[0.3], -INF, 2],
      ],
    );
    expect(provesInfeasible(thirds, of(3, -1))).toBe(true);
    expect(provesInfeasible(thirds, of(3, -1.001))).toBe(false);
  });

  test("by more than 1e-9 of the multipliers and sums, which here are 2", () => {
    const by = (margin: number) => program([0], [[0, 2]], [[[1], 2 + margin, INF]]);
    expect(provesInfeasible(by(2.5e-9), of(1))).toBe(true);
    expect(provesInfeasible(by(1.5e-9), of(1))).toBe(false);
  });
});

describe("a ray proves that there is no end where it pays and meets no limit", () => {
  /** -x with x - y <= 1 and both from 0 up. */
  const base = program(
    [-1, 0],
    [
      [0, INF],
      [0, INF],
    ],
    [[[1, -1], -INF, 1]],
  );
  const proves = (ray: Float64Array, change: Partial<DenseProgram> = {}) =>
    provesUnbounded({...base, ...change}, ray);

  test("along the limits of variables and rows", () => {
    expect(proves(of(1, 1))).toBe(true);
    expect(proves(of(1, 2))).toBe(true);
    // Across the row's upper limit, or a lower one; against a variable's.
    expect(proves(of(1, 0))).toBe(false);
    expect(proves(of(1, 2), {rowLower: of(-5)})).toBe(false);
    expect(proves(of(1, 0), {rowLower: of(-5), rowUpper: of(INF)})).toBe(true);
    expect(proves(of(1, 1), {upper: of(INF, 9)})).toBe(false);
    expect(proves(of(1, 1), {upper: of(9, INF)})).toBe(false);
    expect(proves(of(-1, 0), {cost: of(1, 0)})).toBe(false);
    expect(proves(of(-1, 0), {cost: of(1, 0), lower: of(-INF, 0)})).toBe(true);
    expect(proves(of(1, -1e-15), {rowUpper: of(INF)})).toBe(false);
  });

  test("only with a gain, beyond rounding of its terms and of its length", () => {
    expect(proves(of(0, 0))).toBe(false);
    expect(proves(of(0, 1))).toBe(false);
    expect(proves(of(1, 1), {cost: of(-1, 1)})).toBe(false);
    // 1e-9 of terms of 2 is rounding, 4e-9 is not; 1e-8 of a length of 1 is a gain, 5e-10 is none.
    expect(proves(of(1, 1), {cost: of(-1, 1 - 1e-9)})).toBe(false);
    expect(proves(of(1, 1), {cost: of(-1, 1 - 4e-9)})).toBe(true);
    expect(proves(of(1, 1), {cost: of(-1e-8, 0)})).toBe(true);
    expect(proves(of(1, 1), {cost: of(-5e-10, 0)})).toBe(false);
    // What rounding leaves of 3 x 0.1 - 0.3 moves no row.
    expect(proves(of(3, 1), {matrix: of(0.1, -0.3)})).toBe(true);
    expect(proves(of(3, 1), {matrix: of(0.1, -0.299)})).toBe(false);
  });
});

describe("the vertex of a basis", () => {
  // Pivots lie off the diagonal. (1, 2, 3) and 2 at its upper limit: 2 + 6 + 2 = 10, 12 + 2 = 14, 5 + 2 + 3 + 2 = 12; the last row has
  // 1 + 2 + 3 + 2 = 8 and room. Prices (1, 2, 3): 5 x 3 = 15, 1 + 3 = 4, 2 + 4 x 2 + 3 = 13.
  const open: [number, number] = [-INF, INF];
  const four = program(
    [15, 4, 13, 1],
    [open, open, open, [0, 2]],
    [
      [[0, 1, 2, 1], 10, 20],
      [[0, 0, 4, 1], -5, 14],
      [[5, 1, 1, 1], 12, 12],
      [[1, 1, 1, 1], 0, 99],
    ],
  );
  const basis = Uint8Array.of(BASIC, BASIC, BASIC, AT_UPPER, AT_LOWER, AT_UPPER, AT_LOWER, BASIC);

  test("solves its rows and its prices, as worked out by hand", () => {
    const kernel = kernelOf(four, basis)!;
    expect([kernel.columns, kernel.rows]).toEqual([
      [0, 1, 2],
      [0, 1, 2],
    ]);
    const {values, duals} = vertexOf(four, basis, kernel);
    [1, 2, 3, 2].forEach((value, j) => expect(values[j], `value ${j}`).toBeCloseTo(value, 12));
    [1, 2, 3, 0].forEach((price, i) => expect(duals[i], `price ${i}`).toBeCloseTo(price, 12));
    // Row 1 stands at its upper limit with a price of 2 that would lower it: no proof. At its lower limit it is one.
    expect(proofOf(four, basis)).toBeUndefined();
    const turned = {...four, rowLower: of(10, 14, 12, 0), rowUpper: of(20, 30, 12, 99)};
    const lower = Uint8Array.from(basis, (place, v) => (v === 5 ? AT_LOWER : place));
    expect(proofOf({...turned, cost: of(15, 4, 13, 5)}, lower)?.status).toBe("optimal");
  });

  test("is none where the rows cannot be told apart, or are not as many as the variables", () => {
    const two = (last: number) =>
      program(
        [1, 1],
        [open, open],
        [
          [[1, 2], 1, INF],
          [[2, last], 1, INF],
        ],
      );
    const tight = Uint8Array.of(BASIC, BASIC, AT_LOWER, AT_LOWER);
    expect(kernelOf(two(4), tight)).toBeUndefined();
    expect(kernelOf(two(4 + 1e-12), tight)).toBeUndefined();
    expect(kernelOf(two(4 + 1e-9), tight)).toBeDefined();
    expect(kernelOf(two(5), Uint8Array.of(BASIC, AT_LOWER, AT_LOWER, AT_LOWER))).toBeUndefined();
  });

  test("puts a value onto the limit that it misses by rounding: 0.3 - (0.1 + 0.2), and 0.1 + 0.2 of at most 0.3", () => {
    const sum = 0.1 + 0.2;
    const values = (coefficients: number[], at: number, upper: number) => {
      const one = program(
        [1, 0],
        [
          [0, upper],
          [0, sum],
        ],
        [[coefficients, at, at]],
      );
      const place = Uint8Array.of(BASIC, AT_UPPER, AT_LOWER);
      return vertexOf(one, place, kernelOf(one, place)!).values[0];
    };
    expect(values([1, 1], 0.3, 9)).toBe(0);
    expect(values([1, -1], 0, 0.3)).toBe(0.3);
    // A millionth of a millionth is no rounding.
    expect(values([1, -1], 0, 0.3 - 1e-12)).toBe(sum);
    expect(values([1, 1], sum + 1e-12, 9)).toBeGreaterThan(0);
  });

  test("has no noise: entries below 1e-12 of the largest are none", () => {
    expect([...withoutNoise(of(-4, 3e-12, 5e-12, -3e-12, 0))]).toEqual([-4, 0, 5e-12, 0, 0]);
    expect([...withoutNoise(of())]).toEqual([]);
  });

  test("is not looked for past a deadline, at the latest after some rows", () => {
    const size = 20;
    const identity = Array.from({length: size}, (_, i) =>
      Array.from({length: size}, (_, j) => (i === j ? 1 : 0)),
    );
    const large = program(
      identity.map(() => 1),
      identity.map(() => open),
      identity.map((one) => [one, 1, INF]),
    );
    const tight = Uint8Array.from({length: 2 * size}, (_, v) => (v < size ? BASIC : AT_LOWER));
    expect(proofOf(large, tight)?.status).toBe("optimal");
    expect(() => kernelOf(large, tight, {left: () => 0})).toThrow(OutOfTime);
    let looks = 0;
    kernelOf(large, tight, {left: () => ++looks});
    expect(looks).toBe(1);
  });
});

describe("a basis proves by what stands outside its limits, or pays to leave them", () => {
  test("a conflict that no row shows alone, but all together: x - y >= 1 and y - x >= 1, both to 10", () => {
    const rows: Parameters<typeof program>[2] = [
      [[1, -1], 1, INF],
      [[-1, 1], 1, INF],
      // These stand on a limit, or within both, and take no part.
      [[1, 1], 0, INF],
      [[1, -1], -INF, 0],
      [[1, 2], -5, 7],
    ];
    const both = program(
      [0, 0],
      [
        [0, 10],
        [0, 10],
      ],
      rows,
    );
    const proof = proofOf(both, Uint8Array.of(AT_LOWER, AT_LOWER, ...rows.map(() => BASIC)));
    expect(proof).toEqual({status: "infeasible", multipliers: of(1, 1, 0, 0, 0)});
  });

  test("a conflict of 5e-9 where 1e-9 is none, from below and from above", () => {
    const fixed = (low: number, high: number) =>
      proofOf(program([0], [[0, 0]], [[[1], low, high]]), Uint8Array.of(AT_LOWER, BASIC))?.status;
    expect([fixed(5e-9, INF), fixed(-INF, -5e-9)]).toEqual(["infeasible", "infeasible"]);
    expect([fixed(5e-10, INF), fixed(-INF, -5e-10)]).toEqual(["optimal", "optimal"]);
  });

  test("no end, where all that is tied to a variable moves along: y by 2 where 2x - y is 0", () => {
    const tied = program(
      [-1, 0],
      [
        [0, INF],
        [0, INF],
      ],
      [
        [[1, 0], -INF, INF],
        [[2, -1], 0, 0],
      ],
    );
    const proof = proofOf(tied, Uint8Array.of(AT_LOWER, BASIC, BASIC, AT_LOWER));
    expect(proof).toMatchObject({status: "unbounded", ray: of(1, 2)});
    // A gain of 5e-9 for each unit is one.
    expect(proofOf(program([-5e-9], [[0, INF]], []), Uint8Array.of(AT_LOWER))?.status).toBe("unbounded");
  });

  test("no end, where a row pays to leave its limit, and that row alone", () => {
    const open: [number, number] = [-INF, INF];
    const later = program(
      [-1],
      [open],
      [
        [[1], 0, INF],
        [[1], 3, INF],
      ],
    );
    expect(proofOf(later, Uint8Array.of(BASIC, BASIC, AT_LOWER))).toMatchObject({
      status: "unbounded",
      ray: of(1),
    });
    const two = program(
      [-1, 1],
      [open, open],
      [
        [[1, 0], 1, INF],
        [[0, 1], 1, INF],
      ],
    );
    expect(proofOf(two, Uint8Array.of(BASIC, BASIC, AT_LOWER, AT_LOWER))).toMatchObject({
      status: "unbounded",
      ray: of(1, 0),
    });
  });
});
