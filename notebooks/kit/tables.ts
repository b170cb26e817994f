import {html} from "htl";
import type {Balanced, Binding} from "../../lib/balance/answer.ts";
import {decimal, degrees, grams} from "../../lib/io/words.ts";
import {keyOf, type ShownMix} from "./mixes.ts";
import {labelOf} from "./targets.ts";

/** Shares below this are not in the mix, g per 100 g. */
const TRACE = 1e-4;

/** What to weigh for each mix, g, with the batch and its cost below. */
export function weighingSheet(mixes: readonly ShownMix[], batch: number): HTMLElement {
  const [first] = mixes;
  const names = first!.mix.amounts
    .map(({ingredient}, i) => ({ingredient, i, most: Math.max(...mixes.map(({mix}) => mix.amounts[i]!.percent))}))
    .filter(({most}) => most > TRACE)
    .sort((a, b) => first!.mix.amounts[b.i]!.grams - first!.mix.amounts[a.i]!.grams || b.most - a.most);
  const weight = ({mix}: ShownMix, i: number) => {
    const {grams: g, percent} = mix.amounts[i]!;
    return percent > TRACE ? html`<td>${grams(g)}</td>` : html`<td class="none">–</td>`;
  };
  const row = (heading: unknown, cell: (shown: ShownMix) => string) => html`<tr><th scope="row">${heading}</th>${mixes.map((shown) => html`<td>${cell(shown)}</td>`)}</tr>`;
  return html`<figure class="chart" data-side="answer">
    <figcaption><h3>What to weigh</h3>Grams for a batch of ${grams(batch)} g.</figcaption>
    <table class="sheet" aria-label="What to weigh, g">
      ${head("g", mixes)}
      <tbody>${names.map(({ingredient, i}) => html`<tr><th scope="row">${ingredient}</th>${mixes.map((shown) => weight(shown, i))}</tr>`)}</tbody>
      <tfoot>
        ${row("in all", () => grams(batch))}
        ${row("cost of the batch", ({mix}) => priced(mix.cost))}
        ${row("cost per kg", ({mix}) => priced(mix.cost === undefined ? undefined : (mix.cost / mix.batch) * 1000))}
      </tfoot>
    </table>
  </figure>`;
}

/** Rows of the table of properties: what they are called, and how they read. */
const PROPERTIES: readonly (readonly [name: string, unit: string, read: (mix: Balanced, freezer: number) => string])[] = [
  ["fat", "%", ({shares}) => percent(shares.fat)],
  ["milk solids-not-fat", "%", ({shares}) => percent(shares.msnf)],
  ["total solids", "%", ({shares}) => percent(shares.totalSolids)],
  ["sugars, lactose apart", "%", ({shares}) => percent(shares.sugars)],
  ["glucose", "%", ({shares}) => percent(shares.glucose)],
  ["sweetness", "as % of sugar", ({shares}) => percent(shares.sweetness)],
  ["starts to freeze at", "", ({freezing}) => (freezing.initialFreezingPoint === undefined ? "–" : degrees(freezing.initialFreezingPoint, 2))],
  ["scoops at", "", ({scoop}) => (scoop.temperature === undefined ? "–" : degrees(scoop.temperature))],
  ["in the freezer", "", ({scoop}) => scoop.verdict],
];

/** What each mix turned out to be: shares, freezing point, scoop temperature. */
export function propertySheet(mixes: readonly ShownMix[], freezer: number): HTMLElement {
  return html`<figure class="chart" data-side="answer">
    <figcaption><h3>What comes out</h3>Per 100 g of mix; the freezer stands at ${degrees(freezer, Number.isInteger(freezer) ? 0 : 1)}.</figcaption>
    <table class="sheet" aria-label="What comes out">
      ${head("", mixes)}
      <tbody>${PROPERTIES.map(
        ([name, unit, read]) =>
          html`<tr><th scope="row">${name}${unit && html`<span class="unit">, ${unit}</span>`}</th>${mixes.map(({mix}) => html`<td>${read(mix, freezer)}</td>`)}</tr>`,
      )}</tbody>
    </table>
  </figure>`;
}

/** The limits that hold the cheapest mix where it is, and what each costs. */
export function bindingSheet({mix}: ShownMix, freezer: number): HTMLElement {
  const rows = mix.binding.map(
    (limit) => html`<tr><th scope="row">${labelOf(limit.target, freezer)}</th><td>${BOUND[limit.bound]} ${decimal(limit.limit, 2)}</td><td>${priceOf(limit)}</td></tr>`,
  );
  return html`<figure class="chart" data-side="answer">
    <figcaption><h3>What holds the cheapest mix where it is</h3>${
      rows.length ? "Raise a limit by one and the price of a kilogram moves by this much: the dearest of them is the first to question." : "No limit is in the way: this is simply the cheapest there is."
    }</figcaption>
    ${rows.length > 0 && html`<table class="sheet" aria-label="What the limits cost"><thead><tr><th scope="col">limit</th><th scope="col">held at</th><th scope="col">one more, per kg</th></tr></thead><tbody>${rows}</tbody></table>`}
  </figure>`;
}

const BOUND = {min: "at least", max: "at most", equal: "exactly"} as const;

function priceOf({price}: Binding): string {
  if (price === undefined) return "–";
  if (Math.abs(price) < 5e-5) return "nothing";
  return `${price > 0 ? "+" : ""}${decimal(price, 4)}`;
}

function head(corner: string, mixes: readonly ShownMix[]): HTMLElement {
  return html`<thead><tr><th scope="col"><span class="unit">${corner}</span></th>${mixes.map(({label, style}) => html`<th scope="col">${keyOf(style)}${label}</th>`)}</tr></thead>`;
}

function percent(value: number | undefined): string {
  return value === undefined ? "–" : decimal(value, 1);
}

function priced(value: number | undefined): string {
  return value === undefined ? "–" : decimal(value, 2);
}
