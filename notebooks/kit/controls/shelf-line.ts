import {html} from "htl";
import {numberIn} from "./control.ts";
import {shelfAddress} from "../words/invented-money.ts";
import {inUnit} from "./shelf-limits.ts";
import type {Picked} from "../words/address-format.ts";

/** Options of a line of the shelf, beside the ingredient. */
interface LineOptions {
  /** Price of the shelf for a kg, if it has any. */
  readonly price: number | undefined;
  /** Whether the cook has set that price. */
  readonly own: boolean;
  /** Mass of the batch, g: what turns percentages into grams, and back; without it the limits are in g. */
  readonly batch: (() => number) | undefined;
  /** Share of the mix that is shown, %: the lock holds it. */
  readonly amount: () => number | undefined;
  readonly change: (line: Picked) => void;
  readonly remove: (button: HTMLElement) => void;
}

/** One chosen ingredient: its least and most in percent of the batch or in g, and its price per kg. */
export function shelfLine(
  first: Picked,
  {price: preset, own, batch, amount, change, remove}: LineOptions,
): HTMLElement {
  let now = first;
  const take = (next: Picked) => change((now = next));
  const box = (field: "price" | "min" | "max", words: string, placeholder: string) => {
    const input = html`<input
      type="number"
      min="0"
      step="any"
      placeholder=${placeholder}
      value=${now[field] ?? ""}
    />` as HTMLInputElement;
    input.addEventListener("input", () => {
      const {[field]: _, ...rest} = now;
      const value = numberIn(input);
      take(value === undefined || value < 0 ? rest : {...rest, [field]: value});
    });
    return {input, label: html`<label>${words}${input}</label>`};
  };
  const least = box("min", "at least", "any");
  const most = box("max", "at most", "any");
  const price = box("price", "per kg", preset === undefined ? "none" : String(Number(preset.toPrecision(4))));
  // The price that holds while the box is empty: whose it is, and the way to where it is set.
  const origin = html`<span class="origin"></span>`;
  const link = html`<a class=${own ? "" : "invented"} href=${shelfAddress(first.name)}
    >${own ? "from your shelf" : "invented: set yours"}</a
  >`;
  const showOrigin = () =>
    origin.replaceChildren(...(preset === undefined || now.price !== undefined ? [] : [link]));
  price.input.addEventListener("input", showOrigin);
  showOrigin();
  least.input.setAttribute("aria-label", `${first.name}, at least, ${first.unit}`);
  most.input.setAttribute("aria-label", `${first.name}, at most, ${first.unit}`);
  price.input.setAttribute("aria-label", `${first.name}, price, per kg`);
  const lock = html`<input type="checkbox" />` as HTMLInputElement;
  const isLocked = () => now.min !== undefined && now.min === now.max;
  // What the lock replaced comes back with it off.
  let free: Pick<Picked, "min" | "max"> = {};
  lock.addEventListener("input", () => {
    const {min, max, ...rest} = now;
    const percent = amount();
    if (!lock.checked) take({...rest, ...free});
    else if (percent === undefined) lock.checked = false;
    else {
      free = {...(min !== undefined && {min}), ...(max !== undefined && {max})};
      take(inUnit({...rest, unit: "%", ...locked(percent)}, now.unit, batch?.() ?? 1000));
    }
    least.input.value = String(now.min ?? "");
    most.input.value = String(now.max ?? "");
  });
  for (const {input} of [least, most]) input.addEventListener("input", () => (lock.checked = isLocked()));
  lock.checked = isLocked();
  lock.setAttribute("aria-label", `Lock ${first.name} as it is`);
  const button = html`<button type="button" aria-label=${`Remove ${first.name}`}>×</button>`;
  button.addEventListener("click", () => remove(button));
  return html`<li>
    <span class="name">${first.name}</span>${button} ${least.label}${most.label}
    ${batch ? html`<label class="lock">lock${lock}</label>` : ""}
    <span class="unit">${first.unit}</span>${price.label}${origin}
  </li>`;
}

/** Both limits at an amount, %: to a hundredth, so that the other limits can still be kept. */
function locked(percent: number): {min: number; max: number} {
  const held = Number(percent.toFixed(2));
  return {min: held, max: held};
}
