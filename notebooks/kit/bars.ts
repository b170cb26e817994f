import {axisX, axisY, barX, dot, plot, ruleX, ruleY, text, tip, pointer} from "@observablehq/plot";
import {html} from "htl";
import {decimal, degrees} from "../../lib/io/words.ts";
import type {ShownMix} from "./mixes.ts";
import {type Along, figure, legend, look, temperatureMarks, tick} from "./plot.ts";

/** What a mix consists of, in six parts that add up to 100 g. */
const PARTS = [
  {name: "fat", colour: "var(--part-fat)", ink: "#22251e", of: ({mix}: ShownMix) => mix.shares.fat ?? 0},
  {
    name: "milk solids-not-fat",
    colour: "var(--part-msnf)",
    ink: "#22251e",
    of: ({mix}: ShownMix) => mix.shares.msnf ?? 0,
  },
  {
    name: "sugars",
    colour: "var(--part-sugars)",
    ink: "#ffffff",
    of: ({mix}: ShownMix) => mix.shares.sugars ?? 0,
  },
  {name: "other solids", colour: "var(--part-other)", ink: "#ffffff", of: otherSolids},
  {
    name: "alcohol",
    colour: "var(--part-alcohol)",
    ink: "#ffffff",
    of: ({mix}: ShownMix) => mix.composition.alcohol ?? 0,
  },
  {
    name: "water",
    colour: "var(--part-water)",
    ink: "#22251e",
    of: ({mix}: ShownMix) => mix.composition.water ?? 0,
  },
] as const;

function otherSolids({mix: {shares}}: ShownMix): number {
  return Math.max(
    0,
    (shares.totalSolids ?? 0) - (shares.fat ?? 0) - (shares.msnf ?? 0) - (shares.sugars ?? 0),
  );
}

/** What each mix consists of, g in 100 g, as one bar. */
export function compositionBars(mixes: readonly ShownMix[], width: number): HTMLElement | undefined {
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
    marginRight: 1,
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
    "Grams in 100 g of mix. Lactose counts among the milk solids, not among the sugars.",
    key,
    chart,
  );
}

/** Where each mix scoops, with the uncertainty of the estimate, beside the freezer and the dipping temperatures. */
export function scoopRuler(mixes: readonly ShownMix[], {width, freezer}: Along): HTMLElement | undefined {
  if (!mixes.length) return undefined;
  const found = mixes.flatMap(({label, style, mix}) => {
    const {temperature, low, high} = mix.scoop;
    return temperature === undefined
      ? []
      : [{label, style, temperature, low: low ?? temperature, high: high ?? temperature}];
  });
  const coldest = Math.min(-24, freezer - 2, ...found.map(({low}) => low - 2));
  const warmest = Math.max(-6, freezer + 2, ...found.map(({high}) => high + 2));
  const chart = plot({
    ...look(width),
    height: 44 * mixes.length + 78,
    marginLeft: labelMargin(mixes),
    marginRight: 8,
    marginTop: 34,
    marginBottom: 40,
    ariaLabel: "Temperature at which each mix scoops",
    ariaDescription: found.map(({label, temperature}) => `${label}: ${degrees(temperature)}`).join("; "),
    x: {domain: [Math.max(coldest, -40), Math.min(warmest, 0)]},
    y: {domain: mixes.map(({label}) => label), padding: 0.4},
    marks: [
      ...temperatureMarks(freezer),
      axisX({
        label: "Temperature, °C",
        labelArrow: "none",
        labelAnchor: "center",
        tickFormat: tick,
        tickSize: 4,
        ticks: width < 500 ? 4 : 8,
      }),
      axisY({label: null, tickSize: 0}),
      ...found.flatMap((one) => [
        ruleY([one], {
          y: "label",
          x1: "low",
          x2: "high",
          stroke: one.style.colour,
          strokeWidth: 5,
          strokeOpacity: 0.35,
        }),
        dot([one], {
          x: "temperature",
          y: "label",
          symbol: one.style.sign,
          fill: one.style.colour,
          stroke: "var(--paper)",
          strokeWidth: 1.5,
          r: 7,
        }),
        text([one], {
          x: "temperature",
          y: "label",
          text: () => degrees(one.temperature),
          dy: -16,
          fontWeight: 600,
          fill: "var(--ink)",
          stroke: "var(--paper)",
          strokeWidth: 4,
        }),
      ]),
    ],
  });
  return figure(
    "When it scoops",
    "The temperature at which each mix is as hard as a published hard ice cream when it is dipped. The faint bar is the spread among those: an estimate from ice and solid fat, which knows nothing of the air in the mix.",
    chart,
  );
}

/** What each ingredient costs in 1 kg of each mix. */
export function costDots(
  mixes: readonly ShownMix[],
  prices: ReadonlyMap<string, number>,
  width: number,
): HTMLElement | undefined {
  if (!mixes.length) return undefined;
  const costs = mixes.flatMap(({label, style, mix}) =>
    mix.amounts.map(({ingredient, percent}) => ({
      ingredient,
      label,
      style,
      cost: ((prices.get(ingredient) ?? 0) * percent) / 100,
    })),
  );
  const greatest = new Map<string, number>();
  for (const {ingredient, cost} of costs)
    greatest.set(ingredient, Math.max(cost, greatest.get(ingredient) ?? 0));
  const order = [...greatest]
    .filter(([, cost]) => cost >= 0.005)
    .sort((a, b) => b[1] - a[1])
    .map(([name]) => name);
  const short = (name: string) =>
    width < 500 && name.length > 18
      ? `${name.slice(0, 17)}…`
      : name.length > 30
        ? `${name.slice(0, 29)}…`
        : name;
  const left = Math.min(width * 0.42, 16 + 7 * Math.max(0, ...order.map((name) => short(name).length)));
  const drawn = costs.filter(({ingredient}) => order.includes(ingredient));
  const chart = plot({
    ...look(width),
    height: 28 * order.length + 48,
    marginLeft: left,
    marginRight: 14,
    marginTop: 4,
    marginBottom: 40,
    ariaLabel: "What each ingredient costs in 1 kg of mix",
    x: {domain: [0, 1.05 * Math.max(0.01, ...drawn.map(({cost}) => cost))]},
    y: {domain: order},
    marks: [
      axisX({
        label: "Money in 1 kg of mix",
        labelArrow: "none",
        labelAnchor: "center",
        ticks: width < 500 ? 4 : 7,
        tickSize: 4,
      }),
      axisY({label: null, tickSize: 0, tickFormat: short}),
      ruleY(order, {stroke: "var(--line)"}),
      ruleX([0], {stroke: "var(--strong-line)"}),
      ...mixes.map(({label, style}) =>
        dot(
          drawn.filter((d) => d.label === label),
          {
            x: "cost",
            y: "ingredient",
            symbol: style.sign,
            fill: style.colour,
            stroke: "var(--paper)",
            strokeWidth: 1.5,
            r: 5.5,
          },
        ),
      ),
      tip(
        drawn,
        pointer({
          x: "cost",
          y: "ingredient",
          title: (d: (typeof drawn)[number]) => `${d.ingredient}\n${d.label}: ${decimal(d.cost, 2)} per kg`,
          fill: "var(--card)",
          lineHeight: 1.3,
          fontSize: 14,
          stroke: "var(--strong-line)",
        }),
      ),
    ],
  });
  return figure(
    "Where the money goes",
    "What each ingredient costs in 1 kg of mix, in the currency of your price list.",
    legend(mixes),
    chart,
  );
}

function labelMargin(mixes: readonly ShownMix[]): number {
  return 14 + 7.4 * Math.max(...mixes.map(({label}) => label.length));
}
