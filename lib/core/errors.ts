/**
 * A caller's mistake: bad input, named so that it can be mended.
 *
 * Every error of this library that a caller can cause is an `InputError`. What a
 * problem turns out to be (infeasible, unbounded) is data and never thrown.
 */
export class InputError extends Error {
  override readonly name = "InputError";
  /** Where the mistake is, as a path the caller can follow, e.g. `targets.fat.min` or `pantry.csv, row 37, price`. */
  readonly place: string;
  /** What is wrong there. */
  readonly problem: string;
  /** The offending value, as it came in. */
  readonly value: unknown;
  /** What to do next, as an imperative sentence without a full stop. */
  readonly advice: string;

  constructor(place: string, problem: string, value: unknown, advice: string) {
    super(
      `${printable(shorten(place, 300))}: ${printable(problem)}${value === undefined ? "" : ` (got ${show(value)})`}; ${printable(advice)}`,
    );
    this.place = place;
    this.problem = problem;
    this.value = value;
    this.advice = advice;
  }
}

/** A short, one-line picture of any value, safe to print in an error: at most 80 characters, no control characters. */
export function show(value: unknown): string {
  let text: string;
  if (typeof value === "string") text = JSON.stringify(value);
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

/** The beginning of a text. A cut between the two halves of a character would print as rubbish: the first half goes too. */
function shorten(text: string, most: number): string {
  return text.length > most ? `${text.slice(0, most - 3).replace(/[\uD800-\uDBFF]$/, "")}…` : text;
}

/** Text from outside made safe for one line of a terminal: control characters (line breaks, escapes) become spaces. */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\u2028\u2029]+/gu, " ");
}
