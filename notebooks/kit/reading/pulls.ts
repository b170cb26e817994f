import {axisY, barX, plot, ruleX, text} from "@observablehq/plot";
import {decimal} from "../../../lib/core/format.ts";
import type {Pulls} from "../../../lib/balance/change/pulls.ts";
import {figure, horizontalAxis, look} from "../page/plot.ts";

/** Ingredients that are told of one thing at most; the weakest are left out. */
const MOST = 7;

/** Weakest pull that is told, of the strongest. */
const LEAST = 0.02;

const WORDS: Readonly<Record<Pulls["what"], {readonly heading: string; readonly digits: number}>> = {
  firmness: {heading: "What makes it firm", digits: 1},
  ice: {heading: "What makes ice", digits: 1},
  sweetness: {heading: "What makes it sweet", digits: 1},
  fat: {heading: "What makes it rich", digits: 1},
  cost: {heading: "What makes it dear", digits: 2},
};

/** Pull of each ingredient at one thing, up or down, as bars from nought. */
export function pullBars({what, unit, by}: Pulls, width: number): HTMLElement | undefined {
  const strongest = Math.max(...by.map(({pull}) => Math.abs(pull)));
  const told = by
    .filter(({pull}) => Math.abs(pull) >= LEAST * strongest)
    .sort((a, b) => Math.abs(b.pull) - Math.abs(a.pull))
    .slice(0, MOST)
    .sort((a, b) => b.pull - a.pull);
  if (!(strongest > 0) || told.length < 2) return undefined;
  const {heading, digits} = WORDS[what];
  // Room for the figures beside the bars.
  const reach = (width < 500 ? 1.75 : 1.35) * strongest;
  const chart = plot({
    ...look(width),
    height: 26 * told.length + 56,
    marginLeft: Math.min(width * 0.42, 14 + 7.2 * Math.max(...told.map(({ingredient}) => ingredient.length))),
    marginRight: 12,
    marginTop: 6,
    marginBottom: 40,
    ariaLabel: heading,
    ariaDescription: told.map(({ingredient, pull}) => `${ingredient}: ${decimal(pull, digits)}`).join("; "),
    x: {domain: [-reach, reach]},
    y: {domain: told.map(({ingredient}) => ingredient), padding: 0.35},
    marks: [
      horizontalAxis(unit === "sucrose = 100" ? "sweetness" : unit, width),
      axisY({label: null, tickSize: 0}),
      barX(told, {
        x: "pull",
        y: "ingredient",
        fill: ({pull}: {pull: number}) => (pull > 0 ? "var(--mix-1)" : "var(--mix-2)"),
        fillOpacity: 0.75,
      }),
      ruleX([0], {stroke: "var(--ink)"}),
      ...[1, -1].map((side) =>
        text(
          told.filter(({pull}) => Math.sign(pull) === side),
          {
            x: "pull",
            y: "ingredient",
            text: ({pull}: {pull: number}) => `${side > 0 ? "+" : ""}${decimal(pull, digits)}`,
            dx: 6 * side,
            textAnchor: side > 0 ? "start" : "end",
            fill: "var(--ink)",
          },
        ),
      ),
    ],
  });
  return figure(
    heading,
    what === "firmness"
      ? "To the right what raises it, to the left what lowers it: how much the mix would have less if the same weight of the mix itself stood in its place."
      : "To the right what raises it, to the left what lowers it.",
    chart,
  );
}
