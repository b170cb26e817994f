import ts from "typescript";
import {library} from "./library.ts";
import {program, publicFunctions} from "./public-api.ts";

/** The example of a public function, from its doc comment: code in which `// => value` follows what is to be compared. */
export interface Example {
  readonly name: string;
  /** Empty where the function has none. */
  readonly code: string;
}

/** One example for each public function, in the order of the entries. */
export const examples: readonly Example[] = publicFunctions.map(({name, declaration}) => ({
  name,
  code: exampleIn(ts.getJSDocCommentsAndTags(declaration)[0]?.getText() ?? ""),
}));

/** The code of the fenced block after `@example` in a doc comment. */
export function exampleIn(comment: string): string {
  const lines = comment.split("\n").map((line) => line.replace(/^\s*\* ?/, ""));
  return /@example\n```ts\n([^]*?)\n```/.exec(lines.join("\n"))?.[1] ?? "";
}

/** An expression of an example, and what the comment behind it says it comes to. */
interface Claim {
  readonly statement: ts.ExpressionStatement;
  readonly written: string;
}

function claimsIn(source: ts.SourceFile): Claim[] {
  return source.statements.filter(ts.isExpressionStatement).flatMap((statement) => {
    const behind = /^ *\/\/ => (.*)/.exec(source.text.slice(statement.getEnd()));
    return behind ? [{statement, written: behind[1]!}] : [];
  });
}

function parsed(code: string): ts.SourceFile {
  return ts.createSourceFile("example.ts", code, ts.ScriptTarget.ES2022, true);
}

const AsyncFunction = (async () => {}).constructor as new (
  ...code: string[]
) => (...args: unknown[]) => Promise<void>;

/** Runs an example; each of its claims with the value that the expression has. */
export async function claimsOf(code: string): Promise<{readonly written: string; readonly value: unknown}[]> {
  const source = parsed(code);
  const found: {written: string; value: unknown}[] = [];
  let asked = code;
  for (const {statement, written} of claimsIn(source).reverse()) {
    const expression = statement.expression.getText();
    const ask = `claim(${JSON.stringify(written)}, ${expression});`;
    asked = asked.slice(0, statement.getStart()) + ask + asked.slice(statement.getEnd());
  }
  const claim = (written: string, value: unknown) => void found.push({written, value});
  const script = ts.transpile(asked, {target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext});
  await new AsyncFunction(...Object.keys(library), "claim", script)(...Object.values(library), claim);
  return found;
}

/**
 * Whether a value is what is written: numbers to the last digit that is written, lists entry by entry, objects as far as their
 * keys are written.
 */
export function agrees(value: unknown, written: string): boolean {
  const [statement] = parsed(`(${written})`).statements;
  return (
    statement !== undefined && ts.isExpressionStatement(statement) && agreesWith(value, statement.expression)
  );
}

function agreesWith(value: unknown, node: ts.Expression): boolean {
  if (ts.isParenthesizedExpression(node)) return agreesWith(value, node.expression);
  if (ts.isArrayLiteralExpression(node))
    return (
      Array.isArray(value) &&
      value.length === node.elements.length &&
      node.elements.every((element, i) => agreesWith(value[i], element))
    );
  if (ts.isObjectLiteralExpression(node))
    return (
      typeof value === "object" &&
      value !== null &&
      node.properties.every(
        (property) =>
          ts.isPropertyAssignment(property) &&
          !ts.isComputedPropertyName(property.name) &&
          agreesWith((value as Record<string, unknown>)[property.name.text], property.initializer),
      )
    );
  const number = /^-?\d+(?:\.(\d+))?$/.exec(node.getText());
  if (number) {
    const half = 0.5 * 10 ** -(number[1]?.length ?? 0);
    return typeof value === "number" && Math.abs(value - Number(number[0])) <= half * (1 + 1e-9);
  }
  if (ts.isStringLiteral(node)) return value === node.text;
  return node.getText() === String(value) && typeof value !== "string";
}

/** What the compiler has against the examples, each in a function of its own with all public names at hand. */
export function typeErrors(): string[] {
  const file = `${import.meta.dirname}/all-examples.ts`;
  const bodies = examples.map(({name, code}) => `export async function ${name}Example() {\n${code}\n}`);
  const text = `import {library} from "./library.ts";
const {${Object.keys(library).join(", ")}} = library;
${bodies.join("\n")}`;
  const known = program();
  const options = known.getCompilerOptions();
  const host = ts.createCompilerHost(options);
  const {fileExists, getSourceFile} = host;
  host.fileExists = (path) => path === file || fileExists(path);
  host.getSourceFile = (path, ...rest) =>
    path === file
      ? ts.createSourceFile(path, text, ts.ScriptTarget.ES2022)
      : (known.getSourceFile(path) ?? getSourceFile(path, ...rest));
  const all = ts.createProgram([file], options, host, known);
  return all.getSemanticDiagnostics(all.getSourceFile(file)).map(({messageText, start}) => {
    const before = text.slice(0, start).split("\n");
    const owner = before.findLast((line) => line.startsWith("export async function"));
    return `${owner}: ${text.split("\n")[before.length - 1]}: ${ts.flattenDiagnosticMessageText(messageText, " ")}`;
  });
}
