import type {WeighableMix} from "../../../lib/balance/weigh/weighable.ts";
import {decimal, grams} from "../../../lib/core/format.ts";
import {bounded, limit} from "../words/numbers.ts";
import {row, small} from "../page/row.ts";
import {sheet} from "../page/sheet.ts";
import {labelOf} from "../controls/targets.ts";

/** Sheet for the scale: the exact amounts of the cheapest mix in weighable steps, eggs whole, and which targets that keeps. */
export function scaleSheet(mix: WeighableMix, exact: readonly number[], freezer: number): HTMLElement {
  const {amounts, counts, total, missed} = mix;
  const kept = missed.length
    ? `No weighable amounts near by keep every limit: ${missed.map(({target, bound, limit: asked, value}) => `${labelOf(target, freezer)} ${bounded(bound, asked)} comes to ${value === undefined ? "nothing" : limit(value)}`).join("; ")}.`
    : "Every limit is still kept: the amounts are not rounded one by one, but chosen together.";
  const sum = row("in all", ["", onScale(total), ""]);
  sum.className = "total";
  return sheet({
    heading: "The cheapest mix for the scale",
    reading: `Eggs whole, the rest in whole grams, below 20 g in tenths. ${kept}`,
    name: "Amounts for the scale",
    columns: [small("g"), "exactly", "weigh", "count"],
    body: [
      ...amounts.flatMap(({ingredient, grams: g}, j) =>
        g > 0 ? [row(ingredient, [decimal(exact[j]!, 2), onScale(g), String(counts[ingredient] ?? "")])] : [],
      ),
      sum,
    ],
  });
}

function onScale(mass: number): string {
  return Number.isInteger(mass) ? decimal(mass, 0) : grams(mass);
}
