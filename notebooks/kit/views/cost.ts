import {axisX, axisY, dot, plot, pointer, ruleX, ruleY, tip} from "@observablehq/plot";
import {decimal} from "../../../lib/core/format.ts";
import type {ShownMix, WeighedMix} from "../page/mixes.ts";
import {type MixMoney, OWN_MONEY} from "./mix-money.ts";
import {figure, legend, look} from "../page/plot.ts";

/** Cost of each ingredient in 1 kg of each mix. */
export function costDots(
  mixes: readonly ShownMix<WeighedMix>[],
  prices: ReadonlyMap<string, number>,
  width: number,
  money: MixMoney = OWN_MONEY,
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
    `What each ingredient costs in 1 kg of mix${money.words && `, ${money.words}`}.`,
    legend(mixes),
    chart,
  );
}
