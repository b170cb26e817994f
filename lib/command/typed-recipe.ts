import {InputError} from "../core/errors.ts";
import {readTypedRecipe} from "../io/typed/read-typed.ts";
import type {Pantry} from "../pantry/pantry.ts";
import type {Recipe} from "../pantry/recipe.ts";

/** Whether a text begins as a recipe in CSV does: with a heading that has a column `ingredient` or `name`, and one of amounts. */
export function isRecipeCsv(text: string): boolean {
  const [heading = ""] = text.trimStart().split(/[\r\n]/, 1);
  const columns = heading.split(/[,;\t]/).map((column) => column.replaceAll('"', "").trim().toLowerCase());
  return columns.includes("ingredient") && columns.length > 1;
}

/** What stands in a typed text. */
export interface TypedFile {
  readonly recipe: Recipe;
  /** What to tell of its lines, each with its place. */
  readonly notes: readonly string[];
  /** Lines that were left out, as typed. */
  readonly leftOut: readonly string[];
}

/**
 * A recipe as a cook typed it, named by its first line or else its file, with a note on each line in which something was taken for
 * granted and, where gaps are allowed, on each that was left out.
 *
 * @param place name of the file, for errors
 * @throws InputError for a line that cannot be read, where none may be left out, and for a text without any
 */
export async function typedRecipe(
  text: string,
  pantry: Pantry,
  place: string,
  gaps: boolean,
): Promise<TypedFile> {
  const [name] = /[^/\\]+?(?=\.\w+$|$)/.exec(place.replace(/^.*[/\\]/, "")) ?? ["recipe"];
  const {recipe, lines} = await readTypedRecipe(text, pantry, {name});
  const [notes, leftOut]: [string[], string[]] = [[], []];
  for (const line of lines) {
    const here = `${place}: line ${line.line}`;
    if (line.status === "taken") notes.push(`${here}: ${line.text}: ${line.taken.join("; ")}`);
    if (!("question" in line)) continue;
    if (!gaps) throw new InputError(here, line.question, line.text, "answer it in the line");
    notes.push(`${here} is left out: ${line.text}: ${line.question}`);
    leftOut.push(line.text);
  }
  if (!recipe.lines.length)
    throw new InputError(
      place,
      "no ingredient was found",
      undefined,
      "write one a line, e.g. 500 g whole milk",
    );
  return {recipe, notes, leftOut};
}
