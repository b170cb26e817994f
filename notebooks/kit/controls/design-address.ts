import type {BriefInput, IngredientInput, LimitsInput} from "../../../lib/balance/brief/brief-schema.ts";
import {pickedText, windowText} from "../words/address-format.ts";
import {pickedOf} from "./shelf-limits.ts";
import {offeredTargets} from "./targets.ts";

/** The address of Design with a brief: what may go in with its limits, and every limit that the page has a box for. */
export function designAddress({
  name,
  batch = 1000,
  freezer,
  overrun,
  ingredients,
  targets = {},
}: BriefInput): string {
  const limits = targets as Record<string, LimitsInput | undefined>;
  const state = [
    ...(name === undefined ? [] : [["name", name]]),
    ["batch", String(batch)],
    ...(freezer === undefined ? [] : [["freezer", String(freezer)]]),
    ...(overrun === undefined ? [] : [["overrun", String(overrun)]]),
    ...ingredients.map((entry) => ["use", pickedText(pickedOf(entry as string | IngredientInput, batch))]),
    // A box that is left open says so: the page's own limit stands there otherwise.
    ...offeredTargets().map((key) => [key, windowText(windowOf(limits[key]))]),
  ];
  return `./design-a-flavour.html#${new URLSearchParams(state)}`;
}

function windowOf({min, max, equal}: LimitsInput = {}): {min?: number; max?: number} {
  const [low, high] = [min ?? equal, max ?? equal];
  return {...(low !== undefined && {min: low}), ...(high !== undefined && {max: high})};
}
