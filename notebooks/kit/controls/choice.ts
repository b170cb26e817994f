import {html} from "htl";
import {keep, recall} from "../words/address.ts";
import {type Control, control} from "./control.ts";

/** Options of a choice. */
interface ChoiceOptions<K extends string> {
  /** Name in the address. */
  readonly key: string;
  readonly label: string;
  /** Keys to choose from, with their words. */
  readonly options: Readonly<Record<K, string>>;
  readonly value: NoInfer<K>;
}

/** One of a few ways. */
export function choice<const K extends string>({key, label, options, value}: ChoiceOptions<K>): Control<K> {
  const keys = Object.keys(options) as K[];
  const kept = keys.find((one) => one === recall(key)[0]) ?? value;
  const select = html`<select>
    ${keys.map((one) => html`<option value=${one} selected=${one === kept}>${options[one]}</option>`)}
  </select>` as unknown as HTMLSelectElement;
  select.addEventListener("input", () => keep(key, [select.value]));
  return control(html`<label class="field">${label}${select}</label>`, () => select.value as K);
}

/** Shows each control only while the choice is one of those named beside it. */
export function onlyFor<K extends string>(
  chosen: Control<K>,
  controls: readonly (readonly [HTMLElement, readonly K[]])[],
): void {
  const show = () => {
    for (const [element, keys] of controls) element.hidden = !keys.includes(chosen.value);
  };
  chosen.addEventListener("input", show);
  show();
}
