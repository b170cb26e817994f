import {expectFlag, expectOptions} from "../core/shape.ts";
import {InputError} from "../core/errors.ts";
import {NO_PANTRY, type Pantry} from "../pantry/pantry.ts";
import {beforeTime, deadlineIn, USUAL_TIME} from "../lp/program/deadline.ts";
import {expectSolveOptions, type SolveOptions} from "../lp/solve/solve.ts";
import type {Answer, Conflict} from "./mix/answer.ts";
import type {BriefInput} from "./brief/brief-schema.ts";
import type {Brief} from "./brief/brief.ts";
import {withBrief} from "./brief/checked.ts";
import {candidatesSteps} from "./explain/candidates.ts";
import {explainConflict} from "./explain/conflict.ts";
import {counted, expectStoppable, finish, type Steps, type Stoppable} from "../core/in-chunks.ts";
import {readBrief} from "./read/read-brief.ts";
import {solveBriefSteps} from "./mix/solve-brief.ts";

/** Options of {@link balance}. */
export interface BalanceOptions {
  /** Pantry in which ingredients given by name alone are looked up, e.g. `pantryOf(readPantryCsv(text))`; by default there is none. */
  readonly pantry?: Pantry;
  /** Name of the brief in errors, e.g. its file name; by default `brief`. */
  readonly place?: string;
  /** Shelf of the ingredients that might make an impossible brief possible; the pantry by default. A large one takes some ms. */
  readonly openersFrom?: Pantry;
  /**
   * Milliseconds for the whole call, above 0; default 10,000. Over it the answer is `undecided`, with the best mix found; an answer
   * already proved keeps as many candidates as were found. The brief is always read to its end, which takes a tenth of a second or two
   * for the largest.
   */
  readonly deadline?: number;
  /** A clock in milliseconds for the deadline; default `performance.now`, where there is one. Without a clock there is no deadline. */
  readonly now?: () => number;
  /** Ends the call, e.g. an `AbortSignal`: looked at before each step of {@link balanceSteps}, and so at the beginning. */
  readonly signal?: Stoppable;
  /** Whether to look for other candidates; true by default. */
  readonly candidates?: boolean;
  /** Engine and effort of the search: HiGHS from `loadHighs`, for large shelves. Its time is part of the deadline's. */
  readonly search?: Pick<SolveOptions, "highs" | "maxNodes" | "timeLimit" | "now">;
}

/**
 * The best mix for a brief: the ingredient quantities that meet every target at the least cost (or whatever else the
 * brief minimises or maximises), with its freezing curve, scoop temperature, binding limits and other candidates.
 *
 * Every answer is verified before it is returned: rows, bounds and optimality on the unrounded solution. A brief that no
 * mix can meet is answered with the limits that conflict and the least change that would make them meet.
 *
 * @throws InputError for a mistake in the brief, naming the place, the value and the next step; also for a path of a pantry or a
 *   price list that would change the answer, since no file is read here
 * @throws the signal's reason where it is aborted
 *
 * @example
 * ```ts
 * const answer = balance(
 *   {
 *     batch: 1000,
 *     ingredients: [
 *       {name: "water", price: 0},
 *       {name: "sucrose", price: 1.1},
 *       {name: "dextrose", price: 1.9},
 *     ],
 *     targets: {sugars: {equal: 28}, sweetness: {max: 25}},
 *   },
 *   {pantry: includedPantry()},
 * );
 * answer.status === "optimal" &&
 *   answer.amounts.map(({ingredient, grams}) => `${Math.round(grams)} g ${ingredient}`); // => ["708 g water", "165 g sucrose", "127 g dextrose monohydrate"]
 * ```
 */
export function balance<Own extends string = never>(
  brief: BriefInput<Own>,
  options: BalanceOptions = {},
): Answer {
  return finish(balanceSteps(brief, options));
}

/**
 * {@link balance} in steps, for `inChunks`: a page keeps answering, a server can stop it. A step is a linear program, or one
 * question to HiGHS, or the explanation of a conflict.
 *
 * @throws as `balance` does
 *
 * @example
 * ```ts
 * const brief = {ingredients: ["whole milk", "sucrose"], targets: {sugars: {equal: 12}}};
 * const answer = await inChunks(balanceSteps(brief, {pantry: includedPantry()}));
 * answer.status; // => "optimal"
 * ```
 */
export function* balanceSteps<Own extends string = never>(
  brief: BriefInput<Own>,
  options: BalanceOptions = {},
): Steps<Answer> {
  refusePantry(options);
  expectBalanceOptions(options);
  const {pantry = NO_PANTRY, place, openersFrom = pantry, signal, candidates} = options;
  const search = searchWithin(options);
  signal?.throwIfAborted();
  const checked = readBrief(brief, pantry, place);
  refuseUnread(brief, checked, options);
  const steps = answerSteps(checked, openersFrom, search, candidates);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield step.value;
    signal?.throwIfAborted();
  }
}

/** Refuses paths of files that would be passed over in silence: the library reads none, and without prices nothing is cheapest. */
function refuseUnread(
  {prices, pantry}: Pick<BriefInput, "prices" | "pantry">,
  {aim}: Brief,
  {pantry: given, place = "brief"}: BalanceOptions,
): void {
  if (pantry !== undefined && given === undefined) {
    throw new InputError(
      `${place}: pantry`,
      "a path, and no file is read here",
      pantry,
      "read it and give balance(brief, {pantry: pantryOf(readPantryCsv(text))})",
    );
  }
  // With the price of even one ingredient the cost would be the aim.
  if (prices !== undefined && aim === undefined) {
    throw new InputError(
      `${place}: prices`,
      "a path, and no file is read here",
      prices,
      "read it and give {pantry: stockedPantry(pantry, readPricesCsv(text))}, or give each ingredient a price",
    );
  }
}

/** The search with the one deadline of the call. */
function searchWithin({deadline, now, search}: BalanceOptions): SolveOptions {
  const [time, option] =
    deadline === undefined ? [search?.timeLimit ?? USUAL_TIME, "search.timeLimit"] : [deadline, "deadline"];
  return {...search, deadline: deadlineIn(time, now ?? search?.now, option)};
}

const OPTIONS = [
  "pantry",
  "place",
  "openersFrom",
  "deadline",
  "now",
  "signal",
  "candidates",
  "search",
] satisfies (keyof BalanceOptions)[];

/** Refuses options that have no effect, or are of another type; pantries, times and the place are checked where they are used. */
function expectBalanceOptions(options: BalanceOptions): void {
  expectOptions(options, OPTIONS);
  const {signal, candidates, search} = options;
  if (candidates !== undefined) expectFlag(candidates, "candidates");
  if (search !== undefined) expectSolveOptions(search, "search");
  if (signal !== undefined) expectStoppable(signal);
}

/** Refuses a pantry in place of the options: nothing would be looked up in it. */
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
 * @param search engine, effort and time of the search
 * @param candidates whether to look for candidates
 */
export function answerTo(brief: Brief, pantry: Pantry, search: SolveOptions = {}, candidates = true): Answer {
  return finish(answerSteps(brief, pantry, search, candidates));
}

/** {@link answerTo} in steps. */
export function answerSteps(
  brief: Brief,
  pantry: Pantry,
  search: SolveOptions = {},
  candidates = true,
): Steps<Answer> {
  const deadline = search.deadline ?? deadlineIn(search.timeLimit ?? USUAL_TIME, search.now);
  return counted(answering(brief, pantry, {...search, deadline}, candidates));
}

function* answering(
  brief: Brief,
  pantry: Pantry,
  search: SolveOptions,
  candidates: boolean,
): Generator<void, Answer> {
  const solution = yield* solveBriefSteps(brief, brief.name, brief.aim, [], search);
  yield;
  switch (solution.status) {
    case "optimal": {
      if (!candidates) return withBrief<Answer>({...solution, candidates: []}, brief);
      const {found, complete} = yield* candidatesSteps(brief, solution, {search});
      const cutShort = !complete && ({candidatesCutShort: true} as const);
      return withBrief<Answer>({...solution, candidates: found, ...cutShort}, brief);
    }
    case "infeasible":
      return withBrief<Answer>(
        {
          status: "infeasible",
          name: brief.name,
          conflict: beforeTime(() => explainConflict(brief, pantry, search), unexplained),
          candidates: [],
        },
        brief,
      );
    default:
      return withBrief<Answer>({...solution, name: brief.name, candidates: []}, brief);
  }
}

/** The conflict of an answer where no time was left to look for it. */
function unexplained(): Conflict {
  return {targets: [], relaxations: [], relaxation: "not searched to the end", openers: [], cutShort: true};
}
