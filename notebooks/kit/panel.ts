import {html} from "htl";
import {type Control, control} from "./control.ts";

type Values<C extends Record<string, Control<unknown>>> = {readonly [K in keyof C]: C[K]["value"]};

/** A part of the brief: controls under one heading, which folds away. Its value is theirs, by name. */
export function panel<const C extends Record<string, Control<unknown>>>(heading: string, hint: string, controls: C): Control<Values<C>> {
  const element = html`<details class="panel" data-side="brief" open>
    <summary>${heading}</summary>
    <p class="hint">${hint}</p>
    ${Object.values(controls)}
  </details>`;
  return control(element, () => Object.fromEntries(Object.entries(controls).map(([name, {value}]) => [name, value])) as Values<C>);
}

/** A line that stays in sight on a phone while the sliders move, and leads to the answer. */
export interface QuickAnswer extends HTMLElement {
  say(text: string): void;
}

/** The line, empty at first. */
export function quickAnswer(): QuickAnswer {
  const words = html`<span></span>`;
  const button = html`<button type="button" class="quick" data-side="brief" hidden>${words}<span aria-hidden="true">↓</span></button>`;
  button.addEventListener("click", () => document.querySelector(".verdict")?.scrollIntoView());
  return Object.assign(button, {
    say(text: string) {
      words.textContent = text;
      button.hidden = text === "";
    },
  });
}

/** What stands where there is nothing to show. */
export function nothing(): HTMLElement {
  return html`<span data-side="answer" hidden></span>`;
}
