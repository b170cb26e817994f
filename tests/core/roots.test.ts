import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import {rootBetween} from "../../lib/core/roots.ts";
import {within} from "../support/within.ts";

/** The root and the number of evaluations it took. */
function counted(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance?: number,
): [root: number | undefined, evaluations: number] {
  let evaluations = 0;
  const root = rootBetween((x) => (evaluations++, f(x)), low, high, tolerance);
  return [root, evaluations];
}

describe("the root between two points", () => {
  test.each<[string, (x: number) => number, number, number, number]>([
    ["of a rising line", (x) => 2 * x - 3, 0, 5, 1.5],
    ["of a falling curve", (x) => 1 / x - 0.5, 0.1, 50, 2],
    ["at a kink", (x) => (x < 1 ? x - 1 : 100 * (x - 1)), -7, 9, 1],
    ["at a jump in slope far from the middle", (x) => Math.max(0, x - 30) + 1e-6 * (x - 30), -40, 40, 30],
    ["of a very flat function", (x) => (x - 1) ** 9, 0, 3, 1],
    // A textbook example: Newton (1669) solved x^3 - 2x - 5 = 0, x = 2.0945514815 (I. Newton, De analysi).
    ["of Newton's cubic", (x) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423],
  ])("%s", (_what, f, low, high, expected) => {
    within(rootBetween(f, low, high), expected, 1e-8, "root");
    within(
      rootBetween((x) => -f(x), low, high),
      expected,
      1e-8,
      "root of the mirror image",
    );
  });

  test("is an end where the function is 0 there, and none without a change of sign", () => {
    expect(rootBetween((x) => x, 0, 3)).toBe(0);
    expect(rootBetween((x) => x - 3, 0, 3)).toBe(3);
    expect(rootBetween((x) => x + 1, 0, 3)).toBeUndefined();
    expect(rootBetween(() => NaN, 0, 3)).toBeUndefined();
  });

  test("takes few evaluations on smooth functions, and never more than bisection but for one step and the ends", () => {
    fc.assert(
      fc.property(
        fc.double({min: -9, max: 9, noNaN: true}),
        fc.double({min: 0.01, max: 50, noNaN: true}),
        (root, power) => {
          const f = (x: number) => Math.sign(x - root) * Math.abs(x - root) ** power;
          const [found, evaluations] = counted(f, -10, 10, 1e-6);
          expect(Math.abs(found! - root) <= 1e-6 || f(found!) === 0).toBe(true);
          expect(evaluations).toBeLessThanOrEqual(Math.ceil(Math.log2(20 / 2e-6)) + 4);
        },
      ),
    );
    expect(counted((x) => Math.exp(x) - 2, 0, 5)[1]).toBeLessThan(14);
  });
});
