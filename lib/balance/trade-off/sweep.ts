import {expectOptions, expectText} from "../../core/shape.ts";
import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {deadlineOf, type TimeOptions} from "../../lp/program/deadline.ts";
import {NO_PANTRY, type Pantry} from "../../pantry/pantry.ts";
import type {Balanced} from "../mix/answer.ts";
import {withValueAt} from "../brief/brief-path.ts";
import type {BriefInput} from "../brief/brief-schema.ts";
import {finish, type Steps} from "../../core/in-chunks.ts";
import {readBrief} from "../read/read-brief.ts";
import {type Solution, solveBrief} from "../mix/solve-brief.ts";
import {changesBetween, isNothing, type Turnover} from "../mix/changes-between.ts";

/** The best mix at one value of the number that is swept. */
export interface SweepPoint {
  readonly value: number;
  readonly solution: Solution;
  /** True where another set of ingredients or limits decides than at the value before, or the brief begins or ceases to be possible. */
  readonly changed: boolean;
  /** Differences from the value before; absent where either has no mix. */
  readonly turnover?: Turnover;
}

/** Options of {@link sweep}. */
export interface SweepOptions extends TimeOptions {
  /** Pantry in which ingredients given by name alone are looked up; by default there is none. */
  readonly pantry?: Pantry;
  /** Name of the brief in errors; by default `brief`. */
  readonly place?: string;
}

/** Most values of one sweep. */
const MOST = 10_000;

/**
 * The best mix of a brief while one of its numbers runs over a range: a limit of a target, a price, or a limit of an
 * ingredient. Between two neighbouring values that are not `changed` the same ingredients and limits decide, so amounts and
 * cost run straight between them (nearly so where a temperature is swept). Rules in whole numbers are kept. Values that come after a
 * `deadline` are `undecided`.
 *
 * @param path where the number stands, e.g. `targets.fat.max`, `targets.ice[0].max`, `ingredients[sucrose].price`
 * @param values in the unit of that number, in the order wanted
 * @throws InputError for a path that no brief has, a value that makes no sense there, or a mistake in the brief
 *
 * @example
 * ```ts
 * const brief = {
 *   ingredients: [
 *     {name: "water", price: 0},
 *     {name: "sucrose", price: 1},
 *   ],
 *   targets: {sugars: {equal: 10}},
 * };
 * const points = sweep(brief, "targets.sugars.equal", [10, 20], {pantry: includedPantry()});
 * points.map(({solution}) => solution.status === "optimal" && solution.cost); // => [0.1, 0.2]
 * ```
 */
export function sweep<Own extends string = never>(
  brief: BriefInput<Own>,
  path: string,
  values: readonly number[],
  options: SweepOptions = {},
): SweepPoint[] {
  return finish(sweepSteps(brief, path, values, options));
}

/**
 * {@link sweep} in steps, one for each value, for `inChunks`.
 *
 * @throws InputError as `sweep` does
 *
 * @example
 * ```ts
 * const brief = {ingredients: ["water", "sucrose"], targets: {sugars: {equal: 10}}};
 * const steps = sweepSteps(brief, "targets.sugars.equal", [10, 20], {pantry: includedPantry()});
 * (await inChunks(steps)).map(({value}) => value); // => [10, 20]
 * ```
 */
export function* sweepSteps<Own extends string = never>(
  brief: BriefInput<Own>,
  path: string,
  values: readonly number[],
  options: SweepOptions = {},
): Steps<SweepPoint[]> {
  expectOptions(options, ["pantry", "place", "deadline", "now"]);
  const {pantry = NO_PANTRY, place} = options;
  if (place !== undefined) expectText(place, "place");
  expectText(path, "path", "name a place in the brief, e.g. targets.fat.max");
  if (!Array.isArray(values))
    throw new InputError("values", "not a list of numbers", values, "give a list", {code: "wrong type"});
  if (values.length === 0 || values.length > MOST) {
    throw new InputError("values", "too few or too many", values.length, `give from 1 to ${MOST} values`);
  }
  const deadline = deadlineOf(options);
  for (const [i, value] of values.entries()) finite(value, `values[${i}]`);
  const at = (value: number) => {
    const checked = readBrief(withValueAt(brief as BriefInput<string>, path, value), pantry, place);
    return solveBrief(checked, checked.name, checked.aim, [], deadline && {deadline});
  };
  const points: SweepPoint[] = [];
  for (const [i, value] of values.entries()) {
    const solution = deadline && !(deadline.left() > 0) ? LATE : at(value);
    points.push({value, solution, ...difference(points.at(-1)?.solution, solution)});
    yield {solved: i + 1, of: values.length};
  }
  return points;
}

/** Outcome of a value for which no time was left. */
const LATE: Solution = {status: "undecided", reason: "the time limit came before this value"};

function difference(before: Solution | undefined, after: Solution): Pick<SweepPoint, "changed" | "turnover"> {
  if (!before) return {changed: false};
  if (!isMix(before) || !isMix(after)) return {changed: before.status !== after.status};
  const found = changesBetween(before, after);
  return {changed: !isNothing(found), turnover: found};
}

function isMix(solution: Solution): solution is Balanced {
  return solution.status === "optimal";
}
