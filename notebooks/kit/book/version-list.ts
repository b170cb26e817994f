import {html} from "htl";
import type {EarlierVersion} from "../keep/kept-recipe.ts";
import {when} from "./when.ts";

/** The earlier versions of a recipe: each unfolds to its text, and can be restored. */
export function versionList(
  versions: readonly EarlierVersion[],
  restore: (version: EarlierVersion) => void,
): HTMLElement {
  if (!versions.length)
    return html`<p class="aside">
      No earlier version yet: one is kept whenever the recipe has rested, or a press changes it.
    </p>`;
  return html`<ul class="versions">
    ${versions.map((version) => {
      const button = html`<button type="button">Restore</button>`;
      button.addEventListener("click", () => restore(version));
      return html`<li>
        <details>
          <summary>${when(version.changed)}: ${version.name}</summary>
          <pre>${version.text}</pre>
          ${version.notes ? html`<p class="aside">${version.notes}</p>` : ""} ${button}
        </details>
      </li>`;
    })}
  </ul>`;
}
