import {html} from "htl";
import {folded} from "../../../lib/core/nearest.ts";
import {holds, type ValidationRow} from "../../../datasets/published/row.ts";
import {keep, recall} from "../words/address.ts";
import {byName, figureText, type Figures, groupName, nameOf, outside, toleranceUsed} from "./figures.ts";

/** A source of the table, with its lines and the words by which each is found. */
interface Section {
  readonly element: HTMLDetailsElement;
  readonly lines: readonly {readonly element: HTMLElement; readonly words: string}[];
}

/** Every published figure by source, beside what is computed, with a box to find some of them. */
export function figuresTable({rows, titles}: Figures): HTMLElement {
  const sections = [...byName(rows, ({source}) => source)].map(([source, own]) =>
    sectionOf(titles.get(source) ?? source, own),
  );
  const search = html`<input
    type="search"
    id="find-figure"
    placeholder="sucrose, milk, −5 °C …"
    autocomplete="off"
  />` as HTMLInputElement;
  search.value = recall("find")[0] ?? "";
  const every = html`<button type="button"></button>`;
  const count = html`<p class="count" role="status"></p>`;

  const show = () => {
    const words = folded(search.value).split(" ").filter(Boolean);
    let found = 0;
    for (const {element, lines} of sections) {
      let here = 0;
      for (const line of lines) {
        line.element.hidden = !words.every((word) => line.words.includes(word));
        if (!line.element.hidden) here++;
      }
      element.hidden = here === 0;
      if (words.length) element.open = here > 0;
      found += here;
    }
    count.textContent = found ? `${found} of ${rows.length} figures` : "No figure goes by that name.";
    label();
  };
  const shown = () => sections.filter(({element}) => !element.hidden);
  const label = () => {
    every.textContent = shown().every(({element}) => element.open) ? "Fold all" : "Unfold all";
  };
  const openAll = (open: boolean) => {
    for (const {element} of sections) element.open = open;
    label();
  };
  search.addEventListener("input", (event) => {
    event.stopPropagation();
    if (search.value === "") openAll(false);
    keep("find", search.value ? [search.value] : []);
    show();
  });
  every.addEventListener("click", () => openAll(shown().some(({element}) => !element.open)));
  for (const {element} of sections) element.addEventListener("toggle", label);
  // Paper has nothing to unfold.
  addEventListener("beforeprint", () => openAll(true));
  show();

  return html`<div class="figures">
    <div class="find">
      <label for="find-figure">Find a figure</label>
      ${search}${every}${count}
    </div>
    ${sections.map(({element}) => element)}
  </div>`;
}

function sectionOf(title: string, rows: readonly ValidationRow[]): Section {
  const lines = rows.map((row) => ({
    element: lineOf(row),
    words: folded(`${row.what} ${groupName(row)} ${title} ${row.unit} ${holds(row) ? "inside" : "outside"}`),
  }));
  const off = outside(rows).length;
  const most = Math.max(...rows.map(toleranceUsed));
  const summary = off
    ? html`<small class="outside">${off} of ${rows.length} outside</small>`
    : html`<small>${rows.length} inside, the furthest at ${most.toFixed(0)} % of its tolerance</small>`;
  // Roles are said aloud: on a phone each row is laid out in two lines, which takes a table's meaning from it.
  const element = html`<details class="source">
    <summary><span>${title}</span> ${summary}</summary>
    <table class="sheet" role="table" aria-label=${title}>
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col">figure</th>
          <th role="columnheader" scope="col">published</th>
          <th role="columnheader" scope="col">computed</th>
          <th role="columnheader" scope="col">difference</th>
          <th role="columnheader" scope="col">tolerance</th>
          <th role="columnheader" scope="col"></th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        ${lines.map((line) => line.element)}
      </tbody>
    </table>
  </details>` as HTMLDetailsElement;
  return {element, lines};
}

function lineOf(row: ValidationRow): HTMLElement {
  const cell = (value: number) => html`<td role="cell">${figureText(value, row)}</td>`;
  const inside = holds(row);
  const at = Math.min(1, Math.max(-1, row.difference / row.tolerance || 0));
  return html`<tr role="row" class=${inside ? "inside" : "outside"}>
    <th role="rowheader" scope="row">
      ${nameOf(row)}${row.unit && html`<span class="unit">, ${row.unit}</span>`}
    </th>
    ${cell(row.published)}${cell(row.computed)}${cell(row.difference)}${cell(row.tolerance)}
    <td role="cell" class="gauge" style=${`--at: ${at.toFixed(3)}`}>
      <span>${inside ? "inside" : "outside"}</span>
    </td>
  </tr>`;
}
