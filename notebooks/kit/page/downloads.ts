import {html} from "htl";
import {linkHash} from "../words/address.ts";

/** A file that the page offers: made when it is asked for. */
interface Offered {
  readonly label: string;
  readonly name: string;
  readonly text: () => string;
}

/**
 * Buttons that save what the page shows, one that copies its address and one that prints it.
 *
 * @param hash what the copied address carries, where that is not what the page's own does
 */
export function downloads(files: readonly Offered[], hash: () => string = linkHash): HTMLElement {
  const buttons = files.map((file) => {
    const button = html`<button type="button">Save ${file.label}</button>`;
    button.addEventListener("click", () => save(file));
    return button;
  });
  const print = html`<button type="button">Print this page</button>`;
  print.addEventListener("click", () => window.print());
  return html`<div class="tools">${buttons}${copyLink(hash)}${print}</div>`;
}

/** A button that copies the address of the page as it stands, for another person. */
export function copyLink(hash: () => string = linkHash): HTMLElement {
  return linkButton("Copy a link", () => addressWith(hash()));
}

/** Copies an address; where the browser forbids that, it is shown to be copied. */
export function linkButton(words: string, address: () => string): HTMLElement {
  const button = html`<button type="button">${words}</button>`;
  button.addEventListener("click", () => {
    const say = (said: string) => {
      button.textContent = said;
      setTimeout(() => (button.textContent = words), 2000);
    };
    const show = () => {
      const box = html`<input type="text" readonly aria-label="The address to copy" />` as HTMLInputElement;
      box.value = address();
      button.replaceWith(box);
      box.select();
    };
    // Without a secure origin there is no clipboard at all.
    const clipboard = navigator.clipboard as Clipboard | undefined;
    if (clipboard) clipboard.writeText(address()).then(() => say("Copied"), show);
    else show();
  });
  return button;
}

/** The address of this page, or of one beside it, with what it carries. */
export function addressWith(hash: string, page = location.pathname): string {
  return new URL(`${page}${hash}`, location.href).href;
}

/** Saves a text as a file. */
export function save({name, text}: {readonly name: string; readonly text: () => string}): void {
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
