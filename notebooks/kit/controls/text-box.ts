import {html} from "htl";
import {keep, recall} from "../words/address.ts";
import {type Control, control} from "./control.ts";

/** Options of a text. */
interface TextBoxOptions {
  /** Name in the address. */
  readonly key: string;
  readonly label: string;
  readonly value: string;
  /** Several lines, as for a recipe; one by default. */
  readonly lines?: boolean;
}

/** A text to type, of one line or of several. */
export function textBox({key, label, value, lines = false}: TextBoxOptions): Control<string> {
  const box = (
    lines
      ? html`<textarea rows=${value.split("\n").length} spellcheck="false"></textarea>`
      : html`<input type="text" autocomplete="off" />`
  ) as HTMLInputElement | HTMLTextAreaElement;
  box.value = recall(key)[0] ?? value;
  box.addEventListener("input", () => keep(key, [box.value]));
  return control(html`<label class="field">${label}${box}</label>`, () => box.value);
}
