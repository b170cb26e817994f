import {readTypedRecipe} from "../../../lib/io/typed/read-typed.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {openRecipe} from "../keep/open-recipe.ts";
import {awaited} from "./async-control.ts";
import {changed, type Control} from "./control.ts";

/** The open recipe of the book, as far as it can be read; nothing where none is. It tells when it changes. */
export async function openedRecipe(pantry: Pantry): Promise<Control<Recipe | undefined>> {
  const open = await openRecipe();
  const element = document.createElement("div");
  open.follow(() => changed(element));
  return awaited([element], async () => {
    const {now} = open;
    if (!now) return undefined;
    const read = await readTypedRecipe(now.text, pantry, {name: now.name}).catch(() => undefined);
    return read?.recipe.lines.some(({grams}) => grams > 0)
      ? {...read.recipe, name: now.name, ...(now.overrun !== undefined && {overrun: now.overrun})}
      : undefined;
  });
}
