import {html} from "htl";
import type {KeptRecipe} from "../keep/kept-recipe.ts";
import type {RecipeList} from "../keep/recipe-list.ts";
import {type Row, recipeRow, type RowContext} from "./row.ts";
import type {Summaries} from "./summary.ts";

/** So many rows are made at a time. */
const AT_ONCE = 40;

/** The recipes as a list that is searched. */
export interface BookList {
  readonly element: HTMLElement;
  /** Shows the recipes of the book; rows that are there stay. */
  show(list: RecipeList): void;
  /** Shows those alone that hold every word, in name, text or notes. */
  search(words: string): void;
}

/** The list: rows are made when they come into sight, forty at a time, and so are their sentences, one by one. */
export function bookList(context: RowContext, summaries: Summaries): BookList {
  const rows = new Map<string, Row>();
  const places = new Map<Element, Row>();
  const list = html`<ul class="book"></ul>`;
  const more = html`<button type="button">Show more</button>`;
  const count = html`<h2></h2>`;
  const element = html`<section data-side="answer">
    <div class="verdict" aria-live="polite">${count}</div>
    ${list}${more}
  </section>`;
  let recipes: readonly KeptRecipe[] = [];
  let wanted: string[] = [];
  let shown = AT_ONCE;

  const inSight = new IntersectionObserver((entries) => {
    for (const {target, isIntersecting} of entries) {
      const row = places.get(target);
      if (target === more) {
        if (isIntersecting && !more.hidden) grow();
      } else if (row && isIntersecting) {
        inSight.unobserve(target);
        summaries.ask(row.recipe, row.summarise);
      }
    }
  });
  const rowOf = (recipe: KeptRecipe): Row => {
    let row = rows.get(recipe.id);
    const changed = !row || row.recipe !== recipe;
    if (!row) {
      row = recipeRow(recipe, context);
      rows.set(recipe.id, row);
      places.set(row.element, row);
    } else row.update(recipe);
    if (changed) {
      const known = summaries.known(recipe);
      if (known === undefined) inSight.observe(row.element);
      else row.summarise(known);
    }
    return row;
  };
  const draw = () => {
    const found = wanted.length ? recipes.filter((recipe) => holds(recipe, wanted)) : recipes;
    const present = found.slice(0, shown).map((recipe) => rowOf(recipe).element);
    present.forEach((row, i) => {
      if (list.children[i] !== row) list.insertBefore(row, list.children[i] ?? null);
    });
    while (list.children.length > present.length) list.lastElementChild!.remove();
    more.hidden = found.length <= shown;
    count.textContent = wanted.length
      ? `${tally(found.length)} with “${wanted.join(" ")}”, of ${recipes.length}`
      : recipes.length
        ? `${tally(recipes.length)}${recipes.length > 1 ? ", the latest changed first" : ""}`
        : "Your book is empty. Whatever you type into Read a recipe is kept here; or begin with a new one.";
  };
  const grow = () => {
    shown += AT_ONCE;
    draw();
  };
  more.addEventListener("click", grow);
  inSight.observe(more);
  return {
    element,
    show(read) {
      recipes = sameAsBefore(recipes, read.recipes);
      for (const [id, row] of rows)
        if (!recipes.some((recipe) => recipe.id === id)) {
          rows.delete(id);
          places.delete(row.element);
        }
      draw();
    },
    search(words) {
      wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
      shown = AT_ONCE;
      draw();
    },
  };
}

/** The recipes as they were read anew; one that has not changed is the same object as before, so that its row is left alone. */
function sameAsBefore(before: readonly KeptRecipe[], now: readonly KeptRecipe[]): KeptRecipe[] {
  const known = new Map(before.map((recipe) => [recipe.id, recipe]));
  return now.map((recipe) => {
    const old = known.get(recipe.id);
    return old?.revision === recipe.revision && old.changed === recipe.changed ? old : recipe;
  });
}

/** Whether a recipe holds every word. */
export function holds({name, text, notes}: KeptRecipe, words: readonly string[]): boolean {
  const all = `${name}\n${text}\n${notes}`.toLowerCase();
  return words.every((word) => all.includes(word));
}

function tally(count: number): string {
  return count === 1 ? "One recipe" : `${count} recipes`;
}
