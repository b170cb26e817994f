import {areaY, axisY, dot, gridY, line, type Markish, plot, pointerX, tip} from "@observablehq/plot";
import {html} from "htl";
import {frozenShare, ice, initialFreezingPoint} from "../../../lib/freezing/ice.ts";
import {scooping, scoopTemperature} from "../../../lib/freezing/scoop.ts";
import {counterWait} from "../../../lib/kitchen/safety/counter-wait.ts";
import {outOfFreezer, whereItScoops} from "../../../lib/kitchen/size/scoop-words.ts";
import {MILK_SALTS_OF_1927} from "../../../lib/freezing/solute-table.ts";
import {equivalenceMix, sucroseEquivalenceCurve} from "../../../lib/freezing/sucrose-equivalence.ts";
import {iceError, methodDifference} from "../../../lib/freezing/validity.ts";
import {decimal, degrees} from "../../../lib/core/format.ts";
import {plainName} from "../../../lib/io/text/plain-name.ts";
import type {Composition} from "../../../lib/pantry/parts.ts";
import type {Figures} from "./figures.ts";
import {keyOf, styleOf} from "../page/mixes.ts";
import {limit, setting, unbroken} from "../words/numbers.ts";
import {type Along, figure, legend, look, temperatureAxis, temperatureMarks, tick} from "../page/plot.ts";
import {row, withUnit} from "../page/row.ts";
import {keyed, sheet} from "../page/sheet.ts";

/** One mix worked out three ways. */
export interface DoubtedMix {
  readonly composition: Composition;
  /** The same with the milk salts that the freezing point of milk of 1927 would give. */
  readonly leighton: Composition;
  /** By sucrose equivalents, as far as the table for sucrose goes. */
  readonly equivalents: readonly {readonly frozen: number; readonly temperature: number}[];
  readonly milk: MilkPoints;
  /** Parts that sucrose equivalents leave out, in plain words. */
  readonly leftOut: readonly string[];
}

/** Freezing points of milk in words: today's, which calibrates the milk salts, and that of 1927. */
export interface MilkPoints {
  readonly leighton: string;
  readonly today: string;
}

/** The freezing points of milk in the published tables. */
export function milkPoints({tables}: Figures): MilkPoints {
  const pointOf = (source: string) => {
    const row = tables.milk_freezing_point.find((d) => d.source === source);
    return unbroken(degrees(Number(row?.freezing_point_C), 2));
  };
  return {leighton: pointOf("leighton-1927"), today: pointOf("from-memory")};
}

/** The ways, each with its key. */
const WAYS = {
  held: {label: "Held water", style: styleOf(0)},
  equivalents: {label: "Sucrose equivalents", style: styleOf(1)},
  leighton: {label: "Milk of 1927", style: styleOf(2)},
} as const;

/** Works a mix out by each way. */
export function doubted(composition: Composition, milk: MilkPoints): DoubtedMix {
  const mix = equivalenceMix(composition);
  const salts = composition.milkSalts ?? 0;
  return {
    composition,
    milk,
    leighton: {...composition, milkSalts: salts * MILK_SALTS_OF_1927},
    equivalents: sucroseEquivalenceCurve(mix, 0.5),
    leftOut: mix.leftOut.map(plainName),
  };
}

/** The mix in words: how much of it is ice, give or take how much, and what the other ways say. */
export function doubtVerdict(mix: DoubtedMix, freezer: number): HTMLElement {
  const {composition, equivalents, leftOut, milk, leighton} = mix;
  const frozen = ice(composition, freezer);
  const off = iceError(composition, freezer);
  const end = equivalents.at(-1)?.temperature;
  const difference =
    leftOut.length || !equivalents.length ? undefined : methodDifference(composition, freezer);
  const scoop = scooping(composition, freezer);
  const more = ice(leighton, freezer) - frozen;
  const li = (way: keyof typeof WAYS, text: string) =>
    html`<li>
      ${keyOf(WAYS[way].style)}<span><strong>${WAYS[way].label}.</strong> ${unbroken(text)}</span>
    </li>`;
  const other = leftOut.length
    ? `The method knows nothing of ${leftOut.join(" and ")}, so the stated uncertainty goes without this check.`
    : end === undefined || difference === undefined
      ? "The mix is too strong for its table from the start."
      : `At ${degrees(Math.max(freezer, end))} it has ${gramsOfIce(-difference)} than held water. ${end > freezer ? `Its table of sucrose ends there, and says nothing about ${setting(freezer)}.` : ""}`;
  return html`<section class="verdict" aria-live="polite">
    <h2>
      At ${setting(freezer)}, ${unbroken(decimal(frozen, 1))}${"\u00a0"}g of 100${"\u00a0"}g are ice,
      <b>give or take ${unbroken(`${decimal(off, 1)} g`)}</b>
    </h2>
    <ul>
      ${li("held", `${decimal(frozenShare(composition, freezer), 1)} % of the water is ice. ${whereItScoops(scoop)} From the freezer ${outOfFreezer(scoop, counterWait(composition, scoop))}.`)}
      ${li("equivalents", other)}
      ${li("leighton", `With milk that freezes at Leighton’s ${milk.leighton} of 1927 instead of ${milk.today}, as today’s instruments read (source not checked), there would be ${gramsOfIce(more)}.`)}
    </ul>
    <p class="aside">
      The mix: ${contents(composition)}. Its ingredients may differ from their tables, and that comes on top.
    </p>
  </section>`;
}

/** Contents of a mix, the most first. */
function contents(composition: Composition): string {
  return Object.entries(composition)
    .filter(([part, share]) => part !== "dextroseEquivalent" && share > 0)
    .sort((a, b) => b[1] - a[1])
    .map(([part, share]) => `${limit(share)}\u00a0g ${plainName(part)}`)
    .join(", ");
}

function gramsOfIce(more: number): string {
  return Math.abs(more) < 0.05
    ? "as much ice"
    : `${decimal(Math.abs(more), 1)} g ${more > 0 ? "more" : "less"} ice`;
}

/** Curves of how much more or less ice the other ways give than held water, along temperature, within its stated uncertainty. */
export function methodCurves(mix: DoubtedMix, {width, freezer}: Along): HTMLElement | undefined {
  const {composition, leighton, equivalents} = mix;
  const start = initialFreezingPoint(composition);
  if (start === undefined || start < DRAWN_FROM) return undefined;
  const end = equivalents.at(-1)?.temperature ?? 0;
  const steps = Math.floor((start - DRAWN_FROM) * 4);
  const points = Array.from({length: steps + 1}, (_, i) => DRAWN_FROM + i / 4).map((temperature) => {
    const off = iceError(mix.composition, temperature);
    const held = ice(composition, temperature);
    const difference =
      mix.leftOut.length === 0 && temperature >= end
        ? methodDifference(mix.composition, temperature)
        : undefined;
    return {
      temperature,
      held,
      off,
      low: -off,
      leighton: ice(leighton, temperature) - held,
      equivalents: difference === undefined ? NaN : -difference,
    };
  });
  const most = Math.max(
    1,
    ...points.flatMap((d) => [d.off, Math.abs(d.leighton), Math.abs(d.equivalents) || 0]),
  );
  const curve = (way: "equivalents" | "leighton"): Markish[] => {
    const {colour, dash, sign} = WAYS[way].style;
    const own = points.filter((d) => Number.isFinite(d[way]));
    return [
      line(own, {x: "temperature", y: way, stroke: colour, strokeWidth: 2.25, strokeDasharray: dash}),
      dot(
        own.filter((_, i) => i % 16 === 8),
        {
          x: "temperature",
          y: way,
          symbol: sign,
          fill: colour,
          stroke: "var(--paper)",
          strokeWidth: 1.5,
          r: 5,
        },
      ),
    ];
  };
  const chart = plot({
    ...look(width),
    height: Math.min(400, Math.max(280, width * 0.5)),
    marginLeft: 36,
    marginRight: 8,
    marginTop: 44,
    marginBottom: 40,
    ariaLabel: "Ice by the other ways less ice by held water, g in 100 g, against temperature",
    x: {domain: [DRAWN_FROM, 0]},
    y: {domain: [-1.1 * most, 1.1 * most]},
    marks: [
      ...temperatureMarks(freezer),
      gridY({stroke: "var(--line)", strokeOpacity: 1, ticks: 5}),
      temperatureAxis(width),
      axisY({
        label: "Ice, g in 100 g, more or less",
        labelArrow: "none",
        tickFormat: tick,
        ticks: 5,
        tickSize: 0,
      }),
      areaY(points, {x: "temperature", y1: "low", y2: "off", fill: WAYS.held.style.colour, fillOpacity: 0.2}),
      line(points, {x: "temperature", y: () => 0, stroke: WAYS.held.style.colour, strokeWidth: 2.25}),
      ...curve("leighton"),
      ...curve("equivalents"),
      tip(
        points,
        pointerX({
          x: "temperature",
          y: () => 0,
          title: (d: (typeof points)[number]) =>
            `${degrees(d.temperature)}: ${decimal(d.held, 1)} g of ice\ngive or take ${decimal(d.off, 1)} g`,
          fill: "var(--card)",
          lineHeight: 1.3,
          fontSize: 14,
          stroke: "var(--strong-line)",
        }),
      ),
    ],
  });
  return figure(
    "How far the ways are apart",
    "Held water is the level line; the tint about it is its stated uncertainty: the errors of the solutes’ curves and how far the two methods are apart.",
    legend(mix.leftOut.length ? [WAYS.held, WAYS.leighton] : Object.values(WAYS)),
    chart,
  );
}

/** Coldest temperature drawn, °C. */
const DRAWN_FROM = -30;

/** Calibration of the milk salts, and what the other freezing point of milk would change. */
export function milkSaltsSheet(
  {composition, milk, leighton}: DoubtedMix,
  freezer: number,
): HTMLElement | undefined {
  if (!composition.milkSalts) return undefined;
  const both = (name: string, unit: string, of: (mix: Composition) => number | undefined) => {
    const [own, other] = [of(composition), of(leighton)];
    const text = (value: number | undefined) => (value === undefined ? "–" : decimal(value, 2));
    const change = own === undefined || other === undefined ? undefined : other - own;
    const sign = change !== undefined && change > 0 ? "+" : "";
    return row(withUnit(name, unit), [text(own), text(other), `${sign}${text(change)}`]);
  };
  return sheet({
    heading: `If milk freezes at ${milk.leighton}`,
    reading: `The salts of milk are counted as as much sodium chloride as gives milk the freezing point that today’s instruments read (source not checked). Leighton’s of 1927 is a little lower, which gives the salts ${decimal(100 * (MILK_SALTS_OF_1927 - 1), 0)} % more to do.`,
    columns: [
      "",
      ...keyed([
        {...WAYS.held, label: "today"},
        {...WAYS.leighton, label: "1927"},
      ]),
      "change",
    ],
    body: [
      both("freezing point", "°C", initialFreezingPoint),
      both(`ice at ${setting(freezer)}`, "g in 100 g", (mix) => ice(mix, freezer)),
      both("scoop temperature", "°C", (mix) => scoopTemperature(mix).temperature),
    ],
  });
}
