import {html} from "htl";
import {keep, recall} from "../words/address.ts";
import {changed, type Control, control} from "./control.ts";

/** Options of a text. */
interface TextBoxOptions {
  /** Name in the address. */
  readonly key: string;
  readonly label: string;
  readonly value: string;
  /** Several lines, as for a recipe; one by default. */
  readonly lines?: boolean;
}

/** A text box that the page can fill too. */
export interface TextBox extends Control<string> {
  set(text: string): void;
}

/** A text to type, of one line or of several. */
export function textBox({key, label, value, lines = false}: TextBoxOptions): TextBox {
  const box = (
    lines
      ? html`<textarea rows=${value.split("\n").length} spellcheck="false"></textarea>`
      : html`<input type="text" autocomplete="off" />`
  ) as HTMLInputElement | HTMLTextAreaElement;
  box.value = recall(key)[0] ?? value;
  box.addEventListener("input", () => keep(key, [box.value]));
  const element = control(html`<label class="field">${label}${box}</label>`, () => box.value);
  return Object.assign(element, {
    set(text: string) {
      box.value = text;
      keep(key, [text]);
      changed(box);
    },
  });
}
