import {html} from "htl";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {pantryOf} from "../../../lib/pantry/pantry.ts";
import {packetAddress} from "../words/address.ts";
import {nameFinder} from "../words/find-names.ts";

/** So many near names are offered where none has the words. */
const NEAREST = 8;

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
  // Hundreds of rows are made when they are first wanted: most visits never look for another ingredient.
  let rows: Rows | undefined;
  let ticked: ReadonlySet<string> = new Set();
  const listed = (): Rows => {
    if (rows) return rows;
    rows = rowsOf(shelf, toggle);
    for (const [name, {box}] of rows.found) box.checked = ticked.has(name);
    none.before(...rows.groups);
    return rows;
  };
  const packet = html`<a href="./add-from-its-packet.html"></a>` as HTMLAnchorElement;
  const none = html`<p class="none" hidden>Nothing on the shelf goes by that name. ${packet}</p>`;
  let find: ReturnType<typeof nameFinder> | undefined;
  const byNumber = html`<button type="button" hidden></button>` as HTMLButtonElement;
  byNumber.addEventListener("click", () => toggle(byNumber.value));
  const element = html`<details class="finder">
    <summary><small>Choose from the ${shelf.length} ingredients on the shelf</small></summary>
    ${search}
    <div class="results">${byNumber}${none}</div>
  </details>`;

  element.addEventListener("toggle", listed);
  search.addEventListener("input", (event) => {
    event.stopPropagation();
    const {found, groups} = listed();
    const {found: fits, near, numbered} = (find ??= nameFinder(pantryOf(shelf)))(search.value);
    const also = new Map(
      fits.slice(0, near ? NEAREST : Infinity).map((one) => [one.ingredient.name, one.also ?? ""]),
    );
    const all = search.value.trim() === "";
    for (const [name, line] of found) {
      line.row.hidden = !all && !also.has(name);
      line.also.textContent = also.get(name) ?? "";
    }
    byNumber.hidden = numbered === undefined;
    byNumber.value = numbered?.name ?? "";
    byNumber.textContent = `Take ${numbered?.name}, reckoned from its number`;
    for (const group of groups)
      group.hidden = [...group.querySelectorAll("label")].every((row) => row.hidden);
    none.hidden = numbered !== undefined || groups.some((group) => !group.hidden);
    packet.textContent = `Add “${search.value.trim()}” from its packet`;
  });
  packet.addEventListener("click", () => {
    packet.href = packetAddress(search.value);
  });
  // The arrows walk the list, so that a hundred ingredients need no hundred presses of Tab; Enter takes the first found.
  element.addEventListener("keydown", (event) => {
    const {key: pressed, target} = event as KeyboardEvent;
    const visible = [...listed().found.values()].filter(({row}) => row.offsetParent).map(({box}) => box);
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
      ticked = chosen;
      for (const [name, {box}] of rows?.found ?? []) box.checked = chosen.has(name);
    },
  };
}

/** The list, by name and by group. */
interface Rows {
  readonly found: ReadonlyMap<string, Found>;
  readonly groups: readonly HTMLElement[];
}

function rowsOf(shelf: readonly Ingredient[], toggle: (name: string) => void): Rows {
  const found = new Map<string, Found>();
  const byGroup = new Map<string, HTMLElement[]>();
  for (const {name, group = "other"} of shelf) {
    const box = html`<input type="checkbox" />` as HTMLInputElement;
    box.addEventListener("input", (event) => {
      event.stopPropagation();
      toggle(name);
    });
    const also = html`<small></small>`;
    const row = html`<label>${box}<span>${name} ${also}</span></label>`;
    found.set(name, {box, row, also});
    byGroup.set(group, [...(byGroup.get(group) ?? []), row]);
  }
  const groups = [...byGroup].map(
    ([group, labels]) =>
      html`<fieldset>
        <legend>${group}</legend>
        ${labels}
      </fieldset>`,
  );
  return {found, groups};
}
