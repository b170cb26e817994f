import {html} from "htl";
import {changed, type Control, control} from "../controls/control.ts";
import type {KeptRecipe} from "../keep/kept-recipe.ts";
import {keep, recall} from "../words/address.ts";

/** A recipe to compare, as it was typed. */
export interface ToCompare {
  /** Name in the book; a pasted one is called by its first line. */
  readonly name?: string;
  readonly text: string;
  readonly overrun?: number;
}

/** Two to four recipes: of the book, and pasted. */
export interface CompareChoice extends Control<readonly ToCompare[]> {
  /** Shows what is in the book now. */
  show(book: readonly KeptRecipe[]): void;
  tally(): string;
}

/** So many can be told apart at a glance. */
const MOST = 4;

/**
 * Ticks for the recipes of the book and boxes to paste others into. At first the open recipe and the one changed last, or, where the book
 * has fewer than two, the demonstration's.
 *
 * @param open id of the open recipe
 */
export function compareChoice(
  first: readonly KeptRecipe[],
  open: string | undefined,
  demos: readonly string[],
): CompareChoice {
  let book = first;
  const kept = recall("book");
  const fresh = !kept.length && !recall("paste").length;
  const latest = [...book].sort((a, b) => Number(b.id === open) - Number(a.id === open)).slice(0, 2);
  const ticked = new Set(fresh ? latest.map(({id}) => id) : kept);
  let pasted: string[] = fresh
    ? demos.slice(0, Math.max(0, 2 - latest.length))
    : recall("paste").slice(0, MOST);

  const ticks = html`<fieldset class="ticks">
    <legend>From the book</legend>
  </fieldset>`;
  const boxes = html`<div class="pasted"></div>`;
  const add = html`<button type="button">Paste another recipe</button>` as HTMLButtonElement;
  const element = html`<div class="comparing">${ticks}${boxes}${add}</div>`;
  const write = () => {
    keep("book", [...ticked]);
    keep("paste", pasted);
  };
  const chosen = () => book.filter(({id}) => ticked.has(id));
  const full = () => {
    const none = chosen().length + pasted.length >= MOST;
    add.hidden = none;
    for (const box of ticks.querySelectorAll("input")) box.disabled = none && !box.checked;
  };
  function show(): void {
    ticks.hidden = !book.length;
    ticks.replaceChildren(
      ticks.firstElementChild!,
      ...book.map(({id, name}) => {
        const box = html`<input type="checkbox" checked=${ticked.has(id)} />` as HTMLInputElement;
        box.addEventListener("input", () => {
          if (box.checked) ticked.add(id);
          else ticked.delete(id);
          write();
          full();
        });
        return html`<label>${box}<span>${name}</span></label>`;
      }),
    );
    boxes.replaceChildren(
      ...pasted.map((text, i) => {
        const box = html`<textarea rows="7" spellcheck="false"></textarea>` as HTMLTextAreaElement;
        box.value = text;
        box.addEventListener("input", () => {
          pasted[i] = box.value;
          write();
        });
        const words = pasted.length === 1 ? "The pasted recipe" : `Pasted recipe ${i + 1}`;
        const remove = html`<button type="button" aria-label=${`Remove number ${i + 1}`}>×</button>`;
        remove.addEventListener("click", () => {
          pasted = pasted.filter((_, j) => j !== i);
          again();
        });
        return html`<div><label class="field">${words}${box}</label>${remove}</div>`;
      }),
    );
    full();
  }
  const again = () => {
    write();
    show();
    changed(element);
  };
  add.addEventListener("click", () => {
    pasted = [...pasted, ""];
    again();
    boxes.querySelector<HTMLTextAreaElement>("div:last-child textarea")?.focus();
  });
  show();
  return Object.assign(
    control(element, (): readonly ToCompare[] => [
      ...chosen().map(({name, text, overrun}) => ({name, text, ...(overrun !== undefined && {overrun})})),
      ...pasted.filter((text) => text.trim()).map((text) => ({text})),
    ]),
    {
      show(now: readonly KeptRecipe[]) {
        book = now;
        show();
        changed(element);
      },
      tally: () => `${chosen().length + pasted.filter((text) => text.trim()).length} chosen`,
    },
  );
}
