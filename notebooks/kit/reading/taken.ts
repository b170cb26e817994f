import {html} from "htl";
import type {OpenRecipe} from "../keep/open-recipe.ts";

/** Says beside the changes that one was taken, with the way back, for as long as nothing else has changed. */
export function takenNotice(open: OpenRecipe): {readonly element: HTMLElement; took(): void} {
  const button = html`<button type="button">Undo this change</button>`;
  button.addEventListener("click", open.undo);
  const element = html`<p class="tools" data-side="answer" role="status" hidden>
    The recipe is changed. ${button}
  </p>`;
  let text: string | undefined;
  open.follow(() => {
    element.hidden = text === undefined || open.now?.text !== text;
  });
  return {
    element,
    took() {
      text = open.now?.text;
      element.hidden = text === undefined;
    },
  };
}
