import {axisX, axisY, dot, line, plot, pointerX, rectX, ruleX, tip} from "@observablehq/plot";
import {html} from "htl";
import type {BriefInput, LimitsInput} from "../../lib/balance/brief-schema.ts";
import {type SweepPoint, sweepSteps} from "../../lib/balance/sweep.ts";
import {decimal} from "../../lib/io/words.ts";
import type {Pantry} from "../../lib/pantry/pantry.ts";
import {keep, recall} from "./address.ts";
import {numberIn} from "./control.ts";
import {longRun} from "./long-run.ts";
import {attempt} from "./mistakes.ts";
import {limit} from "./numbers.ts";
import {figure, look, tick} from "./plot.ts";
import {words} from "./trade-words.ts";
import {labelOf} from "./targets.ts";

/** So many values of a sweep. */
const VALUES = 61;

/** How long a hand must rest before the sweep runs again, ms. */
const REST = 400;

/** A number of the brief that can run. */
interface Path {
  /** As `sweep` takes it. */
  readonly path: string;
  readonly name: string;
  readonly unit: string;
  readonly value: number;
}

/** What a sweep is shown of. */
interface Swept {
  readonly brief: BriefInput;
  readonly freezer: number;
  readonly pantry: Pantry;
  /** px. */
  readonly width: number;
}

/** A part of the page in which one number of the brief runs over a range. */
export interface SweepSection {
  readonly element: HTMLElement;
  show(swept: Swept | undefined): void;
}

/** The sweep with its own choices: which number, from where to where. */
export function sweepSection(): SweepSection {
  const which = html`<select></select>` as unknown as HTMLSelectElement;
  const box = () => html`<input type="number" step="any" />` as HTMLInputElement;
  const [from, to] = [box(), box()];
  const place = html`<div></div>`;
  const run = longRun();
  const element = html`<section data-side="answer" class="sweep">
    <h3>What if one number were another?</h3>
    <p>
      The cheapest mix while one limit or one price runs over a range. A mark stands where another ingredient
      or another limit takes over.
    </p>
    <div class="tools">
      <label>Let this run ${which}</label><label>from ${from}</label><label>to ${to}</label>
    </div>
    ${run.element} ${place}
  </section>`;
  let swept: Swept | undefined;
  let paths: readonly Path[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  let last = "";

  const current = () => paths.find(({path}) => path === which.value) ?? paths[0];
  const ends = (): [number, number] | undefined => {
    const [low, high] = [numberIn(from), numberIn(to)];
    return low !== undefined && high !== undefined && low < high ? [low, high] : undefined;
  };
  const fresh = () => {
    const path = current();
    if (!path) return;
    const [low, high] = rangeOf(path);
    from.value = limit(low).replace("−", "-");
    to.value = limit(high).replace("−", "-");
  };
  const work = () => {
    const path = current();
    if (!swept || !path) return place.replaceChildren();
    const range = ends();
    if (!range)
      return place.replaceChildren(
        html`<p class="note">Give a number to start from and a greater one to end with.</p>`,
      );
    const {brief, pantry, ...along} = swept;
    const [low, high] = range;
    const values = Array.from({length: VALUES}, (_, i) => low + ((high - low) * i) / (VALUES - 1));
    const begun = attempt(() =>
      run.start({
        words: "Running through the values …",
        steps: sweepSteps(brief, path.path, values, {pantry}),
        done: (points) =>
          place.replaceChildren(sweepChart(points, path, {...along, batch: brief.batch ?? 1000})),
      }),
    );
    if ("mistake" in begun) place.replaceChildren(html`<p class="note">${begun.mistake}</p>`);
    return undefined;
  };
  which.addEventListener("input", (event) => {
    event.stopPropagation();
    fresh();
    keep("sweep", [which.value]);
    keep("sweepRange", []);
    work();
  });
  for (const one of [from, to]) {
    one.addEventListener("input", (event) => {
      event.stopPropagation();
      keep("sweepRange", [from.value, to.value]);
      work();
    });
  }
  return {
    element,
    show(next) {
      const key = JSON.stringify([next?.brief, next?.freezer, next?.width]);
      if (key === last) return;
      last = key;
      swept = next;
      const chosen = which.value || recall("sweep")[0];
      paths = next ? pathsOf(next) : [];
      which.replaceChildren(
        ...paths.map(({path, name, unit}) => html`<option value=${path}>${name}, ${unit}</option>`),
      );
      which.value = paths.some(({path}) => path === chosen)
        ? chosen!
        : ((paths.find(({path}) => /hardPhase/.test(path)) ?? paths[0])?.path ?? "");
      const [low, high] = recall("sweepRange");
      if (low !== undefined && high !== undefined && which.value === recall("sweep")[0])
        [from.value, to.value] = [low, high];
      else fresh();
      clearTimeout(timer);
      timer = setTimeout(work, REST);
    },
  };
}

/** All limits and prices of a brief. */
function pathsOf({brief, freezer, pantry}: Swept): Path[] {
  const sides = (path: string, name: string, unit: string, limits: LimitsInput): Path[] =>
    (["min", "max"] as const).flatMap((side) => {
      const value = limits[side];
      return value === undefined
        ? []
        : [
            {
              path: `${path}.${side}`,
              name: `${name}, ${side === "min" ? "at least" : "at most"}`,
              unit,
              value,
            },
          ];
    });
  const units: Record<string, string> = {
    freezingPoint: "°C",
    scoopTemperature: "°C",
    sweetness: "as % of sugar",
    cost: "per kg",
  };
  const limits = Object.entries(brief.targets ?? {}).flatMap(([key, entry]) => {
    if (!entry) return [];
    if (!Array.isArray(entry))
      return sides(`targets.${key}`, labelOf(key, freezer), units[key] ?? "%", entry);
    return entry.flatMap((one, i) =>
      "at" in one
        ? sides(
            `targets.${key}[${i}]`,
            `${key === "ice" ? "Ice" : "Hard phase"} at ${limit(one.at)} °C`,
            "%",
            one,
          )
        : sides(`targets.${key}[${i}]`, "Heat shock", "%", one),
    );
  });
  const known = new Map(pantry.ingredients.map(({name, price}) => [name, price]));
  const prices = brief.ingredients.flatMap((entry, i) => {
    const {name, price} = typeof entry === "string" ? {name: entry} : entry;
    const value = price ?? known.get(name);
    return value === undefined
      ? []
      : [{path: `ingredients[${i}].price`, name: `Price of ${name}`, unit: "per kg", value}];
  });
  return [...limits, ...prices];
}

function rangeOf({path, value, unit}: Path): [number, number] {
  if (path.endsWith(".price")) return [0, 2 * value || 1];
  if (unit === "°C") return [value - 1, Math.min(value + 1, -0.1)];
  const room = Math.max(1, 0.15 * Math.abs(value));
  return [Math.max(0, value - room), value + room];
}

/** Cost of the cheapest mix along the values, with marks where something takes over. */
function sweepChart(
  points: readonly SweepPoint[],
  {name, unit, value: now}: Path,
  {width, freezer, batch}: {width: number; freezer: number; batch: number},
): HTMLElement {
  const costOf = ({solution}: SweepPoint) =>
    solution.status === "optimal" && solution.cost !== undefined ? (1000 * solution.cost) / batch : NaN;
  const priced = points.map((point) => ({...point, cost: costOf(point)}));
  const there = priced.filter(({cost}) => Number.isFinite(cost));
  if (!there.length) return html`<p class="note">No mix meets the wish anywhere between these.</p>`;
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
      axisX({
        label: `${name}, ${unit}`,
        labelArrow: "none",
        labelAnchor: "center",
        labelOffset: 38,
        tickFormat: tick,
        tickSize: 4,
        ticks: width < 500 ? 4 : 8,
      }),
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
    ${gaps.length ? html`<li><span class="swatch"></span>no mix meets the wish</li>` : ""}
  </ul>`;
  const table = html`<table class="sheet turns" aria-label="Where something takes over">
    <thead>
      <tr>
        <th scope="col">${name}</th>
        <th scope="col">per kg</th>
        <th scope="col" class="words">from here on</th>
      </tr>
    </thead>
    <tbody>
      ${turns.map(
        (point) =>
          html`<tr>
            <th scope="row">${decimal(point.value, 2)}</th>
            <td>${decimal(point.cost, 2)}</td>
            <td class="words">${said(point).join("; ")}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
  return figure(
    "Cost of the cheapest mix",
    `${name} runs from ${limit(points[0]!.value)} to ${limit(points.at(-1)!.value)} ${unit}.`,
    key,
    chart,
    ...(turns.length ? [table] : []),
  );
}
