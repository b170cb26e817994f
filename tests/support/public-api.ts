import {fileURLToPath} from "node:url";
import ts from "typescript";

const index = fileURLToPath(new URL("../../lib/index.ts", import.meta.url));
const program = ts.createProgram([index], {
  module: ts.ModuleKind.NodeNext,
  target: ts.ScriptTarget.ES2022,
  strict: true,
  allowImportingTsExtensions: true,
  noEmit: true,
});

/** What the compiler knows of the library's types. */
export const checker = program.getTypeChecker();

/** The functions that the library promises, as they are declared. */
export const publicFunctions = checker
  .getExportsOfModule(checker.getSymbolAtLocation(program.getSourceFile(index)!)!)
  .map((symbol) => (symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol))
  .flatMap((symbol) =>
    (symbol.declarations ?? [])
      .filter(ts.isFunctionDeclaration)
      .map((declaration) => ({name: symbol.name, declaration})),
  );
