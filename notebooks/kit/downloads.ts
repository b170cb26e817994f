import {html} from "htl";

/** A file that the page offers: made when it is asked for. */
interface Offered {
  readonly label: string;
  readonly name: string;
  readonly text: () => string;
}

/** Buttons that save what the page shows, and one that prints it. */
export function downloads(files: readonly Offered[]): HTMLElement {
  const buttons = files.map((file) => {
    const button = html`<button type="button">Save ${file.label}</button>`;
    button.addEventListener("click", () => save(file));
    return button;
  });
  const print = html`<button type="button">Print this page</button>`;
  print.addEventListener("click", () => window.print());
  return html`<div class="tools">${buttons}${print}</div>`;
}

function save({name, text}: Offered): void {
  const type = name.endsWith(".csv") ? "text/csv" : "application/json";
  const address = URL.createObjectURL(new Blob([text()], {type: `${type};charset=utf-8`}));
  const link = html`<a href=${address} download=${name}></a>`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** A name as the name of a file: letters, figures and hyphens. */
export function fileName(text: string): string {
  return (
    text
      .normalize("NFKD")
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, "-")
      .replaceAll(/^-|-$/g, "")
      .slice(0, 60) || "recipe"
  );
}
