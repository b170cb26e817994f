import {html} from "htl";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import {changed, control, type Control} from "../controls/control.ts";
import {panel} from "../controls/panel.ts";
import type {OpenRecipe} from "../keep/open-recipe.ts";
import {type RecipeList, withChanged} from "../keep/recipe-list.ts";
import type {RecipeBook} from "../keep/recipes.ts";
import {type BookActions, bookActions, type Say} from "./actions.ts";
import {backup} from "./backup.ts";
import {brokenList, deletedList} from "./deleted.ts";
import {bookList} from "./list.ts";
import {summaries} from "./summary.ts";

/** A book that is read again so long after a change of it, ms: an import of a thousand is one reading. */
const REST = 60;

/** So many changed recipes are read one by one; of more, the whole book is. */
const FEW = 20;

const UNANSWERED = "The browser does not say what is in the book: load the page anew.";

/** Content of the page of the book, on either side. */
export interface BookPage {
  readonly panels: readonly HTMLElement[];
  readonly answers: readonly HTMLElement[];
}

/** The page of the book: its panels and its list, which follow the book. */
export async function bookPage(book: RecipeBook, open: OpenRecipe, pantry: Pantry): Promise<BookPage> {
  const {element: told, say} = teller();
  const act = bookActions(book, open, pantry, say);
  const list = bookList({book, open, act, pantry}, summaries(pantry));
  const gone = deletedList((recipe) => void act.bringBack(recipe));
  const broken = html`<div data-side="answer"></div>`;
  const find = panel("Which recipe?", {search: searchBox(list.search), fresh: newButton(act)});
  const safe = panel(
    "Keep them safe",
    {backup: backup(book)},
    {
      hint: "Clearing the browser’s data takes them away; a file brings them back.",
    },
  );
  const deleted = panel(
    "Deleted",
    {gone},
    {
      hint: "Each can be brought back for 30 days.",
      folded: true,
      tally: () => (gone.value ? String(gone.value) : ""),
    },
  );
  const show = (all: RecipeList) => {
    list.show(all);
    gone.show(all.deleted);
    changed(gone);
    const trouble = brokenList(all.broken, book);
    broken.replaceChildren(...(trouble ? [trouble] : []));
    return all;
  };
  let all = show(await book.list());
  const waiting = new Set<string>();
  const update = async () => {
    const ids = [...waiting];
    waiting.clear();
    const fresh = ids.length > FEW ? [undefined] : await Promise.all(ids.map(book.get));
    // One that is gone, or cannot be read, is told by the whole book.
    const known = fresh.filter((one) => one !== undefined);
    all = show(known.length === ids.length ? withChanged(all, known) : await book.list());
  };
  let timer: ReturnType<typeof setTimeout> | undefined;
  book.follow(({ids}) => {
    // None named: everything.
    for (const id of ids.length ? ids : [...all.recipes, ...all.deleted].map((one) => one.id))
      waiting.add(id);
    clearTimeout(timer);
    timer = setTimeout(() => void update().catch(() => say(UNANSWERED)), REST);
  });
  open.follow(() => list.show(all));
  return {panels: [find, safe, deleted], answers: [told, broken, list.element]};
}

/** Message on what the page did, with a button that goes back where there is one. */
function teller(): {element: HTMLElement; say: Say} {
  const element = html`<p class="told" data-side="answer" role="status"></p>`;
  return {
    element,
    say(sentence, back) {
      element.replaceChildren(sentence);
      if (!back) return;
      const button = html`<button type="button">${back.words}</button>`;
      button.addEventListener("click", () => void back.act());
      element.append(" ", button);
    },
  };
}

function searchBox(search: (words: string) => void): Control<string> {
  const box = html`<input type="search" placeholder="a name, a line, a note" />` as HTMLInputElement;
  box.addEventListener("input", () => search(box.value));
  return control(html`<label class="field">Search${box}</label>`, () => box.value);
}

function newButton({begin}: BookActions): Control<undefined> {
  const button = html`<button type="button">Begin a new recipe</button>`;
  button.addEventListener("click", () => void begin());
  return control(html`<div class="tools">${button}</div>`, () => undefined);
}
