import {html} from "htl";
import {suggestChangesSteps} from "../../../lib/balance/change/suggest-changes.ts";
import type {Change, ChangeOptions, Changes} from "../../../lib/balance/change/change-types.ts";
import {decimal, degrees} from "../../../lib/core/format.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {changed} from "../controls/control.ts";
import {longRun} from "../page/long-run.ts";
import {unbroken} from "../words/numbers.ts";

/** The search for changes: a control that tells when it has found them. */
export interface ChangeSearch {
  readonly element: HTMLElement;
  /** The changes of a recipe as far as they are known; `key` is the same for the same question. */
  ask(key: string, recipe: Recipe, options: ChangeOptions): Changes | undefined;
}

/** A search in steps, so that the page keeps answering. */
export function changeSearch(): ChangeSearch {
  const run = longRun();
  let asked: string | undefined;
  let found: Changes | undefined;
  return {
    element: run.element,
    ask(key, recipe, options) {
      if (key === asked) return found;
      run.stop();
      [asked, found] = [key, undefined];
      run.start({
        words: "Looking for the least noticed changes …",
        steps: suggestChangesSteps(recipe, options),
        done: (changes) => {
          found = changes;
          if (asked === key) queueMicrotask(() => changed(run.element));
        },
      });
      return found;
    },
  };
}

const NAMES: Readonly<Record<Change["towards"], string>> = {
  softer: "Softer",
  firmer: "Firmer",
  cheaper: "Cheaper",
  "less sweet": "Less sweet",
};

/**
 * The changes to choose from, each with what to add and take away and what it does.
 *
 * @param take called with the change that the cook takes
 */
export function changeList(
  {changes, nothingFor, unpriced, cutShort}: Changes,
  take: (change: Change) => void,
): HTMLElement | undefined {
  const unknown = unpriced.length
    ? html`<p class="aside">
        No price is known of ${unpriced.join(", ")}: nothing cheaper was looked for. Write it behind the line,
        as in “@ 1.20”.
      </p>`
    : "";
  return html`<section class="changes" data-side="answer">
    <h2>
      ${["No change was found", "One change, the least noticed of its kind"][changes.length] ?? `${["Two", "Three"][changes.length - 2] ?? changes.length} changes, each the least noticed of its kind`}
    </h2>
    ${
      changes.length
        ? html`<ul>
            ${changes.map((change) => changeItem(change, take))}
          </ul>`
        : ""
    }
    ${nothingFor.map((one) => html`<p class="aside">${unbroken(`${NAMES[one.towards]}: ${one.words}.`)}</p>`)}
    ${unknown} ${cutShort ? html`<p class="aside">The search was cut short: a better one may exist.</p>` : ""}
  </section>`;
}

function changeItem(change: Change, take: (change: Change) => void): HTMLElement {
  const {towards, wanted, reached, words, scoop, sweetness, cost, recipe} = change;
  // A change keeps the batch as heavy as it is.
  const mass = recipe.lines.reduce((sum, {grams}) => sum + grams, 0);
  const perKilogram = (money: number) => decimal((1000 * money) / mass, 2);
  const button = html`<button type="button">Take it</button>` as HTMLButtonElement;
  button.addEventListener("click", () => take(change));
  button.setAttribute("aria-label", `Take it: ${NAMES[towards].toLowerCase()}`);
  const at = (one: {temperature?: number}) =>
    one.temperature === undefined ? "never hard" : degrees(one.temperature);
  return html`<li>
    <h3>${NAMES[towards]}<small>${reached ? wanted : `as near as it goes to “${wanted}”`}</small></h3>
    <p>${unbroken(`${words[0]!.toUpperCase()}${words.slice(1)}.`)}</p>
    <dl>
      ${scoop.before.unsure || scoop.after.unsure ? "" : pair("scoops at", at(scoop.before), at(scoop.after))}
      ${pair("sweetness", decimal(sweetness.before, 1), decimal(sweetness.after, 1))}
      ${cost ? pair("cost per kg", perKilogram(cost.before), perKilogram(cost.after)) : ""}
    </dl>
    ${button}
  </li>`;
}

function pair(name: string, before: string, after: string): HTMLElement {
  return html`<div>
    <dt>${name}</dt>
    <dd>${unbroken(before)} → <b>${unbroken(after)}</b></dd>
  </div>`;
}
