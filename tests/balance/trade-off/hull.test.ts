import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import {
  cornersOf,
  distance,
  type Farthest,
  isInside,
  offLine,
  type Point,
  sizeOf,
} from "../../../lib/balance/trade-off/hull.ts";

/** The point of a set that lies farthest in a direction, as an optimum of a linear program would be. */
function farthestOf(points: readonly Point[]): Farthest<Point> {
  return ({x, y}) => points.toSorted((a, b) => b.x * x + b.y * y - a.x * x - a.y * y)[0];
}

/** Corners of a set, and the number of questions that were asked for them. */
function found(points: readonly Point[]): {readonly corners: readonly Point[]; readonly asked: number} {
  const steps = cornersOf(farthestOf(points));
  for (let asked = 0; ; asked++) {
    const {done, value} = steps.next();
    if (done) return {corners: value, asked};
  }
}

const square = [
  {x: 0, y: 0},
  {x: 200, y: 0},
  {x: 200, y: 1},
  {x: 0, y: 1},
];
const size = {x: 200, y: 1};

describe("corners of a set", () => {
  test("of a square with points on its edges and in it: the square, anticlockwise", () => {
    const more = [...square, {x: 100, y: 0}, {x: 200, y: 0.5}, {x: 50, y: 0.25}];
    const {corners} = found(more);
    const first = corners.findIndex(({x, y}) => x === 0 && y === 0);
    expect([...corners.slice(first), ...corners.slice(0, first)]).toEqual(square);
  });

  test("of a regular polygon: all of them, at most two questions a corner and four", () => {
    const polygon = Array.from({length: 24}, (_, k) => ({
      x: 5 + Math.cos((k * Math.PI) / 12),
      y: 1000 * Math.sin((k * Math.PI) / 12),
    }));
    const {corners, asked} = found(polygon);
    expect(new Set(corners)).toEqual(new Set(polygon));
    expect(corners).toHaveLength(24);
    expect(asked).toBeLessThanOrEqual(2 * 24 + 4);
    // Anticlockwise: each next corner lies to the left.
    for (const [k, {x, y}] of corners.entries()) {
      const [b, c] = [corners[(k + 1) % 24]!, corners[(k + 2) % 24]!];
      expect((b.x - x) * (c.y - b.y) - (b.y - y) * (c.x - b.x)).toBeGreaterThan(0);
    }
  });

  test("of a line two, of a point one, of nothing none", () => {
    const line = [0, 0.3, 0.7, 1].map((t) => ({x: 3 + t, y: 40 - 10 * t}));
    expect(new Set(found(line).corners)).toEqual(new Set([line[0], line[3]]));
    expect(
      found([
        {x: 3, y: 40},
        {x: 3, y: 40},
      ]).corners,
    ).toEqual([{x: 3, y: 40}]);
    expect(found([])).toEqual({corners: [], asked: 1});
  });

  test("of any points: none lies outside, each is one of them, and none is between its neighbours", () => {
    const coordinate = fc.integer({min: -50, max: 50});
    const points = fc.array(fc.record({x: coordinate, y: coordinate}), {minLength: 3, maxLength: 30});
    fc.assert(
      fc.property(points, (all) => {
        const {corners} = found(all);
        const box = sizeOf(all);
        for (const point of all) expect(isInside(corners, point, box)).toBe(true);
        for (const corner of corners) expect(all).toContain(corner);
        expect(new Set(corners.map(({x, y}) => `${x} ${y}`)).size).toBe(corners.length);
      }),
      {numRuns: 200},
    );
  });
});

describe("a square of 200 by 1", () => {
  test.each([
    ["the middle", {x: 100, y: 0.5}, true],
    ["a corner", {x: 200, y: 1}, true],
    ["an edge", {x: 200, y: 0.4}, true],
    ["right of it", {x: 200.1, y: 0.5}, false],
    ["left of it", {x: -0.1, y: 0.5}, false],
    ["above it", {x: 100, y: 1.001}, false],
    ["below it", {x: 100, y: -0.001}, false],
  ])("%s: inside %s", (_where, point, inside) => {
    expect(isInside(square, point, size)).toBe(inside);
  });

  test("a slack is a share of its width and height", () => {
    expect(isInside(square, {x: 203, y: 0.5}, size, 0.02)).toBe(true);
    expect(isInside(square, {x: 205, y: 0.5}, size, 0.02)).toBe(false);
    expect(isInside(square, {x: 100, y: 1.015}, size, 0.02)).toBe(true);
    expect(isInside(square, {x: 100, y: 1.025}, size, 0.02)).toBe(false);
  });

  test("of its diagonal only what lies on it is inside", () => {
    const diagonal = [square[0]!, square[2]!];
    expect(isInside(diagonal, {x: 100, y: 0.5}, size)).toBe(true);
    expect(isInside(diagonal, {x: 100, y: 0.6}, size)).toBe(false);
    expect(isInside(diagonal, {x: 202, y: 1.01}, size)).toBe(false);
    expect(isInside([square[0]!], square[0]!, size)).toBe(true);
    expect(isInside([square[0]!], square[1]!, size)).toBe(false);
  });

  test("distances count its width and height alike", () => {
    expect(sizeOf(square)).toEqual(size);
    expect(
      sizeOf([
        {x: 3, y: 2},
        {x: 3, y: 2 + 1e-12},
      ]),
    ).toEqual({x: 1, y: 1});
    expect(distance(square[0]!, {x: 60, y: 0.4}, size)).toBeCloseTo(0.5, 12);
    // From the diagonal of a unit square its other corners are half of a diagonal away.
    expect(offLine(square[0]!, square[2]!, square[1]!, size)).toBeCloseTo(Math.SQRT1_2, 12);
    expect(offLine(square[0]!, square[2]!, square[3]!, size)).toBeCloseTo(Math.SQRT1_2, 12);
    expect(offLine(square[0]!, square[0]!, {x: 60, y: 0.4}, size)).toBeCloseTo(0.5, 12);
  });
});
