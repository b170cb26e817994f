import {axisX, axisY, dot, line, type Markish, plot, rect} from "@observablehq/plot";
import {html, svg} from "htl";
import {valueOf} from "../../../lib/balance/measure/of-subject.ts";
import {mixOf} from "../../../lib/balance/mix/mix-report.ts";
import {decimal} from "../../../lib/core/format.ts";
import type {Kept} from "../controls/kept.ts";
import {styleOf} from "../page/mixes.ts";
import {figure, look, tick} from "../page/plot.ts";
import {type Axis, axisTitle, valueText} from "./axes.ts";
import {hereMarks} from "./here.ts";
import {type Cell, dilated, domainsOf, type Point, shade, stepOf} from "./map.ts";
import type {Marker} from "./marker.ts";
import type {Mark} from "../words/address-format.ts";
import {lookedAt, type TradeScene} from "./scene.ts";

/** Distance within which the pointer means a corner of the front, px. */
const NEAR = 16;

/** Controls that the chart acts upon. */
interface ChartOptions {
  /** px. */
  readonly width: number;
  readonly marker: Marker;
  readonly kept: Kept;
  /** Keeps the mix looked at. */
  readonly keep: () => void;
  /** Place of the cook's own recipe. */
  readonly here?: Point | undefined;
}

/** Everything that can be had of two things, what it costs at least, and the front beyond which nothing lies. */
export function tradeChart(scene: TradeScene, options: ChartOptions): HTMLElement {
  const {x, y, found, front, brief} = scene;
  const {width, marker, here} = options;
  const region = found.region?.status === "region" ? found.region.corners : [];
  const map = found.map?.status === "map" ? found.map : undefined;
  const domains = domainsOf(scene, [...region, ...front.points, ...(here ? [here] : [])]);
  const cells = map ? dilated(map.cells.map((row) => row.map((cell) => cell?.cost))) : [];
  const costs = cells.map(({cost}) => cost);
  const [least, most] = [Math.min(...costs), Math.max(...costs)];
  const [dx, dy] = map ? [stepOf(map.x) / 2, stepOf(map.y) / 2] : [0, 0];
  const keptAt = options.kept.of(brief).flatMap(({name, shares}, i) => {
    const mix = mixOf(brief, shares);
    const [atX, atY] = [valueOf(front.x.subject, mix), valueOf(front.y.subject, mix)];
    return atX === undefined || atY === undefined ? [] : [{name, x: atX, y: atY, style: styleOf(i + 1)}];
  });
  const marks: Markish[] = [
    ...(region.length > 2
      ? [
          line([...region, region[0]!], {
            x: "x",
            y: "y",
            fill: "var(--shade)",
            stroke: "none",
            className: "region",
          }),
        ]
      : []),
    ...(map
      ? [
          rect(cells, {
            x1: ({column}: Cell) => map.x[column]! - dx,
            x2: ({column}: Cell) => map.x[column]! + dx,
            y1: ({row}: Cell) => map.y[row]! - dy,
            y2: ({row}: Cell) => map.y[row]! + dy,
            fill: ({cost}: Cell) => shade((cost - least) / (most - least || 1)),
            className: "cost",
            shapeRendering: "crispEdges",
          }),
        ]
      : []),
    ...(region.length > 1
      ? [line([...region, region[0]!], {x: "x", y: "y", stroke: "var(--strong-line)", strokeWidth: 1.25})]
      : []),
    axisX({
      label: axisTitle(x, brief.freezer, false),
      labelArrow: "none",
      labelAnchor: "center",
      labelOffset: 38,
      tickFormat: tick,
      tickSize: 4,
      ticks: width < 500 ? 4 : 7,
    }),
    axisY({
      label: axisTitle(y, brief.freezer, true),
      labelArrow: "none",
      tickFormat: tick,
      tickSize: 4,
      ticks: 6,
    }),
    line(front.points, {x: "x", y: "y", stroke: "var(--paper)", strokeWidth: 6, strokeLinejoin: "round"}),
    line(front.points, {x: "x", y: "y", stroke: "var(--ink)", strokeWidth: 2.5, strokeLinejoin: "round"}),
    dot(front.points, {
      x: "x",
      y: "y",
      r: front.points.length > 20 ? 3 : 4.5,
      fill: "var(--ink)",
      stroke: "var(--paper)",
      strokeWidth: 1.25,
      className: "front",
    }),
    ...keptAt.map((one) =>
      dot([one], {
        x: "x",
        y: "y",
        r: 7,
        symbol: one.style.sign,
        fill: one.style.colour,
        stroke: "var(--paper)",
        strokeWidth: 1.5,
      }),
    ),
    ...hereMarks(here),
  ];
  const chart = plot({
    ...look(width),
    height: Math.round(Math.min(470, Math.max(330, width * 0.74))),
    marginLeft: 46,
    marginRight: 12,
    marginTop: 30,
    marginBottom: 48,
    x: {domain: domains.x},
    y: {domain: domains.y},
    marks,
  }) as unknown as SVGSVGElement & {
    scale(name: string): {apply(v: number): number; invert(v: number): number};
  };
  chart.classList.add("trade-chart");
  const [scaleX, scaleY] = [chart.scale("x"), chart.scale("y")];
  clip(
    chart,
    region.map((corner) => [scaleX.apply(corner.x), scaleY.apply(corner.y)] as const),
  );
  const at = ({x: px, y: py}: Point) => [scaleX.apply(px), scaleY.apply(py)] as const;
  const ring = svg`<g class="ring" aria-hidden="true"><circle r="9"></circle><circle r="9"></circle></g>`;
  chart.append(ring);
  const corners = focusable(chart, scene, options);
  const move = (mark: Mark) => {
    const looked = lookedAt(scene, mark);
    ring.setAttribute("transform", `translate(${at(looked).join()})`);
    const index = looked.mark.at === "front" ? looked.mark.index : undefined;
    corners.forEach((corner, i) => corner.setAttribute("tabindex", i === (index ?? 0) ? "0" : "-1"));
  };
  marker.onMove = move;
  move(marker.value);

  const under = (event: PointerEvent | MouseEvent): Mark | undefined => {
    const box = chart.getBoundingClientRect();
    const ratio = width / box.width;
    const [px, py] = [(event.clientX - box.left) * ratio, (event.clientY - box.top) * ratio];
    const distances = front.points.map((point) => {
      const [cx, cy] = at(point);
      return Math.hypot(cx - px, cy - py);
    });
    const nearest = Math.min(...distances);
    if (nearest < NEAR) return {at: "front", index: distances.indexOf(nearest)};
    if (!map) return undefined;
    const column = Math.round((scaleX.invert(px) - map.x[0]!) / (2 * dx));
    const row = Math.round((scaleY.invert(py) - map.y[0]!) / (2 * dy));
    return map.cells[row]?.[column] ? {at: "map", row, column} : undefined;
  };
  chart.addEventListener("pointermove", (event) => {
    const mark = under(event);
    if (mark) marker.set(mark);
  });
  // A finger looks first, and keeps by the button below; a mouse has looked already.
  chart.addEventListener("click", (event) => {
    const mark = under(event);
    if (!mark) return;
    marker.set(mark);
    if ((event as PointerEvent).pointerType === "mouse") options.keep();
  });

  const content = [legend(least, most, map !== undefined), chart];
  const element = figure(heading(x, y), reading(map !== undefined), ...content);
  chart.setAttribute("role", "group");
  chart.setAttribute(
    "aria-label",
    `${axisTitle(y, brief.freezer, true)} against ${axisTitle(x, brief.freezer, false)}`,
  );
  return element;
}

function heading(x: Axis, y: Axis): string {
  return `${y.name[0]!.toUpperCase()}${y.name.slice(1)} against ${x.name}`;
}

function reading(priced: boolean): string {
  return `Every mix of these ingredients that keeps the limits lies in the outlined field. On the bold line nothing is better in both.${priced ? " The colour is the least that a mix there costs." : ""} Point at a mix to see its recipe; click or press Enter to keep it.`;
}

/** The corners of the front, for keys: arrows walk along it, Enter keeps. */
function focusable(
  chart: SVGSVGElement,
  {front, x, y}: TradeScene,
  {marker, keep}: ChartOptions,
): SVGElement[] {
  const corners = [...chart.querySelectorAll<SVGElement>("g.front > circle")];
  const hadFocus = document.activeElement?.closest(".trade-chart") != null;
  corners.forEach((corner, i) => {
    const point = front.points[i]!;
    corner.setAttribute("role", "button");
    corner.setAttribute("aria-label", `Keep ${valueText(x, point.x)}, ${valueText(y, point.y)}`);
    corner.addEventListener("focus", () => marker.set({at: "front", index: i}));
    corner.addEventListener("keydown", (event) => {
      const step = {ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1}[event.key];
      if (step) corners[i + step]?.focus();
      else if (event.key === "Enter" || event.key === " ") keep();
      else return;
      event.preventDefault();
    });
  });
  // What was kept by key redraws the chart: the key goes on from there.
  if (hadFocus)
    queueMicrotask(() =>
      corners.find((corner) => corner.getAttribute("tabindex") === "0")?.focus({preventScroll: true}),
    );
  return corners;
}

/** The map ends where the region does. */
function clip(chart: SVGSVGElement, outline: readonly (readonly [number, number])[]): void {
  const cells = chart.querySelector("g.cost");
  if (!cells || outline.length < 3) return;
  // By hand, for its name keeps its capital only so.
  const make = (name: string) => document.createElementNS("http://www.w3.org/2000/svg", name);
  const [path, polygon] = [make("clipPath"), make("polygon")];
  path.id = "reachable";
  polygon.setAttribute("points", outline.join(" "));
  path.append(polygon);
  chart.append(path);
  cells.setAttribute("clip-path", "url(#reachable)");
}

function legend(least: number, most: number, priced: boolean): HTMLElement {
  return html`<ul class="legend">
    <li><span class="line"></span>nothing is better in both</li>
    <li><span class="swatch"></span>possible</li>
    ${
      priced
        ? html`<li class="ramp">
            cost per kg ${decimal(least, 2)} <span aria-hidden="true"></span> ${decimal(most, 2)}
          </li>`
        : ""
    }
  </ul>`;
}
