import {beforeEach, describe, expect, test, vi} from "vitest";
import {InputError} from "../../lib/core/errors.ts";
import {irreducibleConflict} from "../../lib/lp/explain/conflict.ts";
import {denseForm} from "../../lib/lp/program/dense.ts";
import {engineOf, type Highs, loadHighs} from "../../lib/lp/engines/engine-highs.ts";
import {findBasis} from "../../lib/lp/solve/find-basis.ts";
import type {LinearProgram, Row, Variable} from "../../lib/lp/program/program.ts";
import {provesUnbounded} from "../../lib/lp/proof/proof.ts";
import {scale} from "../../lib/lp/program/scale.ts";
import {solve} from "../../lib/lp/solve/solve.ts";
import {solveAsync} from "../../lib/lp/solve/solve-async.ts";
import {faultsOf} from "../support/optimality.ts";
import {referenceOf} from "../support/reference-lp.ts";
import {within} from "../support/within.ts";

// Which engine answers, when each gives up, and what is made of answers that are worth nothing. The modules run as they are; the
// spies count calls, and let the first engines fail where no small program makes them.
vi.mock("../../lib/lp/engines/engine-highs.ts", {spy: true});
vi.mock("../../lib/lp/solve/find-basis.ts", {spy: true});
vi.mock("../../lib/lp/solve/solve.ts", {spy: true});

const highs = await loadHighs();
beforeEach(() => vi.clearAllMocks());

const variable = (cost: number, lower = 0, upper = Infinity): Variable => ({name: "x", cost, lower, upper});
const whole = (...of: Parameters<typeof variable>): Variable => ({...variable(...of), integer: true});
const row = (coefficients: number[], lower = -Infinity, upper = Infinity): Row => {
  return {name: "row", coefficients, lower, upper};
};
const times = <T>(count: number, one: T): T[] => Array.from({length: count}, () => one);

/** Pairs never fill an odd room, which only trying shows: the trees for 8, 13 have 251, 6863 nodes. */
const oddRoom = (count: number, more = 0, rows = 1): LinearProgram => ({
  variables: [...times(count, whole(1, 0, 1)), ...times(more, variable(1))],
  rows: times(rows, row([...times(count, 2), ...times(more, 0)], count | 1, count | 1)),
});

/** As many whole and other variables, up to 1.5 each, and rows. */
const roomy = (wholes: number, others: number, rows = 1): LinearProgram => ({
  sense: "maximise",
  variables: [...times(wholes, whole(2, 0, 1.5)), ...times(others, variable(1, 0, 1.5))],
  rows: times(rows, row(times(wholes + others, 1), -Infinity, wholes + 1)),
});

/** Worth 50 at most (HiGHS); after 12 linear programs our search knows of a load, but not whether there is a better one. */
const knapsack: LinearProgram = {
  sense: "maximise",
  variables: [9, 11, 13, 15, 18, 7, 8, 20].map((value) => whole(value, 0, 1)),
  rows: [row([6, 7, 9, 10, 12, 5, 5, 14], -Infinity, 33)],
};

/** V. Chvátal, Linear Programming (1983), chapter 1, first example: maximum 13 at (2, 0, 1). */
const chvatal: LinearProgram = {
  sense: "maximise",
  variables: [variable(5), variable(4), variable(3)],
  rows: [row([2, 3, 1], -Infinity, 5), row([4, 1, 2], -Infinity, 11), row([3, 4, 2], -Infinity, 8)],
};

interface Say {
  readonly status: "optimal" | "infeasible" | "unbounded" | "timeLimit";
  readonly point?: readonly number[];
  readonly basis?: {readonly colStatus: readonly number[]; readonly rowStatus: readonly number[]};
}

/** An engine that says what it is told to, one answer a call, and the options that it was asked with. */
function saying(...says: Say[]): {highs: Highs; asked: {time_limit: number}[]} {
  const {constants} = highs;
  const asked: {time_limit: number}[] = [];
  const createModel = () => {
    const {status, point, basis} = says[asked.length]!;
    const info: Record<string, number | undefined> = {
      ...(point && {primal_solution_status: constants.solutionStatus.feasible}),
      ...(basis && {basis_validity: constants.basisValidity.valid}),
    };
    return {
      options: {set: (options: {time_limit: number}) => asked.push(options)},
      run: () => undefined,
      info: {get: (name: string) => info[name] ?? -1},
      getModelStatus: () => constants.modelStatus[status],
      getSolution: () => ({colValue: Float64Array.from(point!)}),
      getBasis: () => basis,
      dispose: () => undefined,
    };
  };
  return {highs: engineOf({constants, createModel} as unknown as Highs), asked};
}

describe("who answers", () => {
  const programs: [string, LinearProgram, string][] = [
    ["3 variables", chvatal, "javascript-lp-solver"],
    ["101 variables by 100 rows, none of them whole", roomy(0, 101, 100), "javascript-lp-solver"],
    ["40 whole variables", roomy(40, 0), "javascript-lp-solver"],
    ["41 whole variables", roomy(41, 0), "HiGHS"],
    ["100 variables by 100 rows", roomy(1, 99, 100), "javascript-lp-solver"],
    ["101 variables by 100 rows", roomy(1, 100, 100), "HiGHS"],
  ];

  test.each(programs)("%s: the same, HiGHS given or loaded, and the optimum", async (_, program, engine) => {
    const {objective} = referenceOf(highs, program);
    const loaded = await solveAsync(program);
    expect(loadHighs).toHaveBeenCalledTimes(engine === "HiGHS" ? 1 : 0);
    const given = [solve(program, {highs}), await solveAsync(program, {highs})];
    expect(loadHighs).toHaveBeenCalledTimes(engine === "HiGHS" ? 1 : 0);
    for (const outcome of [loaded, ...given]) {
      expect(outcome).toMatchObject({status: "optimal", engine});
      if (outcome.status === "optimal") within(outcome.objective, objective, 1e-9 * objective, "objective");
      expect(faultsOf(program, outcome)).toEqual([]);
    }
  });

  test("is our own search alone where HiGHS is not given, however large", () => {
    expect(solve(roomy(41, 0))).toMatchObject({status: "optimal", engine: "javascript-lp-solver"});
  });

  test("is HiGHS after 200 linear programs, or as many as asked for", async () => {
    expect(await solveAsync(oddRoom(8))).toMatchObject({status: "infeasible", engine: "HiGHS"});
    expect(solve(oddRoom(8), {highs})).toMatchObject({status: "infeasible", engine: "HiGHS"});
    const ours = {status: "infeasible", engine: "javascript-lp-solver"};
    expect(solve(oddRoom(8))).toMatchObject(ours);
    expect(await solveAsync(oddRoom(8), {maxNodes: 1000})).toMatchObject(ours);
    expect(solve(oddRoom(8), {highs, maxNodes: 1000})).toMatchObject(ours);
  });

  test("is asked nothing where its options are mistaken", async () => {
    await expect(solveAsync(chvatal, {timeLimit: 0})).rejects.toThrow(InputError);
    await expect(solveAsync(roomy(41, 0), {timeLimit: 0})).rejects.toThrow(InputError);
    expect(() => solve(knapsack, {maxNodes: 0})).toThrow("maxNodes");
  });
});

describe("HiGHS as the last resort of a continuous program", () => {
  const programs: [string, LinearProgram][] = [
    ["optimal", chvatal],
    ["infeasible", {variables: [variable(1, 0, 0.5), variable(2, 0, 0.4)], rows: [row([1, 1], 1)]}],
    ["unbounded", {variables: [variable(-2), variable(1)], rows: [row([1, -1], 0, 0), row([2, -1], 0)]}],
  ];
  test.each(programs)("%s: its basis is proved like any other", (status, program) => {
    vi.mocked(findBasis).mockReturnValueOnce(undefined);
    const outcome = solve(program, {highs});
    expect(outcome).toMatchObject({status, engine: "HiGHS"});
    expect(faultsOf(program, outcome)).toEqual([]);
  });

  const {lower, basic} = highs.constants.basisStatus;
  const useless: [string, Highs | undefined][] = [
    ["that is not there", undefined],
    ["without a basis", saying({status: "timeLimit"}).highs],
    // Every variable at 0, where each of them pays.
    [
      "with a basis that proves nothing",
      saying({status: "optimal", basis: {colStatus: times(3, lower), rowStatus: times(3, basic)}}).highs,
    ],
  ];
  test.each(useless)("an engine %s decides nothing", (_, engine) => {
    vi.mocked(findBasis).mockReturnValueOnce(undefined);
    const reason = expect.stringContaining("no engine");
    expect(solve(chvatal, engine ? {highs: engine} : {})).toEqual({status: "undecided", reason});
  });
});

describe("limits of a search", () => {
  test("are 5000 linear programs by default, fewer where each is large, at least 200", () => {
    const programs: [LinearProgram, number][] = [
      [oddRoom(13), 5000],
      // 3 million, over as many numbers as the table has.
      [oddRoom(13, 87, 100), 300],
      [oddRoom(13, 137, 140), 200],
    ];
    for (const [program, most] of programs) {
      vi.mocked(findBasis).mockClear();
      expect(solve(program, {now: () => 0}).status).toBe("undecided");
      expect(findBasis).toHaveBeenCalledTimes(most);
    }
  });

  test("keep the best so far, unless HiGHS knows better", () => {
    const stopped = solve(knapsack, {maxNodes: 12});
    if (stopped.status !== "undecided" || !stopped.best) throw new Error(stopped.status);
    const {objective, values} = stopped.best;
    const sum = (of: readonly number[]) => of.reduce((total, one, j) => total + one * values[j]!, 0);
    expect(values.every((value) => value === 0 || value === 1)).toBe(true);
    expect(sum(knapsack.rows[0]!.coefficients)).toBeLessThanOrEqual(33);
    expect(sum(knapsack.variables.map(({cost}) => cost))).toBe(objective);
    expect(objective).toBeLessThan(referenceOf(highs, knapsack).objective);
    expect(stopped.reason).toContain("a better answer");
    expect(solve(knapsack, {maxNodes: 12, highs})).toMatchObject({objective: 50, engine: "HiGHS"});
    // The clock is read before each linear program and before each pivot of it.
    const within = (timeLimit: number) => {
      let clock = 1000;
      return solve(knapsack, {now: () => clock++, timeLimit});
    };
    expect(within(1000)).toMatchObject({objective: 50});
    expect(within(5)).toEqual({status: "undecided", reason: expect.stringContaining("without an answer")});
    expect(within(90)).toMatchObject({status: "undecided", best: {values: expect.any(Array)}});
  });

  test("leave HiGHS a part of the time that is left, and nothing of none", () => {
    const ask = (...clock: number[]) => {
      const {highs, asked} = saying({status: "timeLimit"});
      const now = () => (clock.length > 1 ? clock.shift()! : clock[0]!);
      expect(solve(roomy(41, 0), {highs, now, timeLimit: 1000}).status).toBe("undecided");
      return asked.map(({time_limit: seconds}) => seconds);
    };
    // Of 500 ms four fifths, less 0.02 ms for each of 41 columns and 41 entries: what HiGHS takes beyond its limit.
    expect(ask(0, 500)).toEqual([expect.closeTo(0.4 - 82 * 2e-5, 9)]);
    expect(ask(0, 1000)).toEqual([]);
    expect(ask(0, 2000)).toEqual([]);
  });
});

describe("what HiGHS says of whole values", () => {
  const many = times(40, whole(0, 0, 3));
  const endless: LinearProgram = {variables: [whole(-1), ...many], rows: []};
  const nowhere = times(41, 0);

  test("is proved, or at least kept in every limit", () => {
    const {highs: engine} = saying({status: "unbounded"}, {status: "optimal", point: nowhere});
    const outcome = solve(endless, {highs: engine});
    expect(outcome).toMatchObject({status: "unbounded", engine: "HiGHS"});
    expect(faultsOf(endless, outcome)).toEqual([]);
    const none = saying({status: "unbounded"}, {status: "infeasible"});
    expect(solve(endless, {highs: none.highs})).toEqual({status: "infeasible", engine: "HiGHS"});
    const {highs: late} = saying({status: "timeLimit", point: times(41, 1)});
    const best = {objective: 82, values: times(41, 1)};
    expect(solve(roomy(41, 0), {highs: late})).toMatchObject({status: "undecided", best});
  });

  const lies: [string, Say[]][] = [
    ["an optimum without a point", [{status: "optimal"}]],
    ["an optimum beyond a limit", [{status: "optimal", point: times(8, 1)}]],
    ["no end where there is one", [{status: "unbounded"}, {status: "optimal", point: times(8, 0)}]],
    ["no end, but no point", [{status: "unbounded"}, {status: "timeLimit"}]],
  ];
  test.each(lies)("%s: our own best answer stays", (_, says) => {
    const {highs: engine, asked} = saying(...says);
    const ours = solve(knapsack, {maxNodes: 12});
    expect(ours).toHaveProperty("best");
    expect(solve(knapsack, {highs: engine, maxNodes: 12})).toEqual(ours);
    expect(asked).toHaveLength(says.length);
  });

  test("is not taken for an endless improvement without a point or without a ray", () => {
    const pointless = saying({status: "unbounded"}, {status: "timeLimit"});
    expect(solve(endless, {highs: pointless.highs}).status).toBe("undecided");
    const rayless = saying({status: "unbounded"}, {status: "optimal", point: nowhere});
    vi.mocked(findBasis).mockReturnValueOnce(undefined);
    expect(solve(endless, {highs: rayless.highs}).status).toBe("undecided");
  });

  test("is not needed where one variable has no whole value, and one fixed at a whole value has", () => {
    const {highs: silent, asked} = saying();
    const crossed = {variables: [...many, whole(1, 0.2, 0.8)], rows: []};
    expect(solve(crossed, {highs: silent})).toEqual({status: "infeasible", engine: "HiGHS"});
    expect(asked).toEqual([]);
    expect(solve({variables: [...many, whole(1, 2, 2)], rows: []}, {highs})).toMatchObject({objective: 2});
  });
});

describe("outcomes in the caller's units", () => {
  test("have rays whose longest step is 1", () => {
    // Along y = 1000 x both rows hold.
    const program: LinearProgram = {
      sense: "maximise",
      variables: [variable(0), variable(1)],
      rows: [row([1000, -1], 0), row([-1e6, 1000], -Infinity, 8)],
    };
    const outcome = solve(program);
    expect(faultsOf(program, outcome)).toEqual([]);
    if (outcome.status !== "unbounded") throw new Error(outcome.status);
    expect(outcome.ray[1]).toBe(1);
    within(outcome.ray[0], 0.001, 1e-15, "x for each unit of y");
  });

  test("are degenerate where a value that follows from others meets a limit, not where only the others do", () => {
    const degenerate = (program: LinearProgram) => {
      const outcome = solve(program);
      return outcome.status === "optimal" ? outcome.degenerate : outcome.status;
    };
    // x + y = 1 and x + 2 y = 1 leave (1, 0): they hold y, which would pay for more, and its limit of 0 is met by chance.
    const crossing = [row([1, 1], 1, 1), row([1, 2], 1, 1)];
    expect(degenerate({variables: [variable(1), variable(-5)], rows: crossing})).toBe(true);
    expect(degenerate({variables: [variable(1), variable(-5, -1)], rows: crossing})).toBe(false);
    expect(degenerate(chvatal)).toBe(false);
    expect(degenerate(knapsack)).toBe(false);
  });

  test("have no price of -0", () => {
    const program: LinearProgram = {
      sense: "maximise",
      variables: [variable(1), variable(0)],
      rows: [row([1, 0], -Infinity, 2), row([0, 1], -Infinity, 4)],
    };
    expect(solve(program)).toMatchObject({duals: [1, 0], reducedCosts: [0, 0]});
  });
});

describe("conflicts", () => {
  const lower = (index: number) => ({of: "row", index, side: "lower"});
  const upper = (index: number) => ({of: "row", index, side: "upper"});

  test("take one program for what they are, and one for each limit that the proof uses", () => {
    // x >= 10 and x <= 2, in millionths. Of x the proof leaves 3 x 0.3 - 0.9, not 0 in binary: that is no use of x >= 0.
    const program: LinearProgram = {
      variables: times(2, variable(1, 0, 1e-3)),
      rows: [row([0, 1], 1e-6, 2e-6), row([0.3, 0], 3e-6), row([0.9, 0], 0, 1.8e-6), row([1, 1], 0, 1e-3)],
    };
    expect(irreducibleConflict(program)).toEqual({limits: [lower(1), upper(2)], irreducible: true});
    expect(solve).toHaveBeenCalledTimes(3);
  });

  test("say where a program stayed undecided", () => {
    const room = oddRoom(8);
    const half: LinearProgram = {
      variables: [whole(1, 0, 1), ...room.variables],
      rows: [
        row([2, ...times(8, 0)], 1, 1),
        ...room.rows.map((one) => ({...one, coefficients: [0, ...one.coefficients]})),
      ],
    };
    const isHard = ({of}: {of: string}) => of === "variable";
    // Twice a whole number is never 1. Without that, the room that pairs never fill is a conflict too, if there is time to see it.
    const hasty = irreducibleConflict(half, isHard, {maxNodes: 20});
    expect(hasty).toEqual({limits: [lower(0), upper(0)], irreducible: false});
    expect(irreducibleConflict(half, isHard)).toEqual({limits: [lower(1), upper(1)], irreducible: true});
  });

  test("need no search where the program without whole values has none either", () => {
    const room = oddRoom(13);
    const three = {...room, rows: [row([1, 1, ...times(11, 0)], 3), ...room.rows]};
    const isHard = ({of}: {of: string}) => of === "variable";
    // Two variables up to 1 never make 3, whole or not.
    expect(irreducibleConflict(three, isHard)).toEqual({limits: [lower(0)], irreducible: true});
  });

  test("end at the deadline with what is known by then", () => {
    const room = oddRoom(8);
    const isHard = ({of}: {of: string}) => of === "variable";
    const asked = (calls: number) => {
      vi.mocked(solve).mockClear();
      const left = () => calls - vi.mocked(solve).mock.calls.length;
      return irreducibleConflict(room, isHard, {deadline: {left}});
    };
    const both = [lower(0), upper(0)];
    expect(asked(1)).toBeUndefined();
    expect(asked(3)).toEqual({limits: both, irreducible: false});
    expect(asked(20)).toEqual({limits: both, irreducible: true});
  });
});

describe("programs at the edge of the tolerance", () => {
  const found = (variables: Variable[], rows: Row[]) => findBasis(denseForm({variables, rows}))?.proof;
  const edge = 1 - 1.2e-9;
  const edges: [string, (cost: number) => [Variable[], Row[]]][] = [
    ["rows", (cost) => [[variable(cost)], [row([1], 1), row([1], -Infinity, edge)]]],
    ["a variable below a row", (cost) => [[variable(cost, -Infinity, edge)], [row([1], 1)]]],
    ["a variable above a row", (cost) => [[variable(cost, 1)], [row([1], -Infinity, edge)]]],
  ];
  // 1.2e-9 apart, more than the 1e-9 that a limit may be missed by and less than the 2e-9 that prove a conflict of two. The point is
  // 0.5e-9 beyond the limit that its cost drives it to, 0.7e-9 beyond the other.
  test.each(edges.flatMap(([name, of]) => [1, -1].map((cost) => [name, cost, of] as const)))(
    "%s, cost %i: each limit gives half of the tolerance",
    (_, cost, of) => {
      const proof = found(...of(cost));
      if (proof?.status !== "optimal") throw new Error(proof?.status);
      within(proof.values[0], cost > 0 ? 1 - 0.5e-9 : edge + 0.5e-9, 1e-15, "x");
      within(proof.figures.residual, 0.7e-9, 1e-15, "miss of the program's own limits");
    },
  );

  test("is by the size of a limit above 1", () => {
    // x + z1 ... z20 >= 10, x <= 10 - 21.5e-9, z <= 0: half of the tolerance makes 5e-9 of each limit of 10, 0.5e-9 of each 0; the 1.5e-9
    // that are left, and 5e-9, count for 0.65e-9 beside 10.
    const beyond = (miss: number) =>
      found(
        [variable(1), ...times(20, variable(0, -1, 0))],
        [row(times(21, 1), 10), row([1, ...times(20, 0)], -Infinity, 10 - miss)],
      );
    const proof = beyond(21.5e-9);
    if (proof?.status !== "optimal") throw new Error(proof?.status);
    within(proof.figures.residual, 0.65e-9, 1e-14, "miss of the program's own limits");
    expect(beyond(23e-9)?.status).toBe("infeasible");
  });

  test("may have no end, and may stay undecided", () => {
    const rows = [row([1, 0], 1), row([1, 0], -Infinity, edge)];
    expect(found([variable(0), variable(-1)], rows)?.status).toBe("unbounded");
    // x >= 1e12 by a coefficient that is too small to divide by.
    expect(found([variable(0), variable(1)], [row([1e-12, 0], 1)])).toBeUndefined();
  });
});

describe("scaling", () => {
  const program: LinearProgram = {
    variables: [variable(3, 0, 6), variable(40, 1), variable(0.05, 0, 1024)],
    rows: [row([100, 1, 0.3], -Infinity, 800), row([0, 0.01, 0], 0.02, 0.04)],
  };

  test("is that of a worked example", () => {
    // Rows: 100 and 0.01 are nearest to 2^7 and 2^-7. Columns after that: 0.78, 1.28 and 0.0023, nearest to 1, 1 and 2^-9. Limits then:
    // 6, 1, 2 and 6.25, 2.56, 5.12; the middle one (the upper of two), 5.12, is nearest to 4. Costs then: 12, 160, 102.4; nearest to 2^7.
    const {column, row: rows, objective, dense} = scale(denseForm(program));
    expect([...column]).toEqual([4, 4, 2048]);
    expect([...rows]).toEqual([512, 1 / 32]);
    expect(objective).toBe(128);
    expect([...dense.cost]).toEqual([12 / 128, 160 / 128, (0.05 * 2048) / 128]);
    expect([...dense.matrix]).toEqual([100 / 128, 1 / 128, 0.3 * 4, 0, 1.28, 0]);
    expect([...dense.upper]).toEqual([1.5, Infinity, 0.5]);
    expect([...dense.rowUpper]).toEqual([800 / 512, 1.28]);
  });

  test("leaves the unit of the limits where nothing costs", () => {
    const free = {...program, variables: program.variables.map((one) => ({...one, cost: 0}))};
    expect(scale(denseForm(free)).objective).toBe(4);
  });
});

describe("numbers of very different size", () => {
  test("leave it undecided where HiGHS gives up by an error", () => {
    const program: LinearProgram = {
      variables: [variable(0, 0, 0.5), variable(0), variable(-1)],
      rows: [row([-1e-5, -1e-5, 1e-6], -Infinity, 1e4), row([1, 0, 0], -Infinity, 1), row([1, 0, 0], 0, 0)],
    };
    // The second and third variable can grow together: the truth is unbounded, and undecided is no lie.
    expect(["undecided", "unbounded"]).toContain(solve(program, {highs}).status);
  });

  test("do not hide a row of nothing that must be something", () => {
    const program: LinearProgram = {
      variables: [variable(-1), variable(0)],
      rows: [row([1e-7, 1e-5], 1e4), row([0, 0], 1)],
    };
    expect(solve(program, {highs}).status).toBe("infeasible");
    expect(solve(program).status).toBe("infeasible");
  });
});

describe("a proof that a program has no end", () => {
  /** Two variables free upwards, the second costs nothing. */
  const endless = denseForm({variables: [variable(-1), variable(0)], rows: [row([1, -1], -Infinity, 5)]});
  const proves = (...ray: number[]) => provesUnbounded(endless, Float64Array.from(ray));

  test("is a way that gains, and keeps every limit for ever", () => {
    expect(proves(1, 1)).toBe(true);
    expect(proves(1e6, 2e6)).toBe(true);
    expect(proves(1, 0)).toBe(false); // the row ends it
    expect(proves(-1, 0)).toBe(false); // nothing is below 0
  });

  test("is none without a gain, of no length, or of a gain that is only rounding", () => {
    expect(proves(0, 1)).toBe(false);
    expect(proves(0, 0)).toBe(false);
    expect(proves(1e-12, 1)).toBe(false);
    // Gains of 1 and -1 cancel but for the last digits: what is left is no gain beside their sizes.
    const cancelling = denseForm({variables: [variable(-1), variable(1 - 1e-12)], rows: []});
    expect(provesUnbounded(cancelling, Float64Array.of(1, 1))).toBe(false);
    expect(provesUnbounded(cancelling, Float64Array.of(1, 0.5))).toBe(true);
    // Small throughout is as good as large.
    expect(proves(1e-7, 1e-7)).toBe(true);
  });
});
