import {expectFunction, expectOptions, expectRecord} from "../../core/shape.ts";
import {InputError} from "../../core/errors.ts";
import {beforeTime, type Deadline, deadlineIn, partOfTime, USUAL_TIME} from "../program/deadline.ts";
import {denseForm, type DenseProgram} from "../program/dense.ts";
import type {Highs} from "../engines/engine-highs.ts";
import {findBasis, type Found} from "./find-basis.ts";
import {fixWhole} from "./fix-whole.ts";
import {branchAndBound, wholeBounds, type WholeSearch} from "./branch-and-bound.ts";
import {continuousOutcome, wholeOutcome} from "./outcome.ts";
import type {LinearProgram, Outcome} from "../program/program.ts";
import {proofOf} from "../proof/proof-of.ts";
import {scale, type Scaled} from "../program/scale.ts";

/** Time to search and engines to search with. */
export interface SolveOptions {
  /** Most linear programs to solve in a search for whole values; default 200 to 5000 by the size of the program, or 200 where HiGHS is at hand. */
  readonly maxNodes?: number;
  /** Milliseconds that the whole call may take, above 0; default 10,000. `balance` has one of its own for all that it does. */
  readonly timeLimit?: number;
  /** A clock in milliseconds for the time limit; default `performance.now`, where there is one. */
  readonly now?: () => number;
  /** The time of a longer run that this call is part of: `timeLimit` and `now` then count for nothing. */
  readonly deadline?: Deadline;
  /** HiGHS, from `loadHighs`: asked about large programs, and wherever the first engine leaves a program undecided. */
  readonly highs?: Highs;
}

/**
 * Solves a linear program, also with whole values, and proves the answer from the program's own numbers before it is returned:
 * an optimum by its prices (of programs with whole values only the point is checked), a conflict by multipliers that
 * show it, an endless improvement by its ray.
 *
 * javascript-lp-solver proposes a basis; where that proves nothing, a simplex of our own goes on from there. At the time limit the
 * answer is `undecided`.
 *
 * @throws InputError for numbers that are not finite, rows of the wrong length, crossed limits, and a lower limit of 1e20 or more or an
 *   upper one of -1e20 or less, which leaves no number
 *
 * @example
 * ```ts
 * solve({
 *   variables: [
 *     {name: "x", cost: 3},
 *     {name: "y", cost: 1},
 *   ],
 *   rows: [
 *     {name: "enough", coefficients: [1, 1], lower: 4},
 *     {name: "of both", coefficients: [1, -1], lower: 0},
 *   ],
 * }); // => {status: "optimal", objective: 8, values: [2, 2]}
 * ```
 */
export function solve(program: LinearProgram, options: SolveOptions = {}): Outcome {
  const steps = solveSteps(program, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** {@link solve} in steps: one for each branch of a search for whole values. */
export function* solveSteps(program: LinearProgram, options: SolveOptions = {}): Generator<void, Outcome> {
  expectSolveOptions(options);
  const {timeLimit = USUAL_TIME, now, highs} = options;
  const deadline = options.deadline ?? deadlineIn(timeLimit, now);
  const scaled = beforeTime(
    () => scale(denseForm(program, deadline), deadline),
    () => undefined,
  );
  if (!scaled) return LATE;
  const integer = wholeVariables(program);
  if (integer.length > 0) return yield* solveWhole(program, scaled, integer, {...options, deadline});
  return beforeTime(
    () => {
      const found = basisOf(scaled.dense, deadline, highs);
      if (found) return continuousOutcome(program, scaled, found);
      return {
        status: "undecided",
        reason: "no engine found a basis that proves an optimum, a conflict or a ray",
      };
    },
    () => LATE,
  );
}

/** Outcome of a program that time ran out on. */
const LATE: Outcome = {status: "undecided", reason: "the time limit came before an answer"};

/** From so many coefficients on HiGHS, where it is at hand, is asked first: a dense table takes longer. */
const FOR_HIGHS = 200_000;

function basisOf(dense: DenseProgram, deadline: Deadline, highs: Highs | undefined): Found | undefined {
  const first = highs && dense.columns * dense.rows > FOR_HIGHS;
  return (
    (first ? basisByHighs(highs, dense, partOfTime(deadline, 0.5)) : undefined) ??
    findBasis(dense, deadline) ??
    (first || !highs ? undefined : basisByHighs(highs, dense, deadline))
  );
}

const SOLVE_OPTIONS = ["maxNodes", "timeLimit", "now", "deadline", "highs"] satisfies (keyof SolveOptions)[];

/**
 * Refuses options of a solver that have no effect, and a count or a time that is no number above 0.
 *
 * @throws InputError naming the option
 */
export function expectSolveOptions(options: SolveOptions, place = "options"): void {
  expectOptions(options, SOLVE_OPTIONS, place);
  const {timeLimit, maxNodes, now, deadline, highs} = options;
  if (timeLimit !== undefined && !(typeof timeLimit === "number" && timeLimit > 0))
    throw new InputError("timeLimit", "not a time", timeLimit, "give milliseconds above 0");
  if (maxNodes !== undefined && !(Number.isFinite(maxNodes) && maxNodes > 0))
    throw new InputError("maxNodes", "not a count", maxNodes, "give a whole number above 0");
  if (now !== undefined) expectFunction(now, "now");
  if (deadline !== undefined) expectFunction(deadline.left, "deadline.left");
  if (highs !== undefined) expectRecord(highs, "highs", "give what loadHighs() returned");
}

/** Linear programs to solve before HiGHS takes over a search. */
export const NODES_BEFORE_HIGHS = 200;

/** Share of the time for our own search where HiGHS can follow. */
export const OWN_SHARE = 0.3;

/** Share of the time left for the search by HiGHS: what it finds is solved and proved anew. */
const HIGHS_SHARE = 0.8;

/** Linear programs to solve without HiGHS at hand: fewer where each is large, so that the search ends within seconds. */
function mostNodes({variables, rows}: LinearProgram): number {
  return Math.round(Math.min(5000, Math.max(200, 3e6 / (variables.length * rows.length))));
}

/** Programs with whole values of this size go to HiGHS at once: our own search would solve too large a table at each node. */
export function isLarge({variables, rows}: LinearProgram, whole: number): boolean {
  return whole > 0 && (whole > 40 || variables.length * rows.length > 10_000);
}

/** Indices of the variables that must be whole. */
export function wholeVariables({variables}: LinearProgram): number[] {
  return variables.flatMap(({integer}, j) => (integer ? [j] : []));
}

function basisByHighs(highs: Highs, dense: DenseProgram, deadline: Deadline): Found | undefined {
  if (!(deadline.left() > 0)) return undefined;
  const {basis} = highs.ask(dense, [], new Float64Array(dense.columns), deadline);
  const proof = basis && proofOf(dense, basis, deadline);
  return basis && proof && {proof, basis, engine: "HiGHS"};
}

function* solveWhole(
  program: LinearProgram,
  scaled: Scaled,
  integer: readonly number[],
  {highs, deadline, maxNodes}: SolveOptions & {readonly deadline: Deadline},
): Generator<void, Outcome> {
  let search: WholeSearch = {status: "stopped"};
  if (!highs || !isLarge(program, integer.length)) {
    const limits = {
      maxNodes: maxNodes ?? (highs ? NODES_BEFORE_HIGHS : mostNodes(program)),
      deadline: highs ? partOfTime(deadline, OWN_SHARE) : deadline,
    };
    search = yield* branchAndBound(scaled, integer, limits);
    if (search.status !== "stopped") return wholeOutcome(program, scaled, search, "javascript-lp-solver");
  }
  yield;
  if (highs && deadline.left() > 0) {
    const byHighs = beforeTime(
      () => searchByHighs(highs, scaled, integer, deadline),
      (): WholeSearch => ({status: "stopped"}),
    );
    if (byHighs.status !== "stopped" || byHighs.best)
      return wholeOutcome(program, scaled, byHighs, byHighs.engine ?? "HiGHS");
  }
  return wholeOutcome(program, scaled, search, "javascript-lp-solver");
}

/** HiGHS chooses the whole values; the rest is solved and proved anew with these fixed. */
function searchByHighs(
  highs: Highs,
  scaled: Scaled,
  integer: readonly number[],
  deadline: Deadline,
): WholeSearch {
  const search = partOfTime(deadline, HIGHS_SHARE);
  const {column} = scaled;
  // HiGHS 1.15.3 misses optima where a whole variable has a fractional bound: bounds go inwards first.
  const dense = {...scaled.dense, ...wholeBounds(scaled.dense, column, integer)};
  if (integer.some((j) => dense.lower[j]! > dense.upper[j]!)) return {status: "infeasible"};
  // A small program is first solved without whole values: if even that is infeasible, its proof is quick. Large ones go to HiGHS at once.
  const small = dense.columns * dense.rows <= FOR_HIGHS;
  const relaxing = partOfTime(deadline, OWN_SHARE);
  const relaxation = small
    ? beforeTime(
        () => findBasis(dense, relaxing),
        () => undefined,
      )
    : undefined;
  if (relaxation?.proof.status === "infeasible") return {status: "infeasible", engine: relaxation.engine};
  const {status, values} = highs.ask(dense, integer, column, search);
  if (status === "infeasible") return {status};
  if (status === "unbounded") {
    if (!(search.left() > 0)) return {status: "stopped"};
    const relaxed = (small ? relaxation : findBasis(dense, deadline))?.proof;
    const point = highs.ask({...dense, cost: new Float64Array(dense.columns)}, integer, column, search);
    if (point.status === "infeasible") return {status: "infeasible"};
    const whole = point.values && fixWhole(dense, column, integer, point.values, deadline);
    return whole && relaxed?.status === "unbounded" ? {status, ray: relaxed.ray} : {status: "stopped"};
  }
  const best = values && fixWhole(dense, column, integer, values, deadline);
  return best ? {status, best} : {status: "stopped"};
}
