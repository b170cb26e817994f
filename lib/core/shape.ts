import {InputError, show} from "./errors.ts";
import {nearestNames, oneOfThese} from "./nearest.ts";

/** Kind of value that a key must hold. */
type Kind = "list" | "map" | "object" | "text" | "number";

/**
 * Refuses a value of another shape than a function wants: plain JavaScript is not stopped by the types, and would
 * otherwise get an error from somewhere inside, or a wrong answer.
 *
 * @param shape kind of value that each key must hold; further keys are allowed
 * @param what name of the thing wanted, e.g. `recipe`
 * @param advice next step for the caller
 * @throws InputError naming what is wanted, the value and the advice
 */
export function expectShape(
  value: unknown,
  shape: Readonly<Record<string, Kind>>,
  what: string,
  advice: string,
): void {
  if (isShaped(value, shape)) return;
  throw new InputError(what, `not ${/^[aeiou]/i.test(what) ? "an" : "a"} ${what}`, value, advice, {
    code: "wrong type",
  });
}

/**
 * Refuses anything but a list whose entries are objects with these keys.
 *
 * @param what name of the list, e.g. `ingredients`
 * @throws InputError as {@link expectShape}, for an entry with its index
 */
export function expectList(
  value: unknown,
  entry: Readonly<Record<string, Kind>>,
  what: string,
  advice: string,
): void {
  if (!Array.isArray(value))
    throw new InputError(what, `not a list of ${what}`, value, advice, {code: "wrong type"});
  for (let i = 0; i < value.length; i++) {
    if (!isShaped(value[i], entry))
      throw new InputError(`${what}[${i}]`, `not an entry of ${what}`, value[i], advice, {
        code: "wrong type",
        path: [i],
      });
  }
}

/**
 * Refuses options that are no object, and a key among them that has no effect.
 *
 * @param known the keys that have one
 * @param place name of the options in errors; `options` by default
 * @throws InputError for anything else, with the nearest key for an unknown one
 */
export function expectOptions(value: unknown, known: readonly string[], place = "options"): void {
  const like = `give an object with ${known.join(", ")}`;
  if (typeof value !== "object" || value === null || Array.isArray(value))
    throw new InputError(place, `not an object of ${place}`, value, like, {code: "wrong type"});
  for (const key of Object.keys(value)) {
    if (known.includes(key)) continue;
    const near = nearestNames(key, known);
    const advice = near.length ? `did you mean ${near.join(" or ")}` : `use ${known.join(", ")}`;
    throw new InputError(place, `unknown key ${show(key)}`, undefined, advice, {
      code: "unknown key",
      path: [key],
    });
  }
}

/**
 * Refuses anything but an object that holds things by name.
 *
 * @throws InputError naming the place
 */
export function expectRecord(value: unknown, place: string, advice: string): void {
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return;
  throw new InputError(place, "not an object by name", value, advice, {code: "wrong type"});
}

/**
 * Refuses anything but `true` and `false`.
 *
 * @throws InputError naming the place
 */
export function expectFlag(value: unknown, place: string): void {
  if (typeof value !== "boolean")
    throw new InputError(place, "neither true nor false", value, "give true or false", {code: "wrong type"});
}

/**
 * Refuses anything but a function.
 *
 * @throws InputError naming the place
 */
export function expectFunction(value: unknown, place: string): void {
  if (typeof value !== "function")
    throw new InputError(place, "not a function", value, "give a function", {code: "wrong type"});
}

/**
 * The list itself if all its entries are texts.
 *
 * @throws InputError naming the place
 */
export function expectTexts(value: readonly string[], place: string, advice: string): readonly string[] {
  if (!Array.isArray(value))
    throw new InputError(place, "not a list of texts", value, advice, {code: "wrong type"});
  value.forEach((entry: string, i) => expectText(entry, `${place}[${i}]`, advice));
  return value;
}

/**
 * The value itself if it is one of the known words.
 *
 * @throws InputError naming the place, with the nearest of them
 */
export function oneOf<T extends string>(value: T, known: readonly T[], place: string, what: string): T {
  if (known.includes(value)) return value;
  if (typeof value !== "string")
    throw new InputError(place, "not a text", value, `use ${known.join(", ")}`, {code: "wrong type"});
  throw new InputError(place, `unknown ${what}`, value, oneOfThese(value, known), {code: "unknown name"});
}

/**
 * The value itself if it is a text.
 *
 * @throws InputError naming the place
 */
export function expectText(value: string, place: string, advice = "give a text"): string {
  if (typeof value === "string") return value;
  throw new InputError(place, "not a text", value, advice, {code: "wrong type"});
}

function isShaped(value: unknown, shape: Readonly<Record<string, Kind>>): boolean {
  if (typeof value !== "object" || value === null) return false;
  const held = value as Readonly<Record<string, unknown>>;
  return Object.keys(shape).every((key) => isOf(shape[key]!, held[key]));
}

function isOf(kind: Kind, value: unknown): boolean {
  if (kind === "list") return Array.isArray(value);
  if (kind === "map") return value instanceof Map;
  if (kind === "text") return typeof value === "string";
  return kind === "number" ? typeof value === "number" : typeof value === "object" && value !== null;
}
