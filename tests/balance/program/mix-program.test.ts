import {expect, test} from "vitest";
import {formulateWithoutAim, mixProgram, sharesIn} from "../../../lib/balance/program/mix-program.ts";
import type {Coordinate} from "../../../lib/balance/measure/coordinate.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {solverOfMany} from "../../../lib/lp/solve/solve-again.ts";
import {pantryOf} from "../../../lib/pantry/pantry.ts";
import {within} from "../../support/within.ts";

// Mixes of a and b alone, so that all is said by the share of b: a weighted sum is smallest at an end or a bend, by hand.

const brief = readBrief(
  {
    ingredients: [
      {name: "a", composition: {water: 100}},
      {name: "b", composition: {sucrose: 100}},
    ],
  },
  pantryOf([]),
);
const formulation = formulateWithoutAim(brief);
const ofB: Coordinate = {weights: [0, 1]};

/** Share of b in the mix with the smallest sum of some coordinate and `slope` times the share of b. */
function bestShare(
  coordinate: Coordinate,
  slope: number,
  bounding: boolean,
  most?: number,
): number | undefined {
  const {solve} = mixProgram(formulation, [coordinate, ofB], [bounding], solverOfMany());
  const outcome = solve([1, slope], most === undefined ? [] : [{upper: most}]);
  return outcome.status === "optimal" ? sharesIn(brief, formulation, outcome.values)[1] : undefined;
}

test("a sum cut off at 0 counts no less than 0 where it is to be small, and must not be below 0 otherwise", () => {
  // a - b is 1 - 2 b, above 0 up to half of b.
  const coordinate: Coordinate = {weights: [0, 0], cutOff: [{name: "a - b", weights: [1, -1]}]};
  within(bestShare(coordinate, 0.5, true), 0.5, 1e-9, "1 - 2 b, then 0, and 0.5 b");
  within(bestShare(coordinate, -0.5, true), 1, 1e-9, "0 and -0.5 b");
  within(bestShare(coordinate, -0.5, false), 0.5, 1e-9, "no more of b than of a");
  within(bestShare(coordinate, 3, true, 0.4), 0.3, 1e-9, "1 - 2 b at most 0.4, and 3 b");
});

test("a sum with others that it is at least counts as the largest, or must be the largest itself", () => {
  // The largest of a and b: 1 - b up to half of b, then b.
  const coordinate: Coordinate = {weights: [1, 0], atLeast: [[0, 1]]};
  within(bestShare(coordinate, 0, true), 0.5, 1e-9, "the largest of a and b");
  within(bestShare(coordinate, -2, true), 1, 1e-9, "b and -2 b");
  within(bestShare(coordinate, -2, false), 0.5, 1e-9, "no more of b than of a");
  within(bestShare(coordinate, -2, true, 0.75), 0.75, 1e-9, "at most 0.75");
});

test("mixes are left out in which a coordinate means nothing", () => {
  const coordinate: Coordinate = {weights: [0, 0], there: [3, -1]};
  within(bestShare(coordinate, -1, true), 0.75, 1e-9, "3 a - b at least 0");
});

test("a share is at least 0, whatever rounding leaves of it", () => {
  expect(sharesIn(brief, {...formulation, shares: [1, 0.5]}, [-1e-12, 0.5])).toEqual([0, 0.25]);
});
