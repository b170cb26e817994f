import {html} from "htl";
import {grams} from "../../../lib/core/format.ts";
import type {ComparedAmount} from "../../../lib/kitchen/reading/compare-recipes.ts";
import {type MixStyle, signOf} from "../page/mixes.ts";
import {figure, legend} from "../page/plot.ts";
import {unbroken} from "../words/numbers.ts";
import type {CompareScene} from "./scene.ts";

/** Differences of the recipes, the most noticed first, then each recipe in a sentence. */
export function compareVerdict({comparison, mixes, gaps}: CompareScene): HTMLElement {
  const {differences, alike, recipes} = comparison;
  const [first = "Nothing that one would notice.", ...others] = differences;
  return html`<section class="verdict differences" aria-live="polite">
    <h2>${unbroken(first)}</h2>
    ${gaps.length ? html`<p class="alarm">Lines of ${gaps.join(" and ")} could not be read and are left out: open it in <em>Read a recipe</em>.</p>` : ""}
    <ul>
      ${others.map((words) => html`<li>${unbroken(words)}</li>`)}
      ${alike === undefined ? "" : html`<li class="alike">${alike}</li>`}
    </ul>
    <ul class="each">
      ${recipes.map(
        ({name, sentence}, i) =>
          html`<li>
            ${signOf(mixes[i]!.style)} <span><b>${name}.</b> ${unbroken(sentence)}</span>
          </li>`,
      )}
    </ul>
  </section>`;
}

/** The amounts that differ, each ingredient on a line of its own with a mark for each recipe. */
export function compareAmounts({comparison: {amounts, same}, mixes}: CompareScene): HTMLElement | undefined {
  if (!amounts.length) return undefined;
  const styles = mixes.map(({style}) => style);
  return figure(
    "What goes in, where it differs",
    "Grams in a kilogram of each. The further apart the marks, the more it differs.",
    legend(mixes),
    html`<ul class="amounts-apart">
      ${amounts.map((one) => apart(one, styles))}
    </ul>`,
    same.length ? html`<p class="aside">As much in all: ${same.join(", ")}.</p>` : html`<p hidden></p>`,
  );
}

/** Two charts, one below the other, and side by side on paper. */
export function pair(...charts: readonly (Element | undefined)[]): HTMLElement {
  return html`<div class="pair">${charts.filter((one) => one !== undefined)}</div>`;
}

/** Parts that do not go onto paper. */
export function screenOnly(content: Element | undefined): HTMLElement | undefined {
  return content && html`<div class="screen-only">${content}</div>`;
}

function apart({ingredient, perKilogram}: ComparedAmount, styles: readonly MixStyle[]): HTMLElement {
  const most = Math.max(...perKilogram);
  const at = (amount: number) => `left: ${(100 * amount) / most}%`;
  return html`<li>
    <span class="what">${ingredient}</span>
    <span class="track" aria-hidden="true"
      >${perKilogram.map((amount, i) => html`<i style=${at(amount)}>${signOf(styles[i]!)}</i>`)}</span
    >
    <span class="how"
      >${perKilogram.map((amount, i) => html`<span>${signOf(styles[i]!)} ${amount > 0 ? unbroken(`${grams(amount)} g`) : "none"}</span>`)}</span
    >
  </li>`;
}
