import {html} from "htl";

/** Controls that stay in sight on the left of what they change; above it on a phone. */
export function controlsBesideAnswers(
  controls: readonly HTMLElement[],
  answers: readonly HTMLElement[],
): HTMLElement {
  return html`<div class="bench">
    <div class="side"><div>${controls}</div></div>
    <div>${answers}</div>
  </div>`;
}
