import {axisY, dot, line, plot, pointerX, rectX, ruleX, tip} from "@observablehq/plot";
import {html} from "htl";
import type {SweepPoint} from "../../../lib/balance/trade-off/sweep.ts";
import {decimal} from "../../../lib/core/format.ts";
import {limit} from "../words/numbers.ts";
import {figure, horizontalAxis, look, tick} from "../page/plot.ts";
import {cell, column, row} from "../page/row.ts";
import {table} from "../page/sheet.ts";
import type {Path} from "./sweep-paths.ts";
import {words} from "./words.ts";

/** Cost of the cheapest mix along the values, with marks where something takes over. */
export function sweepChart(
  points: readonly SweepPoint[],
  {name, unit, value: now}: Path,
  {width, freezer, batch}: {width: number; freezer: number; batch: number},
): HTMLElement {
  const costOf = ({solution}: SweepPoint) =>
    solution.status === "optimal" && solution.cost !== undefined ? (1000 * solution.cost) / batch : NaN;
  const priced = points.map((point) => ({...point, cost: costOf(point)}));
  const there = priced.filter(({cost}) => Number.isFinite(cost));
  if (!there.length) return html`<p class="note">No mix keeps the limits anywhere between these.</p>`;
  const costs = there.map(({cost}) => cost);
  const [low, high] = [Math.min(...costs), Math.max(...costs)];
  const pad = 0.08 * (high - low) || 0.05;
  const turns = priced.filter(({changed, cost}) => changed && Number.isFinite(cost));
  const step = points[1]!.value - points[0]!.value;
  // Neighbours without a mix are one gap.
  const gaps = priced.flatMap(({value, cost}, i) => {
    if (Number.isFinite(cost) || (i > 0 && !Number.isFinite(priced[i - 1]!.cost))) return [];
    const end = priced.slice(i).find((later) => Number.isFinite(later.cost))?.value;
    return [
      {from: i > 0 ? value - step / 2 : value, to: end === undefined ? points.at(-1)!.value : end - step / 2},
    ];
  });
  const said = (point: SweepPoint) => (point.turnover ? words(point.turnover, freezer) : ["there is a mix"]);
  const chart = plot({
    ...look(width),
    height: Math.min(340, Math.max(240, width * 0.45)),
    marginLeft: 46,
    marginRight: 12,
    marginTop: 30,
    marginBottom: 44,
    ariaLabel: `Cost per kg against ${name}`,
    ariaDescription: turns.map((point) => `${limit(point.value)}: ${said(point).join(", ")}`).join("; "),
    x: {domain: [points[0]!.value, points.at(-1)!.value]},
    y: {domain: [low - pad, high + pad]},
    marks: [
      rectX(gaps, {x1: "from", x2: "to", fill: "var(--shade)"}),
      ruleX([now], {stroke: "var(--freezer)", strokeWidth: 1.5}),
      horizontalAxis(`${name}, ${unit}`, width, {labelOffset: 38, tickFormat: tick}),
      axisY({label: "Cost per kg", labelArrow: "none", tickSize: 4, ticks: 5}),
      line(priced, {x: "value", y: "cost", stroke: "var(--mix-1)", strokeWidth: 2.25}),
      dot(turns, {
        x: "value",
        y: "cost",
        symbol: "diamond",
        r: 5.5,
        fill: "var(--mix-2)",
        stroke: "var(--paper)",
        strokeWidth: 1.25,
      }),
      tip(
        there,
        pointerX({
          x: "value",
          y: "cost",
          title: (point: (typeof there)[number]) =>
            [
              `${decimal(point.value, 2)} ${unit}: ${decimal(point.cost, 2)} per kg`,
              ...(point.changed ? said(point) : []),
            ].join("\n"),
          fill: "var(--card)",
          stroke: "var(--strong-line)",
          lineHeight: 1.3,
          fontSize: 14,
        }),
      ),
    ],
  });
  const key = html`<ul class="legend">
    <li><span class="line one"></span>cheapest mix</li>
    <li><span class="turn"></span>something takes over</li>
    <li><span class="line now"></span>now</li>
    ${gaps.length ? html`<li><span class="swatch"></span>no mix keeps the limits</li>` : ""}
  </ul>`;
  const takeovers = () =>
    table({
      name: "Where something takes over",
      columns: [name, "per kg", column("from here on", "words")],
      body: turns.map((point) =>
        row(decimal(point.value, 2), [decimal(point.cost, 2), cell(said(point).join("; "), "words")]),
      ),
      className: "turns",
    });
  return figure(
    "Cost of the cheapest mix",
    `${name} runs from ${limit(points[0]!.value)} to ${limit(points.at(-1)!.value)} ${unit}.`,
    key,
    chart,
    ...(turns.length ? [takeovers()] : []),
  );
}
