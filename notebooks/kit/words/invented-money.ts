import {html} from "htl";

/** A sum of money that rests on invented prices, slanted and in another ink; the words are for the sentence beside it. */
export function inventedMoney(text: string): HTMLElement {
  return html`<i class="invented" title="at invented prices">${text}</i>`;
}
