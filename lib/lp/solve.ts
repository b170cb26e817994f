import {InputError} from "../core/errors.ts";
import {denseForm, type Dense} from "./dense.ts";
import {type Highs, loadHighs} from "./engine-highs.ts";
import {expectProgram} from "./expect-program.ts";
import {findBasis, type Found} from "./find-basis.ts";
import {fixWhole} from "./fix-whole.ts";
import {searchWhole, wholeBounds, type WholeSearch} from "./integer.ts";
import {continuousOutcome, wholeOutcome} from "./outcome.ts";
import type {LinearProgram, Outcome} from "./program.ts";
import {verdictOf} from "./verdict.ts";
import {scale, type Scaled} from "./scale.ts";

/** How long to search and with what. */
export interface SolveOptions {
  /** Most linear programs to solve in a search for whole values; default 200 to 5000 by the size of the program, or 200 where HiGHS is at hand. */
  readonly maxNodes?: number;
  /** Milliseconds that a search for whole values may take; default 2000. Without a clock it limits HiGHS alone. */
  readonly timeLimit?: number;
  /** A clock in milliseconds, such as `performance.now`, for the time limit. */
  readonly now?: () => number;
  /** HiGHS, from `loadHighs`: asked about large programs with whole values, and wherever the first engine leaves a program undecided. */
  readonly highs?: Highs;
}

/**
 * Solves a linear program, also with whole values, and proves the answer from the program's own numbers before it is returned:
 * an optimum by its prices (of programs with whole values only the point is checked), a conflict by multipliers that
 * show it, an endless improvement by its ray.
 *
 * javascript-lp-solver proposes a basis; where that proves nothing, a simplex of our own goes on from there.
 *
 * @throws InputError for numbers that are not finite, rows of the wrong length, crossed limits
 */
export function solve(program: LinearProgram, options: SolveOptions = {}): Outcome {
  const {timeLimit = 2000, maxNodes} = options;
  if (!(timeLimit > 0))
    throw new InputError("timeLimit", "not a time", timeLimit, "give milliseconds above 0");
  if (maxNodes !== undefined && !(maxNodes > 0)) {
    throw new InputError("maxNodes", "not a count", maxNodes, "give a whole number above 0");
  }
  const scaled = scale(denseForm(program));
  const integer = wholeVariables(program);
  if (integer.length > 0) return solveWhole(program, scaled, integer, {...options, timeLimit});
  const found =
    findBasis(scaled.dense) ?? (options.highs && basisByHighs(options.highs, scaled.dense, timeLimit));
  if (found) return continuousOutcome(program, scaled, found);
  return {status: "undecided", reason: "no engine found a basis that proves an optimum, a conflict or a ray"};
}

/**
 * As `solve`, but loads HiGHS where it is needed: for large programs with whole values, at a time limit, and for whatever would
 * stay undecided.
 */
export async function solveAsync(program: LinearProgram, options: SolveOptions = {}): Promise<Outcome> {
  expectProgram(program);
  if (!options.highs && !isLarge(program, wholeVariables(program).length)) {
    const outcome = solve(program, {...options, maxNodes: options.maxNodes ?? NODES_BEFORE_HIGHS});
    if (outcome.status !== "undecided") return outcome;
  }
  return solve(program, {...options, highs: options.highs ?? (await loadHighs())});
}

/** Linear programs to solve before HiGHS takes over a search. */
const NODES_BEFORE_HIGHS = 200;

/** Linear programs to solve without HiGHS at hand: fewer where each is large, so that the search ends within seconds. */
function mostNodes({variables, rows}: LinearProgram): number {
  return Math.round(Math.min(5000, Math.max(200, 3e6 / (variables.length * rows.length))));
}

/** Share of the time limit given to HiGHS, which looks at its clock only now and then. */
const HIGHS_SHARE = 0.8;

/** Programs with whole values of this size go to HiGHS at once: our own search would solve too large a table at each node. */
function isLarge({variables, rows}: LinearProgram, whole: number): boolean {
  return whole > 0 && (whole > 40 || variables.length * rows.length > 10_000);
}

function wholeVariables({variables}: LinearProgram): number[] {
  return variables.flatMap(({integer}, j) => (integer ? [j] : []));
}

function basisByHighs(highs: Highs, dense: Dense, timeLimit: number): Found | undefined {
  const {basis} = highs.ask(dense, [], new Float64Array(dense.columns), timeLimit);
  const verdict = basis && verdictOf(dense, basis);
  return basis && verdict && {verdict, basis, engine: "HiGHS"};
}

function solveWhole(
  program: LinearProgram,
  scaled: Scaled,
  integer: readonly number[],
  {highs, now, timeLimit, maxNodes}: SolveOptions & {readonly timeLimit: number},
): Outcome {
  const end = now && now() + timeLimit;
  const left = () => (end === undefined ? timeLimit : end - now!());
  let search: WholeSearch = {status: "stopped"};
  if (!highs || !isLarge(program, integer.length)) {
    const limits = {
      maxNodes: maxNodes ?? (highs ? NODES_BEFORE_HIGHS : mostNodes(program)),
      timeUp: () => left() <= 0,
    };
    search = searchWhole(scaled, integer, limits);
    if (search.status !== "stopped") return wholeOutcome(program, scaled, search, "javascript-lp-solver");
  }
  if (highs && left() > 0) {
    const byHighs = searchByHighs(highs, scaled, integer, HIGHS_SHARE * left());
    if (byHighs.status !== "stopped" || byHighs.best) return wholeOutcome(program, scaled, byHighs, "HiGHS");
  }
  return wholeOutcome(program, scaled, search, "javascript-lp-solver");
}

/** HiGHS chooses the whole values; the rest is solved and proved anew with these fixed. */
function searchByHighs(
  highs: Highs,
  scaled: Scaled,
  integer: readonly number[],
  timeLimit: number,
): WholeSearch {
  const {column} = scaled;
  // HiGHS 1.15.3 misses optima where a whole variable has a fractional bound: bounds go inwards first.
  const dense = {...scaled.dense, ...wholeBounds(scaled.dense, column, integer)};
  if (integer.some((j) => dense.lower[j]! > dense.upper[j]!)) return {status: "infeasible"};
  const {status, values} = highs.ask(dense, integer, column, timeLimit);
  if (status === "infeasible") return {status};
  if (status === "unbounded") {
    const relaxed = findBasis(dense)?.verdict;
    const point = highs.ask({...dense, cost: new Float64Array(dense.columns)}, integer, column, timeLimit);
    if (point.status === "infeasible") return {status: "infeasible"};
    const whole = point.values && fixWhole(dense, column, integer, point.values);
    return whole && relaxed?.status === "unbounded" ? {status, ray: relaxed.ray} : {status: "stopped"};
  }
  const best = values && fixWhole(dense, column, integer, values);
  return best ? {status, best} : {status: "stopped"};
}
