import {readRecipeCsv} from "../../lib/io/recipe-csv.ts";
import {readRecipeJson} from "../../lib/io/recipe-json.ts";
import type {Pantry} from "../../lib/pantry/pantry.ts";
import type {Recipe} from "../../lib/pantry/recipe.ts";
import {type Attempt, mistakeOf} from "./mistakes.ts";
import type {Source} from "./source.ts";

/** The recipe in a file, or what is amiss with it. */
export function loadRecipe(source: Source, pantry: Pantry): Promise<Attempt<Recipe>> {
  const {file, text} = source;
  const read = isCsv(source) ? readRecipeCsv(text, pantry, file) : readRecipeJson(text, pantry, file);
  return read.then(
    (value) => ({value}),
    (error: unknown) => ({mistake: mistakeOf(error)}),
  );
}

/** Whether a file is CSV: by its name, and where that does not tell, by how it begins. */
export function isCsv({file, text}: Source): boolean {
  if (/\.(csv|json)$/i.test(file)) return /\.csv$/i.test(file);
  return !text.trimStart().startsWith("{");
}
