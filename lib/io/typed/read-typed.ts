import {InputError} from "../../core/errors.ts";
import {sum} from "../../core/numbers.ts";
import {expectOptions, expectText} from "../../core/shape.ts";
import {expectPantry, type Pantry} from "../../pantry/pantry.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Recipe} from "../../pantry/recipe.ts";
import {readRecipeJson} from "../json/recipe-json.ts";
import type {EggGrades} from "./egg.ts";
import {knownName} from "./name.ts";
import {rowLine} from "./row-line.ts";
import {type Section, skippedLine} from "./skipped.ts";
import {LONGEST_LINE, textRows} from "./text-rows.ts";
import type {CountedLine, TypedLine} from "./typed-line.ts";

/** Options of {@link readTypedRecipe}. */
export interface TypedOptions {
  /** Name of the recipe where the text has none; `recipe` by default. */
  readonly name?: string;
  /** Grading system for eggs whose size is given; `EU` by default. */
  readonly eggs?: EggGrades;
  /** Changes an ingredient before it is weighed, e.g. the mass of one egg. */
  readonly adapt?: (ingredient: Ingredient) => Ingredient;
}

/** A recipe as it was typed: every line with its reading, and the recipe of the lines that count. */
export interface TypedRecipe {
  readonly recipe: Recipe;
  /** Every line that is not blank, in order. */
  readonly lines: readonly TypedLine[];
}

/** Longest text that is read, characters. */
const LONGEST = 200_000;

/** Most lines that are read. */
const MOST = 500;

/** Batch that a recipe in percent stands for, g. */
const PERCENT_BATCH = 1000;

/**
 * A recipe from whatever a cook has: lines in either order (`500 g whole milk`, `Whole milk: 500 g`), cells of a spreadsheet, CSV with
 * a heading, our own tables, JSON; kitchen measures, eggs by size, packs, prices (`@ 2.40 for 12`), decimal commas; headings and
 * method are skipped. Every line comes back `understood`, `taken` (with what was taken for granted), as a question (`which`, `unknown`,
 * `how much`) or `skipped`: a line that cannot be read stops no other, and nothing is guessed in silence.
 *
 * @param text at most 200,000 characters and 500 lines
 * @param pantry where names are looked up
 * @throws InputError for a text too long, and for JSON that is no recipe
 *
 * @example
 * ```ts
 * const {lines, recipe} = await readTypedRecipe("Lemon ice\n3 large eggs\nsugar 150g\n400 g mlik", includedPantry());
 * lines.map(({status}) => status); // => ["skipped", "taken", "understood", "unknown"]
 * recipe.lines.map(({grams}) => grams); // => [183.6, 150]
 * ```
 */
export async function readTypedRecipe(
  text: string,
  pantry: Pantry,
  options: TypedOptions = {},
): Promise<TypedRecipe> {
  expectOptions(options, ["name", "eggs", "adapt"]);
  expectPantry(pantry);
  if (typeof text !== "string") expectText(text, "text");
  const {name = "recipe", eggs = "EU", adapt = (one: Ingredient) => one} = options;
  expectText(name, "name");
  if (text.length > LONGEST)
    throw new InputError("recipe", "too long", `${text.length} characters`, `give at most ${LONGEST}`);
  if (text.trimStart().startsWith("{")) return fromJson(text, pantry, name);
  const rows = textRows(text);
  if (rows.length > MOST)
    throw new InputError("recipe", "too many lines", rows.length, `give at most ${MOST}`);
  let section: Section = "ingredients";
  let title: string | undefined;
  let overrun: number | undefined;
  const lines: TypedLine[] = [];
  for (const row of rows) {
    const here = {line: row.line, text: row.text};
    if (row.ruled) {
      lines.push({...here, status: "skipped", why: "heading"});
      continue;
    }
    if (row.long) {
      const question = `longer than ${LONGEST_LINE} characters: write one ingredient a line`;
      lines.push({...here, status: "unknown", name: "", near: [], question});
      continue;
    }
    const air = /^overrun\s*[:=]?\s*(\d{1,3})\s*%?$/i.exec(row.text);
    if (air && Number(air[1]) <= 200) overrun = Number(air[1]);
    const found: ReturnType<typeof skippedLine> = skippedLine(row, section, lines.length === 0);
    ({section} = found);
    // The first line is a title, unless it names an ingredient and is not marked as a heading: then its amount is missing.
    const untitled =
      lines.length === 0 && found.why === "heading" && !HEADED.test(row.text) && knownName(pantry, row.text);
    const why = air ? "note" : untitled ? undefined : found.why;
    if (why !== undefined) {
      if (why === "heading" && lines.length === 0) title = titleIn(row.text);
      lines.push({...here, status: "skipped", why});
    } else {
      const read = await rowLine(row, {pantry, eggs, adapt});
      lines.push(untitled && "question" in read ? {...read, question: orTitle(read.question)} : read);
    }
  }
  const counted = inGrams(lines);
  return {
    recipe: {
      name: title ?? name,
      lines: counted.filter(counts).map(({ingredient, grams}) => ({ingredient, grams})),
      ...(overrun !== undefined && {overrun}),
    },
    lines: counted,
  };
}

/** A line that is marked as a heading: `# Chocolate`, `Chocolate:`. */
const HEADED = /^#|:\s*$/;

/** The question about a first line that may be meant as the title. */
function orTitle(question: string): string {
  return `${question}${question.endsWith("?") ? "" : "."} If it is the recipe’s name, put a colon behind it`;
}

/** True for a line that is part of the recipe. */
export function counts(line: TypedLine): line is TypedLine & CountedLine {
  return line.status === "understood" || line.status === "taken";
}

/** Lines in percent as grams: of what the lines in grams leave, or of a batch of 1 kg where all are in percent. */
function inGrams(lines: readonly TypedLine[]): TypedLine[] {
  const shares = lines.map((line) => (counts(line) ? (line.percent ?? 0) : 0));
  const percent = sum(shares);
  if (percent === 0) return [...lines];
  const known = sum(lines.map((line, i) => (counts(line) && shares[i] === 0 ? line.grams : 0)));
  const batch = known > 0 && percent < 99 ? (100 * known) / (100 - percent) : PERCENT_BATCH;
  return lines.map((line, i) => {
    if (!counts(line) || shares[i] === 0) return line;
    const grams = (shares[i]! * batch) / 100;
    const taken = [`${shares[i]} % of ${Math.round(batch)} g`];
    return {...line, status: "taken", taken, grams};
  });
}

async function fromJson(text: string, pantry: Pantry, name: string): Promise<TypedRecipe> {
  const recipe = await readRecipeJson(text, pantry, name);
  const lines = recipe.lines.map(({ingredient, grams}, i): TypedLine => ({
    line: i + 1,
    text: `${grams} g ${ingredient.name}`,
    status: "understood",
    ingredient,
    grams,
    called: ingredient.name,
  }));
  return {recipe, lines};
}

function titleIn(text: string): string | undefined {
  const bare = text.replace(/^[#*_\s]+|[#*_:\s]+$/g, "").slice(0, 80);
  return /^(?:ingredients?|for (?:the )?base|method)$/i.test(bare) || bare === "" ? undefined : bare;
}
