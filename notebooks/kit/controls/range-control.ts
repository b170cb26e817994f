import {html} from "htl";
import {decimal} from "../../../lib/core/format.ts";
import {keep, recall} from "../words/address.ts";
import {changed, type Control, control, numberIn} from "./control.ts";
import {type ShownMix, signOf} from "../page/mixes.ts";
import {type Window, windowFrom, windowText} from "../words/address-format.ts";

/** Options of a window. */
export interface RangeOptions {
  /** Name in the address. */
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  /** Ends of the slider; at an end the limit is open. */
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly value?: Window;
}

/** A control for a target, which can be set and can show where mixes landed. */
export interface RangeControl extends Control<Window> {
  set(limits: Window): void;
  /** Puts each mix's sign under the track. */
  land(values: readonly {readonly shown: ShownMix; readonly value: number | undefined}[]): void;
}

/** At least and at most, by two thumbs on one track or by typing. An empty box, like a thumb at its end, is no limit. */
export function rangeControl(options: RangeOptions): RangeControl {
  const {key, label, unit, from, to, step} = options;
  let {min, max} = windowFrom(recall(key)[0] ?? "") ?? options.value ?? {};

  const thumb = (which: string) =>
    html`<input
      type="range"
      min=${from}
      max=${to}
      step=${step}
      aria-label=${`${label}, ${which}, ${unit}`}
    />` as HTMLInputElement;
  const box = (which: string, placeholder: string) =>
    html`<input
      type="number"
      step="any"
      placeholder=${placeholder}
      aria-label=${`${label}, ${which}, ${unit}`}
    />` as HTMLInputElement;
  const [lowThumb, highThumb] = [thumb("at least"), thumb("at most")];
  const [lowBox, highBox] = [box("at least", "any"), box("at most", "any")];
  const span = html`<i></i>`;
  const marks = html`<span aria-hidden="true"></span>`;
  const element = html`<fieldset class="window">
    <legend>${label}<span class="unit">, ${unit}</span></legend>
    <div class="row">
      ${lowBox}
      <div class="track">${span}${marks}${lowThumb}${highThumb}</div>
      ${highBox}
    </div>
  </fieldset>`;

  const current = (): Window => ({...(min !== undefined && {min}), ...(max !== undefined && {max})});
  const share = (value: number) => Math.min(1, Math.max(0, (value - from) / (to - from)));
  const show = (source?: HTMLInputElement) => {
    lowThumb.valueAsNumber = min ?? from;
    highThumb.valueAsNumber = max ?? to;
    if (source !== lowBox) lowBox.value = min === undefined ? "" : String(min);
    if (source !== highBox) highBox.value = max === undefined ? "" : String(max);
    lowThumb.classList.toggle("open", min === undefined);
    highThumb.classList.toggle("open", max === undefined);
    lowThumb.setAttribute("aria-valuetext", min === undefined ? "no limit" : decimal(min, 2));
    highThumb.setAttribute("aria-valuetext", max === undefined ? "no limit" : decimal(max, 2));
    // The thumb that can still move lies on top where both meet.
    lowThumb.style.zIndex = share(min ?? from) > 0.5 ? "1" : "0";
    span.style.setProperty("--from", String(share(min ?? from)));
    span.style.setProperty("--to", String(share(max ?? to)));
  };
  const take = (source: HTMLInputElement, low: boolean) => () => {
    const typed = numberIn(source);
    const atEnd = source === lowThumb ? typed === from : source === highThumb && typed === to;
    const limit = atEnd ? undefined : typed;
    if (low) min = limit;
    else max = limit;
    // One limit pushes the other along; while typing it waits until the box is left.
    if (source.type === "range" && min !== undefined && max !== undefined && min > max) {
      if (low) max = min;
      else min = max;
    }
    show(source);
    keep(key, [windowText(current())]);
  };
  const order = () => {
    if (min === undefined || max === undefined || min <= max) return;
    [min, max] = [max, min];
    show();
    keep(key, [windowText(current())]);
    changed(element);
  };
  for (const [source, low] of [
    [lowThumb, true],
    [highThumb, false],
    [lowBox, true],
    [highBox, false],
  ] as const) {
    source.addEventListener("input", take(source, low));
    source.addEventListener("change", order);
  }
  show();

  return Object.assign(control(element, current), {
    set(limits: Window) {
      ({min, max} = {min: undefined, max: undefined, ...limits});
      show();
      keep(key, [windowText(current())]);
      changed(element);
    },
    land(values: Parameters<RangeControl["land"]>[0]) {
      const placed = values.filter(({value}) => value !== undefined);
      const styles = placed.map(({shown}) => shown.style.sign).join();
      if (marks.dataset.styles !== styles) {
        marks.dataset.styles = styles;
        marks.replaceChildren(
          ...placed.map(({shown}) => html`<span class="landed">${signOf(shown.style)}</span>`),
        );
      }
      placed.forEach(({value}, i) =>
        (marks.children[i] as HTMLElement).style.setProperty("--at", String(share(value!))),
      );
    },
  });
}
