import type {Markish, PlotOptions} from "@observablehq/plot";
import {ruleX, rectX, text} from "@observablehq/plot";
import {html} from "htl";
import {degrees} from "../../lib/io/words.ts";
import {keyOf, type ShownMix} from "./mixes.ts";

/** Temperatures at which hard ice cream is dipped, °C: common practice, no source. */
export const DIPPING = {from: -14, to: -12} as const;

/** Look shared by all charts: the page's own type and inks. */
export function look(width: number): Pick<PlotOptions, "width" | "style"> {
  return {width, style: {fontFamily: "var(--sans-serif)", fontSize: "13px", background: "none", overflow: "visible"}};
}

/** The dipping band and the freezer's line, named above the frame. */
export function temperatureMarks(freezer: number): Markish[] {
  const left = freezer <= (DIPPING.from + DIPPING.to) / 2;
  return [
    rectX([DIPPING], {x1: "from", x2: "to", fill: "var(--scoops)"}),
    text([DIPPING], {x: "to", frameAnchor: "top", text: () => "dipping", textAnchor: left ? "start" : "end", dx: left ? 4 : -26, dy: -17, fill: "var(--on-scoops)", fontWeight: 550}),
    ruleX([freezer], {stroke: "var(--freezer)", strokeWidth: 1.5}),
    text([freezer], {
      x: (d: number) => d,
      frameAnchor: "top",
      text: (d: number) => `freezer ${degrees(d, Number.isInteger(d) ? 0 : 1)}`,
      textAnchor: left ? "end" : "start",
      dx: left ? -5 : 5,
      dy: -17,
      fill: "var(--freezer)",
      fontWeight: 550,
    }),
  ];
}

/** A chart with its heading and one sentence that says how to read it. */
export function figure(heading: string, reading: string, ...content: readonly (Element | false)[]): HTMLElement {
  return html`<figure class="chart" data-side="answer">
    <figcaption><h3>${heading}</h3>${reading}</figcaption>
    ${content}
  </figure>`;
}

/** Which line is which mix. */
export function legend(mixes: readonly ShownMix[]): HTMLElement {
  return html`<ul class="legend">${mixes.map(({label, style}) => html`<li>${keyOf(style)} ${label}</li>`)}</ul>`;
}

/** °C for an axis: a true minus sign. */
export function tick(value: number): string {
  return String(value).replace("-", "−");
}

/** Width of the answer's column, px, in a page of a given width: beside the brief on a wide screen, all of it on a phone. */
export function columnOf(width: number): number {
  return Math.max(280, matchMedia("(min-width: 1060px)").matches ? width - BRIEF_AND_GAP : width);
}

/** Width of the brief's column and the gap beside it, px, as page.css has them. */
const BRIEF_AND_GAP = 356 + 56;
