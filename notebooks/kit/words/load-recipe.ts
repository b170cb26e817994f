import {readRecipeCsv} from "../../../lib/io/csv/recipe-csv.ts";
import {readTypedRecipe} from "../../../lib/io/typed/read-typed.ts";
import {readRecipeJson} from "../../../lib/io/json/recipe-json.ts";
import {USUAL_OVERRUN} from "../../../lib/freezing/firmness.ts";
import {nameKey, type Pantry} from "../../../lib/pantry/pantry.ts";
import type {Recipe, RecipeLine} from "../../../lib/pantry/recipe.ts";
import {type Attempt, Mistake, mistakeOf} from "./mistakes.ts";

/** A text with the name of the file that it comes from. */
export interface Source {
  /** Name of the file, which tells JSON from CSV. */
  readonly file: string;
  readonly text: string;
  /** That it was typed, by the name of `file`, and how airy it is, %, where its text does not say. */
  readonly typed?: {readonly overrun?: number};
}

/**
 * The recipe in a file, or what is amiss with it; what says no price of its own has the pantry's.
 *
 * @param leftOut told how many lines of a typed recipe could not be read
 */
export function loadRecipe(
  source: Source,
  pantry: Pantry,
  leftOut: (lines: number) => void = () => undefined,
): Promise<Attempt<Recipe>> {
  const {file, text, typed} = source;
  leftOut(0);
  const read = typed
    ? readTyped(source, typed, pantry, leftOut)
    : isCsv(source)
      ? readRecipeCsv(text, pantry, file)
      : readRecipeJson(text, pantry, file);
  return read.then(
    (value) => ({value: {...value, lines: value.lines.map((line) => priced(line, pantry))}}),
    (error: unknown) => ({mistake: mistakeOf(error)}),
  );
}

async function readTyped(
  {file, text}: Source,
  {overrun}: {readonly overrun?: number},
  pantry: Pantry,
  leftOut: (lines: number) => void,
): Promise<Recipe> {
  const {recipe, lines} = await readTypedRecipe(text, pantry, {name: file});
  if (!recipe.lines.length)
    throw new Mistake(`There is nothing to read in “${file}” yet: write it in Read a recipe.`);
  leftOut(lines.filter((line) => "question" in line).length);
  return {...(overrun !== undefined && {overrun}), ...recipe, name: file};
}

function priced(line: RecipeLine, {byName}: Pantry): RecipeLine {
  const price = line.ingredient.price ?? byName.get(nameKey(line.ingredient.name))?.price;
  return price === undefined ? line : {...line, ingredient: {...line.ingredient, price}};
}

/** Overrun of a recipe, %: its own, or that of a small machine where it says none or cannot be read. */
export function overrunOf(recipe: Attempt<Recipe>): number {
  return ("value" in recipe ? recipe.value.overrun : undefined) ?? USUAL_OVERRUN;
}

/** Whether a file is CSV: by its name, and where that does not tell, by how it begins. */
export function isCsv({file, text}: Source): boolean {
  if (/\.(csv|json)$/i.test(file)) return /\.csv$/i.test(file);
  return !text.trimStart().startsWith("{");
}

/** Each ingredient of a recipe once, with all that goes in of it: sugar may stand in two lines. */
export function eachOnce({lines}: Recipe): RecipeLine[] {
  const found = new Map<string, RecipeLine>();
  for (const line of lines) {
    const {name} = line.ingredient;
    const g = line.grams + (found.get(name)?.grams ?? 0);
    if (g > 0) found.set(name, {...line, grams: g});
  }
  return [...found.values()];
}
