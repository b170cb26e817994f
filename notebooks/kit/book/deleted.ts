import {html} from "htl";
import {control, type Control} from "../controls/control.ts";
import {fileName, save} from "../page/downloads.ts";
import type {KeptRecipe} from "../keep/kept-recipe.ts";
import type {BrokenRecipe} from "../keep/recipe-list.ts";
import type {RecipeBook} from "../keep/recipes.ts";
import {when} from "./when.ts";

/** The deleted recipes, each with a way back. */
export interface DeletedList extends Control<number> {
  show(deleted: readonly KeptRecipe[]): void;
}

/** The list, empty at first; its value is how many there are. */
export function deletedList(bringBack: (recipe: KeptRecipe) => void): DeletedList {
  let count = 0;
  const element = html`<ul class="deleted"></ul>`;
  return Object.assign(
    control(element, () => count),
    {
      show(deleted: readonly KeptRecipe[]) {
        count = deleted.length;
        element.replaceChildren(
          ...deleted.map((recipe) => {
            const button = html`<button type="button">Bring it back</button>`;
            button.addEventListener("click", () => bringBack(recipe));
            return html`<li>${recipe.name} <small>deleted ${when(recipe.deleted!)}</small> ${button}</li>`;
          }),
        );
      },
    },
  );
}

/** Entries of the storage that cannot be read as recipes: named, and left as they are until the cook takes them out. */
export function brokenList(broken: readonly BrokenRecipe[], book: RecipeBook): HTMLElement | undefined {
  if (!broken.length) return undefined;
  return html`<section class="verdict trouble" data-side="answer">
    <h3>
      ${broken.length === 1 ? "One recipe cannot be read" : `${broken.length} recipes cannot be read`}; the
      others are not affected
    </h3>
    <ul>
      ${broken.map(({key, name, why, value}) => {
        const button = html`<button type="button">Take it out for good</button>`;
        button.addEventListener("click", () => void book.dropBroken(key));
        const out = html`<button type="button">Save what is there as a file</button>`;
        out.addEventListener("click", () =>
          save({name: `${fileName(name)}.json`, text: () => asFarAsCanBe(value)}),
        );
        return html`<li><b>${name}</b>: ${why} ${out} ${button}</li>`;
      })}
    </ul>
  </section>`;
}

/** A value as JSON, or at least as a text: it may be anything. */
function asFarAsCanBe(value: unknown): string {
  try {
    return JSON.stringify(value, undefined, 1) ?? String(value);
  } catch {
    return String(value);
  }
}
