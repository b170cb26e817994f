import type {Spread} from "../../../lib/balance/brief/brief.ts";
import type {Reliability} from "../../../lib/balance/weigh/reliability.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {decimal} from "../../../lib/core/format.ts";
import {row} from "../page/row.ts";
import {sheet} from "../page/sheet.ts";
import {labelOf} from "../controls/targets.ts";

/** Errors of a kitchen, as the controls say them: g on the scale, points of fat in what comes from milk. */
export interface Off {
  readonly scale: number;
  readonly fat: number;
}

/** The spread of some ingredients: the fat of everything from milk, and every weighing. */
export function spreadOf(
  ingredients: readonly Ingredient[],
  {scale, fat}: Off,
): {parts: Record<string, {milkFat: number}>; weighing: number} {
  const dairy = ingredients.filter(({composition}) => (composition.milkFat ?? 0) > fat);
  return {
    parts: fat > 0 ? Object.fromEntries(dairy.map(({name}) => [name, {milkFat: fat}])) : {},
    weighing: scale,
  };
}

/** Whether there is any spread to speak of. */
export function isOff({parts, weighing}: Spread): boolean {
  return parts.size > 0 || weighing > 0;
}

/** Share of batches in which each target holds in such a kitchen. */
export function reliabilitySheet({targets, all, error}: Reliability, freezer: number): HTMLElement {
  const percent = (share: number) => `${decimal(100 * share, 0)} %`;
  return sheet({
    heading: "How often it turns out",
    reading: `Batches made up by chance with a scale and packs as far off as you said; all limits together hold in ${percent(all)}, give or take ${decimal(100 * error, 0)}. “Hold for all of it” looks for a mix that they hold in always.`,
    name: "How often each target holds",
    columns: ["limit", "holds in", "nine in ten between"],
    body: targets.map(({target, holds, low, high}) =>
      row(labelOf(target, freezer), [
        percent(holds),
        low === undefined || high === undefined ? "–" : `${decimal(low, 2)} and ${decimal(high, 2)}`,
      ]),
    ),
  });
}
