import {InputError} from "../../../lib/core/errors.ts";
import {type KeptRecipe, readKept, type RecipeContent} from "./kept-recipe.ts";
import type {RecipeBook} from "./recipes.ts";

/** A change that had not reached the book when its page was left. */
export interface Unsaved {
  readonly id: string;
  /** Revision that was changed; 0 for a recipe that was never in the book. */
  readonly revision: number;
  readonly content: RecipeContent;
}

const PREFIX = "mixwright unsaved ";

/** Sets a change aside at once, where leaving the page gives no time for the book. */
export function setAside(unsaved: Unsaved): void {
  try {
    localStorage.setItem(PREFIX + unsaved.id, JSON.stringify(unsaved));
  } catch {
    // Denied or full: the write that is under way is all there is.
  }
}

/** Forgets a change that was set aside: it has been written after all. */
export function forgetAside(id: string): void {
  try {
    localStorage.removeItem(PREFIX + id);
  } catch {
    // Denied: nothing is there.
  }
}

/** Writes into the book what pages have set aside. */
export async function takeUp(book: RecipeBook): Promise<void> {
  for (const key of asideKeys()) {
    const unsaved = read(localStorage.getItem(key) ?? "");
    if (unsaved) {
      try {
        await book.save(unsaved.base, unsaved.content, "typed");
      } catch {
        // It stays set aside until the browser takes it.
        continue;
      }
    }
    localStorage.removeItem(key);
  }
}

function asideKeys(): string[] {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(PREFIX));
  } catch {
    return [];
  }
}

/** Nothing, where another hand wrote it. */
function read(text: string): {base: KeptRecipe; content: RecipeContent} | undefined {
  try {
    const {id, revision, content} = JSON.parse(text) as Partial<Record<keyof Unsaved, unknown>>;
    const fresh = revision === 0;
    const changed = new Date().toISOString();
    const recipe = readKept({...(content as object), id, revision: fresh ? 1 : revision, changed}, "unsaved");
    return {base: fresh ? unwritten(recipe.id) : recipe, content: recipe};
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof InputError || error instanceof TypeError)
      return undefined;
    throw error;
  }
}

/** A recipe that is not in the book yet: its first change puts it there. */
export function unwritten(id: string): KeptRecipe {
  return {id, name: "", text: "", notes: "", revision: 0, changed: new Date().toISOString(), earlier: []};
}
