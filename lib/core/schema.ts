import * as z from "zod/mini";
import {InputError, show} from "./errors.ts";
import {nearestNames} from "./nearest.ts";

type Issue = z.core.$ZodIssue;

/** Deepest nesting of input that is read; anything deeper is refused. */
const DEEPEST = 32;

/** Most values (numbers, texts, lists, objects) that are read at once; more are refused. */
const MOST_VALUES = 200_000;

/**
 * Plain data checked against a schema: its value with the schema's type, or an error that names the first mistake.
 *
 * @param schema what is expected
 * @param input anything, typically the result of `JSON.parse`
 * @param place what the input is called in errors, e.g. `pear-base.json`
 * @param known every key that the schema knows, for "did you mean" on an unknown one
 * @throws InputError naming the place (a path such as `ingredients[2].price`), the value and what was expected; for input
 *   nested more than 32 levels deep, or of more than 200 000 values
 */
export function parse<T>(
  schema: z.ZodMiniType<T>,
  input: unknown,
  place: string,
  known: readonly string[],
): T {
  refuseStrange(input, place, 1, {left: MOST_VALUES});
  const result = schema.safeParse(input);
  if (result.success) return result.data;
  throw mistake(result.error.issues[0]!, input, place, known);
}

/**
 * Refuses what a schema would take too long over, and `__proto__` as a key: most readers would drop it in silence, here it
 * is named.
 */
function refuseStrange(input: unknown, place: string, depth: number, values: {left: number}): void {
  if (--values.left < 0)
    throw new InputError(place, `beyond the first ${MOST_VALUES} values`, undefined, "give less at once");
  if (typeof input !== "object" || input === null) return;
  if (depth > DEEPEST)
    throw new InputError(place, `nested more than ${DEEPEST} levels deep`, undefined, "give plain data");
  const list = Array.isArray(input);
  for (const key of Object.keys(input)) {
    if (key === "__proto__") throw new InputError(place, "unknown key", key, "remove it");
    const value = (input as Record<string, unknown>)[key];
    refuseStrange(value, list ? `${place}[${key}]` : `${place}.${key}`, depth + 1, values);
  }
}

function mistake(issue: Issue, input: unknown, place: string, known: readonly string[]): InputError {
  const at = (path: readonly PropertyKey[]) => placeOf(place, path);
  const value = valueAt(input, issue.path);
  switch (issue.code) {
    case "unrecognized_keys": {
      const key = issue.keys[0]!;
      const near = nearestNames(key, known);
      return new InputError(
        at(issue.path),
        `unknown key ${show(key)}`,
        undefined,
        near.length ? `did you mean ${near.join(" or ")}` : "remove it or check its spelling",
      );
    }
    case "invalid_union": {
      // The branch that got furthest knows best what is wrong.
      const branches = issue.errors.filter(
        (errors) => errors[0] && !(errors[0].code === "invalid_type" && errors[0].path.length === 0),
      );
      const knowsKeys = (errors: readonly Issue[]) =>
        !errors.some(({code, path}) => code === "unrecognized_keys" && path.length === 0);
      const inner = (branches.find(knowsKeys) ?? branches[0])?.[0];
      if (inner)
        return mistake({...inner, path: [...issue.path, ...inner.path]} as Issue, input, place, known);
      const wanted = issue.errors.map((errors) =>
        errors[0]?.code === "invalid_type" ? words(errors[0].expected) : "another value",
      );
      const kinds = [...new Set(wanted)].join(" or ");
      return new InputError(at(issue.path), "not understood", value, `give ${kinds}`);
    }
    case "invalid_type":
      return value === undefined
        ? new InputError(at(issue.path), "missing", undefined, `give ${words(issue.expected)}`)
        : new InputError(
            at(issue.path),
            `not ${words(issue.expected)}`,
            value,
            `give ${words(issue.expected)}`,
          );
    case "too_small":
    case "too_big": {
      const limit = issue.code === "too_small" ? issue.minimum : issue.maximum;
      const what =
        issue.origin === "number"
          ? "a number"
          : issue.origin === "string"
            ? "a text with a length"
            : "a list with a length";
      const than = issue.code === "too_small" ? "at least" : "at most";
      const open = issue.inclusive === false ? (issue.code === "too_small" ? "above" : "below") : than;
      return new InputError(at(issue.path), "out of range", value, `give ${what} ${open} ${limit}`);
    }
    case "invalid_value":
      return new InputError(
        at(issue.path),
        "not one of the known values",
        value,
        oneOfThese(String(value), issue.values.map(String)),
      );
    case "custom":
      if (issue.params?.problem)
        return new InputError(at(issue.path), String(issue.params.problem), undefined, issue.message);
      return new InputError(at(issue.path), "not understood", value, issue.message);
    default:
      return new InputError(at(issue.path), "not understood", value, issue.message);
  }
}

/** Advice on what to write instead of an unknown word: the nearest first, then all there are. */
export function oneOfThese(given: string, known: readonly string[]): string {
  const near = nearestNames(given, known);
  return `${near.length ? `did you mean ${near.join(" or ")}? If not, ` : ""}use ${known.join(", ")}`;
}

function words(expected: string): string {
  if (expected === "object" || expected === "record") return "an object {…}";
  if (expected === "array") return "a list […]";
  if (expected === "string") return "a text";
  if (expected === "number") return "a finite number";
  return expected === "boolean" ? "true or false" : expected;
}

function placeOf(place: string, path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (at, key) => (typeof key === "number" ? `${at}[${key}]` : at ? `${at}.${String(key)}` : String(key)),
    place,
  );
}

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === "object" && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    input,
  );
}
