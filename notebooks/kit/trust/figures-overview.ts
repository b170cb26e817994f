import {axisY, plot, pointer, ruleX, ruleY, tickX, tip} from "@observablehq/plot";
import {html} from "htl";
import {holds} from "../../../datasets/published/row.ts";
import {byName, figureText, type Figures, groupName, nameOf, outside, rms, toleranceUsed} from "./figures.ts";
import {figure, horizontalAxis, look} from "../page/plot.ts";
import {row, withUnit} from "../page/row.ts";
import {sheet} from "../page/sheet.ts";

/** Number of figures, and whether they hold, in one sentence. */
export function figuresVerdict({rows}: Figures): HTMLElement {
  const sources = new Set(rows.map(({source}) => source)).size;
  const off = outside(rows);
  return html`<section class=${`verdict ${off.length ? "trouble" : ""}`}>
    <h2>
      ${rows.length} figures from ${sources} sources:
      <b>${off.length ? `${off.length} outside the tolerance` : "every one within its tolerance"}</b>
    </h2>
    ${
      off.length > 0
        ? html`<ul>
            ${off.map(
              (row) =>
                html`<li>
                  <span
                    ><strong>${nameOf(row)}</strong> is off by ${figureText(row.difference, row)}
                    ${row.unit}</span
                  >
                </li>`,
            )}
          </ul>`
        : ""
    }
  </section>`;
}

/** All figures at once: how much of its tolerance each uses, by what it checks. */
export function toleranceStrips({rows}: Figures, width: number): HTMLElement {
  const marks = rows.map((row) => ({row, name: groupName(row), used: Math.min(toleranceUsed(row), 150)}));
  const names = [...byName(marks, ({name}) => name).keys()];
  const strip = (colour: string, inside: boolean) =>
    tickX(
      marks.filter(({row}) => holds(row) === inside),
      {
        x: "used",
        y: "name",
        stroke: colour,
        strokeWidth: inside ? 1.5 : 3,
        strokeOpacity: inside ? 0.55 : 1,
        insetTop: inside ? 0 : -4,
        insetBottom: inside ? 0 : -4,
      },
    );
  const chart = plot({
    ...look(width),
    height: (width < 500 ? 34 : 60) * names.length + 52,
    marginLeft: Math.min(0.42 * width, 172),
    marginRight: 14,
    marginTop: 8,
    marginBottom: 40,
    ariaLabel: "How much of its tolerance each figure uses, %",
    x: {domain: [0, Math.max(102, ...marks.map(({used}) => used))]},
    y: {domain: names, padding: 0.36},
    marks: [
      ruleY(names, {stroke: "var(--line)"}),
      ruleX([100], {stroke: "var(--warning)", strokeWidth: 1.5}),
      horizontalAxis("Used of the tolerance, %", width),
      axisY({label: null, tickSize: 0}),
      strip("var(--mix-1)", true),
      strip("var(--warning)", false),
      tip(
        marks,
        pointer({
          x: "used",
          y: "name",
          title: ({row}: (typeof marks)[number]) =>
            `${nameOf(row)}\noff by ${figureText(row.difference, row)} ${row.unit}, allowed ${figureText(row.tolerance, row)}`,
          fill: "var(--card)",
          lineHeight: 1.3,
          lineWidth: width < 500 ? 16 : 26,
          fontSize: 14,
          stroke: "var(--strong-line)",
        }),
      ),
    ],
  });
  return figure(
    "Everything at once",
    "Each stroke is one published figure: the further to the right, the nearer to the edge of what is accepted.",
    chart,
  );
}

/** Typical and largest difference of each group of figures, with the figure that is furthest off. */
export function largestDifferences({rows}: Figures): HTMLElement {
  const groups = byName(
    rows,
    (row) => `${groupName(row)}\n${row.unit}\n${row.group === "worked example" ? row.series : ""}`,
  );
  return sheet({
    heading: "How far off",
    reading:
      "Root mean square and largest difference of what is computed from what is published; under each name the figure that is furthest off.",
    columns: ["what is checked", "figures", "typically", "at worst"],
    body: [...groups.values()].map((group) => {
      const worst = group.reduce((a, b) => (Math.abs(b.difference) > Math.abs(a.difference) ? b : a));
      const name = `${groupName(worst)}${worst.group === "worked example" ? ` by ${worst.series}` : ""}`;
      return row(
        [...withUnit(name, worst.unit), html`<span class="asked">${nameOf(worst)}</span>`],
        [String(group.length), figureText(rms(group), worst), figureText(worst.difference, worst)],
      );
    }),
  });
}
