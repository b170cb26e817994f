#!/usr/bin/env node
import {readFileSync, writeFileSync} from "node:fs";
import {dirname, resolve} from "node:path";
import {fileURLToPath} from "node:url";
import {parseArgs} from "node:util";
import {answerTo} from "./balance/balance.ts";
import type {Brief} from "./balance/brief/brief.ts";
import {readBrief} from "./balance/read/read-brief.ts";
import {deadlineIn, partOfTime} from "./lp/program/deadline.ts";
import {recipeOf} from "./balance/mix/recipe-of.ts";
import {substitute} from "./balance/substitute/substitute.ts";
import {InputError, printable, show} from "./core/errors.ts";
import {answerCsv, answerHtml, answerMarkdown} from "./io/document/answer-out.ts";
import {balanceText} from "./command/balance-text.ts";
import {commandOf, numberOf, type Options, timeOf} from "./command/arguments.ts";
import {learnedFrom, withLearned} from "./command/learned-from.ts";
import {freezingCurveSvg} from "./io/document/curve-svg.ts";
import {extras} from "./command/extras.ts";
import {readPantryJson} from "./io/json/ingredient-json.ts";
import {parseJson} from "./io/json/json.ts";
import {ownFirst} from "./io/csv/own-first.ts";
import {ownPrices} from "./io/csv/own-prices.ts";
import {readPantryCsv} from "./io/csv/pantry-csv.ts";
import {readPricesCsv} from "./io/csv/prices-csv.ts";
import {readRecipeCsv, recipeCsv} from "./io/csv/recipe-csv.ts";
import {readRecipe, recipeJson} from "./io/json/recipe-json.ts";
import {sheetOutputs} from "./command/sheet-outputs.ts";
import {substitutionText} from "./io/report/report-substitution.ts";
import {loadHighs} from "./lp/engines/engine-highs.ts";
import {OPTIONS, usage} from "./command/usage.ts";
import {answerWithNutrition, waysWithNutrition} from "./command/with-nutrition.ts";
import {utf8Text} from "./io/text/utf8.ts";
import type {Ingredient} from "./pantry/ingredient.ts";
import {type Pantry, pantryOf} from "./pantry/pantry.ts";
import {nameIn, type Recipe} from "./pantry/recipe.ts";
import {stockedPantry} from "./pantry/stocked.ts";

/** The pantry that is used when none is named: the ingredients that come with this package. */
const OWN_PANTRY = fileURLToPath(new URL("../datasets/ingredients.csv", import.meta.url));
/** Where the version stands. */
const OWN_PACKAGE = fileURLToPath(new URL("../package.json", import.meta.url));

async function main(args: string[]): Promise<number> {
  try {
    const {values, positionals} = readArguments(args);
    if (values.help) {
      process.stdout.write(usage(positionals[0]));
      return 0;
    }
    if (values.version) {
      process.stdout.write(`${JSON.parse(readText(OWN_PACKAGE)).version}\n`);
      return 0;
    }
    const [name = "", file, ...more] = positionals;
    const command = commandOf(name, values);
    if (file === undefined)
      throw new InputError("FILE", "missing", undefined, `name it, e.g. mixwright ${command} mix.json`);
    if (more.length) throw new InputError("FILE", "more than one", more[0], "give one at a time");
    return await COMMANDS[command](file, values);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return 2;
  }
}

/** What a command line asks for: the options, and what stands between them. */
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

const COMMANDS = {balance: balanceIn, replace: replaceIn, sheet: sheetOf};

async function balanceIn(file: string, options: Options): Promise<number> {
  const place = placeOf(file);
  const text = readText(file);
  if (/\.csv$/i.test(file))
    throw new InputError(
      place,
      "a CSV file",
      undefined,
      "give a brief in JSON; a recipe goes to replace or sheet",
    );
  const written = parseJson(text, place);
  const named = typeof written === "object" && written !== null ? (written as Record<string, unknown>) : {};
  const beside = (path: unknown) =>
    typeof path === "string" ? resolve(file === "-" ? "." : dirname(file), path) : undefined;
  const {input, pantry} = stock(written, {
    ...options,
    pantry: options.pantry ?? beside(named.pantry),
    prices: options.prices ?? beside(named.prices),
  });
  const taught = withLearned(input, await learnedFrom(options, pantry, readText));
  const brief = readBrief(taught, pantry, place);
  const search = await searchFor(brief);
  const time = deadlineIn(timeOf(options));
  const wantsMore =
    options.explain || options.weighable || options.scale !== undefined || options.reliability;
  const answer = answerTo(brief, pantry, {...search, deadline: wantsMore ? partOfTime(time, 0.8) : time});
  const more = answer.status === "optimal" ? extras(brief, answer, options, time) : {};
  if (options.json) process.stdout.write(`${JSON.stringify(answerWithNutrition(answer, brief, more))}\n`);
  else process.stdout.write(balanceText(answer, brief, more, options));
  writeOut(options.csv, () => answerCsv(answer, more));
  writeOut(options.markdown, () => answerMarkdown(answer, more));
  writeOut(options.html, () => answerHtml(answer, more));
  if (answer.status !== "optimal") {
    const why = answer.status === "infeasible" ? "no mix meets the brief" : "there is no verified answer";
    notWritten(options.recipe, why);
    notWritten(options.svg, why);
    return 1;
  }
  writeRecipe(options.recipe, recipeOf(brief, (more.weighable ?? answer).amounts));
  if (options.svg !== undefined) {
    const svg = await freezingCurveSvg(answer.freezing.curve, {
      freezer: brief.freezer,
      title: `Freezing curve of ${brief.name}`,
    });
    writeOut(options.svg, () => svg);
  }
  return 0;
}

/** Whole steps and rules that count make a brief hard: the second engine is at hand for it. */
async function searchFor({ingredients, maxIngredients, wholePacks}: Brief) {
  const counts = ingredients.some(({step, minIfUsed, onlyWith}) => step ?? minIfUsed ?? onlyWith);
  return counts || maxIngredients || wholePacks ? {highs: await loadHighs()} : {};
}

async function replaceIn(file: string, options: Options): Promise<number> {
  if (options.without === undefined)
    throw new InputError("--without", "missing", undefined, "name the ingredient that is out");
  const {recipe, pantry} = await recipeIn(file, options);
  const result = substitute(recipe, {
    without: nameIn(recipe, options.without, "--without"),
    // With a price list the shelf is what the list names; without one, everything in the pantry.
    from: options.prices === undefined ? pantry : pantry.ingredients.filter(({price}) => price !== undefined),
    deadline: timeOf(options),
    ...(await learnedFrom(options, pantry, readText)),
    ...(options.left !== undefined && {left: numberOf("--left", options.left, 0, 1e9)}),
    ...(options.keep && {keep: options.keep.map((name) => nameIn(recipe, name, "--keep"))}),
  });
  const text = options.json ? JSON.stringify(waysWithNutrition(result, recipe)) : substitutionText(result);
  process.stdout.write(`${text}\n`);
  const [best] = result.alternatives;
  if (!best) {
    notWritten(options.recipe, `nothing can stand in for ${result.without}`);
    return 1;
  }
  writeRecipe(options.recipe, {...best.recipe, name: `${recipe.name} without ${result.without}`});
  return 0;
}

async function sheetOf(file: string, options: Options): Promise<number> {
  const {recipe, pantry} = await recipeIn(file, options);
  const out = sheetOutputs(recipe, options, await learnedFrom(options, pantry, readText));
  for (const [path, content] of out.files) writeOut(path, () => content);
  for (const note of out.notes) process.stderr.write(`${printable(note)}\n`);
  if (options.json || !out.files.length) process.stdout.write(`${out.screen}\n`);
  return 0;
}

/** A recipe from a file, and the pantry that its names are looked up in. */
async function recipeIn(file: string, options: Options): Promise<{recipe: Recipe; pantry: Pantry}> {
  const [text, place] = [readText(file), placeOf(file)];
  const written = /^\s*[{[]/.test(text) ? parseJson(text, place) : undefined;
  const {input, pantry} = stock(written, options);
  const recipe =
    written === undefined ? await readRecipeCsv(text, pantry, place) : await readRecipe(input, pantry, place);
  return {recipe, pantry};
}

/** Files that say what is on the shelf. */
type Files = {readonly [name in "pantry" | "own" | "prices"]?: string | undefined};

/** The pantry that the options name, with their prices; those of the input's own ingredients go into the input. */
function stock(written: unknown, {pantry: path = OWN_PANTRY, own, prices}: Files) {
  const packaged = readIngredients(path);
  const pantry = pantryOf(own === undefined ? packaged : ownFirst(readIngredients(own), packaged));
  const shelf = prices === undefined ? [] : readPricesCsv(readText(prices), prices);
  const {input, left, passedOver} = ownPrices(written, shelf, pantry);
  for (const line of passedOver) process.stderr.write(`${line}\n`);
  return {input, pantry: stockedPantry(pantry, left)};
}

function readIngredients(path: string): Ingredient[] {
  return (/\.json$/i.test(path) ? readPantryJson : readPantryCsv)(readText(path), path);
}

function placeOf(file: string): string {
  return file === "-" ? "standard input" : file;
}

function readText(path: string): string {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(path === "-" ? 0 : path);
  } catch (error) {
    throw fileError(path, error);
  }
  return utf8Text(bytes, placeOf(path));
}

/** Writes to a file where an option names one, and says so. */
function writeOut(path: string | undefined, content: () => string): void {
  if (path === undefined) return;
  try {
    writeFileSync(path, content());
    process.stderr.write(`wrote ${printable(path)}\n`);
  } catch (error) {
    throw error instanceof InputError ? error : fileError(path, error);
  }
}

/** Writes a recipe: CSV, or JSON if the name ends so. */
function writeRecipe(path: string | undefined, recipe: Recipe): void {
  writeOut(path, () => (path?.endsWith(".json") ? recipeJson : recipeCsv)(recipe));
}

/** Says that a file which an option names was not written, and why. */
function notWritten(path: string | undefined, why: string): void {
  if (path !== undefined) process.stderr.write(`${printable(`${path}: not written, because ${why}`)}\n`);
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
