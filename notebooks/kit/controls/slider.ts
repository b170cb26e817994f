import {html} from "htl";
import {keep, recallNumber} from "../words/address.ts";
import {type Control, control, numberIn} from "./control.ts";

/** Options of a slider. */
export interface SliderOptions {
  /** Name in the address. */
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number;
}

/** A slider that the page can move too. */
export interface Slider extends Control<number> {
  set(value: number): void;
}

/** A number by slider or by typing; a typed number may lie between the steps, never beyond the ends. */
export function slider({key, label, unit, min, max, step, value}: SliderOptions): Slider {
  let current = recallNumber(key, min, max) ?? value;
  const track = html`<input
    type="range"
    min=${min}
    max=${max}
    step=${step}
    aria-label=${`${label}, ${unit}`}
  />` as HTMLInputElement;
  const box = html`<input
    type="number"
    id=${`box-${key}`}
    min=${min}
    max=${max}
    step="any"
  />` as HTMLInputElement;
  const element = html`<div class="slider">
    <label for=${`box-${key}`}>${label}<span class="unit">, ${unit}</span></label>
    ${track}${box}
  </div>`;
  const show = (from?: HTMLInputElement) => {
    if (from !== track) track.valueAsNumber = current;
    if (from !== box) box.valueAsNumber = current;
  };
  const set = (to: number, from?: HTMLInputElement) => {
    current = Math.min(max, Math.max(min, to));
    show(from);
    keep(key, [String(current)]);
  };
  const take = (from: HTMLInputElement) => () => {
    const typed = numberIn(from);
    if (typed !== undefined) set(typed, from);
  };
  track.addEventListener("input", take(track));
  box.addEventListener("input", take(box));
  box.addEventListener("change", () => show());
  show();
  return Object.assign(
    control(element, () => current),
    {set: (to: number) => set(to)},
  );
}
