import {InputError} from "../../core/errors.ts";
import {expectOptions, expectShape} from "../../core/shape.ts";
import {type Deadline, deadlineOf, type TimeOptions} from "../../lp/program/deadline.ts";
import type {Amount} from "../mix/answer.ts";
import {amountsOf} from "../mix/amounts.ts";
import {readAxes} from "../read/axis.ts";
import {temperatureBound} from "./optimise-one.ts";
import type {Aim, Brief} from "../brief/brief.ts";
import type {Coordinate} from "../measure/coordinate.ts";
import {requirePrices} from "../measure/cost.ts";
import {coordinateOf, isTemperature} from "../measure/of-subject.ts";
import {briefOf, type BriefSource} from "../read/brief-of.ts";
import {regionBefore, type Region, type RegionAxes} from "./feasible-region.ts";
import {isInside, sizeOf} from "./hull.ts";
import {finish, type Steps} from "../../core/in-chunks.ts";
import {
  type CoordinateLimits,
  formulateWithoutAim,
  type MixProgram,
  mixProgram,
  sharesIn,
} from "../program/mix-program.ts";
import {solverOfMany} from "../../lp/solve/solve-again.ts";
import {withoutWholeValues} from "../program/without-whole-values.ts";

/** Fineness of a map. */
export interface Grid {
  /** Number of values along `x` and along `y`, each from 2 to 500. */
  readonly columns: number;
  readonly rows: number;
}

/** The cheapest mix for one pair of values. */
export interface MapCell {
  /** Money per kg. */
  readonly cost: number;
  readonly amounts: readonly Amount[];
}

/** Least cost of each reachable pair of values. */
export type CostMap =
  | {
      readonly status: "map";
      readonly region: Extract<Region, {status: "region"}>;
      /** Values of the columns and of the rows, evenly spaced over the region. */
      readonly x: readonly number[];
      readonly y: readonly number[];
      /** Row after row, in the order of `y`; absent where no mix has that pair. */
      readonly cells: readonly (readonly (MapCell | undefined)[])[];
    }
  | Exclude<Region, {status: "region"}>;

/**
 * The least cost over a feasible region: for each pair of values of an even grid the cheapest mix that has just these.
 *
 * @param options with a `deadline`, past which the answer is `undecided`
 * @throws InputError as {@link feasibleRegion}, for a missing price, and for a grid outside its range
 *
 * @example
 * ```ts
 * const brief = readBrief(
 *   {
 *     ingredients: [
 *       {name: "whole milk", price: 1},
 *       {name: "cream 40 %", price: 5},
 *       {name: "sucrose", price: 1},
 *     ],
 *     targets: {sugars: {min: 10, max: 20}},
 *   },
 *   includedPantry(),
 * );
 * const map = costMap(brief, {x: "fat", y: "sugars"}, {columns: 3, rows: 2});
 * map.status === "map" && map.cells[0]?.map((cell) => cell?.cost); // => [undefined, 2.78, 4.6]
 * ```
 */
export function costMap(
  source: BriefSource,
  axes: RegionAxes,
  grid: Grid,
  options: TimeOptions = {},
): CostMap {
  return finish(costMapSteps(source, axes, grid, options));
}

/**
 * {@link costMap} in steps, one for each linear program, for `inChunks`.
 *
 * @example
 * ```ts
 * const brief = readBrief(
 *   {
 *     ingredients: [
 *       {name: "whole milk", price: 1},
 *       {name: "cream 40 %", price: 5},
 *       {name: "sucrose", price: 1},
 *     ],
 *     targets: {sugars: {min: 10, max: 20}},
 *   },
 *   includedPantry(),
 * );
 * const map = await inChunks(costMapSteps(brief, {x: "fat", y: "sugars"}, {columns: 3, rows: 2}));
 * map.status; // => "map"
 * ```
 */
export function* costMapSteps(
  source: BriefSource,
  axes: RegionAxes,
  grid: Grid,
  options: TimeOptions = {},
): Steps<CostMap> {
  const given = briefOf(source);
  expectOptions(options, ["deadline", "now"]);
  const deadline = deadlineOf(options);
  const {x, y} = readAxes(axes, given.ingredients);
  expectShape(grid, {columns: "number", rows: "number"}, "grid", "give {columns, rows}, e.g. 20 of each");
  for (const key of ["columns", "rows"] as const) checkCount(grid[key], `grid.${key}`);
  requirePrices(given.ingredients, given.name);
  const region = yield* regionBefore(deadline, given, axes);
  if (region.status !== "region") return region;
  const {brief} = withoutWholeValues(given);
  const {corners} = region;
  const size = sizeOf(corners);
  const xs = evenly(
    corners.map((corner) => corner.x),
    grid.columns,
  );
  const ys = evenly(
    corners.map((corner) => corner.y),
    grid.rows,
  );
  const cells = ys.map((): (MapCell | undefined)[] => xs.map(() => undefined));
  const ask = askerOf(brief, x, y, deadline);
  const reachable = ys.flatMap((atY, row) =>
    xs.flatMap((atX, column) =>
      !region.exact || isInside(corners, {x: atX, y: atY}, size) ? [{row, column, atX, atY}] : [],
    ),
  );
  // Column by column where x is a temperature, so that a new program is needed only once a column.
  if (isTemperature(x.subject)) reachable.sort((a, b) => a.column - b.column || a.row - b.row);
  for (const [k, {row, column, atX, atY}] of reachable.entries()) {
    if (deadline && !(deadline.left() > 0))
      return {status: "undecided", reason: `the time limit came after ${k} of ${reachable.length} mixes`};
    cells[row]![column] = ask(atX, atY);
    yield {solved: k + 1, of: reachable.length};
  }
  return {status: "map", region, x: xs, y: ys, cells};
}

/** The cheapest mix at a pair of values. The program is built anew only where a temperature changes. */
function askerOf(
  brief: Brief,
  x: Aim,
  y: Aim,
  deadline?: Deadline,
): (atX: number, atY: number) => MapCell | undefined {
  const formulation = formulateWithoutAim(brief);
  const cost = coordinateOf({kind: "cost"}, brief);
  const solver = solverOfMany(deadline);
  const holders = [x, y].map((axis) => holderOf(brief, axis));
  let held: Held[] = [];
  let program: MixProgram | undefined;
  return (...at) => {
    const now = holders.map((holder, k) => holder(at[k]!));
    if (!program || now.some(({coordinate}, k) => coordinate !== held[k]!.coordinate)) {
      program = mixProgram(formulation, [cost, ...now.map(({coordinate}) => coordinate)], [], solver);
    }
    held = now;
    const outcome = program.solve([1, 0, 0], [undefined, ...now.map(({limits}) => limits)]);
    if (outcome.status !== "optimal") return undefined;
    const amounts = amountsOf(brief, sharesIn(brief, formulation, outcome.values));
    return {cost: outcome.objective, amounts};
  };
}

/** A coordinate held at a value. */
interface Held {
  readonly coordinate: Coordinate;
  readonly limits: CoordinateLimits;
}

/** Holds an axis at one value after another; a new coordinate is made only where the axis is a temperature and its value changes. */
function holderOf(brief: Brief, {subject}: Aim): (at: number) => Held {
  if (!isTemperature(subject)) {
    const coordinate = coordinateOf(subject, brief);
    return (at) => ({coordinate, limits: {lower: at, upper: at}});
  }
  let last: {at: number; held: Held} | undefined;
  return (at) => {
    if (last?.at !== at) last = {at, held: temperatureBound(subject, at, brief, 0)};
    return last.held;
  };
}

function evenly(values: readonly number[], count: number): number[] {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return Array.from({length: count}, (_, k) => low + ((high - low) * k) / (count - 1));
}

function checkCount(count: number, place: string): void {
  if (!(Number.isInteger(count) && count >= 2 && count <= 500)) {
    throw new InputError(place, "not a number of values", count, "give a whole number from 2 to 500");
  }
}
