import type {Pantry} from "../../../lib/pantry/pantry.ts";
import {contentOf, type KeptRecipe, type RecipeContent} from "../keep/kept-recipe.ts";
import type {OpenRecipe} from "../keep/open-recipe.ts";
import type {RecipeBook} from "../keep/recipes.ts";
import {readOpen} from "../page/keep-in-book.ts";
import {renamed} from "./rename.ts";

/** Actions on the recipes of the book. Each tells by `say` what it did, and what it could not do. */
export interface BookActions {
  /** Opens a recipe and goes to the page that reads it. */
  open(id: string): Promise<void>;
  /** The same with a new, empty one. */
  begin(): Promise<void>;
  rename(recipe: KeptRecipe, name: string): Promise<void>;
  duplicate(recipe: KeptRecipe): Promise<void>;
  remove(recipe: KeptRecipe): Promise<void>;
  bringBack(recipe: KeptRecipe): Promise<void>;
  /** Makes it what it was. */
  restore(recipe: KeptRecipe, version: RecipeContent): Promise<void>;
  change(recipe: KeptRecipe, change: Partial<RecipeContent>): Promise<void>;
}

/** A sentence for the cook, with a way back where there is one. */
export type Say = (
  sentence: string,
  back?: {readonly words: string; readonly act: () => Promise<void>},
) => void;

/** The actions over a book. */
export function bookActions(book: RecipeBook, open: OpenRecipe, pantry: Pantry, say: Say): BookActions {
  /** Does something, and says why where the browser refuses. */
  const trying = async (act: () => Promise<void>) => {
    try {
      await act();
    } catch (error) {
      say(error instanceof Error ? error.message : String(error));
    }
  };
  // The open recipe changes where it is open, so that it can be undone there.
  const change = async (recipe: KeptRecipe, what: Partial<RecipeContent>) => {
    if (open.now?.id === recipe.id) open.edit(what, "pressed");
    else await book.alter(recipe.id, () => what);
  };
  const bringBack = (recipe: KeptRecipe) =>
    trying(async () => {
      await book.bringBack(recipe.id);
      say(`“${recipe.name}” is back.`);
    });
  return {
    open: (id) =>
      trying(async () => {
        await open.open(id);
        await readOpen(open);
      }),
    begin: () =>
      trying(async () => {
        open.begin({text: ""});
        await readOpen(open);
      }),
    rename: (recipe, name) => trying(async () => change(recipe, await renamed(recipe, name, pantry))),
    duplicate: (recipe) =>
      trying(async () => {
        const {name} = await book.add({
          ...contentOf(recipe),
          name: `${[...recipe.name].slice(0, 70).join("")} (copy)`,
        });
        say(`“${name}” is in your book.`);
      }),
    remove: (recipe) =>
      trying(async () => {
        if (open.now?.id === recipe.id) await open.open(undefined);
        await book.remove(recipe.id);
        say(`“${recipe.name}” is deleted. It can be brought back for 30 days.`, {
          words: "Bring it back",
          act: () => bringBack(recipe),
        });
      }),
    bringBack,
    restore: (recipe, version) =>
      trying(async () => {
        await change(recipe, contentOf(version));
        say(`“${recipe.name}” is what it was. What it was until now is among its earlier versions.`);
      }),
    change: (recipe, what) => trying(() => change(recipe, what)),
  };
}
