import {html} from "htl";
import type {Picked} from "../words/address-format.ts";

type Unit = Picked["unit"];

/** The switch between the two ways to say the limits of all ingredients that are chosen. */
export interface LimitUnit {
  readonly element: HTMLElement;
  /** Shows what the lines say. */
  show(lines: Iterable<Picked>): void;
  /** The unit that a line without limits has. */
  now(): Unit;
}

/** One switch for all limits; it tells when the cook wants them in another unit. Where lines differ, it says so and is either's. */
export function limitUnit(change: (unit: Unit) => void): LimitUnit {
  const both = html`<option value="" hidden>% and grams, as each says</option>`;
  const select = html`<select>
    <option value="%">% of the mix, for any batch</option>
    <option value="g">grams of this batch</option>
    ${both}
  </select>` as unknown as HTMLSelectElement;
  select.addEventListener("input", () => select.value && change(unitOf(select.value)));
  return {
    element: html`<label class="field">Limits in${select}</label>` as HTMLElement,
    show(lines) {
      const units = new Set([...lines].filter(isLimited).map(({unit}) => unit));
      // While nothing is limited, the switch stands where the cook left it.
      if (units.size) select.value = units.size > 1 ? "" : [...units][0]!;
    },
    now: () => unitOf(select.value),
  };
}

/** Whether a line has a limit. */
export function isLimited({min, max}: Picked): boolean {
  return min !== undefined || max !== undefined;
}

function unitOf(value: string): Unit {
  return value === "g" ? "g" : "%";
}
