import {html} from "htl";
import {folded, nearestNames} from "../../../lib/core/nearest.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {findIngredient, type Pantry, pantryOf} from "../../../lib/pantry/pantry.ts";

/** The whole shelf to choose from, by group, with a search. */
interface Finder {
  readonly element: HTMLElement;
  /** Ticks what is chosen. */
  show(chosen: ReadonlySet<string>): void;
}

/** A line of the list: its box, its row, and what the ingredient is called beside its name. */
interface Found {
  readonly box: HTMLInputElement;
  readonly row: HTMLElement;
  readonly also: HTMLElement;
  readonly names: readonly string[];
}

/**
 * Every ingredient of the shelf with a box to tick, found by any part of its name or of what else it is called, or by a name that is
 * mistyped; and what a name says by its number (cream 45 %), where the shelf has what that is made of.
 */
export function shelfFinder(shelf: readonly Ingredient[], toggle: (name: string) => void): Finder {
  const search = html`<input
    type="search"
    placeholder="Find an ingredient"
    aria-label="Find an ingredient"
    autocomplete="off"
  />` as HTMLInputElement;
  const found = new Map<string, Found>();
  const byGroup = new Map<string, HTMLElement[]>();
  for (const {name, aliases = [], group = "other"} of shelf) {
    const box = html`<input type="checkbox" />` as HTMLInputElement;
    box.addEventListener("input", (event) => {
      event.stopPropagation();
      toggle(name);
    });
    const also = html`<small></small>`;
    const row = html`<label>${box}<span>${name} ${also}</span></label>`;
    found.set(name, {box, row, also, names: [name, ...aliases]});
    byGroup.set(group, [...(byGroup.get(group) ?? []), row]);
  }
  const groups = [...byGroup].map(
    ([group, rows]) =>
      html`<fieldset>
        <legend>${group}</legend>
        ${rows}
      </fieldset>`,
  );
  const none = html`<p class="none" hidden>Nothing on the shelf goes by that name.</p>`;
  const pantry = pantryOf(shelf);
  const byNumber = html`<button type="button" hidden></button>` as HTMLButtonElement;
  byNumber.addEventListener("click", () => toggle(byNumber.value));
  const element = html`<details class="finder">
    <summary><small>Choose from the ${shelf.length} ingredients on the shelf</small></summary>
    ${search}
    <div class="results">${byNumber}${groups}${none}</div>
  </details>`;

  search.addEventListener("input", (event) => {
    event.stopPropagation();
    const words = folded(search.value).split(" ");
    const holding = (names: readonly string[]) =>
      names.findIndex((known) => words.every((word) => folded(known).includes(word)));
    const places = [...found.values()].map(({names}) => holding(names));
    const numbered = places.some((at) => at >= 0) ? undefined : namedByNumber(pantry, search.value);
    // Where no name holds the words, one of them is mistyped: the nearest names of all.
    const near = new Set(
      numbered !== undefined || places.some((at) => at >= 0)
        ? []
        : nearestNames(
            search.value,
            [...found.values()].flatMap(({names}) => names),
            8,
          ),
    );
    for (const [i, {row, also, names}] of [...found.values()].entries()) {
      const at = near.size > 0 ? names.findIndex((known) => near.has(known)) : places[i]!;
      row.hidden = at < 0;
      also.textContent = at > 0 ? names[at]! : "";
    }
    byNumber.hidden = numbered === undefined;
    byNumber.value = numbered ?? "";
    byNumber.textContent = `Take ${numbered}, reckoned from its number`;
    for (const group of groups)
      group.hidden = [...group.querySelectorAll("label")].every((row) => row.hidden);
    none.hidden = numbered !== undefined || groups.some((group) => !group.hidden);
  });
  // The arrows walk the list, so that a hundred ingredients need no hundred presses of Tab; Enter takes the first found.
  element.addEventListener("keydown", (event) => {
    const {key: pressed, target} = event as KeyboardEvent;
    const visible = [...found.values()].filter(({row}) => row.offsetParent).map(({box}) => box);
    if (pressed === "Enter" && target === search && visible[0]) {
      event.preventDefault();
      visible[0].click();
    } else if (pressed === "ArrowDown" || pressed === "ArrowUp") {
      event.preventDefault();
      const at = visible.indexOf(target as HTMLInputElement) + (pressed === "ArrowDown" ? 1 : -1);
      (visible[at] ?? search).focus();
    }
  });
  return {
    element,
    show(chosen) {
      for (const [name, {box}] of found) box.checked = chosen.has(name);
    },
  };
}

/** The name of what the words say by a number, such as cream 45 %; nothing where no rule reads them. */
function namedByNumber(pantry: Pantry, words: string): string | undefined {
  try {
    return words.trim() === "" ? undefined : findIngredient(pantry, words).name;
  } catch {
    return undefined;
  }
}
