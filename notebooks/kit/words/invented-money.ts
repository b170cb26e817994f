import {html} from "htl";

/** A sum of money that rests on invented prices, slanted and in another ink; the words are for the sentence beside it. */
export function inventedMoney(text: string): HTMLElement {
  return html`<i class="invented" title="at invented prices">${text}</i>`;
}

/** The same where it rests on the price of one ingredient: pressed, it leads to the line of the shelf where that is set. */
export function inventedPrice(text: string, name: string): HTMLElement {
  return html`<a
    class="invented"
    href=${shelfAddress(name)}
    title=${`invented: set your own price of ${name}`}
    >${text}</a
  >`;
}

/** The line of the cook's shelf where the price of an ingredient is set. */
export function shelfAddress(name: string): string {
  return `./my-shelf.html#${new URLSearchParams({price: name})}`;
}

/** Asks for the prices that are invented, each by a way to its line of the shelf; nothing where there are none. */
export function askPrices(invented: readonly string[]): HTMLElement | string {
  if (!invented.length) return "";
  return html`<span class="ask-prices"
    >Set yours once, for all pages:
    ${invented.map((name, i) => html`${i ? ", " : ""}<a href=${shelfAddress(name)}>${name}</a>`)}.</span
  >`;
}

/** The same as a paragraph of its own. */
export function invitation(invented: readonly string[]): HTMLElement | undefined {
  return invented.length ? html`<p class="aside invented">${askPrices(invented)}</p>` : undefined;
}
