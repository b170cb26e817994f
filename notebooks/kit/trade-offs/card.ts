import {html} from "htl";
import {scoopsAt} from "../../../lib/kitchen/size/scoop-words.ts";
import {decimal} from "../../../lib/core/format.ts";
import {keyOf, styleOf} from "../page/mixes.ts";
import {valueText} from "./axes.ts";
import type {Mark} from "../words/address-format.ts";
import {lookedAt, type TradeScene} from "./scene.ts";

/** The recipe of the mix looked at, small, beside the chart. */
export function tradeCard(scene: TradeScene, mark: Mark): HTMLElement {
  const {x, y, brief} = scene;
  const {mix, ...place} = lookedAt(scene, mark);
  const lines = mix.amounts.filter(({percent}) => percent > 1e-3).sort((a, b) => b.percent - a.percent);
  const facts = [
    ...[x, y].map((axis, i) => [axis.name, valueText(axis, i ? place.y : place.x)] as const),
    ...(mix.cost !== undefined && x.key !== "cost" && y.key !== "cost"
      ? [["cost", `${decimal((1000 * mix.cost) / mix.batch, 2)} per kg`] as const]
      : []),
    ...(x.key !== "scoopTemperature" && y.key !== "scoopTemperature"
      ? [["scoop temperature", scoopsAt(mix.scoop)] as const]
      : []),
    ["from the freezer", mix.scoop.verdict] as const,
  ];
  return html`<div class="card" role="status">
    <h4>${keyOf(styleOf(0))} This one</h4>
    <dl>
      ${facts.map(
        ([name, value]) =>
          html`<div>
            <dt>${name}</dt>
            <dd>${value}</dd>
          </div>`,
      )}
    </dl>
    <p>g for ${decimal(brief.batch, 0)} g</p>
    <dl>
      ${lines.map(
        ({ingredient, grams}) =>
          html`<div>
            <dt>${ingredient}</dt>
            <dd>${decimal(grams, grams < 10 ? 1 : 0)}</dd>
          </div>`,
      )}
    </dl>
  </div>`;
}

/** Width of the chart beside the card, px: as trade.css has it. */
export function besideWidth(width: number): number {
  return width >= 700 ? width - 236 : width;
}

/** The chart with what belongs to it: its slider below, the recipe beside. */
export function beside(chart: HTMLElement, walk: HTMLElement, card: HTMLElement): HTMLElement {
  return html`<div class="trade" data-side="answer">
    <div>
      <div>${chart}${walk}</div>
      ${card}
    </div>
  </div>`;
}
