import {axisX, axisY, barX, plot, text} from "@observablehq/plot";
import {html} from "htl";
import {decimal} from "../../../lib/core/format.ts";
import type {ShownMix, WeighedMix} from "../page/mixes.ts";
import {figure, labelMargin, look} from "../page/plot.ts";

/** Contents of a mix in six parts that add up to 100 g. */
const PARTS = [
  {
    name: "fat",
    colour: "var(--part-fat)",
    ink: "#22251e",
    of: ({mix}: ShownMix<WeighedMix>) => mix.shares.fat ?? 0,
  },
  {
    name: "MSNF",
    colour: "var(--part-msnf)",
    ink: "#22251e",
    of: ({mix}: ShownMix<WeighedMix>) => mix.shares.msnf ?? 0,
  },
  {
    name: "sugars",
    colour: "var(--part-sugars)",
    ink: "#ffffff",
    of: ({mix}: ShownMix<WeighedMix>) => mix.shares.sugars ?? 0,
  },
  {name: "other solids", colour: "var(--part-other)", ink: "#ffffff", of: otherSolids},
  {
    name: "alcohol",
    colour: "var(--part-alcohol)",
    ink: "#ffffff",
    of: ({mix}: ShownMix<WeighedMix>) => mix.composition.alcohol ?? 0,
  },
  {
    name: "water",
    colour: "var(--part-water)",
    ink: "#22251e",
    of: ({mix}: ShownMix<WeighedMix>) => mix.composition.water ?? 0,
  },
] as const;

function otherSolids({mix: {shares}}: ShownMix<WeighedMix>): number {
  return Math.max(
    0,
    (shares.totalSolids ?? 0) - (shares.fat ?? 0) - (shares.msnf ?? 0) - (shares.sugars ?? 0),
  );
}

/** Contents of each mix, g in 100 g, as one bar. */
export function compositionBars(
  mixes: readonly ShownMix<WeighedMix>[],
  width: number,
): HTMLElement | undefined {
  if (!mixes.length) return undefined;
  const left = labelMargin(mixes);
  const pieces = mixes.flatMap((shown) => {
    let end = 0;
    return PARTS.map(({name, colour, ink, of}) => {
      const value = of(shown);
      const start = end;
      end += value;
      return {label: shown.label, name, colour, ink, value, start, end};
    });
  });
  const perGram = (width - left) / 100;
  const chart = plot({
    ...look(width),
    height: 46 * mixes.length + 34,
    marginLeft: left,
    marginRight: 18,
    marginTop: 2,
    marginBottom: 32,
    ariaLabel: "What each mix consists of, g in 100 g",
    ariaDescription: mixes
      .map(
        (shown) =>
          `${shown.label}: ${PARTS.map(({name, of}) => `${name} ${decimal(of(shown), 1)}`).join(", ")}`,
      )
      .join("; "),
    x: {domain: [0, 100]},
    y: {domain: mixes.map(({label}) => label), padding: 0.28},
    marks: [
      axisX({
        label: null,
        ticks: 5,
        tickSize: 4,
        tickFormat: (d: number) => (d === 100 ? "100 g" : String(d)),
      }),
      axisY({label: null, tickSize: 0}),
      barX(pieces, {
        x1: "start",
        x2: "end",
        y: "label",
        fill: (d: {colour: string}) => d.colour,
        stroke: "var(--paper)",
        strokeWidth: 1,
      }),
      text(
        pieces.filter(({value}) => value * perGram > 30),
        {
          x: (d: {start: number; end: number}) => (d.start + d.end) / 2,
          y: "label",
          text: (d: {value: number}) => decimal(d.value, 1),
          fill: (d: {ink: string}) => d.ink,
        },
      ),
    ],
  });
  const shown = PARTS.filter(({of}) => mixes.some((mix) => of(mix) > 0.05));
  const key = html`<ul class="legend">
    ${shown.map(({name, colour}) => html`<li><span class="swatch" style=${`background: ${colour}`}></span>${name}</li>`)}
  </ul>`;
  return figure(
    "What it is made of",
    "Grams in 100 g of mix. Lactose counts as MSNF (milk solids-not-fat), not as sugar.",
    key,
    chart,
  );
}
