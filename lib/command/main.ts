import {dirname, resolve} from "node:path";
import {parseArgs} from "node:util";
import {answerTo} from "../balance/balance.ts";
import type {Brief} from "../balance/brief/brief.ts";
import {readBrief} from "../balance/read/read-brief.ts";
import {deadlineIn, partOfTime} from "../lp/program/deadline.ts";
import {recipeOf} from "../balance/mix/recipe-of.ts";
import {substitute} from "../balance/substitute/substitute.ts";
import {InputError, printable} from "../core/errors.ts";
import {answerCsv, answerHtml, answerMarkdown} from "../io/document/answer-out.ts";
import {balanceText} from "./balance-text.ts";
import {commandOf, numberOf, type Options, timeOf} from "./arguments.ts";
import {learnedFrom, withLearned} from "./learned-from.ts";
import {freezingCurveSvg} from "../io/document/curve-svg.ts";
import {extras} from "./extras.ts";
import {readPantryJson} from "../io/json/ingredient-json.ts";
import {parseJson} from "../io/json/json.ts";
import {ownFirst} from "../io/csv/own-first.ts";
import {ownPrices} from "../io/csv/own-prices.ts";
import {readPantryCsv} from "../io/csv/pantry-csv.ts";
import {readPricesCsv} from "../io/csv/prices-csv.ts";
import {readRecipeCsv, recipeCsv} from "../io/csv/recipe-csv.ts";
import {readRecipe, recipeJson} from "../io/json/recipe-json.ts";
import {isRecipeCsv, typedRecipe} from "./typed-recipe.ts";
import {recipeReading} from "./recipe-reading.ts";
import {sheetOutputs} from "./sheet-outputs.ts";
import {answerWithNutrition, waysWithNutrition} from "./with-nutrition.ts";
import {substitutionText} from "../io/report/report-substitution.ts";
import {loadHighs} from "../lp/engines/engine-highs.ts";
import {OPTIONS, usage} from "./usage.ts";
import type {Ingredient} from "../pantry/ingredient.ts";
import {type Pantry, pantryOf} from "../pantry/pantry.ts";
import {nameIn, type Recipe} from "../pantry/recipe.ts";
import {stockedPantry} from "../pantry/stocked.ts";
import {notWritten, type Outside, placeOf, textOf, writeOut} from "./outside.ts";

/**
 * The command: reads its arguments, does what they ask for, and says what went wrong in one line.
 *
 * @param args the arguments after the command's own name
 * @returns the exit code: 0, 1 where no mix or substitute was found, 2 for a mistake in the input
 */
export async function main(args: readonly string[], outside: Outside): Promise<number> {
  try {
    const {values, positionals} = readArguments(args);
    if (values.help) {
      outside.say(usage(positionals[0]));
      return 0;
    }
    if (values.version) {
      outside.say(`${JSON.parse(textOf(outside.package, outside)).version}\n`);
      return 0;
    }
    const [name = "", file, ...more] = positionals;
    const command = commandOf(name, values);
    if (file === undefined)
      throw new InputError("FILE", "missing", undefined, `name it, e.g. mixwright ${command} mix.json`);
    if (more.length) throw new InputError("FILE", "more than one", more[0], "give one at a time");
    return await COMMANDS[command](file, values, outside);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    outside.note(`${error.message}\n`);
    return 2;
  }
}

/** Options of a command line, and the words between them. */
function readArguments(args: readonly string[]) {
  try {
    return parseArgs({args: withNegatives(args), allowPositionals: true, options: OPTIONS});
  } catch (error) {
    throw new InputError(
      "command line",
      (error as Error).message.split(/[.\n]/)[0]!,
      undefined,
      "see mixwright --help",
    );
  }
}

/** A number below 0 tied to the option before it: Node takes it for an option of its own. */
function withNegatives(args: readonly string[]): string[] {
  return args.reduce<string[]>((joined, arg) => {
    const last = joined.at(-1);
    return /^-[\d.]/.test(arg) && last !== undefined && /^--[a-z]+$/.test(last)
      ? [...joined.slice(0, -1), `${last}=${arg}`]
      : [...joined, arg];
  }, []);
}

const COMMANDS = {balance: balanceIn, read: readIn, replace: replaceIn, sheet: sheetOf};

async function balanceIn(file: string, options: Options, outside: Outside): Promise<number> {
  const place = placeOf(file);
  const text = textOf(file, outside);
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
  const {input, pantry} = stock(
    written,
    {
      ...options,
      pantry: options.pantry ?? beside(named.pantry),
      prices: options.prices ?? beside(named.prices),
    },
    outside,
  );
  const taught = withLearned(input, await learnedFrom(options, pantry, (path) => textOf(path, outside)));
  const brief = readBrief(taught, pantry, place);
  const search = await searchFor(brief);
  const time = deadlineIn(timeOf(options));
  const wantsMore =
    options.explain || options.weighable || options.scale !== undefined || options.reliability;
  const answer = answerTo(brief, pantry, {...search, deadline: wantsMore ? partOfTime(time, 0.8) : time});
  const more = answer.status === "optimal" ? extras(brief, answer, options, time) : {};
  if (options.json) outside.say(`${JSON.stringify(answerWithNutrition(answer, brief, more))}\n`);
  else outside.say(balanceText(answer, brief, more, options));
  writeOut(options.csv, () => answerCsv(answer, more), outside);
  writeOut(options.markdown, () => answerMarkdown(answer, more), outside);
  writeOut(options.html, () => answerHtml(answer, more), outside);
  if (answer.status !== "optimal") {
    const why = answer.status === "infeasible" ? "no mix meets the brief" : "there is no verified answer";
    notWritten(options.recipe, why, outside);
    notWritten(options.svg, why, outside);
    return 1;
  }
  writeRecipe(options.recipe, recipeOf(brief, (more.weighable ?? answer).amounts), outside);
  if (options.svg !== undefined) {
    const svg = await freezingCurveSvg(answer.freezing.curve, {
      freezer: brief.freezer,
      title: `Freezing curve of ${brief.name}`,
    });
    writeOut(options.svg, () => svg, outside);
  }
  return 0;
}

/** Second engine, for a brief that whole steps or rules that count make hard. */
async function searchFor({ingredients, maxIngredients, wholePacks}: Brief) {
  const counts = ingredients.some(({step, minIfUsed, onlyWith}) => step ?? minIfUsed ?? onlyWith);
  return counts || maxIngredients || wholePacks ? {highs: await loadHighs()} : {};
}

async function replaceIn(file: string, options: Options, outside: Outside): Promise<number> {
  if (options.without === undefined)
    throw new InputError("--without", "missing", undefined, "name the ingredient that is out");
  const {recipe, pantry} = await recipeIn(file, options, outside);
  const [first, ...more] = options.without;
  const result = substitute(recipe, {
    // Of several names, those that the recipe does not have are ingredients of the pantry that must not be offered.
    without: more.length ? options.without : nameIn(recipe, first!, "--without"),
    // With a price list the shelf is what the list names; without one, everything in the pantry.
    from: options.prices === undefined ? pantry : pantry.ingredients.filter(({price}) => price !== undefined),
    deadline: timeOf(options),
    ...(await learnedFrom(options, pantry, (path) => textOf(path, outside))),
    ...(options.left !== undefined && {left: numberOf("--left", options.left, 0, 1e9)}),
    ...(options.keep && {keep: options.keep.map((name) => nameIn(recipe, name, "--keep"))}),
  });
  const text = options.json ? JSON.stringify(waysWithNutrition(result, recipe)) : substitutionText(result);
  outside.say(`${text}\n`);
  const [best] = result.alternatives;
  if (!best) {
    notWritten(options.recipe, `nothing can stand in for ${result.without}`, outside);
    return 1;
  }
  writeRecipe(options.recipe, {...best.recipe, name: `${recipe.name} without ${result.without}`}, outside);
  return 0;
}

async function readIn(file: string, options: Options, outside: Outside): Promise<number> {
  const {recipe, pantry, leftOut} = await recipeIn(file, options, outside, true);
  const learned = await learnedFrom(options, pantry, (path) => textOf(path, outside));
  const {screen, taken} = recipeReading(recipe, pantry, options, {...learned, leftOut});
  outside.say(`${screen}\n`);
  if (options.take === undefined) return 0;
  if (!taken) {
    notWritten(options.recipe, `there is no change that makes it ${options.take}`, outside);
    return 1;
  }
  writeRecipe(options.recipe, {...taken.recipe, name: `${recipe.name}, ${taken.towards}`}, outside);
  return 0;
}

async function sheetOf(file: string, options: Options, outside: Outside): Promise<number> {
  const {recipe, pantry} = await recipeIn(file, options, outside);
  const learned = await learnedFrom(options, pantry, (path) => textOf(path, outside));
  const out = sheetOutputs(recipe, options, learned);
  for (const [path, content] of out.files) writeOut(path, () => content, outside);
  for (const note of out.notes) outside.note(`${printable(note)}\n`);
  if (options.json || !out.files.length) outside.say(`${out.screen}\n`);
  return 0;
}

/**
 * A recipe from a file, and the pantry that its names are looked up in.
 *
 * @param gaps whether a line of a text that cannot be read may be left out, with a note
 */
async function recipeIn(
  file: string,
  options: Options,
  outside: Outside,
  gaps = false,
): Promise<{recipe: Recipe; pantry: Pantry; leftOut: readonly string[]}> {
  const [text, place] = [textOf(file, outside), placeOf(file)];
  const written = /^\s*[{[]/.test(text) ? parseJson(text, place) : undefined;
  const {input, pantry} = stock(written, options, outside);
  if (written !== undefined) return {recipe: await readRecipe(input, pantry, place), pantry, leftOut: []};
  if (/\.csv$/i.test(file) || isRecipeCsv(text))
    return {recipe: await readRecipeCsv(text, pantry, place), pantry, leftOut: []};
  const {recipe, notes, leftOut} = await typedRecipe(text, pantry, place, gaps);
  for (const note of notes) outside.note(`${printable(note)}\n`);
  return {recipe, pantry, leftOut};
}

/** Files that say what is on the shelf. */
type Files = {readonly [name in "pantry" | "own" | "prices"]?: string | undefined};

/** The pantry that the options name, with their prices; those of the input's own ingredients go into the input. */
function stock(written: unknown, {pantry: named, own, prices}: Files, outside: Outside) {
  const packaged = readIngredients(named ?? outside.pantry, outside);
  const pantry = pantryOf(own === undefined ? packaged : ownFirst(readIngredients(own, outside), packaged));
  const shelf = prices === undefined ? [] : readPricesCsv(textOf(prices, outside), prices);
  const {input, left, passedOver} = ownPrices(written, shelf, pantry);
  for (const line of passedOver) outside.note(`${line}\n`);
  return {input, pantry: stockedPantry(pantry, left)};
}

function readIngredients(path: string, outside: Outside): Ingredient[] {
  return (/\.json$/i.test(path) ? readPantryJson : readPantryCsv)(textOf(path, outside), path);
}

/** Writes a recipe: CSV, or JSON if the name ends so. */
function writeRecipe(path: string | undefined, recipe: Recipe, outside: Outside): void {
  writeOut(path, () => (path?.endsWith(".json") ? recipeJson : recipeCsv)(recipe), outside);
}
