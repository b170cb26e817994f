import {html} from "htl";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {openRecipe} from "../keep/open-recipe.ts";
import type {NewRecipe} from "../keep/recipes.ts";
import {recipeText} from "../words/recipe-text.ts";
import {readOpen} from "./keep-in-book.ts";

/** A recipe as it goes into the book: its lines in grams, without prices, which are the shelf's. A name as a line could be taken for one. */
export function asKept(
  {name, lines, overrun}: Recipe,
  {freezer}: {readonly freezer: number},
): NewRecipe & {readonly name: string} {
  const text = recipeText(lines.map(({ingredient, grams}) => ({ingredient: ingredient.name, grams})));
  return {name, text, freezer, ...(overrun !== undefined && {overrun})};
}

/** A button that puts a recipe into the book, opens it and goes on to where it is read. */
export function makeMine(words: string, recipe: () => NewRecipe): HTMLElement {
  const button = html`<button type="button">${words}</button>` as HTMLButtonElement;
  button.addEventListener("click", () => {
    void (async () => {
      const open = await openRecipe();
      open.begin(recipe());
      await readOpen(open);
    })();
  });
  return button;
}
