import {
  axisX,
  axisY,
  dot,
  gridY,
  line,
  type Markish,
  plot,
  pointer,
  rectY,
  ruleX,
  ruleY,
  tip,
} from "@observablehq/plot";
import {html} from "htl";
import type {SoluteCurve} from "../../../lib/freezing/solute.ts";
import {SOLUTE_TABLE} from "../../../lib/freezing/solute-table.ts";
import {degrees} from "../../../lib/core/format.ts";
import {holds, type ValidationRow} from "../../../datasets/published/row.ts";
import {PART} from "../../../datasets/published/solutions.ts";
import {byName, figureText, type Figures, nameOf} from "./figures.ts";
import {type MixStyle, styleOf} from "../page/mixes.ts";
import {figure, legend, look, tick} from "../page/plot.ts";

/** A figure of a freezing point, with the abscissa and the name that its residual is drawn by. */
type Residual = ValidationRow & {readonly temperature: number; readonly series: string};

function residuals(rows: readonly ValidationRow[], group: string): Residual[] {
  return rows.filter(
    (row): row is Residual =>
      row.group === group && row.temperature !== undefined && row.series !== undefined,
  );
}

/** Largest difference or tolerance among figures, rounded up to a twentieth: a frame for their residuals. */
function frameOf(rows: readonly ValidationRow[]): [number, number] {
  const most = Math.max(...rows.flatMap(({difference, tolerance}) => [Math.abs(difference) || 0, tolerance]));
  const end = Math.ceil(most * 1.1 * 20) / 20;
  return [-end, end];
}

/** Three times the largest difference: close enough to see it, wide enough to see most tolerances. */
function threeTimes(rows: readonly ValidationRow[]): [number, number] {
  return frameOf(rows.map((row) => ({...row, difference: 3 * row.difference, tolerance: 0})));
}

interface ResidualPlot {
  readonly rows: readonly Residual[];
  readonly width: number;
  readonly height: number;
  readonly frame: [number, number];
  readonly label: string;
  readonly styleOfRow: (row: Residual) => MixStyle;
  readonly axisLabels: boolean;
  readonly behind: readonly Markish[];
}

function residualPlot({
  rows,
  width,
  height,
  frame,
  label,
  styleOfRow,
  axisLabels,
  behind,
}: ResidualPlot): Element {
  const coldest = Math.min(...rows.map(({temperature}) => temperature));
  const signs = byName(rows, (row) => `${styleOfRow(row).sign} ${holds(row)}`);
  return plot({
    ...look(width),
    height,
    marginLeft: 40,
    marginRight: 10,
    marginTop: axisLabels ? 26 : 8,
    marginBottom: axisLabels ? 40 : 24,
    ariaLabel: label,
    x: {domain: [coldest * 1.03, 0]},
    y: {domain: frame},
    marks: [
      ...behind,
      gridY({stroke: "var(--line)", strokeOpacity: 1, ticks: 5}),
      ruleY([0], {stroke: "var(--strong-line)"}),
      axisX({
        label: axisLabels ? "Published freezing point, °C" : null,
        labelArrow: "none",
        labelAnchor: "center",
        tickFormat: tick,
        ticks: width < 300 ? 3 : 6,
        tickSize: 4,
      }),
      axisY({
        label: axisLabels ? "Computed less published, °C" : null,
        labelArrow: "none",
        tickFormat: tick,
        ticks: 5,
        tickSize: 0,
      }),
      ...[...signs.values()].map((alike) =>
        dot(alike, {
          x: "temperature",
          y: "difference",
          symbol: styleOfRow(alike[0]!).sign,
          fill: holds(alike[0]!) ? styleOfRow(alike[0]!).colour : "var(--warning)",
          stroke: "var(--paper)",
          strokeWidth: 0.75,
          r: axisLabels ? 5 : 3.2,
          clip: true,
        }),
      ),
      tip(
        rows,
        pointer({
          x: "temperature",
          y: "difference",
          title: (row: Residual) => `${nameOf(row)}\noff by ${figureText(row.difference, row)} °C`,
          fill: "var(--card)",
          lineHeight: 1.3,
          lineWidth: width < 300 ? 11 : 18,
          fontSize: 14,
          stroke: "var(--strong-line)",
        }),
      ),
    ],
  });
}

/** Styles by which the tables of single solutes are told apart. */
const TABLES: Readonly<Record<string, {readonly label: string; readonly style: MixStyle}>> = {
  "crc-2021": {label: "CRC Handbook", style: styleOf(0)},
  "young-jones-1949": {label: "Young and Jones", style: styleOf(1)},
  "melinder-2010": {label: "Melinder", style: styleOf(3)},
  "polyols-norrish": {label: "curve at 25 °C, for want of freezing points", style: styleOf(2)},
};

/** Freezing points of each solute alone in water, computed less published, one small chart for each. */
export function soluteResiduals({rows}: Figures, width: number): HTMLElement {
  const measured = residuals(rows, "solutions");
  const known = new Set(measured.map(({series}) => series));
  const points = [...measured, ...residuals(rows, "Norrish curves").filter(({series}) => !known.has(series))];
  const frame = frameOf(points);
  const across = Math.max(2, Math.floor((width + GAP) / (236 + GAP)));
  const each = Math.floor((width - (across - 1) * GAP) / across);
  const charts = [...byName(points, ({series}) => series)].map(([solute, own]) => {
    const curve: SoluteCurve = SOLUTE_TABLE[PART[solute]!];
    const ends = [...byName(own, ({source}) => source).values()].map((table) => ({
      from: Math.min(...table.map(({temperature}) => temperature)),
      to: Math.max(...table.map(({temperature}) => temperature)),
      tolerance: table[0]!.tolerance,
    }));
    const edges = ends.flatMap(({tolerance, ...range}) =>
      [-tolerance, tolerance].map((y) => ({...range, y})),
    );
    const chart = residualPlot({
      rows: own,
      width: each,
      height: 150,
      frame,
      label: `${solute}: computed less published freezing points, °C`,
      styleOfRow: ({source}) => TABLES[source]?.style ?? styleOf(4),
      axisLabels: false,
      behind: [
        rectY([curve.rms], {y1: (d: number) => -d, y2: (d: number) => d, fill: "var(--shade)"}),
        ruleY(edges, {y: "y", x1: "from", x2: "to", stroke: "var(--warning)", strokeDasharray: "3 3"}),
      ],
    });
    chart.setAttribute("role", "img");
    return html`<div>
      <h4>${solute} <small>typically ${degrees(curve.rms, 3)}</small></h4>
      ${chart}
    </div>`;
  });
  return figure(
    "One solute in water",
    "Freezing point computed less published, °C, from strong solutions on the left to weak ones on the right. The shaded band is the error stated for each solute, the dashed lines are the tolerance.",
    html`<div>
      ${legend(Object.values(TABLES))}
      <div class="multiples" style=${`--across: ${across}`}>${charts}</div>
    </div>`,
  );
}

/** Gap between small charts, px, as figures.css has it. */
const GAP = 20;

/** Beyond the tables of freezing points: the sugars against curves measured at 25 °C. */
export function curveResiduals({rows}: Figures, width: number): HTMLElement {
  const solutes = new Set(residuals(rows, "solutions").map(({series}) => series));
  const points = residuals(rows, "Norrish curves").filter(({series}) => solutes.has(series));
  const names = [...byName(points, ({series}) => series).keys()];
  const styleOfRow = ({series}: Residual) => styleOf(names.indexOf(series));
  const chart = residualPlot({
    rows: points,
    width,
    height: 330,
    frame: frameOf(points),
    label: "Sugars against Norrish curves: computed less published freezing points, °C",
    styleOfRow,
    axisLabels: true,
    behind: [...byName(points, ({series}) => series).values()].map((own) => {
      const {colour, dash} = styleOfRow(own[0]!);
      return line(own, {
        x: "temperature",
        y: "difference",
        stroke: colour,
        strokeWidth: 2,
        strokeDasharray: dash,
      });
    }),
  });
  return figure(
    "Colder than was measured",
    "The sugars’ freezing points end near −5 °C, but for the one at which sucrose meets ice, −13.95 °C. Below, the only check is water activity at 25 °C, which drifts from that in the cold: a disagreement here is not all the model’s.",
    legend(names.map((label, n) => ({label, style: styleOf(n)}))),
    chart,
  );
}

/** The worked example by both methods: computed less published temperature at each share of frozen water. */
export function exampleResiduals({rows}: Figures, width: number): HTMLElement {
  const points = residuals(rows, "worked example");
  const names = [...byName(points, ({series}) => series).keys()];
  const styleOfRow = ({series}: Residual) => styleOf(names.indexOf(series));
  const chart = residualPlot({
    rows: points,
    width,
    height: 330,
    frame: threeTimes(points),
    label: "Worked example by both methods: computed less published temperature, °C",
    styleOfRow,
    axisLabels: true,
    behind: points.map((row) =>
      ruleX([row], {
        x: "temperature",
        y1: -row.tolerance,
        y2: row.tolerance,
        stroke: styleOfRow(row).colour,
        strokeWidth: row.series === names[0] ? 7 : 3,
        strokeOpacity: 0.22,
        clip: true,
      }),
    ),
  });
  return figure(
    "A whole mix, by two methods",
    "The published freezing curve of an ice-cream mix, from 0 to 75 % of its water frozen. Sucrose equivalents are how it was worked out, so they must meet it; held water is what this library balances with. Faint bars are the tolerances. At 70 and 75 % the example itself is too warm: its table of sucrose has −12.7 °C where ice and sucrose meet at −13.95 °C.",
    legend(names.map((label, n) => ({label, style: styleOf(n)}))),
    chart,
  );
}
