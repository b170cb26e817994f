import {axisY, barX, plot, text} from "@observablehq/plot";
import {html} from "htl";
import type {TimePlan} from "../../../lib/kitchen/day/time-plan.ts";
import {figure, horizontalAxis, look} from "../page/plot.ts";

const NAMES = {chill: "chill", churn: "churn", harden: "harden", temper: "temper"} as const;

/** The stages of the day along its hours, and each in words. */
export function dayLine({stages}: TimePlan, width: number): HTMLElement {
  let from = 0;
  const bars = stages.flatMap(({stage, minutes}) => {
    if (minutes === undefined || stage === "temper") return [];
    const bar = {stage: NAMES[stage], from: from / 60, to: (from + minutes) / 60, minutes};
    from += minutes;
    return [bar];
  });
  const chart = plot({
    ...look(width),
    height: 40 * bars.length + 58,
    marginLeft: 62,
    marginRight: 62,
    marginTop: 4,
    marginBottom: 40,
    ariaLabel: "Hours from the end of heating",
    ariaDescription: stages.map((stage) => stage.text).join(" "),
    x: {domain: [0, Math.max(0.5, from / 60)]},
    y: {domain: bars.map(({stage}) => stage), padding: 0.5},
    marks: [
      horizontalAxis("Hours from the end of heating", width),
      axisY({label: null, tickSize: 0}),
      barX(bars, {
        x1: "from",
        x2: "to",
        y: "stage",
        fill: "var(--freezer)",
        insetLeft: -0.5,
        insetRight: -0.5,
      }),
      text(bars, {
        x: "to",
        y: "stage",
        text: ({minutes}: {minutes: number}) =>
          minutes < 90 ? `${minutes.toFixed(0)} min` : `${(minutes / 60).toFixed(1)} h`,
        textAnchor: "start",
        dx: 7,
        fill: "var(--ink)",
      }),
    ],
  });
  return figure(
    "When it will be ready",
    "Chilling and churning from the heat to be taken out and the power that takes it; hardening for one tub alone in still air, as high as it is wide. Full shelves take longer.",
    chart,
    html`<ul class="stages">
      ${stages.map((stage) => html`<li>${stage.text.replaceAll(/(^|\s)-(?=\d)/g, "$1−")}</li>`)}
    </ul>`,
  );
}
