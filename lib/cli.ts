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
import {substitute} from "./balance/substitute.ts";
import {weighable} from "./balance/weighable.ts";
import {InputError, show} from "./core/errors.ts";
import {answerCsv, answerHtml, answerMarkdown} from "./io/answer-out.ts";
import {batchSheetCsv} from "./io/batch-sheet-csv.ts";
import {batchSheetHtml} from "./io/batch-sheet-html.ts";
import {batchSheetMarkdown} from "./io/batch-sheet-markdown.ts";
import {freezingCurveSvg} from "./io/curve-svg.ts";
import {readPantryJson} from "./io/ingredient-json.ts";
import {parseJson} from "./io/json.ts";
import {readPantryCsv} from "./io/pantry-csv.ts";
import {readPricesCsv} from "./io/prices-csv.ts";
import {readRecipeCsv, recipeCsv} from "./io/recipe-csv.ts";
import {readRecipeJson, recipeJson} from "./io/recipe-json.ts";
import {candidatesInFull, checkText, pricesText, reliabilityText, weighableText} from "./io/report-more.ts";
import {substitutionText} from "./io/report-substitution.ts";
import {textReport} from "./io/report.ts";
import {loadHighs} from "./lp/engine-highs.ts";
import {OPTIONS, USAGE} from "./io/usage.ts";
import {baseProcess, type Making, WAYS_OF_MAKING} from "./kitchen/base-process.ts";
import {batchSheet} from "./kitchen/batch-sheet.ts";
import {baseComponent, makeProduct} from "./kitchen/product.ts";
import {type Pantry, pantryOf} from "./pantry/pantry.ts";
import {nameIn, type Recipe, recipeMass} from "./pantry/recipe.ts";
import {stockedPantry} from "./pantry/stocked.ts";

/** The pantry that is used when none is named: the ingredients that come with this package. */
const OWN_PANTRY = fileURLToPath(new URL("../datasets/ingredients.csv", import.meta.url));

async function main(args: string[]): Promise<number> {
  try {
    const {values, positionals} = readArguments(args);
    if (values.help) {
      process.stdout.write(USAGE);
      return 0;
    }
    const [command = "", file, ...more] = positionals;
    const run = Object.hasOwn(COMMANDS, command) ? COMMANDS[command as keyof typeof COMMANDS] : undefined;
    if (!run)
      throw new InputError(
        "command",
        command ? "unknown" : "missing",
        command || undefined,
        "use balance, replace or sheet; see mixwright --help",
      );
    if (file === undefined)
      throw new InputError("FILE", "missing", undefined, `name it, e.g. mixwright ${command} mix.json`);
    if (more.length) throw new InputError("FILE", "more than one", more[0], "give one at a time");
    return await run(file, values);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return 2;
  }
}

const COMMANDS = {balance: balanceFile, replace: replaceIn, sheet: sheetOf};

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
  const place = placeOf(file);
  const input = parseJson(readText(file), place);
  const named = typeof input === "object" && input !== null ? (input as Record<string, unknown>) : {};
  const beside = (path: unknown) =>
    typeof path === "string" ? resolve(file === "-" ? "." : dirname(file), path) : undefined;
  const pantry = readPantry(options.pantry ?? beside(named.pantry), options.prices ?? beside(named.prices));
  const brief = readBrief(input, pantry, place);
  const answer = answerTo(brief, pantry, await searchFor(brief));
  const more = answer.status === "optimal" ? extras(brief, answer, options) : {};
  if (options.json) process.stdout.write(`${JSON.stringify({...answer, ...more})}\n`);
  else {
    const sections = [
      textReport(answer, brief).trimEnd(),
      options.candidates && answer.status === "optimal" && candidatesInFull(answer.candidates),
      more.weighable && weighableText(more.weighable),
      more.prices && pricesText(more.prices, brief),
      options.explain && answer.status === "optimal" && checkText(answer),
      more.reliability && reliabilityText(more.reliability),
    ];
    process.stdout.write(`${sections.filter(Boolean).join("\n\n")}\n`);
  }
  writeText(options.csv, () => answerCsv(answer));
  writeText(options.markdown, () => answerMarkdown(answer));
  writeText(options.html, () => answerHtml(answer));
  if (answer.status !== "optimal") return 1;
  const {amounts} = more.weighable ?? answer;
  const lines = amounts.flatMap(({grams}, j) =>
    grams > 0 ? [{ingredient: brief.ingredients[j]!.ingredient, grams}] : [],
  );
  const recipeText = options.recipe?.endsWith(".json") ? recipeJson : recipeCsv;
  writeText(options.recipe, () => recipeText({name: brief.name, lines}));
  if (options.svg !== undefined) {
    const svg = await freezingCurveSvg(answer.freezing.curve, {
      freezer: brief.freezer,
      title: `Freezing curve of ${brief.name}`,
    });
    writeText(options.svg, () => svg);
  }
  return 0;
}

/** Whole steps and rules that count make a brief hard: the second engine is at hand for it, and a clock. */
async function searchFor({ingredients, maxIngredients, wholePacks}: Brief) {
  const counts = ingredients.some(({step, minIfUsed, onlyWith}) => step ?? minIfUsed ?? onlyWith);
  return counts || maxIngredients || wholePacks
    ? {highs: await loadHighs(), now: () => performance.now()}
    : {};
}

/** What the options ask for beyond the answer itself. */
function extras(brief: Brief, {amounts}: Extract<Answer, {status: "optimal"}>, options: Options) {
  const grams = amounts.map((amount) => amount.grams);
  return {
    ...(options.explain && {prices: pricesOf(brief)}),
    ...(options.weighable && {
      weighable: weighable(brief, grams, numberIn("--scale", options.scale ?? "1", 0.01, 1000)),
    }),
    ...(options.reliability && {reliability: reliability(brief, grams, spreadOf(brief))}),
  };
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

async function replaceIn(file: string, options: Options): Promise<number> {
  if (options.without === undefined)
    throw new InputError("--without", "missing", undefined, "name the ingredient that is out");
  const pantry = readPantry(options.pantry, options.prices);
  const recipe = await readRecipe(file, pantry);
  const result = substitute(recipe, {
    without: nameIn(recipe, options.without, pantry, "--without"),
    // With a price list the shelf is what the list names; without one, everything in the pantry.
    from: options.prices === undefined ? pantry : pantry.ingredients.filter(({price}) => price !== undefined),
    ...(options.left !== undefined && {left: numberIn("--left", options.left, 0, 1e9)}),
    ...(options.keep && {keep: options.keep.map((name) => nameIn(recipe, name, pantry, "--keep"))}),
  });
  process.stdout.write(options.json ? `${JSON.stringify(result)}\n` : `${substitutionText(result)}\n`);
  return 0;
}

async function sheetOf(file: string, options: Options): Promise<number> {
  const recipe = await readRecipe(file, readPantry(options.pantry, options.prices));
  const grams = options.grams === undefined ? recipeMass(recipe) : numberIn("--grams", options.grams, 1, 1e7);
  const overrun =
    options.overrun === undefined ? {} : {overrun: numberIn("--overrun", options.overrun, 0, 200)};
  const sheet = batchSheet(
    makeProduct(recipe.name, [baseComponent(recipe)]),
    {grams},
    {...overrun, process: baseProcess(recipe.lines, {way: wayIn(options.way)})},
  );
  writeText(options.html, () => batchSheetHtml(sheet));
  writeText(options.csv, () => batchSheetCsv(sheet));
  writeText(options.markdown, () => batchSheetMarkdown(sheet));
  if (options.json) process.stdout.write(`${JSON.stringify(sheet)}\n`);
  else if (!options.html && !options.csv && !options.markdown)
    process.stdout.write(batchSheetMarkdown(sheet));
  return 0;
}

function wayIn(given = "custard"): Making["way"] {
  if (Object.hasOwn(WAYS_OF_MAKING, given)) return given as Making["way"];
  throw new InputError("--way", "unknown", given, `use ${Object.keys(WAYS_OF_MAKING).join(", ")}`);
}

function readRecipe(file: string, pantry: Pantry): Promise<Recipe> {
  const content = readText(file);
  return /^\s*[{[]/.test(content)
    ? readRecipeJson(content, pantry, placeOf(file))
    : readRecipeCsv(content, pantry, placeOf(file));
}

function readPantry(path = OWN_PANTRY, prices?: string): Pantry {
  const read = path.endsWith(".json") ? readPantryJson : readPantryCsv;
  const pantry = pantryOf(read(readText(path), path));
  return prices === undefined ? pantry : stockedPantry(pantry, readPricesCsv(readText(prices), prices));
}

function numberIn(option: string, given: string, min: number, max: number): number {
  const value = Number(given);
  if (given.trim() !== "" && value >= min && value <= max) return value;
  throw new InputError(option, "no number in range", given, `give a number from ${min} to ${max}`);
}

function placeOf(file: string): string {
  return file === "-" ? "standard input" : file;
}

function readText(path: string): string {
  try {
    return readFileSync(path === "-" ? 0 : path, "utf8");
  } catch (error) {
    throw fileError(path, error);
  }
}

/** Writes to a file where an option names one. */
function writeText(path: string | undefined, content: () => string): void {
  if (path === undefined) return;
  try {
    writeFileSync(path, content());
  } catch (error) {
    throw error instanceof InputError ? error : fileError(path, error);
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

process.exitCode = await main(process.argv.slice(2));
