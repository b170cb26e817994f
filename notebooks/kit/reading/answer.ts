import {html} from "htl";
import {decimal, degrees} from "../../../lib/core/format.ts";
import type {RecipeDescription} from "../../../lib/kitchen/reading/describe-recipe.ts";
import {whereItScoops} from "../../../lib/kitchen/size/scoop-words.ts";
import {unbroken} from "../words/numbers.ts";

/** The verdict: a sentence, and a few more. */
export function readingVerdict(
  {sentence, scoop, kind, cost, batch, freezing, shares}: RecipeDescription,
  gaps: number,
): HTMLElement {
  const where = whereItScoops(scoop);
  const point = freezing.initialFreezingPoint;
  const money = cost === undefined ? "" : ` It costs ${decimal((1000 * cost) / batch, 2)} per kg.`;
  const sweet =
    shares.sweetness === undefined ? "" : ` Sweetness ${decimal(shares.sweetness, 0)} (sugar = 100).`;
  return html`<section class="verdict" aria-live="polite">
    <h2>${unbroken(sentence)}</h2>
    ${gaps ? html`<p class="alarm">${gaps === 1 ? "One line is" : `${gaps} lines are`} left out below until you answer: all this is of the others.</p>` : ""}
    <p>
      ${unbroken(`${capital(kind.name)}, by what is in it.${where === sentence ? "" : ` ${where}`}${point === undefined ? "" : ` It starts to freeze at ${degrees(point)}.`}${sweet}${money}`)}
    </p>
  </section>`;
}

/** The answer in one line, for a phone. */
export function readingShortly({sentence}: RecipeDescription): string {
  return sentence;
}

/** Cautions. */
export function readingCautions({cautions}: RecipeDescription): HTMLElement | undefined {
  if (!cautions.length) return undefined;
  return html`<section class="minding">
    <h3>Mind</h3>
    <ul>
      ${cautions.map((words) => html`<li>${unbroken(words)}</li>`)}
    </ul>
  </section>`;
}

function capital(words: string): string {
  return `${words[0]!.toUpperCase()}${words.slice(1)}`;
}
