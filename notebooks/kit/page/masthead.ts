import {html} from "htl";
import {bookText} from "../keep/book-file.ts";
import {type OpenRecipe, openRecipe} from "../keep/open-recipe.ts";
import {beginAfresh} from "../words/address.ts";
import {fileName, save} from "./downloads.ts";

/** Fills the line of the masthead that says which recipe is open, how it is kept, and goes back and forward. */
export async function fillMasthead(place: HTMLElement): Promise<void> {
  const open = await openRecipe();
  // What can be pressed stays the same element: a press may fall between two changes.
  const name = html`<a href="./read-a-recipe.html"></a>`;
  const status = html`<small role="status"></small>`;
  const undo = press("Undo", open.undo);
  const redo = press("Redo", open.redo);
  const own = html`<p><span>Open: ${name}</span> ${status} <span>${undo} ${redo}</span></p>`;
  const none = html`<p><small>No recipe of yours is open: the pages begin with invented ones.</small></p>`;
  const carried = html`<b></b>`;
  const stays = html`<small></small>`;
  const link = html`<p>
    <span>From a link: ${carried}</span>
    ${press("Keep this recipe in my book", () => open.visitor && open.begin(open.visitor))}${stays}
  </p>`;
  const why = html`<span></span>`;
  const trouble = html`<p class="alarm" role="alert">
    ${why}${press("Save it as a file", () => toFile(open))}
  </p>`;
  const word = html`<p role="status"></p>`;
  place.append(own, none, link, trouble, word);

  const show = () => {
    const {now, visitor, standing} = open;
    own.hidden = visitor !== undefined || now === undefined;
    none.hidden = visitor !== undefined || now !== undefined;
    link.hidden = visitor === undefined;
    name.textContent = now?.name ?? "";
    status.textContent = STANDING[standing.is];
    undo.disabled = !open.canUndo;
    redo.disabled = !open.canRedo;
    carried.textContent = visitor?.name ?? "a recipe";
    stays.textContent = now ? `“${now.name}” stays open on the other pages.` : "";
    trouble.hidden = standing.is !== "not kept";
    why.textContent = standing.is === "not kept" ? standing.why : "";
    word.hidden = open.word === undefined;
    word.textContent = open.word ?? "";
  };
  open.follow(show);
  document.querySelector(".colophon")?.append(html`<p>${press("Begin this page afresh", beginAfresh)}</p>`);
  addEventListener("keydown", (event) => stepByKey(event, open));
  show();
}

/** Boxes that go back over their own typing. */
const WRITTEN_IN =
  "textarea, [contenteditable], input:not([type=range], [type=checkbox], [type=radio], [type=file])";

const STANDING = {
  none: "",
  keeping: "keeping …",
  kept: "kept in this browser",
  "not kept": "not kept",
} as const;

function toFile({whole}: OpenRecipe): void {
  if (whole) save({name: `${fileName(whole.name)}.json`, text: () => bookText([whole], new Date())});
}

function press(words: string, act: () => void): HTMLButtonElement {
  const button = html`<button type="button">${words}</button>` as HTMLButtonElement;
  button.addEventListener("click", act);
  return button;
}

/** The usual keys, where no box is being written in: a box goes back over its own typing. */
function stepByKey(event: KeyboardEvent, open: OpenRecipe): void {
  const {ctrlKey, metaKey, altKey, shiftKey, key, target, defaultPrevented} = event;
  if (defaultPrevented || altKey || !(ctrlKey || metaKey)) return;
  if (target instanceof HTMLElement && target.matches(WRITTEN_IN)) return;
  const step = {z: shiftKey ? open.redo : open.undo, y: open.redo}[key.toLowerCase()];
  if (!step) return;
  event.preventDefault();
  step();
}
