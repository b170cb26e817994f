import {html} from "htl";
import {openBeside} from "../page/room.ts";
import {type Control, control} from "./control.ts";

type Values<C extends Record<string, Control<unknown>>> = {readonly [K in keyof C]: C[K]["value"]};

/** Options of a panel: how it begins. */
interface PanelOptions {
  /** One short sentence under the heading, where the controls do not say it all. */
  readonly hint?: string;
  /** Whether it is folded at first; not, by default, but on a phone all parts are that follow the first. */
  readonly folded?: boolean | "on a phone";
  /** A word beside the heading that says what is inside, kept up to date. */
  readonly tally?: () => string;
}

/** Whether no part of the brief stands on the page yet. */
let first = true;

/** A part of the brief: controls under one heading, which folds away. Its value is theirs, by name. */
export function panel<const C extends Record<string, Control<unknown>>>(
  heading: string,
  controls: C,
  {hint, folded = false, tally = () => ""}: PanelOptions = {},
): Control<Values<C>> {
  const aside = html`<small>${tally()}</small>`;
  const element = html`<details class="panel" data-side="brief">
    <summary><span>${heading} ${aside}</span></summary>
    ${hint === undefined ? "" : html`<p class="hint">${hint}</p>`} ${Object.values(controls)}
  </details>` as HTMLDetailsElement;
  // Above the answer there is room for the first part of the brief alone.
  if (folded === false && first) element.open = true;
  else if (folded !== true) openBeside(element);
  first = false;
  element.addEventListener("input", () => (aside.textContent = tally()));
  return control(
    element,
    () => Object.fromEntries(Object.entries(controls).map(([name, {value}]) => [name, value])) as Values<C>,
  );
}

/** A part of the page's left side that holds no values of a brief. */
export function section(
  heading: string,
  content: HTMLElement,
  {hint, folded = false}: {readonly hint?: string; readonly folded?: boolean},
): HTMLElement {
  return html`<details class="panel" data-side="brief" open=${!folded}>
    <summary><span>${heading}</span></summary>
    ${hint === undefined ? "" : html`<p class="hint">${hint}</p>`} ${content}
  </details>`;
}

/** A line that stays in sight on a phone while the sliders move, and leads to the answer. */
export interface QuickAnswer extends HTMLElement {
  say(text: string): void;
}

/** The line, empty at first. */
export function quickAnswer(): QuickAnswer {
  const words = html`<span></span>`;
  const button = html`<button type="button" class="quick" data-side="brief" hidden>
    ${words}<span aria-hidden="true">↓</span>
  </button>`;
  button.addEventListener("click", () => document.querySelector(".verdict")?.scrollIntoView());
  return Object.assign(button, {
    say(text: string) {
      words.textContent = text;
      button.hidden = text === "";
    },
  });
}
