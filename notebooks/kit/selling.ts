import {html} from "htl";
import type {Caution} from "../../lib/kitchen/cautions.ts";
import {priceForMargin, type ProductCost} from "../../lib/kitchen/cost.ts";
import {ingredientList, type LabelText} from "../../lib/kitchen/label.ts";
import {nutritionLabel} from "../../lib/kitchen/nutrition-label.ts";
import {nutritionOf} from "../../lib/kitchen/nutrition.ts";
import type {Product} from "../../lib/kitchen/product.ts";
import {productAllergens, productDensity} from "../../lib/kitchen/product.ts";
import {standingOf} from "../../lib/kitchen/product-standing.ts";
import {checkStandard, type StandardCheck, STANDARDS} from "../../lib/kitchen/standards.ts";
import {decimal, grams} from "../../lib/core/figures.ts";
import {attempt, mistakeNotice} from "./mistakes.ts";
import {limit} from "./numbers.ts";
import {readable} from "./readable.ts";

/** Sizes in which a product is sold. */
export interface Sizes {
  /** ml */
  readonly tub: number;
  /** ml */
  readonly portion: number;
}

/** What a product costs by the kg, litre, tub and portion, and what to ask for it. */
export function priceSheet(
  cost: ProductCost,
  {tub, portion}: Sizes,
  prices?: {readonly margin: number; readonly tax: number},
): HTMLElement {
  const row = (name: string, money: number) =>
    html`<tr>
      <th scope="row">${name}</th>
      <td>${decimal(money, 2)}</td>
      ${
        prices
          ? [
              html`<td>${decimal(priceForMargin(money, prices.margin), 2)}</td>`,
              html`<td>${decimal(priceForMargin(money, prices.margin, prices.tax), 2)}</td>`,
            ]
          : []
      }
    </tr>`;
  return html`<figure class="chart">
    <figcaption>
      <h3>What it costs${prices ? ", and what to ask" : ""}</h3>
      ${
        prices
          ? `Ingredients alone: work, energy, packaging and what is left in the bowl are for the margin of ${limit(prices.margin)} % of the price before tax to carry.`
          : "Ingredients alone, what boils off included."
      }
    </figcaption>
    <table class="sheet" aria-label="What it costs">
      <thead>
        <tr>
          <th scope="col"><span class="unit">money</span></th>
          <th scope="col">costs</th>
          ${prices ? [html`<th scope="col">price</th>`, html`<th scope="col">with tax</th>`] : []}
        </tr>
      </thead>
      <tbody>
        ${row("a kilogram", cost.perKilogram)} ${row("a litre", cost.perLitre)}
        ${row(`a tub of ${limit(tub)} ml`, cost.perTub)}
        ${row(`a portion of ${limit(portion)} ml`, cost.perPortion)}
      </tbody>
    </table>
  </figure>`;
}

/** Nutrition of 100 g and of a portion, as a label declares it. */
export function nutritionSheet(product: Product, overrun: number, {portion}: Sizes): HTMLElement {
  const mass = portion * productDensity(product, overrun);
  const of100 = nutritionOf(product);
  const ofPortion = nutritionLabel(nutritionOf(product, mass));
  const lacking = [
    ...(of100.saturates === undefined
      ? [
          `Saturates are not known for ${of100.lackingSaturates.join(", ")}: take them from the packs’ own labels.`,
        ]
      : []),
    ...(of100.lackingSodium.length
      ? ["Where an ingredient’s sodium is not known, only added salt and milk salts count."]
      : []),
  ];
  return html`<figure class="chart">
    <figcaption>
      <h3>What it feeds</h3>
      Energy by the factors of Regulation (EU) 1169/2011, Annex XIV; rounded as a label asks.
      ${lacking.join(" ")}
    </figcaption>
    <table class="sheet" aria-label="Nutrition">
      <thead>
        <tr>
          <th scope="col"></th>
          <th scope="col">100 g</th>
          <th scope="col">portion, ${grams(mass)} g</th>
        </tr>
      </thead>
      <tbody>
        ${nutritionLabel(of100).map(
          ({name, text}, i) =>
            html`<tr>
              <th scope="row">
                ${name.startsWith("of which") ? html`<span class="within">${name}</span>` : name}
              </th>
              <td>${text ?? "not known"}</td>
              <td>${ofPortion[i]!.text ?? "not known"}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </figure>`;
}

/** The words of a label, or what is amiss with the names that it is to promise. */
export function labelOrMistake(product: Product, named: readonly string[]): HTMLElement {
  const words = attempt(() => labelWords(product, named));
  return "value" in words ? words.value : mistakeNotice(words.mistake);
}

/** The words of a label: ingredients with allergens set apart and the percentage of what the name promises. */
function labelWords(product: Product, named: readonly string[]): HTMLElement {
  const allergens = productAllergens(product);
  return html`<figure class="chart">
    <figcaption>
      <h3>What the label says</h3>
      Ingredients by weight as they went in, allergens set apart, with the percentage of what the name
      promises (Regulation (EU) 1169/2011).
    </figcaption>
    <p class="label-words"><strong>Ingredients:</strong> ${ingredientList(product, named).map(piece)}.</p>
    <p class="label-words">
      ${
        allergens.length
          ? html`<span
              ><strong>Contains ${allergens.join(", ")}.</strong> Only what the ingredients declare: mind
              traces from tools, scoops and neighbouring tubs.</span
            >`
          : "No ingredient declares an allergen: read their own labels, and mind traces."
      }
    </p>
  </figure>`;
}

function piece({text, emphasised}: LabelText): Node {
  return emphasised ? html`<b class="allergen">${text}</b>` : document.createTextNode(text);
}

/** What the finished product may be called, by each standard's own conditions. */
export function standardsSheet(product: Product, overrun: number): HTMLElement {
  const standing = standingOf(product, overrun);
  const rows = STANDARDS.map((standard) => {
    const checks = checkStandard(standard, standing);
    const failed = checks.filter(({met}) => !met);
    return html`<tr>
      <th scope="row">
        ${standard}<span class="asked">${checks[0]!.source}</span>
        ${failed.map((one) => html`<span class="asked">${readable(shortfall(one))}</span>`)}
      </th>
      <td>${failed.length ? html`<span class="none">no</span>` : html`<strong>yes</strong>`}</td>
    </tr>`;
  });
  return html`<figure class="chart">
    <figcaption>
      <h3>What it may be called</h3>
      The composition of the whole tub against published standards: fat, milk solids, weight, egg. Fruit
      churned into the base counts as base, which makes the check the stricter.
    </figcaption>
    <table class="sheet" aria-label="What it may be called">
      <thead>
        <tr>
          <th scope="col"><span class="unit">standard</span></th>
          <th scope="col">met</th>
        </tr>
      </thead>
      <tbody>
        ${rows}
      </tbody>
    </table>
  </figure>`;
}

/** `milk fat: 7.3 %, at least 10`. */
function shortfall({rule, found, unit, min, max, below}: StandardCheck): string {
  const wanted =
    min !== undefined && found < min
      ? `at least ${limit(min)}`
      : `${below ? "less than" : "at most"} ${limit(max ?? 0)}`;
  return `${rule}: ${decimal(found, 2)} ${unit}, ${wanted}`;
}

/** What to mind, whatever else the page says. */
export function cautionList(cautions: readonly Caution[]): HTMLElement {
  return html`<section class="minding">
    <h3>Mind</h3>
    <dl>
      ${cautions.map(
        ({topic, text}) =>
          html`<div>
            <dt>${topic}</dt>
            <dd>${readable(text)}</dd>
          </div>`,
      )}
    </dl>
  </section>`;
}

/** What holds where nothing else is known: shown while the answer needs mending. */
export const ALWAYS: readonly Caution[] = [
  {
    topic: "egg",
    text: "Raw egg and raw milk may carry germs: heat the mix to a published pair of temperature and time, or buy them pasteurised.",
  },
  {
    topic: "hot sugar",
    text: "Sugar sauces boil hotter than water, stick and burn: long sleeves, a deep pot, no children near.",
  },
  {topic: "law", text: "Follow your local code; this is not licensed advice."},
];
