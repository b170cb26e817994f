import {html} from "htl";

/** A line of a list that leads to another page, with what is to stand there in its address. */
export function linkTo(
  page: string,
  words: string,
  state: readonly (readonly [key: string, value: string])[],
): HTMLElement {
  return html`<li>
    <a href=${`./${page}.html#${new URLSearchParams(state.map((pair) => [...pair]))}`}>${words}</a>
  </li>`;
}
