import {axisY, dot, gridY, line, type Markish, plot, pointerX, rectY, text, tip} from "@observablehq/plot";
import type {MixReport} from "../../../lib/balance/mix/answer.ts";
import {firmness, firmnessReference} from "../../../lib/freezing/firmness.ts";
import {verdictBands} from "../../../lib/freezing/scoop.ts";
import {decimal, degrees} from "../../../lib/core/format.ts";
import type {ShownMix} from "../page/mixes.ts";
import {type Along, figure, legend, look, temperatureAxis, temperatureMarks} from "../page/plot.ts";

/** Coldest and warmest temperature drawn, °C. */
const [COLDEST, WARMEST] = [-30, 0];

/** Firmness drawn, points. */
const FIRMNESS: [number, number] = [-20, 30];

/** Temperatures at which a mix's sign sits on its line, °C. */
const SIGNS_AT = [-24, -18, -12, -6];

/** Data of a mix that its curve needs. */
export type CurvedMix = Omit<ShownMix, "mix"> & {
  readonly mix: Pick<MixReport, "composition" | "freezing"> & {
    /** Air beaten in, % of the mix's volume. */
    readonly overrun: number;
  };
};

/** A mix as its curves need it. */
export function curved({
  mix,
  ...shown
}: Omit<ShownMix, "mix"> & {
  readonly mix: Pick<MixReport, "composition" | "freezing" | "scoop">;
}): CurvedMix {
  return {...shown, mix: {...mix, overrun: mix.scoop.overrun}};
}

interface Point {
  /** °C. */
  readonly temperature: number;
  readonly value: number;
}

/** A point with the mix it belongs to. */
type Reading = Point & Pick<ShownMix, "label" | "style">;

/** Share of the water that is ice, along temperature, for each mix. */
export function freezingCurves(mixes: readonly CurvedMix[], along: Along): HTMLElement | undefined {
  if (!mixes.length) return undefined;
  const chart = curves(mixes, along, {
    axis: "Water that is ice, %",
    domain: [0, 100],
    of: ({mix}) => mix.freezing.curve.map(({temperature, frozen}) => ({temperature, value: frozen})),
    behind: [],
  });
  return figure(
    "How much of the water is ice",
    "From right to left the tub gets colder. Where a curve lies lower, that mix is softer.",
    legend(mixes),
    chart,
  );
}

/** Firmness along temperature, with the bands that the words soft, scoops, firm and hard stand for. */
export function firmnessCurves(mixes: readonly CurvedMix[], along: Along): HTMLElement | undefined {
  if (!mixes.length) return undefined;
  // A ripple is softer than any mix: the chart then reaches down to it.
  const softest = Math.min(...mixes.map(({mix}) => pointsOf(mix, along.freezer)));
  const domain: [number, number] = [Math.min(FIRMNESS[0], 5 * Math.floor(softest / 5)), FIRMNESS[1]];
  const bands = shownBands(domain);
  const chart = curves(mixes, along, {
    axis: "Firmness, points (7 more: twice as hard)",
    domain,
    of: ({mix}) => temperatures().map((temperature) => ({temperature, value: pointsOf(mix, temperature)})),
    behind: [
      rectY(bands, {
        y1: "low",
        y2: "high",
        fill: (d: {verdict: string}) => (d.verdict === "scoops" ? "var(--scoops)" : "none"),
        stroke: "var(--line)",
      }),
      text(bands, {
        y: (d: {low: number; high: number}) => (d.low + d.high) / 2,
        text: "verdict",
        frameAnchor: "right",
        dx: -6,
        fill: (d: {verdict: string}) => (d.verdict === "scoops" ? "var(--on-scoops)" : "var(--soft)"),
        fontStyle: "italic",
        fontSize: 14,
      }),
    ],
  });
  return figure(
    "How hard it feels",
    "By ice, fat, particles, crystals and the cold, with the air in it. A mix scoops where its curve crosses the green band: as hard as scooped ice cream was measured, 2.5 to 8 kPa.",
    legend(mixes),
    chart,
  );
}

/** Firmness beyond that of a tub that scoops, points. */
function pointsOf({composition, overrun}: CurvedMix["mix"], temperature: number): number {
  return firmness(composition, temperature) - firmnessReference(overrun);
}

interface CurveOptions {
  readonly axis: string;
  readonly domain: [number, number];
  readonly of: (shown: CurvedMix) => readonly Point[];
  readonly behind: readonly Markish[];
}

function curves(
  mixes: readonly CurvedMix[],
  {width, freezer}: Along,
  {axis, domain, of, behind}: CurveOptions,
): Element {
  const drawn = mixes.map((shown) => ({
    shown,
    points: of(shown).filter(({temperature}) => temperature >= COLDEST),
  }));
  const readings = drawn.flatMap(({shown: {label, style}, points}): Reading[] =>
    points.map((point) => ({...point, label, style})),
  );
  return plot({
    ...look(width),
    height: Math.min(420, Math.max(280, width * 0.56)),
    marginLeft: 36,
    marginRight: 8,
    marginTop: 44,
    marginBottom: 40,
    ariaLabel: `${axis}, against temperature`,
    ariaDescription: mixes
      .map(
        ({label, mix}) =>
          `${label}: freezing point ${mix.freezing.initialFreezingPoint === undefined ? "none" : degrees(mix.freezing.initialFreezingPoint)}`,
      )
      .join("; "),
    x: {domain: [COLDEST, WARMEST]},
    y: {domain},
    marks: [
      ...behind,
      ...temperatureMarks(freezer),
      gridY({stroke: "var(--line)", strokeOpacity: 1, ticks: 5}),
      temperatureAxis(width),
      axisY({label: axis, labelArrow: "none", ticks: 5, tickSize: 0}),
      ...drawn.map(({shown: {style}, points}) =>
        line(points, {
          x: "temperature",
          y: "value",
          stroke: style.colour,
          strokeWidth: 2.25,
          strokeDasharray: style.dash,
          strokeLinecap: "butt",
          clip: true,
        }),
      ),
      dot(
        readings.filter(({temperature}) => SIGNS_AT.includes(temperature)),
        {
          x: "temperature",
          y: "value",
          symbol: ({style}: Reading) => style.sign,
          fill: ({style}: Reading) => style.colour,
          stroke: "var(--paper)",
          strokeWidth: 1.5,
          r: 5,
          clip: true,
        },
      ),
      tip(
        readings,
        pointerX({
          x: "temperature",
          y: "value",
          title: (d: Reading) => `${d.label}\n${degrees(d.temperature)}: ${decimal(d.value, 1)}`,
          fill: "var(--card)",
          lineHeight: 1.3,
          fontSize: 14,
          stroke: "var(--strong-line)",
        }),
      ),
    ],
  });
}

/** The words for a firmness, with the range each stands for, cut to the chart. */
function shownBands([least, most]: readonly [number, number]): {
  verdict: string;
  low: number;
  high: number;
}[] {
  const reference = firmnessReference();
  return verdictBands().map(({verdict, from, to}) => ({
    verdict,
    low: Math.max(least, from - reference),
    high: Math.min(most, to - reference),
  }));
}

function temperatures(): number[] {
  return Array.from({length: (WARMEST - COLDEST) * 2}, (_, i) => COLDEST + i / 2);
}
