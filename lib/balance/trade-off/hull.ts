/** A point of a plane. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The point of a convex set that lies farthest in a direction, with its further data. */
export type Farthest<P extends Point> = (direction: Point) => P | undefined;

/** Distance beyond an edge from which a corner counts, as a share of the size of the set. */
export const CORNER = 1e-8;

/**
 * The corners of a convex set between two of its boundary points, both included, anticlockwise.
 *
 * The point farthest beyond the line between two neighbours is a corner; then the two lines from it to the neighbours are tried in
 * turn; a line with no point beyond it is an edge. With c corners it asks at most 2 c times. The scheme is that of
 * Y. P. Aneja and K. P. K. Nair, Bicriteria transportation problem, Management Science 25 (1979).
 *
 * @param size width and height of the set, so that neither unit weighs more
 * @returns after one step for every question asked
 */
export function* cornersBetween<P extends Point>(
  from: P,
  to: P,
  farthest: Farthest<P>,
  size: Point,
): Generator<void, P[], undefined> {
  const corners = [from];
  const ahead = [to];
  while (ahead.length > 0) {
    const here = corners.at(-1)!;
    const next = ahead.at(-1)!;
    const direction = outward(here, next, size);
    const found = direction && farthest(direction);
    if (direction) yield;
    if (direction && found && beyond(direction, here, found) > CORNER) ahead.push(found);
    else {
      ahead.pop();
      if (direction) corners.push(next);
    }
  }
  return corners;
}

/**
 * The corners of a convex set, anticlockwise; two for a line, one for a point, none for an empty set.
 *
 * @returns after one step for every question asked
 */
export function* cornersOf<P extends Point>(farthest: Farthest<P>): Generator<void, P[], undefined> {
  const extremes: P[] = [];
  for (const direction of [
    {x: -1, y: 0},
    {x: 0, y: -1},
    {x: 1, y: 0},
    {x: 0, y: 1},
  ]) {
    const found = farthest(direction);
    yield;
    if (!found) return [];
    extremes.push(found);
  }
  const [left, bottom, right, top] = extremes as [P, P, P, P];
  const size = sizeOf(extremes);
  const around = [];
  for (const [from, to] of [
    [left, bottom],
    [bottom, right],
    [right, top],
    [top, left],
  ] as const) {
    around.push(...(yield* cornersBetween(from, to, farthest, size)));
  }
  return convexCorners(around, size);
}

/** Width and height of the box around the points; 1 in place of 0. */
export function sizeOf(points: readonly Point[]): Point {
  return {x: span(points.map(({x}) => x)), y: span(points.map(({y}) => y))};
}

/** Difference of the largest and the smallest value; 1 where that is nothing but rounding. */
function span(values: readonly number[]): number {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return high - low > 1e-10 * Math.max(1, Math.abs(low), Math.abs(high)) ? high - low : 1;
}

/** Whether a point lies in a polygon whose corners go round anticlockwise, or no farther outside than `slack`. */
export function isInside(corners: readonly Point[], {x, y}: Point, size: Point, slack = CORNER): boolean {
  const within = (value: number, values: readonly number[], room: number) =>
    value >= Math.min(...values) - room && value <= Math.max(...values) + room;
  return (
    within(
      x,
      corners.map((corner) => corner.x),
      slack * size.x,
    ) &&
    within(
      y,
      corners.map((corner) => corner.y),
      slack * size.y,
    ) &&
    corners.every((from, k) => {
      const direction = outward(from, corners[(k + 1) % corners.length]!, size);
      return !direction || beyond(direction, from, {x, y}) <= slack;
    })
  );
}

/** Distance of two points, as a share of the size of the set. */
export function distance(a: Point, b: Point, size: Point): number {
  return Math.hypot((b.x - a.x) / size.x, (b.y - a.y) / size.y);
}

/** Distance of a point from the line through two others, as a share of the size of the set. */
export function offLine(a: Point, b: Point, point: Point, size: Point): number {
  const direction = outward(a, b, size);
  return direction ? Math.abs(beyond(direction, a, point)) : distance(a, point, size);
}

/** The direction to the right of the way from one point to another, of unit length in sizes of the set. */
function outward(from: Point, to: Point, size: Point): Point | undefined {
  const dx = (to.x - from.x) / size.x;
  const dy = (to.y - from.y) / size.y;
  const length = Math.hypot(dx, dy);
  return length <= CORNER ? undefined : {x: dy / length / size.x, y: -dx / length / size.y};
}

function beyond(direction: Point, from: Point, point: Point): number {
  return direction.x * (point.x - from.x) + direction.y * (point.y - from.y);
}

/** The points without repetitions and without those in the middle of an edge. */
function convexCorners<P extends Point>(around: readonly P[], size: Point): P[] {
  let corners = around.filter((point, k) => outward(around.at(k - 1)!, point, size) || around.length === 1);
  if (corners.length === 0) corners = around.slice(0, 1);
  for (let k = 0; corners.length > 2 && k < corners.length;) {
    const before = corners.at(k - 1)!;
    const after = corners[(k + 1) % corners.length]!;
    const direction = outward(before, after, size);
    const isCorner = direction && beyond(direction, before, corners[k]!) > CORNER;
    if (isCorner) k++;
    else {
      corners = corners.filter((_, other) => other !== k);
      k = Math.max(0, k - 1);
    }
  }
  return corners;
}
