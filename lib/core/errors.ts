/**
 * Kind of mistake that an {@link InputError} is, for programs that answer to it; sentences may change, these words stay.
 * `invalid` is whatever the others do not say.
 */
export type InputErrorCode =
  | "invalid"
  | "wrong type"
  | "out of range"
  | "missing"
  | "unknown key"
  | "unknown name"
  | "unreadable";

/** An {@link InputError} as plain data, ready for JSON; the value is shortened to at most 200 characters. */
export interface InputErrorData {
  readonly name: "InputError";
  readonly message: string;
  readonly code: InputErrorCode;
  readonly place: string;
  readonly path: readonly (string | number)[];
  readonly problem: string;
  readonly value?: string | number | boolean | null;
  readonly advice: string;
  /** The further mistakes of the same input, the first left out. */
  readonly more?: readonly InputErrorData[];
}

/** Details of an {@link InputError} beside its sentence. */
export interface InputErrorDetails {
  readonly code?: InputErrorCode;
  readonly path?: readonly (string | number)[];
  /** Further mistakes of the same input. */
  readonly more?: readonly InputError[];
  /** Number of mistakes besides this one, where `more` does not hold all; the length of `more` by default. */
  readonly others?: number;
}

/** Most characters of a place. */
const LONGEST_PLACE = 200;

/** Most characters of a sentence in a message: lists of what is known may be long. */
const LONGEST_SENTENCE = 2000;

/**
 * A caller's mistake: bad input, named so that it can be mended.
 *
 * Every error of this library that a caller can cause is an `InputError`. What a
 * problem turns out to be (infeasible, unbounded) is data and never thrown.
 *
 * `JSON.stringify` writes it by {@link InputError.toJSON}. A structured clone (a message between workers) is a plain
 * `Error` with the same message, whose `cause` holds the same data.
 */
export class InputError extends Error {
  override readonly name = "InputError";
  /** Place of the mistake, as a path the caller can follow, e.g. `targets.fat.min` or `pantry.csv, row 37, price`: at most 200 characters. */
  readonly place: string;
  /** The problem there. */
  readonly problem: string;
  /** The offending value, as it came in. */
  readonly value: unknown;
  /** Next step, as an imperative sentence without a full stop. */
  readonly advice: string;
  /** Kind of mistake. */
  readonly code: InputErrorCode;
  /** The keys and list positions that lead to the value within what was given, e.g. `["targets", "fat", "min"]`; empty where they are not known. */
  readonly path: readonly (string | number)[];
  /** All mistakes found in the same input (at most 100), this one first. */
  declare readonly mistakes: readonly InputError[];

  constructor(
    place: string,
    problem: string,
    value: unknown,
    advice: string,
    {code = "invalid", path = [], more = [], others = more.length}: InputErrorDetails = {},
  ) {
    const at = shorten(place, LONGEST_PLACE);
    const [what, next] = [shorten(problem, LONGEST_SENTENCE), shorten(advice, LONGEST_SENTENCE)];
    const besides = others ? ` (and ${others} more ${others > 1 ? "mistakes" : "mistake"})` : "";
    super(
      `${printable(at)}: ${printable(what)}${value === undefined ? "" : ` (got ${show(value)})`}; ${printable(next)}${besides}`,
    );
    this.place = at;
    this.problem = what;
    this.value = value;
    this.advice = next;
    this.code = code;
    this.path = path;
    // Not enumerable, so that a printed error does not list them: both repeat its message.
    Object.defineProperty(this, "mistakes", {value: [this, ...more], enumerable: false});
    Object.defineProperty(this, "cause", {value: this.toJSON(), enumerable: false});
  }

  /** The error as plain data. */
  toJSON(): InputErrorData {
    const {message, code, place, path, problem, value, advice, mistakes} = this;
    return {
      name: "InputError",
      message,
      code,
      place,
      path: path.map((step) => (typeof step === "string" ? shorten(step, LONGEST_PLACE) : step)),
      problem,
      ...(value !== undefined && {value: plain(value)}),
      advice,
      ...(mistakes.length > 1 && {more: mistakes.slice(1).map((mistake) => mistake.toJSON())}),
    };
  }
}

/** A value that JSON can carry, short enough to be sent on. */
function plain(value: unknown): string | number | boolean | null {
  if (value === null || typeof value === "boolean" || (typeof value === "number" && Number.isFinite(value)))
    return value;
  return typeof value === "string" ? shorten(value, LONGEST_PLACE) : show(value);
}

/** A short, one-line picture of any value, safe to print in an error: at most 80 characters, no control characters. */
export function show(value: unknown): string {
  let text: string;
  if (typeof value === "string") text = JSON.stringify(value.slice(0, 100));
  else if (typeof value === "number" || typeof value === "bigint" || value == null) text = String(value);
  else if (typeof value === "function") text = "a function";
  else {
    try {
      text = JSON.stringify(value) ?? String(value);
    } catch {
      text = "an object that is not plain data";
    }
  }
  return printable(shorten(text, 80));
}

/** The beginning of a text, never cut between the two halves of a surrogate pair, which would print as rubbish. */
function shorten(text: string, most: number): string {
  return text.length > most ? `${text.slice(0, most - 3).replace(/[\uD800-\uDBFF]$/, "")}…` : text;
}

/** Text from outside made safe for one line of a terminal: control characters (line breaks, escapes) become spaces. */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\u2028\u2029]+/gu, " ");
}
