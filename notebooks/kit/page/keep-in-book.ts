import {html} from "htl";
import {includedPantry} from "../../../lib/pantry/included.ts";
import type {OpenRecipe} from "../keep/open-recipe.ts";
import type {NewRecipe} from "../keep/recipes.ts";
import {recipeHash} from "../words/recipe-address.ts";
import {titled} from "../words/titled.ts";

/** A mix of the page as a recipe, without the line of its name. */
export interface MixToKeep extends Omit<NewRecipe, "name"> {
  readonly name: string;
  /** Whether it is a change of the open recipe, and no other one. */
  readonly ofOpen?: boolean;
}

/** A button that makes a mix of the page a new recipe of the book, or changes the open one to it, and goes to the page that reads it. */
export function keepInBook(open: OpenRecipe, {ofOpen = false, name, text, ...rest}: MixToKeep): HTMLElement {
  const button = html`<button type="button">
    ${ofOpen ? "Change my open recipe to this" : "Keep it in my book"}
  </button>`;
  button.addEventListener("click", () => {
    // The change can be undone; its title stays.
    const under = (title: string) => titled(title, text, includedPantry());
    if (ofOpen && open.now) open.edit({text: under(open.now.name)}, "pressed");
    else open.begin({...rest, name, text: under(name)});
    void readOpen(open);
  });
  return html`<div class="tools">${button}</div>`;
}

/** Goes to the page that reads the open recipe; where the browser keeps nothing, the address carries it there. */
export async function readOpen(open: OpenRecipe): Promise<void> {
  await open.flush();
  const carried = open.standing.is === "not kept" && open.now ? recipeHash(open.now) : "";
  location.assign(`./read-a-recipe.html${carried}`);
}
