import type {Deadline} from "../../lp/program/deadline.ts";
import {solverOfMany} from "../../lp/solve/solve-again.ts";
import {atLeastAsGood, optimiseOne, type Optimised, type Search} from "./optimise-one.ts";
import type {Aim, Brief} from "../brief/brief.ts";
import type {Formulation} from "../program/formulate.ts";
import type {FoundMix, RawFront} from "./front-mix.ts";
import {distance, offLine, type Point, sizeOf} from "./hull.ts";
import type {Steps} from "../../core/in-chunks.ts";
import {valueOf} from "../measure/of-subject.ts";

/** Distance of a piece's middle from its line beyond which the piece is halved, as a share of the front's size. */
const STRAIGHT = 1e-3;

/** Number of times that every piece is halved, and the most that one may be. */
const LEAST_DEPTH = 2;
const MOST_DEPTH = 10;

/** Room for rounding where one value is held while another is sought, relative to the value or 1. */
const ROOM = 1e-8;

/** Distance below which two points count as one, as a share of the front's size. */
const ONE = 1e-6;

/**
 * The front between a freezing point or scoop temperature and anything else: the best of one thing at chosen values of the
 * other. Each point is exact, since a limit on a temperature is a linear row. Between them the front bends; halving, across
 * the longer side of a piece, goes on where it does.
 */
export function* sampledFront(
  brief: Brief,
  formulation: Formulation,
  x: Aim,
  y: Aim,
  deadline?: Deadline,
): Steps<RawFront> {
  let solved = 0;
  const search: Search = {
    brief,
    formulation,
    solver: solverOfMany(deadline),
    count: () => ({solved: ++solved}),
  };
  const ends: FoundMix[] = [];
  for (const [first, second] of [
    [x, y],
    [y, x],
  ] as const) {
    const best = yield* optimiseOne(search, first);
    if ("status" in best) return best;
    // A freezing point or scoop temperature is found to 1e-9 °C, so a weighted sum may be held to no less.
    const room = ROOM * Math.max(1, Math.abs(best.value));
    const both = yield* optimiseOne(search, second, [atLeastAsGood(first, best.value, brief, room)]);
    if ("status" in both) return both;
    ends.push(pointOf(x, y, both));
  }
  const [from, to] = ends as [FoundMix, FoundMix];
  const size = sizeOf(ends);
  if (distance(from, to, size) <= ONE) return {points: [from], error: 0};
  const points = [from];
  let error = 0;
  const ahead = [{to, depth: 0}];
  while (ahead.length > 0) {
    const {to, depth} = ahead.pop()!;
    const here = points.at(-1)!;
    const found = yield* middleOf(search, x, y, here, to, size);
    if ("status" in found) return found;
    const middle = pointOf(x, y, found);
    const isEnd = distance(here, middle, size) <= ONE || distance(middle, to, size) <= ONE;
    const off = offLine(here, to, middle, size);
    if (!isEnd && (depth < LEAST_DEPTH || (off > STRAIGHT && depth < MOST_DEPTH))) {
      ahead.push({to, depth: depth + 1}, {to: middle, depth: depth + 1});
      continue;
    }
    error = Math.max(error, off);
    points.push(...(isEnd ? [to] : [middle, to]));
  }
  return {points, error};
}

/** The point of the front halfway across the longer side of the box between two of its points. */
function* middleOf(search: Search, x: Aim, y: Aim, a: Point, b: Point, size: Point): Steps<Optimised> {
  const wide = Math.abs(b.x - a.x) / size.x >= Math.abs(b.y - a.y) / size.y;
  const middle = {x: (a.x + b.x) / 2, y: (a.y + b.y) / 2};
  const [held, sought, value, guess] = wide ? [x, y, middle.x, middle.y] : [y, x, middle.y, middle.x];
  return yield* optimiseOne(search, sought, [atLeastAsGood(held, value, search.brief, 0)], guess);
}

function pointOf(x: Aim, y: Aim, {mix, outcome}: Exclude<Optimised, {status: unknown}>): FoundMix {
  // Both ends of the front have these temperatures, so every mix between them has too.
  return {x: valueOf(x.subject, mix)!, y: valueOf(y.subject, mix)!, outcome};
}
