import {html} from "htl";
import type {TextBox} from "../controls/text-box.ts";

/** A way back from what the page wrote into a box. */
export interface Undo {
  readonly element: HTMLElement;
  /** Writes into the box, and keeps what stood there. */
  write(text: string): void;
}

/** Buttons that go back, and forward again, through what the page itself wrote; typing has the browser's own. */
export function undoFor(box: TextBox): Undo {
  const past: string[] = [];
  const future: string[] = [];
  const button = (words: string, from: string[], to: string[]) => {
    const made = html`<button type="button">${words}</button>` as HTMLButtonElement;
    made.addEventListener("click", () => {
      const text = from.pop();
      if (text === undefined) return;
      to.push(box.value);
      box.set(text);
      show();
    });
    return made;
  };
  const back = button("Undo", past, future);
  const forward = button("Redo", future, past);
  const element = html`<div class="tools" data-side="answer">${back}${forward}</div>`;
  const show = () => {
    back.hidden = past.length === 0;
    forward.hidden = future.length === 0;
    element.hidden = back.hidden && forward.hidden;
  };
  show();
  return {
    element,
    write(text) {
      past.push(box.value);
      future.length = 0;
      box.set(text);
      show();
    },
  };
}
