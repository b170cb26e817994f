import {html} from "htl";
import type {OpenRecipe} from "../keep/open-recipe.ts";
import type {NewRecipe} from "../keep/recipes.ts";
import {recipeHash} from "../words/recipe-address.ts";

/** A button that makes a mix of the page a new recipe of the book, opens it and goes to the page that reads it. */
export function keepInBook(open: OpenRecipe, make: () => NewRecipe): HTMLElement {
  return pressAndRead("Keep it in my book", open, () => open.begin(make()));
}

/** A button that makes a mix of the page what the open recipe is from now on, which can be undone. */
export function changeOpen(open: OpenRecipe, make: () => string): HTMLElement {
  return pressAndRead("Change my open recipe to this", open, () => open.edit({text: make()}, "pressed"));
}

/** Goes to the page that reads the open recipe; where the browser keeps nothing, the address carries it there. */
export async function readOpen(open: OpenRecipe): Promise<void> {
  await open.flush();
  const carried = open.standing.is === "not kept" && open.now ? recipeHash(open.now) : "";
  location.assign(`./read-a-recipe.html${carried}`);
}

function pressAndRead(words: string, open: OpenRecipe, act: () => void): HTMLElement {
  const button = html`<button type="button">${words}</button>`;
  button.addEventListener("click", () => {
    act();
    void readOpen(open);
  });
  return button;
}
