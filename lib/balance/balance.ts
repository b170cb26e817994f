import {InputError} from "../core/errors.ts";
import {type Pantry, pantryOf} from "../pantry/pantry.ts";
import type {SolveOptions} from "../lp/solve.ts";
import type {Answer} from "./answer.ts";
import type {BriefInput} from "./brief-schema.ts";
import type {Brief} from "./brief.ts";
import {candidatesOf} from "./candidates.ts";
import {explainConflict} from "./conflict.ts";
import {readBrief} from "./read-brief.ts";
import {solveBrief} from "./solve-brief.ts";

/** What {@link balance} may be told beside the brief. */
export interface BalanceOptions {
  /** Where ingredients given by name alone are looked up, e.g. `pantryOf(readPantryCsv(text))`; by default there is none. */
  readonly pantry?: Pantry;
  /** What the brief is called in errors, e.g. its file name; by default `brief`. */
  readonly place?: string;
  /** Where to look for what would make an impossible brief possible; the pantry by default. A large one takes some ms. */
  readonly openersFrom?: Pantry;
  /**
   * How long to look where amounts come in whole steps or rules count ingredients, and with what: a clock and a time limit, and
   * HiGHS from `loadHighs` for large shelves.
   */
  readonly search?: SolveOptions;
}

/**
 * The best mix for a brief: the ingredient quantities that meet every target at the least cost (or whatever else the
 * brief minimises or maximises), with its freezing curve, scoop temperature, binding limits and other candidates.
 *
 * Every answer is verified before it is returned: rows, bounds and optimality on the unrounded solution. A brief that no
 * mix can meet is answered with the limits that conflict and the least change that would make them meet.
 *
 * @throws InputError for a mistake in the brief, naming the place, the value and the next step
 */
export function balance(brief: BriefInput, options: BalanceOptions = {}): Answer {
  refusePantry(options);
  const {pantry = pantryOf([]), place, openersFrom = pantry, search} = options;
  return answerTo(readBrief(brief, pantry, place), openersFrom, search);
}

/** A pantry where the options belong would have nothing looked up in it. */
function refusePantry(options: unknown): void {
  if (typeof options === "object" && options !== null && !Array.isArray(options) && !("byName" in options))
    return;
  throw new InputError(
    "options",
    Array.isArray(options) ? "a list" : "not an object of options",
    undefined,
    Array.isArray(options)
      ? "give {pantry}: balance(brief, {pantry: pantryOf(ingredients)})"
      : "give {pantry}: balance(brief, {pantry})",
  );
}

/**
 * The answer to a brief that has been checked already.
 *
 * @param pantry the larger shelf, for what could be added to an impossible brief
 */
export function answerTo(brief: Brief, pantry: Pantry, search: SolveOptions = {}): Answer {
  const solution = solveBrief(brief, brief.name, brief.aim, [], search);
  switch (solution.status) {
    case "optimal":
      return {...solution, candidates: candidatesOf(brief, solution, {search})};
    case "infeasible":
      return {
        status: "infeasible",
        name: brief.name,
        conflict: explainConflict(brief, pantry),
        candidates: [],
      };
    default:
      return {...solution, name: brief.name, candidates: []};
  }
}
