import {html} from "htl";

/** A mistake, said where the answer would be. */
export function mistakeNotice(mistake: string): HTMLElement {
  return html`<section class="verdict trouble" aria-live="polite">
    <h2>Please <b>correct</b></h2>
    <p>${mistake}</p>
  </section>`;
}
