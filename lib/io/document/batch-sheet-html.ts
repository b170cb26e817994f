import {sum} from "../../core/numbers.ts";
import {expectSheet} from "./expect-sheet.ts";
import type {BatchSheet, SheetLine, SheetSection} from "../../kitchen/day/batch-sheet.ts";
import type {LogField} from "../../kitchen/day/log-fields.ts";
import {outOfFreezer, softWarning} from "../../kitchen/size/scoop-words.ts";
import {curveSvg} from "./batch-sheet-curve.ts";
import {escapeHtml} from "../text/escape.ts";
import {FACES, PALETTE} from "../text/palette.ts";
import {grams as weight, setDegrees, trueMinus} from "../../core/format.ts";

/** Lines of 10-point type that the page holds under its title. */
const PAGE_LINES = 56;

/** Lines that the freezing curve, the headings of steps and log and the sentences about them take. */
const CURVE_LINES = 22;

/** The smallest type, points. */
const SMALLEST = 6;

/**
 * A batch sheet as a whole HTML document that prints on one A4 page: no script, no outside file, everything escaped.
 *
 * The type shrinks with the amount of text, from 10 to 6 points; a sheet of some 30 ingredients and 20 steps still fits.
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 800}];
 * const product = makeProduct("milk ice", [baseComponent({name: "milk ice", lines})]);
 * batchSheetHtml(batchSheet(product, {grams: 2000})).slice(0, 15); // => "<!doctype html>"
 * ```
 */
export function batchSheetHtml(sheet: BatchSheet): string {
  expectSheet(sheet);
  const {title, figures, sections, steps, log, cautions, scoop} = sheet;
  const warning = softWarning(scoop);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(title)}</title>
<style>${style(typeSize(sheet))}</style>
</head>
<body>
<header>
<h1>${escapeHtml(title)}</h1>
${warning === undefined ? "" : `<p><b>${prose(warning)}</b></p>\n`}<dl>${figures.map(({label, value}) => `<div><dt>${escapeHtml(label)}</dt><dd>${prose(value)}</dd></div>`).join("")}</dl>
</header>
<main>
${sections.map((section) => ingredientTable(section, sheet.runs)).join("\n")}
<h2>Steps</h2>
<ol>${steps.map(({text, notes}) => `<li><label><input type="checkbox"> ${prose(text)}</label>${notes.map((note) => `<small>${prose(note)}</small>`).join("")}</li>`).join("")}</ol>
<div class="whole"><h2>Log</h2>
<div class="log">${log.map(logField).join("")}</div></div>
<div class="whole"><h2>Freezing curve</h2>
${curveSvg(sheet)}
<p>${prose(`From a freezer at ${setDegrees(sheet.freezer)} ${outOfFreezer(sheet.scoop, sheet.wait)}.`)} An estimate that leaves out air, crystal size and stabiliser.</p></div>
</main>
<footer>
<p class="allergens"><b>Allergens:</b> ${sheet.allergens.length ? sheet.allergens.map((name) => `<b>${escapeHtml(name)}</b>`).join(", ") : "none declared by the ingredients"}</p>
<p><b>Ingredients:</b> ${sheet.ingredientList.map(({text, emphasised}) => (emphasised ? `<b>${prose(text)}</b>` : prose(text))).join("")}</p>
<ul>${cautions.map(({topic, text}) => `<li><b>${escapeHtml(topic)}:</b> ${prose(text)}</li>`).join("")}</ul>
</footer>
</body>
</html>
`;
}

function ingredientTable({heading, grams, lines}: SheetSection, runs: number): string {
  const perRun = runs > 1 && lines.some((line) => line.gramsPerRun !== undefined);
  const number = (text: string) => `<td class="number">${escapeHtml(text)}</td>`;
  const rows = lines.map(
    (line) => `<tr>
<td><input type="checkbox" aria-label="${escapeHtml(line.ingredient)} weighed"></td>
<td class="name">${prose(line.ingredient)}${beside(line)}</td>
${number(weight(line.grams))}${perRun ? number(weight(line.gramsPerRun ?? 0)) : ""}
</tr>`,
  );
  const unbroken = lines.length <= 12 ? ' class="whole"' : "";
  return `<div${unbroken}><h2>${escapeHtml(heading)}</h2>
<table>
<thead><tr><th></th><th>Ingredient</th><th class="number">g</th>${perRun ? `<th class="number">g per run</th>` : ""}</tr></thead>
<tbody>${rows.join("\n")}</tbody>
<tfoot><tr><td></td><td>Yield</td>${number(weight(grams))}</tr></tfoot>
</table></div>`;
}

/** Small print behind an ingredient: its kitchen measure and its allergens. */
function beside({measure, allergens}: SheetLine): string {
  const allergenText = allergens.length ? `<b>${escapeHtml(allergens.join(", "))}</b>` : "";
  const parts = [prose(measure ?? ""), allergenText].filter(Boolean);
  return parts.length ? ` <span class="beside">${parts.join(", ")}</span>` : "";
}

function logField({label, unit}: LogField): string {
  return `<div><span>${escapeHtml(label)}</span><span class="blank"></span><span>${escapeHtml(unit)}</span></div>`;
}

/** Text to be read: escaped, with its numbers kept beside their units. */
function prose(text: string): string {
  return escapeHtml(trueMinus(text)).replace(/(\d) (?=°|%|(?:g|l|s|min)\b)/g, "$1&nbsp;");
}

/**
 * Type size in points: 10 for a short sheet, smaller in proportion to the lines that a longer one has in its two columns
 * and at its foot. The numbers are letters to a line at 10 points.
 */
function typeSize({sections, steps, log, cautions, ingredientList, scoop}: BatchSheet): number {
  const wrapped = (text: string, width: number) => Math.ceil(text.length / width);
  const rows = sections
    .flatMap((section) => section.lines)
    .map(
      ({ingredient, measure = "", allergens}) =>
        0.4 + wrapped(`${ingredient} ${measure} ${allergens.join(", ")}`, 27),
    );
  const stepLines = steps.map(
    ({text, notes}) => 0.3 + wrapped(text, 42) + sum(notes.map((note) => 0.85 * wrapped(note, 50))),
  );
  const columns = 5 * sections.length + sum(rows) + sum(stepLines) + 1.6 * log.length + CURVE_LINES;
  const list = ingredientList.map((piece) => piece.text).join("");
  const foot =
    wrapped(softWarning(scoop) ?? "", 85) +
    wrapped(list, 85) +
    sum(cautions.map((caution) => wrapped(caution.text, 95)));
  // Smaller type sets more lines and more letters to the line, but table rows hardly gain from the second: hence 0.8.
  const size = 10 * (PAGE_LINES / (columns / 2 + foot)) ** 0.8;
  return Math.round(10 * Math.min(10, Math.max(SMALLEST, size))) / 10;
}

const {ink, soft, line, strongLine, dipping, onDipping, freezer, accent} = PALETTE;

function style(points: number): string {
  return `
@page {size: A4; margin: 10mm}
* {box-sizing: border-box; print-color-adjust: exact}
html {color-scheme: light}
body {font: ${points}pt/1.3 ${FACES.sans}; color: ${ink}; background: #fff; max-width: 190mm; margin: 0 auto; overflow-wrap: break-word}
h1, h2 {font-family: ${FACES.serif}; font-weight: 500; line-height: 1.15}
h1 {font-size: 2em; margin: 0 0 .2em; padding-top: .25em; border-top: 3px double ${strongLine}; letter-spacing: -.015em}
h2 {font-size: 1.25em; margin: .7em 0 .2em; border-bottom: .5pt solid ${strongLine}; break-after: avoid}
dl {display: flex; flex-wrap: wrap; gap: .2em 1.2em; margin: 0}
dt {font-size: .85em; color: ${soft}}
dd {margin: 0; font-weight: 600}
header {margin-bottom: .6em}
main {columns: 2; column-gap: 6mm}
main > :first-child h2 {margin-top: 0}
.whole, tr, li {break-inside: avoid}
table {border-collapse: collapse; width: 100%}
th {text-align: left; font-size: .85em; color: ${soft}}
td, th {padding: .12em .3em; border-bottom: .3pt solid ${line}; vertical-align: top}
.name, dd, li, footer p {overflow-wrap: anywhere}
.number {text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap}
tfoot td {font-weight: 600; border-top: .5pt solid ${strongLine}}
input {width: 1em; height: 1em; margin: 0; vertical-align: -.1em}
ol, ul {padding-left: 1.4em; margin: .2em 0}
li {margin-bottom: .25em}
small {display: block; font-size: .85em; color: ${soft}}
.beside {font-size: .85em; color: ${soft}}
.log div {display: flex; gap: .4em; align-items: end; padding-top: .5em}
.blank {flex: 1; border-bottom: .5pt solid ${ink}; min-width: 3em}
footer {margin-top: .6em; border-top: .5pt solid ${strongLine}}
footer p {margin: .3em 0}
footer ul {font-size: .9em}
svg {width: 34em; max-width: 100%; height: auto; font-size: 8px; fill: ${ink}}
.grid {stroke: ${line}; stroke-width: .5}
.dipping {fill: ${dipping}}
.named-dipping {fill: ${onDipping}}
.freezer {stroke: ${freezer}; stroke-width: 1.2}
.named-freezer {fill: ${freezer}}
.ice {fill: none; stroke: ${accent}; stroke-width: 2}
@media screen and (max-width: 40em) {main {columns: 1} body {font-size: 12pt; padding: 1em}}
`;
}
