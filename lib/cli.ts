#!/usr/bin/env node
import {readFileSync, writeFileSync} from "node:fs";
import {dirname, resolve} from "node:path";
import {fileURLToPath} from "node:url";
import {parseArgs} from "node:util";
import type {Answer} from "./balance/answer.ts";
import {answerTo} from "./balance/balance.ts";
import type {Brief} from "./balance/brief.ts";
import {pricesOf} from "./balance/prices.ts";
import {readBrief} from "./balance/read-brief.ts";
import {reliability} from "./balance/reliability.ts";
import {weighable} from "./balance/weighable.ts";
import {InputError, show} from "./core/errors.ts";
import {freezingCurveSvg} from "./io/curve-svg.ts";
import {readPantryJson} from "./io/ingredient-json.ts";
import {parseJson} from "./io/json.ts";
import {readPantryCsv} from "./io/pantry-csv.ts";
import {readPricesCsv} from "./io/prices-csv.ts";
import {candidatesInFull, pricesText, reliabilityText, weighableText} from "./io/report-more.ts";
import {textReport} from "./io/report.ts";
import {type Pantry, pantryOf} from "./pantry/pantry.ts";
import {stockedPantry} from "./pantry/stocked.ts";

const USAGE = `Usage: mixwright balance FILE [options]

Balances the mix of a brief: finds the ingredient quantities that meet its targets at the least cost.

  FILE            the brief, a JSON file; - reads it from standard input
  --json          print the answer as one JSON object
  --explain       what each limit costs and over which range, and from which price an ingredient comes in
  --candidates    the other mixes in full
  --weighable     amounts for the scale, eggs whole, with every target kept if that is possible
  --scale GRAMS   step of the scale for --weighable; 1 unless given
  --reliability   how often each target holds when the kitchen is off by the brief's "spread"
  --svg FILE      write the freezing curve as a picture

Exit code: 0 balanced, 1 no mix meets the brief (the report says why), 2 a mistake in the input.
`;

const OPTIONS = {
  json: {type: "boolean"},
  explain: {type: "boolean"},
  candidates: {type: "boolean"},
  weighable: {type: "boolean"},
  scale: {type: "string"},
  reliability: {type: "boolean"},
  svg: {type: "string"},
  help: {type: "boolean", short: "h"},
} as const;

/** The pantry that a brief uses when it names none: the ingredients that come with this package. */
const OWN_PANTRY = fileURLToPath(new URL("../datasets/ingredients.csv", import.meta.url));

process.exitCode = await main(process.argv.slice(2));

async function main(args: string[]): Promise<number> {
  try {
    const {values, positionals} = readArguments(args);
    if (values.help) {
      process.stdout.write(USAGE);
      return 0;
    }
    const [command, file, ...more] = positionals;
    if (command !== "balance") {
      throw new InputError(
        "command",
        command === undefined ? "missing" : "unknown",
        command,
        "use: mixwright balance FILE",
      );
    }
    if (file === undefined)
      throw new InputError("FILE", "missing", undefined, "name the brief, e.g. mixwright balance brief.json");
    if (more.length) throw new InputError("FILE", "more than one", more[0], "give one brief at a time");
    return await balanceFile(file, values);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return 2;
  }
}

type Options = ReturnType<typeof readArguments>["values"];

function readArguments(args: string[]) {
  try {
    return parseArgs({args, allowPositionals: true, options: OPTIONS});
  } catch (error) {
    throw new InputError(
      "command line",
      (error as Error).message.split(/[.\n]/)[0]!,
      undefined,
      "see mixwright --help",
    );
  }
}

async function balanceFile(file: string, options: Options): Promise<number> {
  const place = file === "-" ? "standard input" : file;
  const input = parseJson(readText(file), place);
  const pantry = pantryFor(input, file);
  const brief = readBrief(input, pantry, place);
  const answer = answerTo(brief, pantry);
  const more = answer.status === "optimal" ? extras(brief, answer, options) : {};
  if (options.json) process.stdout.write(`${JSON.stringify({...answer, ...more})}\n`);
  else {
    const sections = [
      textReport(answer, brief).trimEnd(),
      options.candidates && answer.status === "optimal" && candidatesInFull(answer.candidates),
      more.weighable && weighableText(more.weighable),
      more.prices && pricesText(more.prices),
      more.reliability && reliabilityText(more.reliability),
    ];
    process.stdout.write(`${sections.filter(Boolean).join("\n\n")}\n`);
  }
  if (options.svg !== undefined && answer.status === "optimal") {
    writeText(
      options.svg,
      await freezingCurveSvg(answer.freezing.curve, {
        freezer: brief.freezer,
        title: `Freezing curve of ${brief.name}`,
      }),
    );
  }
  return answer.status === "optimal" ? 0 : 1;
}

/** What the options ask for beyond the answer itself. */
function extras(brief: Brief, {amounts}: Extract<Answer, {status: "optimal"}>, options: Options) {
  const grams = amounts.map((amount) => amount.grams);
  return {
    ...(options.explain && {prices: pricesOf(brief)}),
    ...(options.weighable && {weighable: weighable(brief, grams, scaleStep(options.scale))}),
    ...(options.reliability && {reliability: reliability(brief, grams, spreadOf(brief))}),
  };
}

function scaleStep(text: string | undefined): number {
  const step = Number(text ?? 1);
  if (!(step > 0 && step <= 1000))
    throw new InputError("--scale", "no step of a scale", text, "give grams above 0, e.g. --scale 5");
  return step;
}

function spreadOf({spread}: Brief) {
  if (spread) return spread;
  throw new InputError(
    "--reliability",
    "the brief has no spread",
    undefined,
    'say how far the kitchen may be off, e.g. "spread": {"weighing": 1}',
  );
}

/** The pantry that a brief names, with its prices; both are looked for beside the brief. */
function pantryFor(input: unknown, file: string): Pantry {
  const {pantry: own, prices} =
    typeof input === "object" && input !== null ? (input as Record<string, unknown>) : {};
  const beside = (path: string) => resolve(file === "-" ? "." : dirname(file), path);
  const path = typeof own === "string" ? beside(own) : OWN_PANTRY;
  const read = path.endsWith(".json") ? readPantryJson : readPantryCsv;
  const pantry = pantryOf(read(readText(path), path));
  return typeof prices === "string"
    ? stockedPantry(pantry, readPricesCsv(readText(beside(prices)), prices))
    : pantry;
}

function readText(path: string): string {
  try {
    return readFileSync(path === "-" ? 0 : path, "utf8");
  } catch (error) {
    throw fileError(path, error);
  }
}

function writeText(path: string, text: string): void {
  try {
    writeFileSync(path, text);
  } catch (error) {
    throw fileError(path, error);
  }
}

function fileError(path: string, error: unknown): InputError {
  const {code} = error as NodeJS.ErrnoException;
  const problem =
    code === "ENOENT"
      ? "no such file or folder"
      : code === "EISDIR"
        ? "a folder, not a file"
        : `cannot be used (${show(code)})`;
  return new InputError(path, problem, undefined, "check the path");
}
