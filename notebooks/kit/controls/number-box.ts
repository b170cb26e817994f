import {html} from "htl";
import {keep, recall} from "../words/address.ts";
import {type Control, control, numberIn} from "./control.ts";

/** Options of a box. */
interface NumberBoxOptions {
  /** Name in the address. */
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly value: number;
}

/** A number to type, taken as it is: what cannot be is answered by the page, not mended behind the cook's back. Empty is NaN. */
export function numberBox({key, label, unit, value}: NumberBoxOptions): Control<number> {
  const kept = recall(key)[0];
  const first = kept === undefined ? value : kept.trim() === "" ? NaN : Number(kept);
  const box = html`<input
    type="number"
    step="any"
    value=${Number.isFinite(first) ? first : ""}
  />` as HTMLInputElement;
  box.addEventListener("input", () => keep(key, [box.value]));
  return control(
    html`<label class="field number"
      ><span>${label}<span class="unit">, ${unit}</span></span
      >${box}</label
    >`,
    () => numberIn(box) ?? NaN,
  );
}
