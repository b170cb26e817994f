import {html} from "htl";
import {InputError} from "../../../lib/core/errors.ts";
import {bookText, readBookFile} from "../keep/book-file.ts";
import type {RecipeBook} from "../keep/recipes.ts";
import {save} from "../page/downloads.ts";
import {control, type Control} from "../controls/control.ts";
import {mistakeOf} from "../words/mistakes.ts";
import {mergedWords} from "./merged-words.ts";

/** Largest file that is read, bytes: the reader takes 5 million characters. */
const LARGEST = 20_000_000;

/** The whole book into a file, and files back into the book. */
export function backup(book: RecipeBook): Control<undefined> {
  const told = html`<p class="note" role="status"></p>`;
  const mistakes = html`<ul class="note"></ul>`;
  const say = (words: string, each: readonly string[] = []) => {
    told.textContent = words;
    mistakes.replaceChildren(...each.map((one) => html`<li>${one}</li>`));
  };
  const out = html`<button type="button">Save all as a file</button>`;
  out.addEventListener("click", () => {
    void book.list().then(({recipes, deleted}) => {
      const now = new Date();
      save({
        name: `my-recipes-${now.toISOString().slice(0, 10)}.json`,
        text: () => bookText([...recipes, ...deleted], now),
      });
      say(recipes.length === 1 ? "One recipe is in the file." : `${recipes.length} recipes are in the file.`);
    });
  });
  const input = html`<input type="file" accept=".json,application/json" />` as HTMLInputElement;
  input.addEventListener("click", () => (input.value = ""));
  input.addEventListener("change", () => {
    const [file] = input.files ?? [];
    if (file) void takeIn(file, book).then(({words, each}) => say(words, each));
  });
  const element = html`<div>
    <div class="tools">${out}</div>
    <label class="field">Add the recipes of a file${input}</label>
    ${told}${mistakes}
  </div>`;
  return control(element, () => undefined);
}

interface Told {
  readonly words: string;
  readonly each?: readonly string[];
}

/** Takes the recipes of a file in; what it says of a mistake names place, value and next step. */
async function takeIn(file: File, book: RecipeBook): Promise<Told> {
  if (file.size > LARGEST)
    return {
      words: `${file.name} has more than ${LARGEST / 1e6} MB: that is no file of recipes. Choose another.`,
    };
  const text = await file.text().catch(() => undefined);
  if (text === undefined)
    return {words: `${file.name} cannot be read: it was moved or changed. Choose it again.`};
  try {
    const {recipes, mistakes} = readBookFile(text, file.name);
    const merged = await book.takeIn(recipes);
    const left = mistakes.length
      ? ` ${mistakes.length === 1 ? "One is" : `${mistakes.length} are`} broken and left out:`
      : "";
    return {words: `${mergedWords(merged)}${left}`, each: mistakes.map(mistakeOf)};
  } catch (error) {
    if (error instanceof InputError) return {words: mistakeOf(error)};
    return {words: error instanceof Error ? error.message : String(error)};
  }
}
