import {html} from "htl";
import {InputError} from "../../../lib/core/errors.ts";
import {readPantryCsv} from "../../../lib/io/csv/pantry-csv.ts";
import {ownFirst} from "../../../lib/io/csv/own-first.ts";
import {pantryOf} from "../../../lib/pantry/pantry.ts";
import type {ShelfLine} from "../keep/shelf.ts";
import {save} from "../page/downloads.ts";
import {dayOf} from "../words/day.ts";
import {mistakeOf} from "../words/mistakes.ts";
import type {OpenShelf} from "./open-shelf.ts";
import {describesIngredients, ownCsv, ownFrom} from "./own-csv.ts";
import {shelfCsv, shelfFrom} from "./shelf-csv.ts";

/** Largest file that is read, bytes. */
const LARGEST = 5_000_000;

/** Saves the shelf as the files that the command reads too, and reads such files into it. */
export function shelfFiles(shelf: OpenShelf): HTMLElement {
  const button = (words: string, name: string, text: () => string) => {
    const made = html`<button type="button">${words}</button>`;
    made.addEventListener("click", () => save({name, text}));
    return made;
  };
  const own = button("Save my own ingredients, CSV", "my-ingredients.csv", () => ownCsv(shelf.now.own));
  const input = html`<input type="file" accept=".csv,text/csv" />` as HTMLInputElement;
  const note = html`<p class="note" role="status"></p>`;
  const say = (words: string) => (note.textContent = words);
  input.addEventListener("click", () => {
    input.value = "";
  });
  input.addEventListener("change", () => {
    const [file] = input.files ?? [];
    if (!file) return;
    if (file.size > LARGEST)
      say(`${file.name} has more than 5 MB: that is no price list. Choose another file.`);
    else
      file
        .text()
        .then((text) => merge(shelf, text, file.name))
        .then(say, (error: unknown) =>
          say(
            error instanceof InputError
              ? mistakeOf(error)
              : error instanceof Error
                ? error.message
                : String(error),
          ),
        );
  });
  const show = () => {
    own.hidden = !shelf.now.own.length;
  };
  shelf.follow(show);
  show();
  return html`<div>
    <p class="tools">
      ${button("Save my shelf, CSV", "my-shelf.csv", () => shelfCsv(shelf.now.lines))}${own}
    </p>
    <label class="field">Add a price list or your own ingredients, CSV${input}</label>
    ${note}
  </div>`;
}

/** Merges a file into the shelf; what it came to, in words. */
export async function merge(shelf: OpenShelf, text: string, place: string): Promise<string> {
  const describes = describesIngredients(text, place);
  const entries = describes ? ownFrom(text, place) : [];
  const {own, lines, kitchen} = shelf.now;
  const kept = new Map(own.map(({entry}) => [entry.name, JSON.stringify(entry)]));
  const fresh = entries.filter((entry) => kept.get(entry.name) !== JSON.stringify(entry));
  const described = describes ? readPantryCsv(text, place) : [];
  const pantry = describes ? pantryOf(ownFirst(described, kitchen.pantry.ingredients)) : kitchen.pantry;
  const file = describes
    ? ofIngredients(described, lines)
    : shelfFrom(text, place, {present: lines, pantry, today: dayOf(new Date())});
  const words = [
    ...fresh.map(({name}) => `${name}: ${kept.has(name) ? "replaced by the file’s" : "your own now"}.`),
    ...file.changes,
  ];
  const same = file.same + entries.length - fresh.length;
  if (!words.length)
    return `${place} says nothing new: ${same === 1 ? "its row is" : `all ${same} rows are`} on your shelf already.`;
  await shelf.change(
    words,
    new Map([...file.lines].map(([name, line]) => [name, () => line])),
    new Map(fresh.map((entry) => [entry.name, entry])),
  );
  const unknown = file.unknown.length
    ? ` Nothing is known of ${file.unknown.join(", ")}: the price is kept, and counts once you add it from its packet.`
    : "";
  return `${words.length} ${words.length === 1 ? "thing has" : "things have"} changed, ${same} stayed as they were.${unknown}`;
}

/** Prices and stocks that stand beside ingredients which a file describes. */
function ofIngredients(
  described: readonly {readonly name: string; readonly price?: number; readonly stock?: number}[],
  present: readonly ShelfLine[],
): Pick<ReturnType<typeof shelfFrom>, "lines" | "changes" | "unknown" | "same"> {
  const before = new Map(present.map((line) => [line.name, line]));
  const today = dayOf(new Date());
  const lines = new Map(
    described
      .filter(({name, price}) => price !== undefined || !before.has(name))
      .map(({name, price, stock}): [string, ShelfLine] => [
        name,
        {
          ...before.get(name),
          name,
          ...(price !== undefined && {price: {money: price, pack: "1 kg", grams: 1000, on: today}}),
          ...(stock && {have: {text: `${stock} g`, grams: stock}}),
        },
      ]),
  );
  return {lines, changes: [], unknown: [], same: 0};
}
