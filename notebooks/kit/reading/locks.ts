import {html} from "htl";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {keep, recall} from "../words/address.ts";
import {type Control, control} from "../controls/control.ts";

/** Ticks for the ingredients that no change may touch. */
export interface Locks extends Control<readonly string[]> {
  /** Shows a tick for each ingredient of a recipe. */
  show(recipe: Recipe | undefined): void;
}

/** No ingredient is locked at first but those of the address; a tick stays while its ingredient is there. */
export function locks(): Locks {
  const locked = new Set(recall("lock"));
  const ticks = html`<div class="ticks"></div>`;
  const element = html`<fieldset class="stays">
    <legend>Stays as it is</legend>
    ${ticks}
  </fieldset>`;
  let shown = "";
  return Object.assign(
    control(element, (): readonly string[] => [...locked]),
    {
      show(recipe: Recipe | undefined) {
        const names = [...new Set(recipe?.lines.map(({ingredient}) => ingredient.name))];
        if (names.join("\n") === shown) return;
        shown = names.join("\n");
        ticks.replaceChildren(
          ...names.map((name) => {
            const box = html`<input type="checkbox" />` as HTMLInputElement;
            box.checked = locked.has(name);
            box.addEventListener("input", () => {
              if (box.checked) locked.add(name);
              else locked.delete(name);
              keep("lock", [...locked]);
            });
            return html`<label>${box}<span>${name}</span></label>`;
          }),
        );
      },
    },
  );
}
