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

/** Asks for the prices that are invented, by a way to the shelf where the line of each stands open; nothing where there are none. */
export function askPrices(invented: readonly string[]): HTMLElement | string {
  if (!invented.length) return "";
  const lines = new URLSearchParams(invented.map((name) => ["price", name]));
  return html`<a class="ask-prices" href=${`./my-shelf.html#${lines}`}>set yours on your shelf</a>`;
}

/** The same as a paragraph of its own. */
export function invitation(invented: readonly string[]): HTMLElement | undefined {
  return invented.length
    ? html`<p class="aside invented">Money is at invented prices: ${askPrices(invented)}.</p>`
    : undefined;
}
