import {html} from "htl";
import type {BriefInput, IngredientInput} from "../../../lib/balance/brief/brief-schema.ts";
import {DOSES, dosesIn} from "../../../lib/pantry/doses.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {keep, recall} from "../words/address.ts";
import {changed, type Control, control, numberIn} from "../controls/control.ts";
import {limit} from "../words/numbers.ts";
import {numberFrom} from "../words/address-format.ts";

/** Doses of the cook's own beside the customary ones. */
export interface DoseBoxes extends Control<BriefInput["doses"]> {
  /** Shows the boxes of those doses that some of these ingredients could go beyond. */
  show(chosen: readonly IngredientInput[]): void;
  /** Takes over the doses that a brief has. */
  take(doses: BriefInput["doses"]): void;
  /** Which doses are in force, in words. */
  tally(): string;
}

/** A box for each customary upper limit, which holds while its box is empty. */
export function doseBoxes(shelf: readonly Ingredient[]): DoseBoxes {
  const own = new Map(
    recall("dose").flatMap((text) => {
      const [key = "", digits = ""] = text.split(":");
      const value = numberFrom(digits, 0, 100);
      return value !== undefined && DOSES.some((dose) => dose.key === key) ? [[key, value] as const] : [];
    }),
  );
  const write = () =>
    keep(
      "dose",
      [...own].map(([dose, most]) => `${dose}:${most}`),
    );
  const inputs = new Map<string, HTMLInputElement>();
  const boxes = DOSES.map(({key, name, limit: customary, source}) => {
    const box = html`<input
      type="number"
      min="0"
      max="100"
      step="any"
      placeholder=${limit(customary)}
      value=${own.get(key) ?? ""}
      aria-label=${`Customary: ${name}, at most, %`}
    />` as HTMLInputElement;
    inputs.set(key, box);
    box.addEventListener("input", () => {
      const value = numberIn(box);
      if (value === undefined || value < 0 || value > 100) own.delete(key);
      else own.set(key, value);
      write();
    });
    return html`<label class="field number" title=${source}
      ><span>${name}<span class="unit">, at most, %</span></span
      >${box}</label
    >`;
  });
  const known = new Map(shelf.map((ingredient) => [ingredient.name, ingredient]));
  const element = html`<div>${boxes}</div>`;
  return Object.assign(
    control(element, (): BriefInput["doses"] => (own.size ? Object.fromEntries(own) : "customary")),
    {
      show(chosen: readonly IngredientInput[]) {
        const brought = chosen.flatMap(({name}) => (known.has(name) ? [dosesIn(known.get(name)!)] : []));
        boxes.forEach((row, i) => {
          row.hidden = !own.has(DOSES[i]!.key) && !brought.some((doses) => doses[i]! > DOSES[i]!.limit);
        });
      },
      take(doses: BriefInput["doses"]) {
        if (typeof doses !== "object") return;
        for (const [key, most] of Object.entries(doses)) {
          own.set(key, most);
          inputs.get(key)!.valueAsNumber = most;
        }
        write();
        changed(element);
      },
      tally: () => (own.size ? `${own.size} of your own` : "all in force"),
    },
  );
}
