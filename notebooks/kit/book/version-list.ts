import {html} from "htl";
import type {EarlierVersion} from "../keep/kept-recipe.ts";
import {unbroken} from "../words/numbers.ts";
import {when} from "./when.ts";

/** The earlier versions of a recipe, as a list. */
interface VersionList {
  readonly element: HTMLElement;
  /** Says beside each what it differs by from the recipe as it is now. */
  compare(words: (version: EarlierVersion) => Promise<string>): void;
}

/**
 * The earlier versions of a recipe: each unfolds to its text, and can be restored.
 *
 * @param unfolded times at which those were changed that stand unfolded
 */
export function versionList(
  versions: readonly EarlierVersion[],
  restore: (version: EarlierVersion) => void,
  unfolded: readonly string[],
): VersionList {
  const places = versions.map((version) => ({version, words: html`<small></small>`}));
  let asked = 0;
  return {
    element: versions.length ? listOf(places, restore, unfolded) : none(),
    compare(words) {
      const turn = ++asked;
      for (const {version, words: place} of places)
        void words(version).then((said) => {
          // The recipe may have changed meanwhile.
          if (turn === asked) place.replaceChildren(unbroken(said));
        });
    },
  };
}

function none(): HTMLElement {
  return html`<p class="aside">
    No earlier version yet: one is kept whenever the recipe has rested, or a press changes it.
  </p>`;
}

function listOf(
  places: readonly {readonly version: EarlierVersion; readonly words: HTMLElement}[],
  restore: (version: EarlierVersion) => void,
  unfolded: readonly string[],
): HTMLElement {
  return html`<ul class="versions">
    ${places.map(({version, words}) => {
      const button = html`<button type="button">Restore</button>`;
      button.addEventListener("click", () => restore(version));
      return html`<li>
        <details data-changed=${version.changed} open=${unfolded.includes(version.changed)}>
          <summary>${when(version.changed)}: ${version.name} ${words}</summary>
          <pre>${version.text}</pre>
          ${version.notes ? html`<p class="aside">${version.notes}</p>` : ""} ${button}
        </details>
      </li>`;
    })}
  </ul>`;
}
