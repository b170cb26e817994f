import ts from "typescript";
import {describe, expect, test} from "vitest";
import {publicFunctions} from "../support/public-api.ts";

/** What a doc comment may say of a number besides a unit: that it has none, or what it counts. */
const UNIT =
  /°C|°Brix|\bg\b|\bkg\b|\bml\b|\bmm\b|%|\bJ\b|\bkJ|\bkW|\bW\b|\bm\/s|\bminutes?\b|\bseconds?\b|\bmilliseconds\b|\bhours?\b|share|0 to 1|factor|index|count|number of|how many|money|sucrose = 1|dextrose = 100|ratio|pixels|refractive/i;

interface PublicFunction {
  readonly name: string;
  readonly doc: string;
  readonly node: ts.FunctionDeclaration;
}

const functions: PublicFunction[] = publicFunctions.map(({name, declaration}) => ({
  name,
  doc: ts
    .getJSDocCommentsAndTags(declaration)
    .map((comment) => comment.getText())
    .join("\n"),
  node: declaration,
}));

/** Whether a function's own body throws, or checks a value in a way that throws. */
function throws({node}: PublicFunction): boolean {
  return /throw new InputError\(|\bfinite\(|\bparse\(|\breadComposition\(|\bfindIngredient\(/.test(
    node.body?.getText() ?? "",
  );
}

describe.each(functions)("$name", (fn) => {
  test("has a doc comment that says what it is", () => {
    expect(fn.doc.length).toBeGreaterThan(20);
  });

  test("gives the unit of every number it takes or returns", () => {
    const numbers = fn.node.parameters.filter(
      (parameter) => parameter.type?.kind === ts.SyntaxKind.NumberKeyword,
    );
    const returnsNumber = fn.node.type?.kind === ts.SyntaxKind.NumberKeyword;
    expect(numbers.length === 0 && !returnsNumber ? "no numbers" : fn.doc).toMatch(
      numbers.length === 0 && !returnsNumber ? /no numbers/ : UNIT,
    );
  });

  test("names the errors it throws", () => {
    expect(throws(fn) ? fn.doc : "@throws").toContain("@throws");
  });
});

test("there are public functions to look at", () => {
  expect(functions.length).toBeGreaterThan(60);
});
