import {InputError} from "../../../lib/core/errors.ts";
import {parseJson} from "../../../lib/io/json/json.ts";
import {type KeptRecipe, nameOfBroken, readKept} from "./kept-recipe.ts";

// The whole book as one file, and back.

const FORMAT = "mixwright recipes";

/** Most recipes of one file. */
const MOST_RECIPES = 5000;

/** Recipes as a file that {@link readBookFile} reads, on this machine or on another; indented, so that it can be read by eye. */
export function bookText(recipes: readonly KeptRecipe[], written: Date): string {
  return `${JSON.stringify({format: FORMAT, version: 1, written: written.toISOString(), recipes}, undefined, 1)}\n`;
}

/** Content of a file of recipes. */
export interface BookFile {
  readonly recipes: readonly KeptRecipe[];
  /** Of each recipe that cannot be read: place, value and next step. */
  readonly mistakes: readonly InputError[];
}

/**
 * The recipes of a file; a broken one does not stop the others.
 *
 * @param file what the text is called in errors
 * @throws InputError naming place, value and next step for a text that is no JSON, or no file of recipes
 */
export function readBookFile(text: string, file: string): BookFile {
  const value = parseJson(text, file);
  const whole = (typeof value === "object" && value !== null ? value : {}) as Record<string, unknown>;
  const list = Object.hasOwn(whole, "recipes") ? whole.recipes : undefined;
  if (whole.format !== FORMAT || !Array.isArray(list))
    throw new InputError(
      file,
      "no file of recipes",
      Object.hasOwn(whole, "format") ? whole.format : undefined,
      "choose a file that “Save all as a file” wrote; to read a single recipe, paste it into Read a recipe",
    );
  if (list.length > MOST_RECIPES)
    throw new InputError(`${file}, recipes`, "too many", list.length, `give at most ${MOST_RECIPES} at once`);
  const recipes: KeptRecipe[] = [];
  const mistakes: InputError[] = [];
  for (const [i, one] of list.entries()) {
    const place = `${file}, recipe ${i + 1}`;
    try {
      recipes.push(readKept(one, `${place} (${nameOfBroken(one, "without a name")})`));
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      mistakes.push(error);
    }
  }
  return {recipes, mistakes};
}
