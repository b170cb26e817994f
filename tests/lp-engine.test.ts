import {describe, expect, it} from "vitest";
import {runTableau} from "../lib/lp/engine-jslp.ts";

/** Minimise 2 x + 3 y with x + 2 y >= 8, 3 x + y >= 9 (optimum 13 at (2, 3)) as a tableau: costs negated, rows as <= with slacks. */
const diet = () => Float64Array.of(0, -2, -3, -8, -1, -2, -9, -3, -1);

describe("the insides of javascript-lp-solver that are used: a new version that moves them fails here", () => {
  it("runs a tableau to its optimum and leaves basis, prices and values where they are read", () => {
    const {end, basic, nonbasic, matrix} = runTableau(diet(), 3, 3, undefined, 100, 1e-9);
    expect(end).toBe("solved");
    expect(basic.slice(1).toSorted()).toEqual([0, 1]);
    expect(nonbasic.slice(1).toSorted()).toEqual([2, 3]);
    const valueOf = (element: number) => matrix[basic.indexOf(element, 1) * 3]!;
    expect([valueOf(0), valueOf(1)].map((value) => Math.round(value * 1e12) / 1e12)).toEqual([2, 3]);
    const priceOf = (element: number) => -matrix[nonbasic.indexOf(element, 1)]!;
    expect([priceOf(2), priceOf(3)].map((price) => Math.round(price * 1e12) / 1e12)).toEqual([1.4, 0.2]);
  });

  it("pivots first where it is told to", () => {
    const {end, basic} = runTableau(Float64Array.of(0, 1, 5, 1), 2, 2, [1, 1], 100, 1e-9);
    expect(end).toBe("solved");
    expect(basic[1]).toBe(0);
  });

  it("tells conflict and endlessness", () => {
    expect(runTableau(Float64Array.of(0, -1, -1, 1), 2, 2, undefined, 100, 1e-9).end).toBe("infeasible");
    expect(runTableau(Float64Array.of(0, 1, 1, -1), 2, 2, undefined, 100, 1e-9).end).toBe("unbounded");
  });

  it("counts pivots through the engine's own method, so that no loop is endless", () => {
    expect(runTableau(diet(), 3, 3, undefined, 1, 1e-9).end).toBe("stopped");
  });
});
