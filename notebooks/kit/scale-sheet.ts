import {html} from "htl";
import type {WeighableMix} from "../../lib/balance/weighable.ts";
import {decimal, grams} from "../../lib/core/figures.ts";
import {bounded, limit} from "./numbers.ts";
import {labelOf} from "./targets.ts";

/** What the scale shows: the exact amounts of the cheapest mix in weighable steps, eggs whole, and which targets that keeps. */
export function scaleSheet(mix: WeighableMix, exact: readonly number[], freezer: number): HTMLElement {
  const {amounts, counts, total, missed} = mix;
  const kept = missed.length
    ? `No weighable amounts near by keep every target: ${missed.map(({target, bound, limit: asked, value}) => `${labelOf(target, freezer)} ${bounded(bound, asked)} comes to ${value === undefined ? "nothing" : limit(value)}`).join("; ")}.`
    : "Every target is still kept: the amounts are not rounded one by one, but chosen together.";
  return html`<figure class="chart">
    <figcaption>
      <h3>The cheapest mix for the scale</h3>
      Eggs whole, the rest in whole grams, below 20 g in tenths. ${kept}
    </figcaption>
    <table class="sheet" aria-label="Amounts for the scale">
      <thead>
        <tr>
          <th scope="col"><span class="unit">g</span></th>
          <th scope="col">exactly</th>
          <th scope="col">weigh</th>
          <th scope="col">count</th>
        </tr>
      </thead>
      <tbody>
        ${amounts.map((amount, j) =>
          amount.grams > 0
            ? html`<tr>
                <th scope="row">${amount.ingredient}</th>
                <td>${decimal(exact[j]!, 2)}</td>
                <td>${onScale(amount.grams)}</td>
                <td>${counts[amount.ingredient] ?? ""}</td>
              </tr>`
            : "",
        )}
        <tr class="total">
          <th scope="row">in all</th>
          <td></td>
          <td>${onScale(total)}</td>
          <td></td>
        </tr>
      </tbody>
    </table>
  </figure>`;
}

function onScale(mass: number): string {
  return Number.isInteger(mass) ? decimal(mass, 0) : grams(mass);
}
