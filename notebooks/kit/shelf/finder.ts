import {html} from "htl";
import {packetAddress} from "../words/address.ts";
import {nameFinder} from "../words/find-names.ts";
import type {OpenShelf} from "./open-shelf.ts";

/** So many are offered at once: more letters narrow them down. */
const OFFERED = 12;

/** A search over every ingredient there is; a press on one opens its line of the shelf. */
export function shelfSearch(shelf: OpenShelf, choose: (name: string) => void): HTMLElement {
  const box = html`<input
    type="search"
    placeholder="milk, caster, hazlenut …"
    autocomplete="off"
  />` as HTMLInputElement;
  const results = html`<div class="shelf-found" role="status"></div>`;
  let {pantry} = shelf.now.kitchen;
  let find = nameFinder(pantry);
  const take = (name: string) => {
    box.value = "";
    show();
    choose(name);
  };
  const button = (name: string, also: string) => {
    const made = html`<button type="button">${name}${also ? html` <small>${also}</small>` : ""}</button>`;
    made.addEventListener("click", () => take(name));
    return made;
  };
  function show(): void {
    const typed = box.value.trim();
    const {found, near, numbered} = find(typed);
    const on = new Set(shelf.now.lines.map(({name}) => name));
    const buttons = numbered
      ? [button(numbered.name, "reckoned from its number")]
      : found
          .slice(0, OFFERED)
          .map(({ingredient: {name}, also}) =>
            button(name, [also, on.has(name) ? "on your shelf" : ""].filter(Boolean).join(", ")),
          );
    const packet = html`<a href=${packetAddress(typed)}>Add “${typed}” from its packet</a>`;
    results.replaceChildren(
      ...(typed === ""
        ? []
        : [
            ...(near && found.length ? [html`<p>Nothing is called that. Perhaps:</p>`] : []),
            ...buttons,
            ...(found.length > OFFERED
              ? [html`<p>And ${found.length - OFFERED} more: type more letters.</p>`]
              : []),
            html`<p>
              ${found.length || numbered ? "None of these? " : "Nothing goes by that name. "}${packet}
            </p>`,
          ]),
    );
  }
  box.addEventListener("input", show);
  box.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    results.querySelector("button")?.click();
  });
  shelf.follow(() => {
    if (shelf.now.kitchen.pantry !== pantry) {
      ({pantry} = shelf.now.kitchen);
      find = nameFinder(pantry);
    }
    show();
  });
  return html`<div>
    <label class="field"
      >Find one of ${pantry.ingredients.length} ingredients, by any of its names${box}</label
    >
    ${results}
  </div>`;
}
