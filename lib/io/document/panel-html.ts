import {printable} from "../../core/errors.ts";
import {expectList, expectShape, expectText} from "../../core/shape.ts";
import {type EuPanel, expectEuPanel} from "../../kitchen/label/eu-panel.ts";
import type {UsPanel, UsPanelLine} from "../../kitchen/label/us-panel.ts";
import {escapeHtml} from "../text/escape.ts";
import {MEASURED_FACE} from "../text/letter-widths.ts";

/** Footnote of a US panel: 21 CFR 101.9(d)(9). */
const FOOTNOTE =
  "* The % Daily Value (DV) tells you how much a nutrient in a serving of food contributes to a daily diet. 2,000 calories a day is used for general nutrition advice.";

/**
 * Nutrition Facts as a whole HTML document, in the order and with the weights of 21 CFR 101.9(d): heading, servings, calories in the
 * largest figures, nutrients with their daily values, vitamins, footnote. Type sizes of the vertical format are from memory. A figure
 * that is not known prints as "not known"; such a panel is not fit for sale.
 *
 * @param panel as `usPanel` makes it
 * @param title of the page
 * @throws InputError for anything but a panel
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 100}];
 * const panel = usPanel(makeProduct("Milk ice", [baseComponent({name: "milk ice", lines})]));
 * usPanelHtml(panel, "Milk ice").slice(0, 15); // => "<!doctype html>"
 * ```
 */
export function usPanelHtml(panel: UsPanel, title: string): string {
  return page(title, usPanelTable(panel));
}

/** The panel alone, for a page that has a style of its own. */
export function usPanelTable(panel: UsPanel): string {
  const advice = "make it with usPanel(product)";
  const shape = {
    serving: "text",
    columns: "list",
    nutrients: "list",
    vitamins: "list",
    calories: "list",
  } as const;
  expectShape(panel, shape, "panel", advice);
  for (const key of ["nutrients", "vitamins"] as const)
    expectList(panel[key], {name: "text", amounts: "list", daily: "list"}, `panel.${key}`, advice);
  const {servings, serving, columns, calories, nutrients, vitamins} = panel;
  const wide = columns.length + 1;
  const cells = ({name, amounts, daily}: UsPanelLine, small: boolean) => {
    const [first] = amounts;
    const named = name === "Added Sugars" ? `Includes ${first ?? "not known:"} Added Sugars` : name;
    const label =
      small || name === "Added Sugars" || /^(Saturated|Dietary|Total Sugars|Sugar A)/.test(name)
        ? safe(named)
        : name === "Trans Fat"
          ? "<i>Trans</i> Fat"
          : `<b>${safe(named)}</b>`;
    const beside = name === "Added Sugars" ? "" : ` ${safe(first ?? "not known")}`;
    return columns.map((_, i) =>
      i === 0
        ? `<th scope="row">${label}${beside}</th><td>${percent(daily[0], small)}</td>`
        : `<td>${safe(amounts[i] ?? "not known")} ${percent(daily[i], small)}</td>`,
    );
  };
  const row = (line: UsPanelLine, small: boolean, first: boolean) =>
    `<tr class="level${line.level}${small ? " small" : ""}${first ? " thick" : ""}">${cells(line, small).join("")}</tr>`;
  const heads =
    columns.length > 1
      ? `<tr class="heads"><th></th>${columns.map((column) => `<th>${safe(column)}</th>`).join("")}</tr>`
      : "";
  return `<table class="facts">
<caption>Nutrition Facts</caption>
<tr><td colspan="${wide}">${servings ? `${safe(servings)}<br>` : ""}<span class="serving"><b>Serving size</b> <b>${safe(serving)}</b></span></td></tr>
${heads}<tr class="thick calories"><th scope="row">${columns.length > 1 ? "" : "<small>Amount per serving</small><br>"}Calories</th>${calories.map((figure) => `<td>${safe(figure)}</td>`).join("")}</tr>
<tr class="middle"><td colspan="${wide}"><b>% Daily Value*</b></td></tr>
${nutrients.map((line) => row(line, false, false)).join("\n")}
${vitamins.map((line, i) => row(line, true, i === 0)).join("\n")}
<tr class="middle foot"><td colspan="${wide}">${safe(FOOTNOTE)}</td></tr>
</table>
`;
}

function percent(text: string | undefined, small: boolean): string {
  if (text === undefined) return "";
  return small ? safe(text) : `<b>${safe(text)}</b>`;
}

/**
 * A nutrition declaration of the European Union as a whole HTML document: a table with figures aligned (Regulation (EU) No 1169/2011,
 * Article 34(2)), of 100 g and of a portion with its share of the reference intakes.
 *
 * @param panel as `euPanel` makes it
 * @param title of the page
 * @throws InputError for anything but a panel
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 100}];
 * const panel = euPanel(makeProduct("Milk ice", [baseComponent({name: "milk ice", lines})]));
 * euPanelHtml(panel, "Milk ice").slice(0, 15); // => "<!doctype html>"
 * ```
 */
export function euPanelHtml(panel: EuPanel, title: string): string {
  expectEuPanel(panel);
  const {per100, portion, sentences, lacking} = panel;
  const heads = ["100 g", ...(portion ? [`portion, ${Math.round(portion.grams)} g`, "% of intake"] : [])];
  const rows = per100.map(({name, text}, i) => {
    const figures = [
      text ?? "not known",
      ...(portion ? [portion.lines[i]?.text ?? "not known", portion.intakes[i] ?? ""] : []),
    ];
    const level = name.startsWith("of which") ? ' class="level1"' : "";
    return `<tr${level}><th scope="row">${safe(name)}</th>${figures.map((figure) => `<td>${safe(figure)}</td>`).join("")}</tr>`;
  });
  const said = [
    ...sentences,
    ...(lacking.length
      ? [`Not known of ${lacking.join(", ")}: take it from their packs before you sell under it.`]
      : []),
  ];
  return page(
    title,
    `<table class="declared">
<caption>Nutrition</caption>
<tr><th></th>${heads.map((head) => `<th>${safe(head)}</th>`).join("")}</tr>
${rows.join("\n")}
</table>
${said.map((sentence) => `<p>${safe(sentence)}</p>`).join("\n")}
`,
  );
}

function safe(text: string): string {
  return escapeHtml(printable(text));
}

function page(title: string, body: string): string {
  expectText(title, "title");
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${safe(title)}</title>
<style>${PANEL_STYLE}</style>
</head>
<body>
${body}</body>
</html>
`;
}

/** The look of both panels; the sizes of the US one in points: 22, 16, 10, 8 and 6. */
export const PANEL_STYLE = `
@page {margin: 10mm}
.facts, .declared {font: 8pt/1.25 ${MEASURED_FACE}; color: #000; background: #fff; border-collapse: collapse; border: .8pt solid #000}
.facts {min-width: 70mm}
.facts th, .facts td {white-space: nowrap}
.facts .foot td {white-space: normal; width: 0; min-width: 100%}
.facts caption {font: 900 22pt/1 ${MEASURED_FACE}; text-align: left; padding: 1mm; border: .8pt solid #000; border-bottom: 0; color: #000; background: #fff}
.facts td, .facts th {text-align: left; font-weight: 400; padding: .3mm 1mm; border-bottom: .4pt solid #000}
.facts td + td, .facts th + td, .facts th + th {text-align: right}
.facts .serving {display: flex; justify-content: space-between; font-size: 10pt}
.facts .thick > * {border-top: 5pt solid #000}
.facts .middle > * {border-top: 3pt solid #000; text-align: right}
.facts .calories th {font: 900 16pt/1 ${MEASURED_FACE}}
.facts .calories small {font: 700 8pt/1.2 ${MEASURED_FACE}}
.facts .calories td {font: 900 22pt/1 ${MEASURED_FACE}; vertical-align: bottom}
.facts .level1 th, .declared .level1 th {padding-left: 4mm}
.facts .level2 th {padding-left: 8mm}
.facts .foot td {font-size: 6pt; text-align: left; border-bottom: 0}
.declared caption {font-weight: 700; text-align: left; padding: 1mm}
.declared td, .declared th {padding: .4mm 1.5mm; border-bottom: .4pt solid #000; text-align: right; font-weight: 400}
.declared th:first-child {text-align: left}
p {font: 8pt/1.3 ${MEASURED_FACE}; margin: 1mm 0}
`;
