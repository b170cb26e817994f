import type {Deadline} from "../../lp/program/deadline.ts";
import type {Outcome} from "../../lp/program/program.ts";
import {solverOfMany} from "../../lp/solve/solve-again.ts";
import type {Aim, Brief} from "../brief/brief.ts";
import {coordinateValue} from "../measure/coordinate.ts";
import {coordinateOf} from "../measure/of-subject.ts";
import type {Formulation} from "../program/formulate.ts";
import {failureOf, type FoundMix, type RawFront} from "./front-mix.ts";
import {CORNER, cornersBetween, type Point, sizeOf} from "./hull.ts";
import type {Steps} from "../../core/in-chunks.ts";
import {mixProgram, sharesIn} from "../program/mix-program.ts";

/**
 * The front between two weighted sums: the corners of the set of reachable pairs on the side that is better in both, from
 * the best in `x` to the best in `y`.
 */
export function* exactFront(
  brief: Brief,
  formulation: Formulation,
  x: Aim,
  y: Aim,
  deadline?: Deadline,
): Steps<RawFront> {
  const axes = [x, y];
  const coordinates = axes.map(({subject}) => coordinateOf(subject, brief));
  const signs = axes.map(({sense}) => (sense === "minimise" ? 1 : -1));
  const program = mixProgram(
    formulation,
    coordinates,
    signs.map((sign) => sign === 1),
    solverOfMany(deadline),
  );
  let solved = 0;
  let failure: Outcome | undefined;
  // Both axes are turned so that less is better; the front then is the lower left side of the region.
  const farthest = (direction: Point): FoundMix | undefined => {
    const weights = [direction.x, direction.y].map((d, k) => signs[k]! * Math.max(0, -d));
    const outcome = program.solve(weights);
    solved++;
    if (outcome.status !== "optimal") {
      failure = outcome;
      return undefined;
    }
    const shares = sharesIn(brief, formulation, outcome.values);
    const [u, v] = coordinates.map((coordinate, k) => signs[k]! * coordinateValue(coordinate, shares));
    return {x: u!, y: v!, outcome};
  };
  const left = farthest({x: -1, y: 0});
  yield {solved};
  const bottom = left && farthest({x: 0, y: -1});
  yield {solved};
  if (!left || !bottom) return failureOf(failure!);
  const size = sizeOf([left, bottom]);
  const corners = cornersBetween(left, bottom, farthest, size);
  let step = corners.next();
  for (; !step.done; step = corners.next()) yield {solved};
  if (failure) return failureOf(failure);
  const points = efficient(step.value, size).map(({x, y, outcome}) => ({
    x: signs[0]! * x,
    y: signs[1]! * y,
    outcome,
  }));
  return {points, error: CORNER};
}

/** The points without ends that are as good as their neighbour in one respect and worse in the other. */
function efficient(points: readonly FoundMix[], size: Point): FoundMix[] {
  return points.filter(
    (point, k) =>
      !points.some((other, l) => {
        const dx = (point.x - other.x) / size.x;
        const dy = (point.y - other.y) / size.y;
        return (dx > CORNER && dy >= -CORNER) || (dy > CORNER && dx >= -CORNER) || (l < k && same(dx, dy));
      }),
  );
}

function same(dx: number, dy: number): boolean {
  return Math.abs(dx) <= CORNER && Math.abs(dy) <= CORNER;
}
