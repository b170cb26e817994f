import type {BatchSheet, LogField, SheetSection} from "../kitchen/batch-sheet.ts";
import {curveSvg} from "./batch-sheet-curve.ts";
import {escapeHtml} from "./escape.ts";
import {grams as weight} from "./words.ts";

/**
 * A batch sheet as a whole HTML document that prints on one A4 page: no script, no outside file, everything escaped.
 *
 * The type shrinks with the amount of text, from 10 to 6 points; a sheet of some 30 ingredients and 20 steps still fits.
 */
export function batchSheetHtml(sheet: BatchSheet): string {
  const {title, figures, sections, steps, log, cautions} = sheet;
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
<dl>${figures.map(({label, value}) => `<div><dt>${escapeHtml(label)}</dt><dd>${escapeHtml(value)}</dd></div>`).join("")}</dl>
</header>
<main>
<section>
${sections.map((section) => ingredientTable(section, sheet.runs)).join("\n")}
<h2>Freezing curve</h2>
${curveSvg(sheet)}
<p>At ${sheet.storage} °C: ${escapeHtml(sheet.verdict)} (an estimate that leaves out air, crystal size and stabiliser).</p>
</section>
<section>
<h2>Steps</h2>
<ol>${steps.map(({text, notes}) => `<li><label><input type="checkbox"> ${escapeHtml(text)}</label>${notes.map((note) => `<small>${escapeHtml(note)}</small>`).join("")}</li>`).join("")}</ol>
<h2>Log</h2>
<div class="log">${log.map(logField).join("")}</div>
</section>
</main>
<footer>
<p class="allergens"><b>Allergens:</b> ${sheet.allergens.length ? sheet.allergens.map((name) => `<b>${escapeHtml(name)}</b>`).join(", ") : "none declared by the ingredients"}</p>
<p><b>Ingredients:</b> ${sheet.ingredientList.map(({text, emphasised}) => (emphasised ? `<b>${escapeHtml(text)}</b>` : escapeHtml(text))).join("")}</p>
<ul>${cautions.map(({topic, text}) => `<li><b>${escapeHtml(topic)}:</b> ${escapeHtml(text)}</li>`).join("")}</ul>
</footer>
</body>
</html>
`;
}

function ingredientTable({heading, grams, lines}: SheetSection, runs: number): string {
  const perRun = runs > 1 && lines.some((line) => line.gramsPerRun !== undefined);
  const measured = lines.some((line) => line.measure !== undefined);
  const cell = (text: string, numeric = false) =>
    `<td${numeric ? ' class="number"' : ""}>${escapeHtml(text)}</td>`;
  const rows = lines.map(
    (line) =>
      `<tr><td><input type="checkbox" aria-label="${escapeHtml(line.ingredient)} weighed"></td>${cell(line.ingredient)}${cell(weight(line.grams), true)}${perRun ? cell(weight(line.gramsPerRun ?? 0), true) : ""}${measured ? cell(line.measure ?? "") : ""}<td><b>${escapeHtml(line.allergens.join(", "))}</b></td></tr>`,
  );
  return `<h2>${escapeHtml(heading)}</h2>
<table>
<thead><tr><th></th><th>Ingredient</th><th class="number">g</th>${perRun ? `<th class="number">g per run</th>` : ""}${measured ? "<th>or</th>" : ""}<th>Allergens</th></tr></thead>
<tbody>${rows.join("\n")}</tbody>
<tfoot><tr><td></td><td>Yield</td><td class="number">${weight(grams)}</td></tr></tfoot>
</table>`;
}

function logField({label, unit}: LogField): string {
  return `<div><span>${escapeHtml(label)}</span><span class="blank"></span><span>${escapeHtml(unit)}</span></div>`;
}

/** Type size in points: 10 for a short sheet, smaller in proportion to the lines of the longer column and the foot. */
function typeSize({sections, steps, log, cautions, ingredientList}: BatchSheet): number {
  const wrapped = (text: string, width: number) => Math.ceil(text.length / width);
  const left = sections.reduce(
    (lines, section) =>
      lines + 4 + section.lines.reduce((rows, line) => rows + 1.3 * wrapped(line.ingredient, 28), 0),
    13,
  );
  const right = steps.reduce(
    (lines, step) =>
      lines + 1.3 * wrapped(step.text, 55) + step.notes.reduce((rows, note) => rows + wrapped(note, 65), 0),
    4 + 1.6 * log.length,
  );
  const foot =
    4 +
    cautions.reduce((lines, caution) => lines + wrapped(caution.text, 125), 0) +
    wrapped(ingredientList.map((piece) => piece.text).join(""), 125);
  const LINES_AT_TEN = 58;
  // Smaller type fits more lines and more letters in each: the page holds as its square.
  const size = 10 * Math.sqrt(LINES_AT_TEN / Math.max(LINES_AT_TEN, Math.max(left, right) + foot));
  return Math.max(6, Math.round(size * 10) / 10);
}

function style(points: number): string {
  return `
@page {size: A4; margin: 10mm}
* {box-sizing: border-box}
body {font: ${points}pt/1.3 system-ui, "Liberation Sans", sans-serif; color: #111; background: #fff; max-width: 190mm; margin: 0 auto; overflow-wrap: anywhere}
h1 {font-size: 1.7em; margin: 0 0 .2em}
h2 {font-size: 1.1em; margin: .8em 0 .2em; border-bottom: .5pt solid #777; break-after: avoid}
dl {display: flex; flex-wrap: wrap; gap: .2em 1.6em; margin: 0}
dt {font-size: .85em; color: #444}
dd {margin: 0; font-weight: 600}
main {display: grid; grid-template-columns: 1fr 1fr; gap: 0 6mm}
main section {min-width: 0}
table {border-collapse: collapse; width: 100%}
th {text-align: left; font-size: .85em; color: #444}
td, th {padding: .12em .3em; border-bottom: .3pt solid #bbb; vertical-align: top}
.number {text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap}
tfoot td {font-weight: 600}
input {width: 1em; height: 1em; margin: 0; vertical-align: -.1em}
ol, ul {padding-left: 1.4em; margin: .2em 0}
li {margin-bottom: .25em}
small {display: block; font-size: .85em; color: #333}
.log div {display: flex; gap: .4em; align-items: end; padding-top: .5em}
.blank {flex: 1; border-bottom: .5pt solid #111; min-width: 3em}
footer {margin-top: .6em; border-top: .5pt solid #777}
footer p {margin: .3em 0}
footer ul {font-size: .9em}
svg {width: 100%; height: auto; font-size: 8px; fill: #111}
.grid {stroke: #ccc; stroke-width: .5}
.freezer {stroke: #555; stroke-width: 1; stroke-dasharray: 3 2}
.ice {fill: none; stroke: #005a8d; stroke-width: 2}
@media screen and (max-width: 40em) {main {grid-template-columns: 1fr} body {font-size: 12pt; padding: 1em}}
`;
}
