import {expectText} from "./shape.ts";
import * as z from "zod/mini";
import {InputError, type InputErrorCode, type InputErrorDetails, show} from "./errors.ts";
import {nearestNames, oneOfThese} from "./nearest.ts";

type Issue = z.core.$ZodIssue;

/** Deepest nesting of input that is read; anything deeper is refused. */
const DEEPEST = 32;

/** Beginning of advice that a schema of ours gives; no message of zod's begins so, in any language of it. */
const OWN_WORDS = /^give /;

/** Most mistakes that are told apart in one input; the others are counted. */
const MOST_MISTAKES = 100;

/** Most values (numbers, texts, lists, objects) that are read at once; more are refused. */
const MOST_VALUES = 200_000;

/**
 * Plain data checked against a schema: its value with the schema's type, or an error that names the first mistake and holds
 * the others in `mistakes`.
 *
 * @param schema what is expected
 * @param input anything, typically the result of `JSON.parse`
 * @param place name of the input in errors, e.g. `pear-base.json`
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
  expectText(place, "place", "say what the input is called");
  refuseStrange(input, place, 1, {left: MOST_VALUES});
  const result = schema.safeParse(input);
  if (result.success) return result.data;
  const found = result.error.issues.flatMap(oneByOne);
  const [first, ...more] = found.slice(0, MOST_MISTAKES);
  const detail = {more: more.map((issue) => mistake(issue, input, place, known)), others: found.length - 1};
  throw mistake(first!, input, place, known, detail);
}

/** An issue for every unknown key that zod lists in one. */
function oneByOne(issue: Issue): Issue[] {
  return issue.code === "unrecognized_keys" ? issue.keys.map((key) => ({...issue, keys: [key]})) : [issue];
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
    if (key === "__proto__")
      throw new InputError(place, "unknown key", key, "remove it", {code: "unknown key"});
    const value = (input as Record<string, unknown>)[key];
    refuseStrange(value, list ? `${place}[${key}]` : `${place}.${key}`, depth + 1, values);
  }
}

/** The error that an issue of zod is, in a cook's words. */
function mistake(
  issue: Issue,
  input: unknown,
  place: string,
  known: readonly string[],
  besides: InputErrorDetails = {},
): InputError {
  const value = valueAt(input, issue.path);
  const refuse = (code: InputErrorCode, problem: string, got: unknown, advice: string, key?: string) => {
    const path = (key === undefined ? issue.path : [...issue.path, key]).map((step) =>
      typeof step === "number" ? step : String(step),
    );
    return new InputError(placeOf(place, issue.path), problem, got, advice, {...besides, code, path});
  };
  switch (issue.code) {
    case "unrecognized_keys": {
      const key = issue.keys[0]!;
      const near = nearestNames(key, known);
      const advice = near.length ? `did you mean ${near.join(" or ")}` : "remove it or check its spelling";
      return refuse("unknown key", `unknown key ${show(key)}`, undefined, advice, key);
    }
    case "invalid_union": {
      const inner = likeliest(issue.errors);
      if (inner)
        return mistake(
          {...inner, path: [...issue.path, ...inner.path]} as Issue,
          input,
          place,
          known,
          besides,
        );
      const wanted = issue.errors.map((errors) =>
        errors[0]?.code === "invalid_type" ? words(errors[0].expected) : "another value",
      );
      return refuse("wrong type", "not understood", value, `give ${[...new Set(wanted)].join(" or ")}`);
    }
    case "invalid_type":
      return value === undefined
        ? refuse("missing", "missing", undefined, `give ${words(issue.expected)}`)
        : refuse("wrong type", `not ${words(issue.expected)}`, value, `give ${words(issue.expected)}`);
    case "too_small":
      return refuse(
        "out of range",
        "out of range",
        value,
        `give ${measured(issue.origin)} ${issue.inclusive === false ? "above" : "at least"} ${issue.minimum}`,
      );
    case "too_big":
      return refuse(
        "out of range",
        "out of range",
        value,
        OWN_WORDS.test(issue.message)
          ? issue.message
          : `give ${measured(issue.origin)} ${issue.inclusive === false ? "below" : "at most"} ${issue.maximum}`,
      );
    case "invalid_value":
      return refuse(
        "unknown name",
        "not one of the known values",
        value,
        oneOfThese(String(value), issue.values.map(String)),
      );
    case "custom":
      if (issue.params?.problem)
        return refuse("invalid", String(issue.params.problem), undefined, issue.message);
      return refuse("invalid", "not understood", value, issue.message);
    default:
      return refuse("invalid", "not understood", value, issue.message);
  }
}

/** The mistake to report of a choice none of whose branches fits: that of the branch which got furthest. */
function likeliest(branches: readonly (readonly Issue[])[]): Issue | undefined {
  const entered = branches.filter(
    (errors) => errors[0] && !(errors[0].code === "invalid_type" && errors[0].path.length === 0),
  );
  const knowsKeys = (errors: readonly Issue[]) =>
    !errors.some(({code, path}) => code === "unrecognized_keys" && path.length === 0);
  return (entered.find(knowsKeys) ?? entered[0])?.[0];
}

function measured(origin: string): string {
  if (origin === "number") return "a number";
  return origin === "string" ? "a text with a length" : "a list with a length";
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
