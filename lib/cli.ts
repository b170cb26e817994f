#!/usr/bin/env node
import {readFileSync} from "node:fs";
import {dirname, resolve} from "node:path";
import {fileURLToPath} from "node:url";
import {parseArgs} from "node:util";
import {answerTo} from "./balance/balance.ts";
import {readBrief} from "./balance/read-brief.ts";
import {InputError, show} from "./core/errors.ts";
import {parseJson} from "./io/json.ts";
import {readPantryCsv} from "./io/pantry-csv.ts";
import {readPricesCsv} from "./io/prices-csv.ts";
import {textReport} from "./io/report.ts";
import {type Pantry, pantryOf} from "./pantry/pantry.ts";
import {stockedPantry} from "./pantry/stocked.ts";

const USAGE = `Usage: mixwright balance FILE [--json]

Balances the mix of a brief: finds the ingredient quantities that meet its targets at the least cost.

  FILE     the brief, a JSON file
  --json   print the answer as one JSON object

Exit code: 0 balanced, 1 no mix meets the brief (the report says why), 2 a mistake in the input.
`;

/** The pantry that a brief uses when it names none: the ingredients that come with this package. */
const OWN_PANTRY = fileURLToPath(new URL("../datasets/ingredients.csv", import.meta.url));

process.exitCode = main(process.argv.slice(2));

function main(args: string[]): number {
  try {
    const {values, positionals} = readArguments(args);
    if (values.help) {
      process.stdout.write(USAGE);
      return 0;
    }
    const [command, file, ...more] = positionals;
    if (command !== "balance")
      throw new InputError(
        "command",
        command === undefined ? "missing" : "unknown",
        command,
        "use: mixwright balance FILE",
      );
    if (file === undefined)
      throw new InputError("FILE", "missing", undefined, "name the brief, e.g. mixwright balance brief.json");
    if (more.length) throw new InputError("FILE", "more than one", more[0], "give one brief at a time");
    return balanceFile(file, values.json ?? false);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return 2;
  }
}

function readArguments(args: string[]) {
  try {
    return parseArgs({
      args,
      allowPositionals: true,
      options: {json: {type: "boolean"}, help: {type: "boolean", short: "h"}},
    });
  } catch (error) {
    throw new InputError(
      "command line",
      (error as Error).message.split(/[.\n]/)[0]!,
      undefined,
      "see mixwright --help",
    );
  }
}

function balanceFile(file: string, json: boolean): number {
  const input = parseJson(readText(file), file);
  const pantry = pantryFor(input, file);
  const brief = readBrief(input, pantry, file);
  const answer = answerTo(brief, pantry);
  process.stdout.write(json ? `${JSON.stringify(answer)}\n` : textReport(answer, brief));
  return answer.status === "optimal" ? 0 : 1;
}

/** The pantry that a brief names, with its prices; both are looked for beside the brief. */
function pantryFor(input: unknown, file: string): Pantry {
  const {pantry: own, prices} =
    typeof input === "object" && input !== null ? (input as Record<string, unknown>) : {};
  const beside = (path: string) => resolve(dirname(file), path);
  const path = typeof own === "string" ? beside(own) : OWN_PANTRY;
  const pantry = pantryOf(readPantryCsv(readText(path), path));
  if (typeof prices !== "string") return pantry;
  return stockedPantry(pantry, readPricesCsv(readText(beside(prices)), prices));
}

function readText(path: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch (error) {
    const {code} = error as NodeJS.ErrnoException;
    const problem =
      code === "ENOENT"
        ? "no such file"
        : code === "EISDIR"
          ? "a folder, not a file"
          : `cannot be read (${show(code)})`;
    throw new InputError(path, problem, undefined, "check the path");
  }
}
