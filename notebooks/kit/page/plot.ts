import type {AxisXOptions, Markish, PlotOptions} from "@observablehq/plot";
import {axisX, rectX, ruleX, text} from "@observablehq/plot";
import {html} from "htl";
import {DIPPING} from "../../../lib/freezing/scoop.ts";
import {keyOf, type ShownMix} from "./mixes.ts";
import {besideAnswer} from "./room.ts";
import {setting} from "../words/numbers.ts";

/** Options of a chart over temperature. */
export interface Along {
  /** px. */
  readonly width: number;
  /** °C. */
  readonly freezer: number;
}

/** Narrowest chart that is drawn, px: wider than any margins. */
const NARROWEST = 120;

/** Look shared by all charts: the page's own type and inks. */
export function look(width: number): Pick<PlotOptions, "width" | "style"> {
  return {
    // A page that is being laid out, or turned into a picture, may be narrower than a chart's margins.
    width: Math.max(NARROWEST, width),
    style: {fontFamily: "var(--sans-serif)", fontSize: "13px", background: "none", overflow: "visible"},
  };
}

/** The dipping band and the freezer's line, named above the frame. */
export function temperatureMarks(freezer: number): Markish[] {
  const middle = (DIPPING.from + DIPPING.to) / 2;
  // Beside its line on the side with more room, and a line higher where the band's name is in the way.
  const toTheLeft = freezer <= middle && freezer > -24;
  const name = {x: (d: number) => d, frameAnchor: "top", lineAnchor: "bottom", fontWeight: 550} as const;
  return [
    rectX([DIPPING], {x1: "from", x2: "to", fill: "var(--dipping)"}),
    text([middle], {...name, text: () => "dipping", dy: -5, fill: "var(--on-dipping)"}),
    ruleX([freezer], {stroke: "var(--freezer)", strokeWidth: 1.5}),
    text([freezer], {
      ...name,
      text: () => `freezer ${setting(freezer)}`,
      textAnchor: toTheLeft ? "end" : "start",
      dx: toTheLeft ? -5 : 5,
      dy: Math.abs(freezer - middle) < 4 ? -21 : -5,
      fill: "var(--freezer)",
    }),
  ];
}

/** The axis of a chart over temperature. */
export function temperatureAxis(width: number): Markish {
  return horizontalAxis("Temperature, °C", width, {tickFormat: tick});
}

/** The axis below a chart, with fewer ticks on a phone. */
export function horizontalAxis(label: string, width: number, more: AxisXOptions = {}): Markish {
  return axisX({
    label,
    labelArrow: "none",
    labelAnchor: "center",
    ticks: width < 500 ? 4 : 8,
    tickSize: 4,
    ...more,
  });
}

/** A chart with its heading and one sentence that says how to read it. */
export function figure(heading: string, reading: string, ...content: readonly Element[]): HTMLElement {
  for (const element of content)
    for (const drawing of [element, ...element.querySelectorAll("svg[aria-label]")])
      if (drawing.tagName === "svg") asPicture(drawing);
  return html`<figure class="chart">
    <figcaption>
      <h3>${heading}</h3>
      ${reading}
    </figcaption>
    ${content}
  </figure>`;
}

/** A drawing that is told whole, by its own name: the names of its marks (dot, line) say nothing to those who do not see it. */
function asPicture(drawing: Element): void {
  drawing.setAttribute("role", "img");
  for (const mark of drawing.querySelectorAll("[aria-label]:not([role])")) {
    mark.setAttribute("data-mark", mark.getAttribute("aria-label")!);
    mark.removeAttribute("aria-label");
  }
}

/** Legend: the line of each mix. */
export function legend(mixes: readonly Pick<ShownMix, "label" | "style">[]): HTMLElement {
  return html`<ul class="legend">
    ${mixes.map(({label, style}) => html`<li>${keyOf(style)} ${label}</li>`)}
  </ul>`;
}

/** °C for an axis: a true minus sign. */
export function tick(value: number): string {
  return String(value).replace("-", "−");
}

/** Width of the answer's column, px, in a page of a given width: beside the brief on a wide screen, all of it on a phone. */
export function columnOf(width: number): number {
  return Math.max(280, besideAnswer() ? width - BRIEF_AND_GAP : width);
}

/** Width of the brief's column and the gap beside it, px, as page.css has them. */
const BRIEF_AND_GAP = 356 + 56;

/** Room for the mixes' names at the left of a chart, px. */
export function labelMargin(mixes: readonly Pick<ShownMix, "label">[]): number {
  return 14 + 7.4 * Math.max(...mixes.map(({label}) => label.length));
}
