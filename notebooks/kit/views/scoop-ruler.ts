import {axisY, dot, plot, ruleY, text} from "@observablehq/plot";
import {degrees} from "../../../lib/core/format.ts";
import type {ShownMix, WeighedMix} from "../page/mixes.ts";
import {type Along, figure, labelMargin, look, temperatureAxis, temperatureMarks} from "../page/plot.ts";

/** A mix that scoops at some temperature, °C. */
interface Found extends Pick<ShownMix, "label" | "style"> {
  readonly temperature: number;
  readonly low: number;
  readonly high: number;
}

/** Scoop temperature of each mix, with the uncertainty of the estimate, beside the freezer and the dipping temperatures. */
export function scoopRuler(
  mixes: readonly ShownMix<WeighedMix>[],
  {width, freezer}: Along,
): HTMLElement | undefined {
  if (!mixes.length) return undefined;
  const found = mixes.flatMap(({label, style, mix}): Found[] => {
    const {temperature, low, high, unsure} = mix.scoop;
    return temperature === undefined || unsure
      ? []
      : [{label, style, temperature, low: low ?? temperature, high: high ?? temperature}];
  });
  const coldest = Math.min(-24, freezer - 2, ...found.map(({low}) => low - 2));
  const warmest = Math.max(-6, freezer + 2, ...found.map(({high}) => high + 2));
  const chart = plot({
    ...look(width),
    height: 44 * mixes.length + 90,
    marginLeft: labelMargin(mixes),
    marginRight: 8,
    marginTop: 34,
    marginBottom: 40,
    ariaLabel: "Temperature at which each mix scoops",
    ariaDescription: found.map(({label, temperature}) => `${label}: ${degrees(temperature)}`).join("; "),
    x: {domain: [Math.max(coldest, -40), Math.min(warmest, 0)]},
    y: {domain: mixes.map(({label}) => label), padding: 0.4, paddingOuter: 0.7},
    marks: [
      ...temperatureMarks(freezer),
      temperatureAxis(width),
      axisY({label: null, tickSize: 0}),
      ruleY(found, {
        y: "label",
        x1: "low",
        x2: "high",
        stroke: ({style}: Found) => style.colour,
        strokeWidth: 5,
        strokeOpacity: 0.35,
      }),
      dot(found, {
        x: "temperature",
        y: "label",
        symbol: ({style}: Found) => style.sign,
        fill: ({style}: Found) => style.colour,
        stroke: "var(--paper)",
        strokeWidth: 1.5,
        r: 7,
      }),
      text(found, {
        x: "temperature",
        y: "label",
        text: ({temperature}: Found) => degrees(temperature),
        dy: -16,
        fontWeight: 600,
        fill: "var(--ink)",
        stroke: "var(--paper)",
        strokeWidth: 4,
      }),
    ],
  });
  return figure(
    "When it scoops",
    "The mark is where each mix scoops best, the faint bar where it still scoops: as hard as scooped ice cream was measured to be. An estimate, give or take a degree or two.",
    chart,
  );
}
