import {html} from "htl";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {keep, recall} from "../words/address.ts";
import {type Control, control} from "./control.ts";

/** The mass of one of each thing that a recipe counts, g, by name; only what the cook has changed. */
export interface UnitBoxes extends Control<ReadonlyMap<string, number>> {
  /** Shows a box for each of these, and no other. */
  show(counted: readonly Ingredient[]): void;
}

/** A box for each counted ingredient: an egg and a yolk each have their own mass. */
export function unitBoxes(key: string): UnitBoxes {
  const changed = new Map<string, number>();
  for (const kept of recall(key)) {
    const [, name, mass] = /^(.{1,200}):([\d.]{0,20})$/.exec(kept) ?? [];
    if (name !== undefined) changed.set(name, mass ? Number(mass) : NaN);
  }
  // What older links carry was typed for the yolks of the demonstration.
  const yolk = Number(recall("yolk")[0] ?? NaN);
  if (Number.isFinite(yolk) && !changed.has("egg yolk")) changed.set("egg yolk", yolk);
  const element = html`<div></div>` as HTMLElement;
  const boxes = new Map<string, HTMLElement>();
  const boxOf = ({name, unit}: Ingredient) => {
    const value = changed.get(name) ?? unit!;
    const input = html`<input
      type="number"
      step="any"
      value=${Number.isFinite(value) ? value : ""}
    />` as HTMLInputElement;
    input.addEventListener("input", () => {
      changed.set(name, input.value.trim() === "" ? NaN : Number(input.value));
      keep(
        key,
        [...changed].map(([one, mass]) => `${one}:${Number.isNaN(mass) ? "" : mass}`),
      );
    });
    return html`<label class="field number"
      ><span>One ${name} weighs<span class="unit">, g</span></span
      >${input}</label
    >` as HTMLElement;
  };
  return Object.assign(
    control(element, () => changed as ReadonlyMap<string, number>),
    {
      show(counted: readonly Ingredient[]) {
        const names = new Set(counted.map(({name}) => name));
        for (const [name, box] of boxes) {
          if (names.has(name)) continue;
          box.remove();
          boxes.delete(name);
        }
        for (const one of counted) {
          if (boxes.has(one.name)) continue;
          const box = boxOf(one);
          boxes.set(one.name, box);
          element.append(box);
        }
      },
    },
  );
}
