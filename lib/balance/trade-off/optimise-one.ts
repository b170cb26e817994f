import {COLDEST} from "../../freezing/held-water.ts";
import type {Outcome} from "../../lp/program/program.ts";
import type {Aim, Brief} from "../brief/brief.ts";
import type {Coordinate} from "../measure/coordinate.ts";
import {measureOf, type Subject} from "../measure/measures.ts";
import {coordinateOf, valueOf} from "../measure/of-subject.ts";
import type {Formulation} from "../program/formulate.ts";
import {failureOf, type Solved} from "./front-mix.ts";
import type {Steps} from "../../core/in-chunks.ts";
import {type Mix, mixFrom} from "../mix/mix-report.ts";
import {type CoordinateLimits, mixProgram} from "../program/mix-program.ts";

/** A limit on a property of a mix, as a row. */
export interface Bound {
  readonly coordinate: Coordinate;
  readonly limits: CoordinateLimits;
  /** Whether it keeps the coordinate small, so that ice in it may be bounded from above. */
  readonly bounding: boolean;
}

/** State of the search for the best mix. */
export interface Search {
  readonly brief: Brief;
  readonly formulation: Formulation;
  readonly solver: (program: Parameters<typeof mixProgram>[0]["program"]) => Outcome;
  /** Counts the programs solved. */
  count(): {solved: number};
}

/** A best mix with the value that was optimised, or the reason why there is none. */
export type Optimised =
  | {readonly value: number; readonly mix: Mix; readonly outcome: Solved}
  | {readonly status: "infeasible" | "undecided"; readonly reason: string};

/** Change of a temperature at which the search for the best one ends, °C. */
const SAME = 1e-9;

/** Warmest temperature at which rows are asked for, °C: the model of ice ends at 0. */
const WARMEST = -1e-3;

/** A limit that asks for a value or a better one, with some room for rounding. */
export function atLeastAsGood({sense, subject}: Aim, value: number, brief: Brief, room: number): Bound {
  const bounding = sense === "minimise";
  const limit = value + (bounding ? room : -room);
  const {coordinate, level} = temperatureRow(subject, limit, brief) ?? {
    coordinate: coordinateOf(subject, brief),
    level: limit,
  };
  return {coordinate, limits: bounding ? {upper: level} : {lower: level}, bounding};
}

/**
 * The best mix in one respect within the brief and further bounds.
 *
 * A temperature is found step by step: of all mixes the one with least ice (or hard phase) at the temperature of the mix
 * before has a lower temperature itself, until none has. This is the scheme of W. Dinkelbach, On nonlinear fractional
 * programming, Management Science 13 (1967), and ends about as fast.
 *
 * @param guess rough temperature of the result, °C: the nearer, the fewer steps
 */
export function* optimiseOne(
  search: Search,
  aim: Aim,
  bounds: readonly Bound[] = [],
  guess?: number,
): Steps<Optimised> {
  const {brief, formulation, solver} = search;
  const sign = aim.sense === "minimise" ? 1 : -1;
  const solve = (coordinate: Coordinate, weight: number): Outcome =>
    mixProgram(
      formulation,
      [coordinate, ...bounds.map((bound) => bound.coordinate)],
      [sign === 1, ...bounds.map(({bounding}) => bounding)],
      solver,
    ).solve([weight, ...bounds.map(() => 0)], [undefined, ...bounds.map(({limits}) => limits)]);
  const {subject} = aim;
  const {temperature} = measureOf(subject);
  const towards = (at: number) => {
    const row = temperatureRow(subject, at, brief);
    return solve(row ? row.coordinate : coordinateOf(subject, brief), sign);
  };
  let outcome = towards(guess ?? temperature?.usual ?? NaN);
  yield search.count();
  let last: number | undefined;
  for (let i = 0; i < 60; i++) {
    if (outcome.status !== "optimal") return failureOf(outcome);
    const mix = mixFrom(brief, formulation, outcome.values);
    const value = valueOf(subject, mix);
    if (value === undefined) return {status: "undecided", reason: unmeasured(aim)};
    if (!temperature || (last !== undefined && Math.abs(value - last) <= SAME)) return {value, mix, outcome};
    last = value;
    outcome = towards(value);
    yield search.count();
  }
  return {status: "undecided", reason: `the best ${subject.kind} was not found in 60 steps`};
}

/** A limit that holds a temperature at a value, with some room for rounding in its row, g per 100 g. */
export function temperatureBound(subject: Subject, at: number, brief: Brief, room: number): Bound {
  const {coordinate, level} = temperatureRow(subject, at, brief)!;
  return {coordinate, limits: {lower: level - room, upper: level + room}, bounding: false};
}

/** The row of a temperature, within the range of the model of ice; `undefined` for a subject that is no temperature. */
function temperatureRow(subject: Subject, at: number, brief: Brief) {
  return measureOf(subject).temperature?.rowAt(Math.min(WARMEST, Math.max(COLDEST, at)), brief);
}

function unmeasured({subject}: Aim): string {
  const {without} = measureOf(subject).temperature!;
  return `a mix of the brief ${without} above ${COLDEST} °C; limit its solids or sugars`;
}
