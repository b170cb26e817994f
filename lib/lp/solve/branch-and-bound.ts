import {beforeTime, type Deadline} from "../program/deadline.ts";
import type {DenseProgram} from "../program/dense.ts";
import type {Scaled} from "../program/scale.ts";
import {findBasis} from "./find-basis.ts";
import {fixWhole, type WholePoint} from "./fix-whole.ts";

/** End of a search for whole values; values are in scaled units. */
export interface WholeSearch {
  readonly status: "optimal" | "infeasible" | "unbounded" | "stopped";
  /** The best point found. */
  readonly best?: WholePoint;
  readonly ray?: Float64Array;
  /** Name of the engine that found it, where that is not the one first asked. */
  readonly engine?: string;
}

/** When to give up a search. */
export interface SearchLimits {
  readonly maxNodes: number;
  /** Looked at before each node and within each. */
  readonly deadline: Deadline;
}

/** Distance from a whole number that counts as none. */
export const FRACTION = 1e-7;

/** Improvement that is not worth a search, relative to the objective. */
const GAP = 1e-9;

interface Node {
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  readonly bound: number;
}

/**
 * Branch and bound over proved relaxations: a branch is dropped only when its own linear program is proved infeasible or proved no
 * better than the best whole answer.
 *
 * Goes deep until a first whole answer is found, then on with the most promising branch. Yields before each branch.
 *
 * Source: A. H. Land & A. G. Doig, An automatic method of solving discrete programming problems, Econometrica 28 (1960).
 */
export function* branchAndBound(
  {dense, column}: Scaled,
  integer: readonly number[],
  limits: SearchLimits,
): Generator<void, WholeSearch> {
  const open: Node[] = [{...wholeBounds(dense, column, integer), bound: -Infinity}];
  let best: {readonly point: WholePoint; readonly objective: number} | undefined;
  for (let nodes = 0; open.length > 0; nodes++) {
    const node = takeNext(open, best !== undefined);
    if (best && node.bound >= best.objective - GAP * Math.max(1, Math.abs(best.objective))) continue;
    yield;
    const stopped: WholeSearch = {status: "stopped", ...(best && {best: best.point})};
    if (nodes >= limits.maxNodes || !(limits.deadline.left() > 0)) return stopped;
    if (integer.some((j) => node.lower[j]! > node.upper[j]!)) continue;
    const relaxed = {...dense, lower: node.lower, upper: node.upper};
    const proof = beforeTime(
      () => findBasis(relaxed, limits.deadline)?.proof,
      () => undefined,
    );
    if (!proof) return stopped;
    if (proof.status === "infeasible") continue;
    if (proof.status === "unbounded") return yield* unbounded({dense, column}, integer, limits, proof.ray);
    const objective = dot(dense.cost, proof.values);
    if (best && objective >= best.objective - GAP * Math.max(1, Math.abs(best.objective))) continue;
    const split = mostFractional(proof.values, column, integer);
    if (split === undefined) {
      const fixed = beforeTime(
        () => fixWhole(dense, column, integer, proof.values, limits.deadline),
        () => undefined,
      );
      if (!fixed) return stopped;
      best = {point: fixed, objective};
      continue;
    }
    const value = proof.values[split]! * column[split]!;
    const below = {
      lower: node.lower,
      upper: withEntry(node.upper, split, Math.floor(value) / column[split]!),
      bound: objective,
    };
    const above = {
      lower: withEntry(node.lower, split, Math.ceil(value) / column[split]!),
      upper: node.upper,
      bound: objective,
    };
    if (value - Math.floor(value) < 0.5) open.push(above, below);
    else open.push(below, above);
  }
  return best ? {status: "optimal", best: best.point} : {status: "infeasible"};
}

/** A relaxation without end settles nothing until a whole point is known: then, with rational numbers, the ray holds too. */
function* unbounded(
  {dense, column}: Pick<Scaled, "dense" | "column">,
  integer: readonly number[],
  limits: SearchLimits,
  ray: Float64Array,
): Generator<void, WholeSearch> {
  const anyPoint = {dense: {...dense, cost: new Float64Array(dense.columns)}, column};
  const {status} = yield* branchAndBound(anyPoint as Scaled, integer, limits);
  return status === "optimal" ? {status: "unbounded", ray} : {status};
}

/** The bounds of the variables, those of whole ones moved inwards to whole values; they may then cross. */
export function wholeBounds(
  dense: DenseProgram,
  column: Float64Array,
  integer: readonly number[],
): Pick<Node, "lower" | "upper"> {
  const [lower, upper] = [dense.lower.slice(), dense.upper.slice()];
  for (const j of integer) {
    lower[j] = Math.ceil(lower[j]! * column[j]! - FRACTION) / column[j]!;
    upper[j] = Math.floor(upper[j]! * column[j]! + FRACTION) / column[j]!;
  }
  return {lower, upper};
}

function takeNext(open: Node[], haveAnswer: boolean): Node {
  if (!haveAnswer) return open.pop()!;
  let best = open.length - 1;
  for (let k = 0; k < open.length; k++) if (open[k]!.bound < open[best]!.bound) best = k;
  return open.splice(best, 1)[0]!;
}

function mostFractional(
  values: Float64Array,
  column: Float64Array,
  integer: readonly number[],
): number | undefined {
  let [largest, split]: [number, number | undefined] = [FRACTION, undefined];
  for (const j of integer) {
    const value = values[j]! * column[j]!;
    const fraction = Math.abs(value - Math.round(value));
    if (fraction > largest) [largest, split] = [fraction, j];
  }
  return split;
}

function withEntry(entries: Float64Array, index: number, value: number): Float64Array {
  const copy = entries.slice();
  copy[index] = value;
  return copy;
}

function dot(a: Float64Array, b: Float64Array): number {
  let total = 0;
  for (let k = 0; k < a.length; k++) total += a[k]! * b[k]!;
  return total;
}
