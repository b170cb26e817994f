import {html} from "htl";
import {SUBSTITUTION_WEIGHTS, type Weights} from "../../../lib/balance/substitute/similarity-traits.ts";
import {type Control, control} from "../controls/control.ts";
import {slider} from "../controls/slider.ts";

type Weighed =
  | "firmness"
  | "sweetness"
  | "fat"
  | "totalSolids"
  | "lactose"
  | "cost"
  | "newIngredient"
  | "newAllergen";

const OFFERED: readonly (readonly [Weighed, string, string, number])[] = [
  ["firmness", "Hard phase in the freezer", "for 1 g in 100 g", 3],
  ["sweetness", "Sweetness", "for 1 (sucrose = 100)", 3],
  ["fat", "Fat", "for 1 g in 100 g", 3],
  ["totalSolids", "Total solids", "for 1 g in 100 g", 3],
  ["lactose", "Lactose", "for 1 g in 100 g", 3],
  ["cost", "Cost", "for 1 per kg", 3],
  ["newIngredient", "One more ingredient to weigh", "each", 3],
  ["newAllergen", "A new allergen", "each", 20],
];

/** Weights of each thing that is noticed; the usual ones at first. */
export function weightSliders(): Control<Partial<Weights>> {
  const sliders = OFFERED.map(([name, label, unit, max]) => ({
    name,
    slider: slider({
      key: `w.${name}`,
      label,
      unit,
      min: 0,
      max,
      step: max > 5 ? 0.5 : 0.05,
      value: SUBSTITUTION_WEIGHTS[name],
    }),
  }));
  const element = html`<div>${sliders.map(({slider: one}) => one)}</div>`;
  return control(element, () => Object.fromEntries(sliders.map(({name, slider: one}) => [name, one.value])));
}
