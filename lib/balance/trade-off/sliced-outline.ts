import {InputError} from "../../core/errors.ts";
import type {Deadline} from "../../lp/program/deadline.ts";
import {solverOfMany} from "../../lp/solve/solve-again.ts";
import {optimiseOne, type Bound, type Search, temperatureBound} from "./optimise-one.ts";
import type {Aim, Brief} from "../brief/brief.ts";
import type {Outline, OutlinePoint} from "./exact-outline.ts";
import {offLine, sizeOf} from "./hull.ts";
import type {Steps} from "../../core/in-chunks.ts";
import {formulateWithoutAim, sharesIn} from "../program/mix-program.ts";
import {isTemperature, subjectName} from "../measure/of-subject.ts";

/** Distance of a middle slice's end from its line beyond which slices are halved, as a share of the region's size. */
const STRAIGHT = 1e-3;
const LEAST_DEPTH = 3;
const MOST_DEPTH = 7;

/** Room for rounding of a slice, g per 100 g of ice or hard phase. */
const ROOM = 1e-7;

/** One slice: the least and the most of the other thing at a temperature. */
interface Slice {
  readonly at: number;
  readonly low: OutlinePoint;
  readonly high: OutlinePoint;
}

/**
 * The region of a freezing point or scoop temperature and a weighted sum, cut into slices along the temperature: at each
 * the mixes form a convex set, so the least and the most of the sum, found exactly, are the ends of the slice.
 *
 * @throws InputError where both sides are temperatures
 */
export function* slicedOutline(brief: Brief, x: Aim, y: Aim, deadline?: Deadline): Steps<Outline> {
  if (isTemperature(x.subject) && isTemperature(y.subject)) {
    throw new InputError(
      "y",
      "a temperature against a temperature",
      subjectName(y.subject),
      'give one of them as hard phase or ice at a temperature, e.g. {"hardPhase": {"at": -18}}',
    );
  }
  let solved = 0;
  const formulation = formulateWithoutAim(brief);
  const search: Search = {
    brief,
    formulation,
    solver: solverOfMany(deadline),
    count: () => ({solved: ++solved}),
  };
  const [along, other] = isTemperature(x.subject) ? [x, y] : [y, x];
  const slices: Slice[] = [];
  const ends: number[] = [];
  for (const axis of [along, other]) {
    for (const sense of ["minimise", "maximise"] as const) {
      const end = yield* optimiseOne(search, {...axis, sense});
      if ("status" in end) return end;
      ends.push(end.value);
    }
  }
  const [from, to, lowest, highest] = ends as [number, number, number, number];
  const size = sizeOf([
    {x: from, y: lowest},
    {x: to, y: highest},
  ]);
  const first = yield* sliceAt(search, along, other, from);
  const last = yield* sliceAt(search, along, other, to);
  for (const end of [first, last]) if ("status" in end) return end;
  slices.push(first as Slice);
  const ahead = [{to: last as Slice, depth: 0}];
  let error = 0;
  while (ahead.length > 0) {
    const {to, depth} = ahead.pop()!;
    const here = slices.at(-1)!;
    const middle = yield* sliceAt(search, along, other, (here.at + to.at) / 2);
    if ("status" in middle) return middle;
    const off = Math.max(
      offLine(here.low, to.low, middle.low, size),
      offLine(here.high, to.high, middle.high, size),
    );
    if (depth < LEAST_DEPTH || (off > STRAIGHT && depth < MOST_DEPTH)) {
      ahead.push({to, depth: depth + 1}, {to: middle, depth: depth + 1});
    } else {
      error = Math.max(error, off);
      slices.push(middle, to);
    }
  }
  const around = [...slices.map(({low}) => low), ...slices.map(({high}) => high).reverse()];
  return {corners: along === x ? around : around.map(mirrored).reverse(), error};
}

function* sliceAt(
  search: Search,
  along: Aim,
  other: Aim,
  at: number,
): Steps<Slice | Exclude<Outline, {error: number}>> {
  const {brief, formulation} = search;
  const slice: Bound = temperatureBound(along.subject, at, brief, ROOM);
  const ends: OutlinePoint[] = [];
  for (const sense of ["minimise", "maximise"] as const) {
    const end = yield* optimiseOne(search, {...other, sense}, [slice]);
    if ("status" in end) return end;
    ends.push({x: at, y: end.value, shares: sharesIn(brief, formulation, end.outcome.values)});
  }
  return {at, low: ends[0]!, high: ends[1]!};
}

function mirrored({x, y, shares}: OutlinePoint): OutlinePoint {
  return {x: y, y: x, shares};
}
