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
  if (isShaped(value, shape)) return;
  throw new InputError(what, `not ${/^[aeiou]/i.test(what) ? "an" : "a"} ${what}`, value, advice);
}

/**
 * Refuses anything but a list whose entries are objects with these keys.
 *
 * @param what what the list is called, e.g. `ingredients`
 * @throws InputError as {@link expectShape}, for an entry with its index
 */
export function expectList(
  value: unknown,
  entry: Readonly<Record<string, Kind>>,
  what: string,
  advice: string,
): void {
  if (!Array.isArray(value)) throw new InputError(what, `not a list of ${what}`, value, advice);
  for (let i = 0; i < value.length; i++) {
    if (!isShaped(value[i], entry))
      throw new InputError(`${what}[${i}]`, `not an entry of ${what}`, value[i], advice);
  }
}

function isShaped(value: unknown, shape: Readonly<Record<string, Kind>>): boolean {
  if (typeof value !== "object" || value === null) return false;
  const held = value as Readonly<Record<string, unknown>>;
  return Object.keys(shape).every((key) => isOf(shape[key]!, held[key]));
}

function isOf(kind: Kind, value: unknown): boolean {
  if (kind === "list") return Array.isArray(value);
  if (kind === "text") return typeof value === "string";
  return kind === "number" ? typeof value === "number" : typeof value === "object" && value !== null;
}
