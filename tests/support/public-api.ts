import {fileURLToPath} from "node:url";
import ts from "typescript";
import {ENTRIES} from "./library.ts";

/** The source file of an entry of the package, e.g. `lib/explore.ts` of `mixwright/explore`. */
export function entryFile(entry: string): string {
  const name = entry.split("/")[1] ?? "index";
  return fileURLToPath(new URL(`../../lib/${name}.ts`, import.meta.url));
}

const entries = Object.keys(ENTRIES);
/** The entries as the compiler sees them. */
export const program = ts.createProgram(entries.map(entryFile), {
  module: ts.ModuleKind.NodeNext,
  target: ts.ScriptTarget.ES2022,
  strict: true,
  allowImportingTsExtensions: true,
  noEmit: true,
  // None of Node's, which take as long to read as all of the library.
  types: [],
});

/** What the compiler knows of the library's types. */
export const checker = program.getTypeChecker();

/** What the library promises: each name, values and types, and the entry that has it. */
export const publicNames = entries.flatMap((entry) =>
  checker
    .getExportsOfModule(checker.getSymbolAtLocation(program.getSourceFile(entryFile(entry))!)!)
    .map((symbol) => ({entry, symbol})),
);

/** The functions that the library promises, as they are declared. */
export const publicFunctions = publicNames
  .map(({entry, symbol}) => ({
    entry,
    symbol: symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol,
  }))
  .flatMap(({entry, symbol}) =>
    (symbol.declarations ?? [])
      .filter(ts.isFunctionDeclaration)
      .map((declaration) => ({name: symbol.name, entry, declaration})),
  );
