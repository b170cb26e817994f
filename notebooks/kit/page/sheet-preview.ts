import {html} from "htl";
import {batchSheetCsv} from "../../../lib/io/document/batch-sheet-csv.ts";
import {batchSheetHtml} from "../../../lib/io/document/batch-sheet-html.ts";
import {batchSheetMarkdown} from "../../../lib/io/document/batch-sheet-markdown.ts";
import type {BatchSheet} from "../../../lib/kitchen/day/batch-sheet.ts";

/** The batch sheet as a leaf of paper on the page: a button prints it alone, links save it. */
export function sheetPreview(sheet: BatchSheet): HTMLElement {
  const page = batchSheetHtml(sheet);
  // No script of the sheet runs, whatever its names hold; the page may measure how long it is.
  const frame = html`<iframe title="Batch sheet" sandbox="allow-same-origin"></iframe>` as HTMLIFrameElement;
  frame.srcdoc = page;
  const fit = () => {
    const height = frame.contentDocument?.body.offsetHeight;
    if (height) frame.style.height = `${height + 50}px`;
  };
  frame.addEventListener("load", () => {
    fit();
    new ResizeObserver(fit).observe(frame.contentDocument!.body);
  });
  const button = html`<button type="button">Print the sheet</button>`;
  button.addEventListener("click", () => printAlone());
  const save = (ending: string, type: string, text: string) =>
    html`<a
      download=${`batch-sheet.${ending}`}
      href=${URL.createObjectURL(new Blob([text], {type: `${type};charset=utf-8`}))}
      >${NAMES[ending]}</a
    >`;
  return html`<figure class="chart leaf">
    <figcaption>
      <h3>The batch sheet</h3>
      One leaf of A4 for the bench: tick, weigh, log.
    </figcaption>
    <div class="tools">
      ${button}<span>or save it as</span>${save("html", "text/html", page)}
      ${save("md", "text/markdown", batchSheetMarkdown(sheet))}
      ${save("csv", "text/csv", batchSheetCsv(sheet))}
    </div>
    ${frame}
  </figure>`;
}

const NAMES: Readonly<Record<string, string>> = {html: "a page", md: "Markdown", csv: "a table (CSV)"};

/** Prints the page with everything but the leaf left out. */
function printAlone(): void {
  document.documentElement.dataset.print = "leaf";
  addEventListener("afterprint", () => delete document.documentElement.dataset.print, {once: true});
  print();
}
