import {fileURLToPath} from "node:url";
import ts from "typescript";
import {describe, expect, test} from "vitest";
import {InputError} from "../lib/core/errors.ts";
import * as library from "../lib/index.ts";
import {milk, sugar} from "./support/custard.ts";
import {realPantry} from "./support/pantry.ts";

const index = fileURLToPath(new URL("../lib/index.ts", import.meta.url));
const program = ts.createProgram([index], {
  module: ts.ModuleKind.NodeNext,
  target: ts.ScriptTarget.ES2022,
  strict: true,
  allowImportingTsExtensions: true,
  noEmit: true,
});
const checker = program.getTypeChecker();

/** What a caller without types might mistake for each other, and plain nonsense. */
const asked = {
  ingredients: [
    {name: "whole milk", price: 1},
    {name: "sugar", price: 1},
  ],
  targets: {},
};
const recipe = {name: "syrup", lines: [milk, sugar].map((ingredient) => ({ingredient, grams: 100}))};
const THINGS = {
  nothing: undefined,
  null: null,
  "a number": 5,
  "an object of another make": {when: "today"},
  "a list of numbers": [1, 2],
  "a brief as a cook writes it": asked,
  "a brief": library.readBrief(asked, realPantry),
  "an answer": library.balance(asked, {pantry: realPantry}),
  "a recipe": recipe,
  "a pantry": realPantry,
  "an ingredient": milk,
  "a composition": milk.composition,
  "a product": library.makeProduct("custard", [library.baseComponent(recipe)]),
};
type Thing = keyof typeof THINGS;

/** By the type of a function's first parameter: what it takes. Anything else must be refused in words. */
const TAKES: Readonly<Record<string, readonly Thing[]>> = {
  Composition: ["a composition"],
  Recipe: ["a recipe"],
  Product: ["a product"],
  Pantry: ["a pantry"],
  Brief: ["a brief"],
  LinearProgram: [],
  Ingredient: ["an ingredient"],
  Answer: ["an answer"],
  BatchSheet: [],
  BriefInput: ["a brief as a cook writes it"],
  "readonly Ingredient[]": [],
  "readonly RecipeLine[]": [],
  "readonly Portion[]": [],
  "readonly Reading[]": [],
  "readonly Component[]": [],
  "readonly CurvePoint[]": [],
};

/** Further arguments that are right, by the type of the parameter. */
const FURTHER: Readonly<Record<string, unknown>> = {
  number: -18,
  "readonly number[]": [1, 1],
  string: "milk",
};

const functions = checker
  .getExportsOfModule(checker.getSymbolAtLocation(program.getSourceFile(index)!)!)
  .map((symbol) => (symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol))
  .flatMap((symbol) =>
    (symbol.declarations ?? []).filter(ts.isFunctionDeclaration).flatMap(({parameters}) => {
      const types = parameters.map((parameter) => checker.typeToString(checker.getTypeAtLocation(parameter)));
      return Object.hasOwn(TAKES, types[0] ?? "") ? [{name: symbol.name, types}] : [];
    }),
  );

/** Calls a function and runs whatever it returns to its end. */
async function run(name: string, args: readonly unknown[]): Promise<void> {
  const made: unknown = (library as unknown as Record<string, (...args: readonly unknown[]) => unknown>)[
    name
  ]!(...args);
  if (typeof made === "object" && made !== null && "next" in made)
    Array.from(made as unknown as Iterable<unknown>);
  else await made;
}

describe("a value of another make is refused in words, not by an error from inside", () => {
  test("of nearly all functions that take one of the library's own", () => {
    expect(functions.length).toBeGreaterThan(60);
  });

  test.each(functions)("$name", async ({name, types}) => {
    const further = types.slice(1).map((type) => FURTHER[type] ?? {});
    const taken = TAKES[types[0]!]!;
    for (const [thing, value] of Object.entries(THINGS)) {
      if (taken.includes(thing as Thing)) continue;
      let error: unknown;
      try {
        await run(name, [value, ...further]);
      } catch (thrown) {
        error = thrown;
      }
      expect(error, `${name}(${thing})`).toBeInstanceOf(InputError);
    }
  });
});
