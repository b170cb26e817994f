import {html} from "htl";
import {keep, recall} from "../words/address.ts";
import {changed, type Control, control} from "./control.ts";
import type {Source} from "../words/load-recipe.ts";
import {sourceFrom} from "../words/address-format.ts";

/** Options of a choice of sources. */
interface SourceOptions {
  /** Name in the address. */
  readonly key: string;
  readonly label: string;
  /** The demonstration's, by what each is called in the address, with how it reads; the first is chosen at first. */
  readonly demos: Readonly<Record<string, Source & {readonly label: string}>>;
}

/** Longest text that the address carries, characters. */
const LONGEST_KEPT = 40_000;

/** Largest file that is read, bytes: the readers take no more either. */
const LARGEST = 5_000_000;

const OWN = "own";

/** One of the demonstration's files, or one of the cook's own. Its text goes into the address, and nowhere else. */
export function sourceChoice({key, label, demos}: SourceOptions): Control<Source> {
  let own = sourceFrom(recall(`${key}File`));
  const names = Object.keys(demos);
  const first = recall(key)[0] ?? "";
  let chosen = (first === OWN && own) || names.includes(first) ? first : names[0]!;

  const select = html`<select></select>` as unknown as HTMLSelectElement;
  const input = html`<input type="file" accept=".json,.csv,application/json,text/csv" />` as HTMLInputElement;
  const note = html`<p class="note" role="status"></p>`;
  const element = html`<div>
    <label class="field">${label}${select}</label>
    <label class="field">Or load your own, JSON or CSV${input}</label>
    ${note}
  </div>`;
  const show = () => {
    select.replaceChildren(
      ...names.map((name) => html`<option value=${name}>${demos[name]!.label}</option>`),
      ...(own ? [html`<option value=${OWN}>${own.file}</option>`] : []),
    );
    select.value = chosen;
  };
  const choose = (name: string) => {
    chosen = name;
    keep(key, [name]);
    show();
  };
  select.addEventListener("input", () => choose(select.value));
  // The file is told when it has been read, not when it has been chosen.
  input.addEventListener("input", (event) => event.stopPropagation());
  // A file that was mended may be chosen again: it counts as another one.
  input.addEventListener("click", () => {
    input.value = "";
  });
  input.addEventListener("change", () => {
    const [loaded] = input.files ?? [];
    if (!loaded) return;
    if (loaded.size > LARGEST) {
      note.textContent = `${loaded.name} has more than ${LARGEST / 1e6} MB: that is no recipe. Choose another file.`;
      return;
    }
    const take = (read: string) => {
      // What was chosen last wins, however long an earlier one takes to read.
      if (input.files?.[0] !== loaded) return;
      own = {file: loaded.name, text: read};
      const fits = read.length <= LONGEST_KEPT;
      keep(`${key}File`, fits ? [own.file, own.text] : []);
      note.textContent = fits
        ? ""
        : "This file is too long for the address: a link will open the page without it.";
      choose(OWN);
      changed(element);
    };
    loaded.text().then(take, () => {
      note.textContent = `${loaded.name} cannot be read: it was moved or changed. Choose it again.`;
    });
  });
  show();
  return control(element, () => (chosen === OWN && own ? own : demos[chosen]!));
}
