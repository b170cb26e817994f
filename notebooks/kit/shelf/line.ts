import {html} from "htl";
import {decimal} from "../../../lib/core/format.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {ShelfLine} from "../keep/shelf.ts";
import {boxesOf, lineFrom} from "./line-from.ts";
import {bestWords, dueOf, priceWords} from "./words.ts";

/** Context in which a line of the shelf is shown. */
interface LineParts {
  readonly line: ShelfLine;
  /** The ingredient of that name; absent where there is none, or where it may be several. */
  readonly ingredient: Ingredient | undefined;
  /** The several that go by that name. */
  readonly choices: readonly string[];
  /** Whether it is the cook's own, added from its packet. */
  readonly own: boolean;
  /** Invented price per kg that the pages reckon with meanwhile. */
  readonly invented: number | undefined;
  readonly today: string;
  /** Whether its boxes stand open. */
  readonly open: boolean;
  /** Keeps the line as it becomes, with what was done in words; `undefined` takes it off the shelf. */
  readonly keep: (next: ShelfLine | undefined, words: readonly string[]) => void;
  /** Opens or closes its boxes. */
  readonly toggle: () => void;
}

/** One ingredient of the shelf in a sentence; pressed, with boxes to change it. */
export function shelfSentenceLine(parts: LineParts): HTMLElement {
  const {line, own, open, today, toggle} = parts;
  const {name, have, out, best} = line;
  const button = html`<button type="button" aria-expanded=${String(open)}>
    ${open ? "Close" : "Change"}<span class="hidden-words"> ${name}</span>
  </button>`;
  button.addEventListener("click", toggle);
  const sentences = [
    out ? "Out of stock." : have ? `There ${/^1$/.test(have.text) ? "is" : "are"} ${have.text}.` : "",
    best === undefined ? "" : `${bestWords(best, today)}.`,
  ].filter(Boolean);
  return html`<li data-name=${name} data-due=${dueOf(line, today)} class=${out ? "is-out" : ""}>
    <p>
      <b>${name}</b
      >${own ? html` <a href=${`./add-from-its-packet.html#${new URLSearchParams({edit: name})}`}>from its packet</a>` : ""}
      ${priceSentence(parts)} ${sentences.join(" ")}
    </p>
    ${button} ${open ? boxes(parts) : ""}
  </li>`;
}

function priceSentence({line, ingredient, choices, invented, today}: LineParts): HTMLElement {
  if (choices.length)
    return html`<span class="alarm-words"
      >may be ${choices.slice(0, 4).join(", or ")}: find the one you mean, and take this off the shelf.</span
    >`;
  if (!ingredient)
    return html`<span class="alarm-words"
      >is the name of nothing that is known here:
      <a
        href=${`./add-from-its-packet.html#${new URLSearchParams({name: line.name, back: "./my-shelf.html"})}`}
        >add it from its packet</a
      >.</span
    >`;
  if (line.price) return html`<span>costs ${priceWords(line, today)}.</span>`;
  return invented === undefined
    ? html`<span class="invented">has no price yet.</span>`
    : html`<span class="invented"
        >has no price of yours: the pages reckon with an invented ${decimal(invented, 2)} per kg.</span
      >`;
}

/** The boxes of a line: what it costs, how much there is, its date. */
function boxes({line, ingredient, today, keep}: LineParts): HTMLElement {
  const {name} = line;
  const text = (value: string, placeholder: string) => {
    const box = html`<input type="text" autocomplete="off" placeholder=${placeholder} />` as HTMLInputElement;
    box.value = value;
    return box;
  };
  const before = boxesOf(line);
  const paid = text(before.paid, "2.40 for 1 l");
  paid.dataset.price = "";
  const there = text(before.there, "3 l");
  const date = html`<input type="date" />` as HTMLInputElement;
  date.value = before.best;
  const gone = html`<input type="checkbox" />` as HTMLInputElement;
  gone.checked = before.out;
  const note = html`<p class="note" role="alert"></p>`;
  const off = html`<button type="button">Take it off the shelf</button>`;
  off.addEventListener("click", () => keep(undefined, [`${name} is off the shelf.`]));
  const form = html`<form>
    <label class="field">You pay, for how much${paid}</label>
    <label class="field">There is${there}</label>
    <label class="field">Best before${date}</label>
    <label class="tick">${gone}<span>Out of stock</span></label>
    ${note}
    <p class="tools"><button type="submit">Keep</button>${off}</p>
  </form>` as unknown as HTMLFormElement;
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const typed = {
      paid: paid.value,
      there: there.value,
      best: date.validity.badInput ? "half a day" : date.value,
      out: gone.checked,
    };
    lineFrom(typed, line, ingredient, today).then(
      (next) => {
        if ("mistake" in next) note.textContent = next.mistake;
        else keep(next.value.line, [next.value.words]);
      },
      (error: unknown) => {
        note.textContent = error instanceof Error ? error.message : String(error);
      },
    );
  });
  return form;
}
