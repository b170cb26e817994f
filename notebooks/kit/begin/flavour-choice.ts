import {html} from "htl";
import {flavoursOf} from "../../../lib/kitchen/begin/flavours.ts";
import type {StartingPoint} from "../../../lib/kitchen/begin/starting-points.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import {type Control, control} from "../controls/control.ts";
import {keep, recall} from "../words/address.ts";

/** The ingredient for the flavour, by name; nothing for a point without one to choose. */
export interface FlavourChoice extends Control<string | undefined> {
  /** Shows what a point has to choose from. */
  show(point: StartingPoint): void;
}

const ASKED = {fruit: "Which fruit?", nut: "Which nut?", spirit: "Which spirit?"} as const;

/** A list of the fruits, nuts or spirits of the pantry, by name; each kind remembers what was chosen of it. */
export function flavourChoice(pantry: Pantry): FlavourChoice {
  const select = html`<select></select>` as unknown as HTMLSelectElement;
  const words = html`<span>Which flavour?</span>`;
  const element = html`<label class="field">${words}${select}</label>` as HTMLElement;
  let shown: StartingPoint["flavour"];
  select.addEventListener("input", () => keep(shown!.kind, [select.value]));
  return Object.assign(
    control(element, () => (shown ? select.value : undefined)),
    {
      show({flavour}: StartingPoint) {
        element.hidden = !flavour;
        if (flavour === shown) return;
        shown = flavour;
        if (!flavour) return;
        const names = flavoursOf(flavour.kind, pantry)
          .map(({name}) => name)
          .sort((a, b) => a.localeCompare(b, "en"));
        const kept = recall(flavour.kind)[0] ?? "";
        words.textContent = ASKED[flavour.kind];
        select.replaceChildren(...names.map((name) => html`<option value=${name}>${name}</option>`));
        select.value = names.includes(kept) ? kept : flavour.first;
      },
    },
  );
}
