import {readFileSync} from "node:fs";
import {dirname, resolve} from "node:path";
import {fileURLToPath} from "node:url";
import ts from "typescript";
import {ENTRIES, library} from "./library.ts";

/** The source file of an entry of the package, e.g. `lib/explore.ts` of `mixwright/explore`. */
function entryFile(entry: string): string {
  const name = entry.split("/")[1] ?? "index";
  return fileURLToPath(new URL(`../../lib/${name}.ts`, import.meta.url));
}

const entries = Object.keys(ENTRIES);
export const entryFiles = entries.map(entryFile);

/** A file of the library, parsed: once for all who look at it, the compiler too. */
function parsedFile(path: string): ts.SourceFile {
  const known = parsedFiles.get(path);
  if (known) return known;
  const options = {languageVersion: ts.ScriptTarget.ES2022, impliedNodeFormat: ts.ModuleKind.ESNext} as const;
  const parsed = ts.createSourceFile(path, readFileSync(path, "utf8"), options, true);
  parsedFiles.set(path, parsed);
  return parsed;
}
const parsedFiles = new Map<string, ts.SourceFile>();

/** What the library promises: each name, values and types, and the entry that has it. */
export const publicNames = entries.flatMap((entry) =>
  namesIn(entryFile(entry)).map((exported) => ({entry, ...exported})),
);

/** The names that an entry exports, and the file that it has each from: entries hold nothing of their own. */
function namesIn(path: string): {readonly name: string; readonly from: string}[] {
  return parsedFile(path).statements.flatMap((statement) => {
    if (
      !ts.isExportDeclaration(statement) ||
      !statement.moduleSpecifier ||
      !ts.isStringLiteral(statement.moduleSpecifier) ||
      !statement.exportClause ||
      !ts.isNamedExports(statement.exportClause)
    )
      throw new Error(`${path}: an entry has names from files alone (got "${statement.getText()}")`);
    const from = resolve(dirname(path), statement.moduleSpecifier.text);
    return statement.exportClause.elements.map(({name}) => ({name: name.text, from}));
  });
}

/** The functions that the library promises, as they are declared. */
export const publicFunctions = publicNames
  .filter(({name}) => typeof library[name as keyof typeof library] === "function")
  .flatMap(({name, entry, from}) =>
    parsedFile(from)
      .statements.filter(ts.isFunctionDeclaration)
      .filter((declaration) => declaration.name?.text === name)
      .map((declaration) => ({name, entry, declaration})),
  );

let compiled: ts.Program | undefined;

/** The entries as the compiler sees them, made when somebody asks: it takes seconds. */
export function program(): ts.Program {
  if (compiled) return compiled;
  const options: ts.CompilerOptions = {
    module: ts.ModuleKind.NodeNext,
    target: ts.ScriptTarget.ES2022,
    strict: true,
    allowImportingTsExtensions: true,
    noEmit: true,
    // None of Node's, which take as long to read as all of the library.
    types: [],
  };
  const host = ts.createCompilerHost(options);
  const {getSourceFile} = host;
  host.getSourceFile = (path, ...rest) => parsedFiles.get(path) ?? getSourceFile(path, ...rest);
  compiled = ts.createProgram(entryFiles, options, host);
  return compiled;
}
