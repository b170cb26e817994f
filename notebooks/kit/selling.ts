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
import {mistakeNotice} from "./mistake-notice.ts";
import {attempt} from "./mistakes.ts";
import {limit} from "./numbers.ts";
import {figure} from "./plot.ts";
import {readable} from "./readable.ts";
import {row, small} from "./row.ts";
import {sheet} from "./sheet.ts";

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
  const line = (name: string, money: number) =>
    row(name, [
      decimal(money, 2),
      ...(prices
        ? [
            decimal(priceForMargin(money, prices.margin), 2),
            decimal(priceForMargin(money, prices.margin, prices.tax), 2),
          ]
        : []),
    ]);
  return sheet({
    heading: `What it costs${prices ? ", and what to ask" : ""}`,
    reading: prices
      ? `Ingredients alone: work, energy, packaging and what is left in the bowl are for the margin of ${limit(prices.margin)} % of the price before tax to carry.`
      : "Ingredients alone, what boils off included.",
    name: "What it costs",
    columns: [small("money"), "costs", ...(prices ? ["price", "with tax"] : [])],
    body: [
      line("a kilogram", cost.perKilogram),
      line("a litre", cost.perLitre),
      line(`a tub of ${limit(tub)} ml`, cost.perTub),
      line(`a portion of ${limit(portion)} ml`, cost.perPortion),
    ],
  });
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
  return sheet({
    heading: "What it feeds",
    reading: `Energy by the factors of Regulation (EU) 1169/2011, Annex XIV; rounded as a label asks. ${lacking.join(" ")}`,
    name: "Nutrition",
    columns: ["", "100 g", `portion, ${grams(mass)} g`],
    body: nutritionLabel(of100).map(({name, text}, i) =>
      row(name.startsWith("of which") ? html`<span class="within">${name}</span>` : name, [
        text ?? "not known",
        ofPortion[i]!.text ?? "not known",
      ]),
    ),
  });
}

/** The words of a label, or what is amiss with the names that it is to promise. */
export function labelOrMistake(product: Product, named: readonly string[]): HTMLElement {
  const words = attempt(() => labelWords(product, named));
  return "value" in words ? words.value : mistakeNotice(words.mistake);
}

/** The words of a label: ingredients with allergens set apart and the percentage of what the name promises. */
function labelWords(product: Product, named: readonly string[]): HTMLElement {
  const allergens = productAllergens(product);
  return figure(
    "What the label says",
    "Ingredients by weight as they went in, allergens set apart, with the percentage of what the name promises (Regulation (EU) 1169/2011).",
    html`<p class="label-words">
      <strong>Ingredients:</strong> ${ingredientList(product, named).map(piece)}.
    </p>`,
    html`<p class="label-words">
      ${
        allergens.length
          ? html`<span
              ><strong>Contains ${allergens.join(", ")}.</strong> Only what the ingredients declare: mind
              traces from tools, scoops and neighbouring tubs.</span
            >`
          : "No ingredient declares an allergen: read their own labels, and mind traces."
      }
    </p>`,
  );
}

function piece({text, emphasised}: LabelText): Node {
  return emphasised ? html`<b class="allergen">${text}</b>` : document.createTextNode(text);
}

/** What the finished product may be called, by each standard's own conditions. */
export function standardsSheet(product: Product, overrun: number): HTMLElement {
  const standing = standingOf(product, overrun);
  return sheet({
    heading: "What it may be called",
    reading:
      "The composition of the whole tub against published standards: fat, milk solids, weight, egg. Fruit churned into the base counts as base, which makes the check the stricter.",
    columns: [small("standard"), "met"],
    body: STANDARDS.map((standard) => {
      const checks = checkStandard(standard, standing);
      const failed = checks.filter(({met}) => !met);
      const aside = (text: string) => html`<span class="asked">${text}</span>`;
      return row(
        [standard, aside(checks[0]!.source), ...failed.map((one) => aside(readable(shortfall(one))))],
        [failed.length ? html`<span class="none">no</span>` : html`<strong>yes</strong>`],
      );
    }),
  });
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
