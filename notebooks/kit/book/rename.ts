import {readTypedRecipe} from "../../../lib/io/typed/read-typed.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import {oneName, type RecipeContent, titleOf} from "../keep/kept-recipe.ts";

/**
 * A recipe under another name. Its title goes along where it was the name, unless the new one would be read as an ingredient: a recipe
 * may be called “Raspberry”, its first line may not.
 */
export async function renamed(
  {name: old, text}: RecipeContent,
  wanted: string,
  pantry: Pantry,
): Promise<Pick<RecipeContent, "name" | "text">> {
  const name = oneName(wanted);
  if (oneName(titleOf(text) ?? "") !== old) return {name, text};
  const lines = text.split("\n");
  const first = lines.findIndex((line) => line.trim());
  const titled = lines.map((line, i) => (i === first ? name : line)).join("\n");
  const read = await readTypedRecipe(titled, pantry).catch(() => undefined);
  return {name, text: read?.recipe.name === name ? titled : text};
}
