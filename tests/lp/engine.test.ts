import {describe, expect, test} from "vitest";
import {seededRandom} from "../../lib/core/random.ts";
import {loadHighs} from "../../lib/lp/engines/engine-highs.ts";
import {runTableau} from "../../lib/lp/engines/engine-jslp.ts";
import type {LinearProgram} from "../../lib/lp/program/program.ts";
import {solverOfMany} from "../../lib/lp/solve/solve-again.ts";
import {blend} from "../support/programs.ts";
import {compare, referenceOf} from "../support/reference-lp.ts";

const highs = await loadHighs();

/** Minimise 2 x + 3 y with x + 2 y >= 8, 3 x + y >= 9 (optimum 13 at (2, 3)) as a tableau: costs negated, rows as <= with slacks. */
const diet = () => Float64Array.of(0, -2, -3, -8, -1, -2, -9, -3, -1);

describe("the insides of javascript-lp-solver that are used: a new version that moves them fails here", () => {
  test("runs a tableau to its optimum and leaves basis, prices and values where they are read", () => {
    const {end, basic, nonbasic, matrix} = runTableau(diet(), 3, 3, undefined, 100, 1e-9);
    expect(end).toBe("solved");
    expect(basic.slice(1).toSorted()).toEqual([0, 1]);
    expect(nonbasic.slice(1).toSorted()).toEqual([2, 3]);
    const valueOf = (element: number) => matrix[basic.indexOf(element, 1) * 3]!;
    expect([valueOf(0), valueOf(1)].map((value) => Math.round(value * 1e12) / 1e12)).toEqual([2, 3]);
    const priceOf = (element: number) => -matrix[nonbasic.indexOf(element, 1)]!;
    expect([priceOf(2), priceOf(3)].map((price) => Math.round(price * 1e12) / 1e12)).toEqual([1.4, 0.2]);
  });

  test("pivots first where it is told to", () => {
    const {end, basic} = runTableau(Float64Array.of(0, 1, 5, 1), 2, 2, [1, 1], 100, 1e-9);
    expect(end).toBe("solved");
    expect(basic[1]).toBe(0);
  });

  test("tells conflict and endlessness", () => {
    expect(runTableau(Float64Array.of(0, -1, -1, 1), 2, 2, undefined, 100, 1e-9).end).toBe("infeasible");
    expect(runTableau(Float64Array.of(0, 1, 1, -1), 2, 2, undefined, 100, 1e-9).end).toBe("unbounded");
  });

  test("counts pivots through the engine's own method, so that no loop is endless", () => {
    expect(runTableau(diet(), 3, 3, undefined, 1, 1e-9).end).toBe("stopped");
  });
});

describe("a solver of many programs of one shape, against HiGHS (npm `highs`)", () => {
  /** The blend with other costs, or with a limit moved, sometimes onto the limit across. */
  function* family(seed: number): Generator<LinearProgram> {
    const random = seededRandom(seed);
    const {program} = blend(12, seed);
    for (let k = 0; k < 20; k++) {
      const moved = Math.floor(random() * program.rows.length);
      const by = k % 2 ? (random() - 0.5) * 0.1 : 0;
      yield {
        variables: program.variables.map((variable) => ({
          ...variable,
          cost: variable.cost * (0.5 + random()),
        })),
        rows: program.rows.map((row, i) =>
          i === moved && row.upper !== undefined && row.upper > (row.lower ?? -Infinity)
            ? {...row, upper: Math.max(row.lower ?? -Infinity, row.upper + by * Math.abs(row.upper))}
            : row,
        ),
      };
    }
  }

  test.each([1, 2, 3, 4, 5])("answers as it does, and mostly from a basis it knows, seed %i", (seed) => {
    const solveOne = solverOfMany();
    const engines: string[] = [];
    for (const program of family(seed)) {
      const outcome = solveOne(program);
      expect(compare(program, outcome, referenceOf(highs, program))).toMatch(/^(optimal|infeasible)$/);
      if (outcome.status === "optimal") engines.push(outcome.engine);
    }
    const quick = engines.filter((engine) => engine !== "javascript-lp-solver").length;
    expect(quick).toBeGreaterThan(engines.length / 2);
  });

  test("keeps the last eight bases, and the simplex goes on from the latest", () => {
    const count = 10;
    /** A batch of 1 in which one of ten costs least. */
    const cheapest = (best: number, batch = 1): LinearProgram => ({
      variables: Array.from({length: count}, (_, j) => ({
        name: `x${j}`,
        cost: j === best ? 1 : 2 + j,
        upper: 3,
      })),
      rows: [{name: "batch", coefficients: Array.from({length: count}, () => 1), lower: batch, upper: batch}],
    });
    const solveOne = solverOfMany();
    const engineOf = (program: LinearProgram) => {
      const outcome = solveOne(program);
      return outcome.status === "optimal" ? outcome.engine : outcome.status;
    };
    // What has no answer leaves no basis to go on from.
    expect(engineOf(cheapest(0, 31))).toBe("infeasible");
    expect(engineOf(cheapest(0))).toBe("javascript-lp-solver");
    expect(engineOf(cheapest(0))).toBe("a basis found before");
    for (let best = 1; best < count; best++)
      expect(engineOf(cheapest(best)), `${best}`).toBe("mixwright simplex");
    // Kept are 9 to 2, and 9 is only once among them; to use one makes it the latest.
    for (const best of [9, 2, 3]) expect(engineOf(cheapest(best)), `${best}`).toBe("a basis found before");
    expect(engineOf(cheapest(1))).toBe("mixwright simplex");
    expect(engineOf(cheapest(2))).toBe("a basis found before");
    expect(engineOf(cheapest(4))).toBe("mixwright simplex");
  });

  test("ends at the deadline of all", () => {
    const {program} = blend(8, 1);
    let left = 1000;
    const solveOne = solverOfMany({left: () => left});
    expect([solveOne(program).status, solveOne(program).status]).toEqual(["optimal", "optimal"]);
    left = 0;
    expect(solveOne(program).status).toBe("undecided");
  });

  test("goes on when the shape changes", () => {
    const solveOne = solverOfMany();
    for (const program of [blend(8, 1).program, blend(12, 2).program, blend(8, 1).program]) {
      expect(compare(program, solveOne(program), referenceOf(highs, program))).toBe("optimal");
    }
  });
});
