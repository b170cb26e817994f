import type {Deadline} from "../../lp/program/deadline.ts";
import type {Outcome} from "../../lp/program/program.ts";
import {solverOfMany} from "../../lp/solve/solve-again.ts";
import type {Aim, Brief} from "../brief/brief.ts";
import {coordinateValue} from "../measure/coordinate.ts";
import {coordinateOf} from "../measure/of-subject.ts";
import {failureOf} from "./front-mix.ts";
import {CORNER, cornersOf, type Point} from "./hull.ts";
import type {Steps} from "../../core/in-chunks.ts";
import {formulateWithoutAim, mixProgram, sharesIn} from "../program/mix-program.ts";

/** The outline of a region before it is described, or the reason why there is none. */
export type Outline =
  | {readonly corners: readonly OutlinePoint[]; readonly error: number}
  | {readonly status: "infeasible" | "undecided"; readonly reason: string};

/** A point of an outline with the shares of the batch that reach it. */
export interface OutlinePoint extends Point {
  readonly shares: readonly number[];
}

/** The region of two weighted sums: the polygon of its corners. */
export function* exactOutline(brief: Brief, x: Aim, y: Aim, deadline?: Deadline): Steps<Outline> {
  const formulation = formulateWithoutAim(brief);
  const coordinates = [x, y].map(({subject}) => coordinateOf(subject, brief));
  const program = mixProgram(formulation, coordinates, [], solverOfMany(deadline));
  let solved = 0;
  let failure: Outcome | undefined;
  const corners = cornersOf((direction): OutlinePoint | undefined => {
    const outcome = program.solve([-direction.x, -direction.y]);
    solved++;
    if (outcome.status !== "optimal") {
      failure = outcome;
      return undefined;
    }
    const shares = sharesIn(brief, formulation, outcome.values);
    return {x: coordinateValue(coordinates[0]!, shares), y: coordinateValue(coordinates[1]!, shares), shares};
  });
  let step = corners.next();
  for (; !step.done; step = corners.next()) yield {solved};
  return failure ? failureOf(failure) : {corners: step.value, error: CORNER};
}
