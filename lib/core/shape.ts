import {InputError} from "./errors.ts";

/** What a key must hold. */
type Kind = "list" | "object" | "text" | "number";

/**
 * Refuses a value that is of another make than a function wants: plain JavaScript is not stopped by the types, and would
 * otherwise get an error from somewhere inside, or a wrong answer.
 *
 * @param shape what the value's keys must hold; it may have others
 * @param what what is wanted, e.g. `recipe`
 * @param advice how to come by one
 * @throws InputError naming what is wanted, the value and the advice
 */
export function expectShape(
  value: unknown,
  shape: Readonly<Record<string, Kind>>,
  what: string,
  advice: string,
): void {
  if (typeof value === "object" && value !== null) {
    const held = value as Readonly<Record<string, unknown>>;
    if (Object.keys(shape).every((key) => isOf(shape[key]!, held[key]))) return;
  }
  throw new InputError(what, `not a ${what}`, value, advice);
}

/**
 * Refuses anything but a list whose entries are objects with these keys.
 *
 * @throws InputError as {@link expectShape}
 */
export function expectList(
  value: unknown,
  entry: Readonly<Record<string, Kind>>,
  what: string,
  advice: string,
): void {
  if (!Array.isArray(value)) throw new InputError(what, `not a list of ${what}`, value, advice);
  for (const item of value) expectShape(item, entry, what, advice);
}

function isOf(kind: Kind, value: unknown): boolean {
  if (kind === "list") return Array.isArray(value);
  if (kind === "text") return typeof value === "string";
  return kind === "number" ? typeof value === "number" : typeof value === "object" && value !== null;
}
