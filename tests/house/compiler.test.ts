import {basename} from "node:path";
import {fileURLToPath} from "node:url";
import {Application, Logger, LogLevel, TypeDocReader} from "typedoc";
import ts from "typescript";
import {describe, expect, test} from "vitest";
import {InputError} from "../../lib/core/errors.ts";
import {typeErrors} from "../support/examples.ts";
import {library} from "../support/library.ts";
import {entryFiles, program, publicFunctions} from "../support/public-api.ts";
import {rightArgument} from "../support/right-arguments.ts";

// What asks for types stands in this one file, so that the compiler reads the library once.
const checker = program().getTypeChecker();

/** What is put in place of each argument, and of each value that an argument holds by a name of its own. */
const NONSENSE: readonly unknown[] = [undefined, null, NaN, Infinity, "12", {}, [], -1];

/** Keys under which an open end is Infinity by design. */
const OPEN_ENDED = new Set(["max", "from", "to", "lower", "upper", "batch"]);

/** Options where Infinity says that there is no limit. */
const UNLIMITED = new Set(["timeLimit", "deadline"]);

interface Parameter {
  readonly name: string;
  readonly type: ts.Type;
  readonly optional: boolean;
  readonly right: unknown;
  /** Whether it is something that the library itself makes: of such a thing only the make is looked at, not each of its values. */
  readonly made: boolean;
}

/** Types of what the library's own functions return and take again. */
const MADE = new Set(
  "Answer Balanced BatchSheet Brief BriefSource Cooked EuPanel Ingredient Nutrition Outcome Pantry Product ProductFacts Recipe LinearProgram Sticker UsPanel".split(
    " ",
  ),
);

const functions = publicFunctions.map(({name, declaration}) => ({
  name,
  parameters: declaration.parameters.map((parameter): Parameter => {
    const type = checker.getTypeAtLocation(parameter);
    const written = parameter.type?.getText() ?? checker.typeToString(type);
    const bound = ts.isIdentifier(parameter.name) ? parameter.name.text : "options";
    return {
      name: bound,
      type,
      optional: Boolean(parameter.questionToken ?? parameter.initializer),
      right: rightArgument(name, bound, written),
      made: MADE.has(written),
    };
  }),
}));

/** Calls a function and runs whatever it returns to its end. */
async function run(name: string, args: readonly unknown[]): Promise<unknown> {
  const made: unknown = (library as unknown as Record<string, (...args: readonly unknown[]) => unknown>)[
    name
  ]!(...args);
  if (typeof made === "object" && made !== null && "next" in made) {
    const steps = made as Generator<unknown, unknown>;
    for (let turn = steps.next(); ; turn = steps.next()) if (turn.done) return turn.value;
  }
  return await made;
}

/** Whether a value has a kind that a type allows; types that say nothing of the kind allow all. */
function isOf(value: unknown, type: ts.Type): boolean {
  if (type.isUnion()) return type.types.some((one) => isOf(value, one));
  const {flags} = type;
  if (flags & (ts.TypeFlags.Any | ts.TypeFlags.Unknown | ts.TypeFlags.TypeParameter)) return true;
  if (flags & ts.TypeFlags.Undefined) return value === undefined;
  if (flags & ts.TypeFlags.Null) return value === null;
  if (type.isStringLiteral()) return value === type.value;
  if (flags & ts.TypeFlags.StringLike) return typeof value === "string";
  if (flags & ts.TypeFlags.NumberLike) return typeof value === "number" && Number.isFinite(value);
  if (flags & ts.TypeFlags.BooleanLike) return typeof value === "boolean";
  if (checker.isArrayType(type) || checker.isTupleType(type)) return Array.isArray(value);
  if (type.getCallSignatures().length) return typeof value === "function";
  if (typeof value !== "object" || value === null || Array.isArray(value)) return false;
  return checker
    .getPropertiesOfType(type)
    .every((property) => property.flags & ts.SymbolFlags.Optional || property.name in value);
}

/** The path of the first number in a result that is none, if there is one. */
function notANumber(value: unknown, path = "result"): string | undefined {
  if (typeof value === "number")
    return Number.isFinite(value) || (!Number.isNaN(value) && OPEN_ENDED.has(path.split(".").at(-1)!))
      ? undefined
      : path;
  if (typeof value !== "object" || value === null) return undefined;
  const entries = value instanceof Map ? [...value] : Object.entries(value);
  for (const [key, held] of entries) {
    const found = notANumber(held, `${path}.${String(key)}`);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** What is wrong with how a function takes arguments, if anything; `mustRefuse` where they are of a wrong kind. */
async function complaint(
  name: string,
  args: readonly unknown[],
  mustRefuse: boolean,
): Promise<string | undefined> {
  try {
    const result = await run(name, args);
    if (mustRefuse) return "is taken";
    const odd = name === "loadHighs" ? undefined : notANumber(result);
    return odd === undefined ? undefined : `gives ${odd} that is no number`;
  } catch (error) {
    if (error instanceof InputError) return /\n/.test(error.message) ? "more than one line" : undefined;
    return `throws ${String(error)}`;
  }
}

function said(value: unknown): string {
  return typeof value === "number" ? String(value) : (JSON.stringify(value) ?? "undefined");
}

/** The named values that an argument of this type holds, with their types. */
function namedValues(type: ts.Type, right: unknown): {key: string; type: ts.Type}[] {
  if (typeof right !== "object" || right === null || Array.isArray(right)) return [];
  return Object.keys(right).flatMap((key) => {
    const types = (type.isUnion() ? type.types : [type]).flatMap((one) => {
      const property = checker.getPropertyOfType(one, key);
      return property ? [checker.getTypeOfSymbol(property)] : [];
    });
    return types[0] ? [{key, type: types[0]}] : [];
  });
}

test("the examples of the doc comments compile, strictly", () => {
  expect(typeErrors()).toEqual([]);
}, 120_000);

/** What typedoc warns of, as it reads the library's comments under the options of `npm run docs`. */
async function documentationWarnings(): Promise<readonly string[]> {
  const warnings: string[] = [];
  class Kept extends Logger {
    override log(message: string, level: LogLevel): void {
      if (level >= LogLevel.Warn) warnings.push(message);
    }
  }
  const options = fileURLToPath(new URL("../../lib/typedoc.json", import.meta.url));
  const typedoc = await Application.bootstrap({options}, [new TypeDocReader()]);
  expect(typedoc.logger.hasWarnings() || typedoc.logger.hasErrors(), "the options are known").toBe(false);
  typedoc.logger = new Kept();
  const project = typedoc.converter.convert(
    entryFiles.map((path) => ({
      displayName: basename(path, ".ts"),
      program: program(),
      sourceFile: program().getSourceFile(path)!,
    })),
  );
  expect(project.children?.length).toBe(entryFiles.length);
  typedoc.validate(project);
  return warnings;
}

test("the documentation of the whole API is written without a warning", async () => {
  expect(await documentationWarnings()).toEqual([]);
});

describe("every argument of every public function is taken sensibly or refused in words", () => {
  test("all functions are walked", () => {
    expect(functions.length).toBeGreaterThan(115);
    for (const {name, parameters} of functions)
      for (const {name: parameter, right, optional} of parameters)
        expect(right !== undefined || optional, `${name}.${parameter}`).toBe(true);
  });

  test.each(functions)("$name", async ({name, parameters}) => {
    const args = parameters.map(({right}) => right);
    const complaints: string[] = [];
    const hold = async (what: string, given: readonly unknown[], mustRefuse: boolean) => {
      const wrong = await complaint(name, given, mustRefuse);
      if (wrong) complaints.push(`${what} ${wrong}`);
    };
    await hold("right arguments", args, false);
    for (const [i, {name: parameter, type, optional, right, made}] of parameters.entries()) {
      for (const value of NONSENSE) {
        const kind = isOf(value, type) || (optional && value === undefined);
        await hold(`${parameter} ${said(value)}`, args.with(i, value), !kind);
      }
      if (made) continue;
      for (const {key, type: held} of namedValues(type, right)) {
        for (const value of NONSENSE)
          if (!(value === Infinity && UNLIMITED.has(key)))
            await hold(
              `${parameter}.${key} ${said(value)}`,
              args.with(i, {...(right as object), [key]: value}),
              // No value is as good as none where there need not be one.
              !isOf(value, held) && (value ?? undefined) !== undefined,
            );
      }
      if (!optional) continue;
      const [key] = Object.keys((right as object | undefined) ?? {});
      if (key && typeof right === "object" && !Array.isArray(right))
        await hold(
          `${parameter} with a misspelt key`,
          args.with(i, {...right, [key.toUpperCase()]: (right as Record<string, unknown>)[key]}),
          true,
        );
    }
    expect(complaints).toEqual([]);
  });
});
