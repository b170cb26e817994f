import {html} from "htl";

/** A file that the page offers: made when it is asked for. */
interface Offered {
  readonly label: string;
  readonly name: string;
  readonly text: () => string;
}

/** Buttons that save what the page shows, one that copies its address and one that prints it. */
export function downloads(files: readonly Offered[]): HTMLElement {
  const buttons = files.map((file) => {
    const button = html`<button type="button">Save ${file.label}</button>`;
    button.addEventListener("click", () => save(file));
    return button;
  });
  const print = html`<button type="button">Print this page</button>`;
  print.addEventListener("click", () => window.print());
  return html`<div class="tools">${buttons}${linkButton()}${print}</div>`;
}

/** Copies the page's address, in which all its settings are; where the browser forbids that, it is shown to be copied. */
function linkButton(): HTMLElement {
  const button = html`<button type="button">Copy a link</button>`;
  button.addEventListener("click", () => {
    const say = (words: string) => {
      button.textContent = words;
      setTimeout(() => (button.textContent = "Copy a link"), 2000);
    };
    const show = () => {
      const box = html`<input type="text" readonly aria-label="Address of this page" />` as HTMLInputElement;
      box.value = location.href;
      button.replaceWith(box);
      box.select();
    };
    // Without a secure origin there is no clipboard at all.
    const clipboard = navigator.clipboard as Clipboard | undefined;
    if (clipboard) clipboard.writeText(location.href).then(() => say("Copied"), show);
    else show();
  });
  return button;
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
