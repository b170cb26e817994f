import {html} from "htl";
import {decimal} from "../../../lib/core/format.ts";
import {WAYS_OF_MAKING} from "../../../lib/kitchen/cooking/base-process.ts";
import {startingLimits} from "../../../lib/kitchen/begin/starting-brief.ts";
import type {StartingPoint} from "../../../lib/kitchen/begin/starting-points.ts";
import type {StartingRow} from "../../../lib/kitchen/begin/starting-row.ts";
import {whereItScoops} from "../../../lib/kitchen/size/scoop-words.ts";
import {fullName} from "../../../lib/io/text/plain-name.ts";
import {designAddress} from "../controls/design-address.ts";
import {asKept, makeMine} from "../page/make-mine.ts";
import {bounded, limit, unbroken} from "../words/numbers.ts";
import type {BeginScene} from "./scene.ts";

/**
 * The recipe: what it is like in a sentence, what to weigh, and what to do with it.
 *
 * @param priced names whose price is the cook's own: only then is a cost shown
 */
export function beginAnswer(
  {brief, description, counts}: BeginScene,
  priced: {readonly has: (name: string) => boolean},
): HTMLElement {
  const {recipe, sentence, scoop, shares, batch, cost} = description;
  const own = cost !== undefined && recipe.lines.every(({ingredient}) => priced.has(ingredient.name));
  return html`<section class="verdict" aria-live="polite">
    <h2>${unbroken(`${capital(recipe.name)}: ${sentence[0]!.toLowerCase()}${sentence.slice(1)}`)}</h2>
    <ul class="amounts" aria-label="What goes in">
      ${[...recipe.lines]
        .sort((a, b) => b.grams - a.grams)
        .map(
          ({ingredient: {name}, grams}) =>
            html`<li>
              <b>${unbroken(`${onScale(grams)} g`)}</b> <span>${name}${whole(counts[name])}</span>
            </li>`,
        )}
    </ul>
    <p>
      ${unbroken(
        `${decimal(batch, 0)} g in all. ${whereItScoops(scoop)} Sweetness ${decimal(shares.sweetness ?? 0, 0)} (sugar = 100).${
          own ? ` It costs ${decimal((1000 * cost) / batch, 2)} per kg at your prices.` : ""
        }`,
      )}
    </p>
    <div class="tools">
      ${makeMine("Keep as my recipe", () => asKept(recipe, {freezer: scoop.freezer}))}<a
        href=${designAddress(brief)}
        >Change its targets</a
      >
    </div>
  </section>`;
}

/** Grams as they were rounded for the scale: whole ones, a tenth of what is little. */
function onScale(grams: number): string {
  return decimal(grams, Number.isInteger(Number(grams.toFixed(1))) ? 0 : 1);
}

/** A number of whole eggs or yolks, behind the name. */
function whole(count: number | undefined): string {
  return count === undefined ? "" : ` (${count})`;
}

/** Method in a sentence, and the cautions. */
export function beginMaking({point, description: {cautions}}: BeginScene): HTMLElement {
  return html`<section class="minding">
    <h3>Mind</h3>
    <ul>
      <li>It is ${WAYS_OF_MAKING[point.way]}; <em>Batch day</em> has the steps.</li>
      ${cautions.map((words) => html`<li>${unbroken(words)}</li>`)}
    </ul>
  </section>`;
}

/** The limits of a starting point, each with its source. */
export function limitList(point: StartingPoint): HTMLElement {
  const rows = startingLimits(point.key).filter(({min, max}) => min !== undefined || max !== undefined);
  return html`<details class="limits">
    <summary>What it keeps to: ${rows.length} limits, each with where it is from</summary>
    <ul>
      ${rows.map(
        (row) =>
          html`<li>
            ${unbroken(`${subject(row)} ${range(row)}`)}
            <small
              >${row.source}${row.where ? `, ${row.where}` : ""}${row.read && row.read !== "primary text" ? ` (${row.read})` : ""}${row.note ? `; ${row.note}` : ""}</small
            >
          </li>`,
      )}
    </ul>
  </details>`;
}

function subject({of, name}: StartingRow): string {
  return of === "target" ? fullName(name) : name;
}

function range({of, name, min, max}: StartingRow): string {
  const unit =
    name === "scoopTemperature" ? " °C" : name === "sweetness" ? "" : of === "target" ? " %" : " % of it";
  if (min === max) return `${limit(min!)}${unit}`;
  if (max === undefined) return `${bounded("min", min!)}${unit}`;
  return min === undefined ? `${bounded("max", max)}${unit}` : `${limit(min)} to ${limit(max)}${unit}`;
}

function capital(words: string): string {
  return `${words[0]!.toUpperCase()}${words.slice(1)}`;
}
