import {html} from "htl";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {ingredientsNamed} from "../../../lib/pantry/pantry.ts";
import {type ShelfLine} from "../keep/shelf.ts";
import {dayOf} from "../words/day.ts";
import type {OpenShelf} from "./open-shelf.ts";
import {shelfSentenceLine} from "./line.ts";
import {heapsOf, shelfSentence} from "./words.ts";

/** The list of what is on the shelf. */
export interface ShelfList {
  readonly element: HTMLElement;
  /** Opens the boxes of an ingredient, on the shelf or not yet, with the hand in that of its price. */
  open(name: string): void;
}

const HEADINGS = {first: "Use first", there: "On the shelf", out: "Out of stock"} as const;

/** All lines of the shelf: what is to be used first on top, what is out below. Follows the shelf. */
export function shelfList(shelf: OpenShelf): ShelfList {
  const opened = new Set<string>();
  const verdict = html`<section class="verdict" aria-live="polite"></section>`;
  const trouble = html`<p class="note" role="alert"></p>`;
  const body = html`<div class="shelf-lines"></div>`;
  const element = html`<div data-side="answer">${verdict}${trouble}${body}</div>`;
  const undo = html`<button type="button">Undo</button>`;
  undo.addEventListener("click", () => void shelf.undo().catch(complain));

  const drawn = new Map<string, {readonly state: string; readonly element: HTMLElement}>();
  function show(): void {
    const {lines, own, kitchen} = shelf.now;
    const today = dayOf(new Date());
    const kept = new Set(lines.map(({name}) => name));
    const ownNames = new Set(own.map(({ingredient}) => ingredient.name));
    const fresh = [...opened].filter((name) => !kept.has(name)).map((name): ShelfLine => ({name}));
    const item = (line: ShelfLine) => {
      const ownLine = ownNames.has(line.name);
      const price = known(line.name)?.price;
      // What is half typed in a line stays while another one changes.
      const state = JSON.stringify([line, ownLine, price, today, opened.has(line.name)]);
      const made = drawn.get(line.name);
      const element = made?.state === state ? made.element : draw(line);
      drawn.set(line.name, {state, element});
      return element;
    };
    const draw = (line: ShelfLine) =>
      shelfSentenceLine({
        line,
        ingredient: known(line.name),
        choices: known(line.name) ? [] : named(line.name).map(({name}) => name),
        own: ownNames.has(line.name),
        invented: kitchen.priced.has(line.name) ? undefined : known(line.name)?.price,
        today,
        open: opened.has(line.name),
        toggle() {
          if (!opened.delete(line.name)) opened.add(line.name);
          show();
          focus(line.name, "button");
        },
        keep(next, words) {
          opened.delete(line.name);
          const edits = new Map([[line.name, () => next]]);
          const without =
            next === undefined && ownNames.has(line.name) ? new Map([[line.name, undefined]]) : undefined;
          shelf.change(words, edits, without).then(() => focus(line.name, "button"), complain);
        },
      });
    const heaps = heapsOf(lines, today);
    const done = shelf.done.at(-1);
    verdict.replaceChildren(
      html`<h2>${shelfSentence(lines, today)}</h2>`,
      ...(shelf.trouble === undefined ? [] : [html`<p class="alarm">${shelf.trouble}</p>`]),
      ...(done ? [html`<div class="done">${saidWords(done.words)} ${undo}</div>`] : []),
    );
    const heap = (heading: string, some: readonly ShelfLine[]) =>
      some.length
        ? [
            html`<h3>${heading}</h3>`,
            html`<ul>
              ${some.map(item)}
            </ul>`,
          ]
        : [];
    body.replaceChildren(
      ...heap("New", fresh),
      ...(["first", "there", "out"] as const).flatMap((key) => heap(HEADINGS[key], heaps[key])),
    );
  }
  function named(name: string): readonly Ingredient[] {
    return ingredientsNamed(shelf.now.kitchen.pantry, name);
  }
  function known(name: string): Ingredient | undefined {
    const [one, another] = named(name);
    return another ? undefined : one;
  }
  function focus(name: string, what: string): void {
    const line = [...body.querySelectorAll<HTMLElement>("li")].find((one) => one.dataset.name === name);
    line?.querySelector<HTMLElement>(what)?.focus();
  }
  function complain(error: unknown): void {
    trouble.textContent = error instanceof Error ? error.message : String(error);
  }
  shelf.follow(show);
  show();
  return {
    element,
    open(name) {
      opened.add(name);
      show();
      focus(name, "[data-price]");
    },
  };
}

/** So many sentences are told of a change; more are folded away. */
const TOLD = 5;

function saidWords(words: readonly string[]): HTMLElement {
  const [first = "", ...rest] = words;
  if (words.length <= TOLD) return html`<p>${words.join(" ")}</p>`;
  return html`<details>
    <summary>${first} And ${rest.length} more changes</summary>
    <ul>
      ${rest.map((one) => html`<li>${one}</li>`)}
    </ul>
  </details>`;
}
