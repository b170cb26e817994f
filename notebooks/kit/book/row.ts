import {html} from "htl";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import {autosaved, type Autosaved} from "../keep/autosave.ts";
import {contentOf, type KeptRecipe, LONGEST_NOTES} from "../keep/kept-recipe.ts";
import type {OpenRecipe} from "../keep/open-recipe.ts";
import type {RecipeBook} from "../keep/recipes.ts";
import {addressWith, linkButton} from "../page/downloads.ts";
import {unbroken} from "../words/numbers.ts";
import {recipeHash} from "../words/recipe-address.ts";
import type {BookActions} from "./actions.ts";
import {changesSince, changesWords} from "./difference.ts";
import {versionList} from "./version-list.ts";
import {when} from "./when.ts";

/** Things that all rows of the list share. */
export interface RowContext {
  readonly book: RecipeBook;
  readonly open: OpenRecipe;
  readonly act: BookActions;
  /** Pantry in which the names of its lines are looked up. */
  readonly pantry: Pantry;
}

/** One recipe of the list. */
export interface Row {
  readonly element: HTMLElement;
  readonly recipe: KeptRecipe;
  /** Takes over what became of the recipe; what is unfolded or being written stays. */
  update(recipe: KeptRecipe): void;
  summarise(sentence: string): void;
}

/** The row of a recipe: its name, which opens it, a sentence, and what can be done with it. */
export function recipeRow(first: KeptRecipe, context: RowContext): Row {
  const {open, act} = context;
  let recipe = first;
  const name = html`<a href="./read-a-recipe.html"></a>`;
  name.addEventListener("click", (event) => {
    event.preventDefault();
    void act.open(recipe.id);
  });
  const isOpen = html`<small></small>`;
  const sentence = html`<p class="summary"></p>`;
  const changed = html`<small></small>`;
  const more = html`<details>
    <summary>Name, notes, earlier versions</summary>
  </details>` as HTMLDetailsElement;
  const press = (words: string, does: () => void) => {
    const button = html`<button type="button">${words}</button>`;
    button.addEventListener("click", does);
    return button;
  };
  const link = () => addressWith(recipeHash(recipe), new URL("./read-a-recipe.html", location.href).pathname);
  const element = html`<li>
    <h3>${name} ${isOpen}</h3>
    ${sentence}
    <p class="aside">${changed}</p>
    <div class="tools">
      ${press("Open", () => void act.open(recipe.id))} ${press("Duplicate", () => void act.duplicate(recipe))}
      ${linkButton("Copy a link", link)} ${press("Delete", () => void act.remove(recipe))}
    </div>
    ${more}
  </li>`;
  let inside: {readonly element: HTMLElement; readonly update: () => void} | undefined;
  more.addEventListener("toggle", () => {
    if (!more.open || inside) return;
    inside = details(() => recipe, context);
    more.append(inside.element);
  });
  const show = () => {
    name.textContent = recipe.name;
    isOpen.textContent = open.now?.id === recipe.id ? "open" : "";
    changed.textContent = `changed ${when(recipe.changed)}`;
    inside?.update();
  };
  show();
  return {
    element,
    get recipe() {
      return recipe;
    },
    update(next) {
      recipe = next;
      show();
    },
    summarise: (words) => sentence.replaceChildren(unbroken(words)),
  };
}

/** The folded part: made when it is unfolded. */
function details(
  now: () => KeptRecipe,
  {book, open, act, pantry}: RowContext,
): {element: HTMLElement; update: () => void} {
  const name = html`<input type="text" autocomplete="off" maxlength="80" />` as HTMLInputElement;
  name.addEventListener("change", () => void act.rename(now(), name.value));
  const notes = html`<textarea rows="4" maxlength=${LONGEST_NOTES}></textarea>` as HTMLTextAreaElement;
  const state = html`<p class="note" role="status"></p>`;
  let saving: Autosaved | undefined;
  notes.addEventListener("input", () => {
    if (open.now?.id === now().id) {
      open.edit({notes: notes.value}, "typed");
      return;
    }
    saving ??= autosaved(book, now(), {
      tell: () => (state.textContent = saving?.trouble ?? ""),
      beside: (theirs, own) => {
        state.textContent = `“${theirs.name}” was changed in another tab: what you have here is kept as “${own.name}”.`;
      },
    });
    saving.put({...contentOf(saving.now), notes: notes.value}, "typed");
  });
  const versions = html`<div></div>`;
  let shown: KeptRecipe["earlier"] | undefined;
  let list: ReturnType<typeof versionList>;
  const update = () => {
    const recipe = now();
    if (document.activeElement !== name) name.value = recipe.name;
    if (document.activeElement !== notes) notes.value = recipe.notes;
    // The list may be a moment behind what was just written.
    if (saving && !saving.unsaved && recipe.revision >= saving.kept.revision) saving = undefined;
    if (!shown || !sameVersions(shown, recipe.earlier)) {
      shown = recipe.earlier;
      // A version that the cook is reading stays unfolded when the recipe is kept anew.
      const reading = [...versions.querySelectorAll<HTMLElement>("details[open]")].map(
        ({dataset}) => dataset.changed!,
      );
      list = versionList(shown, (version) => void act.restore(now(), version), reading);
      versions.replaceChildren(list.element);
    }
    list.compare(async (version) => changesWords(await changesSince(version, recipe, pantry)));
  };
  update();
  return {
    element: html`<div>
      <label class="field">Name${name}</label>
      <label class="field">Notes${notes}</label>
      ${state}${versions}
    </div>`,
    update,
  };
}

/** Whether two lists hold the same versions: they are read anew with each change of their recipe. */
function sameVersions(some: KeptRecipe["earlier"], others: KeptRecipe["earlier"]): boolean {
  return some.length === others.length && some.every(({changed}, i) => changed === others[i]!.changed);
}
