import {html} from "htl";
import type {Caution} from "../../../lib/kitchen/safety/caution.ts";
import {priceForMargin} from "../../../lib/kitchen/product/cost.ts";
import {allergenWords} from "../../../lib/kitchen/label/allergen-words.ts";
import {labelGaps} from "../../../lib/kitchen/label/label-gaps.ts";
import {ingredientList, type LabelText} from "../../../lib/kitchen/label/label.ts";
import type {LabelName} from "../../../lib/kitchen/label/label-names.ts";
import {nutritionLabel} from "../../../lib/kitchen/label/nutrition-label.ts";
import {nutritionOf} from "../../../lib/kitchen/product/nutrition.ts";
import type {Product} from "../../../lib/kitchen/product/product.ts";
import {productDensity} from "../../../lib/kitchen/product/product.ts";
import {productFacts} from "../../../lib/kitchen/label/product-facts.ts";
import {
  checkStandard,
  STANDARD_FORCE,
  type StandardCheck,
  STANDARDS,
} from "../../../lib/kitchen/label/standards.ts";
import {decimal, grams} from "../../../lib/core/format.ts";
import {inventedMoney} from "../words/invented-money.ts";
import {attempt} from "../words/mistakes.ts";
import {type Money, type Sizes, unpricedWords} from "../words/money.ts";
import {limit} from "../words/numbers.ts";
import {figure} from "../page/plot.ts";
import type {Promised} from "../words/promise.ts";
import {readable} from "../words/readable.ts";
import {row, small} from "../page/row.ts";
import {sheet} from "../page/sheet.ts";

/** Cost of a product by the kg, litre, tub and portion, and what to ask for it; what to type where a price is missing. */
export function priceSheet(
  {whole, unpriced, atInvented}: Money,
  {tub, portion}: Sizes,
  prices?: {readonly margin: number; readonly tax: number},
): HTMLElement {
  const heading = `What it costs${prices ? ", and what to ask" : ""}`;
  if (!whole) return figure(heading, unpricedWords(unpriced));
  const asked = attempt(() => prices && priceForMargin(1, prices.margin, prices.tax));
  if ("mistake" in asked) return figure(heading, asked.mistake);
  const money = (value: number) => (atInvented ? inventedMoney(decimal(value, 2)) : decimal(value, 2));
  const line = (name: string, value: number) =>
    row(name, [
      money(value),
      ...(prices
        ? [
            money(priceForMargin(value, prices.margin)),
            money(priceForMargin(value, prices.margin, prices.tax)),
          ]
        : []),
    ]);
  const origin = atInvented && `Reckoned ${atInvented}. `;
  return sheet({
    heading,
    reading: prices
      ? `${origin}Ingredients alone: work, energy, packaging and what is left in the bowl are for the margin of ${limit(prices.margin)} % of the price before tax to carry.`
      : `${origin}Ingredients alone, what boils off included.`,
    name: "What it costs",
    columns: [small("money"), "costs", ...(prices ? ["price", "with tax"] : [])],
    body: [
      line("a kilogram", whole.perKilogram),
      line("a litre", whole.perLitre),
      line(`a tub of ${limit(tub)} ml`, whole.perTub),
      line(`a portion of ${limit(portion)} ml`, whole.perPortion),
    ],
  });
}

/** Nutrition of 100 g and of a portion, as a label declares it. */
export function nutritionSheet(product: Product, overrun: number, {portion}: Sizes): HTMLElement {
  const of100 = nutritionOf(product);
  const sized = attempt(() => {
    const mass = portion * productDensity(product, overrun);
    return {mass, lines: nutritionLabel(nutritionOf(product, mass))};
  });
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
    heading: "Nutrition",
    reading: `Energy by the factors of Regulation (EU) 1169/2011, Annex XIV; rounded as a label asks. ${lacking.join(" ")}`,
    name: "Nutrition",
    columns: ["", "100 g", ...("value" in sized ? [`portion, ${grams(sized.value.mass)} g`] : [])],
    body: nutritionLabel(of100).map(({name, text}, i) =>
      row(name.startsWith("of which") ? html`<span class="within">${name}</span>` : name, [
        text ?? "not known",
        ...("value" in sized ? [sized.value.lines[i]!.text ?? "not known"] : []),
      ]),
    ),
  });
}

/** The words of a label: ingredients with allergens set apart and the percentage of what the name promises. */
export function labelSheet(
  product: Product,
  promise: Promised,
  called: Readonly<Record<string, LabelName>> = {},
): HTMLElement {
  const allergens = allergenWords(product, called);
  const gaps = labelGaps(product, called);
  return figure(
    "What the label says",
    "Ingredients by weight as they went in, allergens set apart, with the percentage of what the name promises (Regulation (EU) 1169/2011).",
    html`<p class="label-words">
      <strong>Ingredients:</strong> ${ingredientList(product, promise.named, called).map(piece)}.
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
    ...(gaps.length
      ? [
          html`<p class="label-words">
            <strong>Before it is printed:</strong> ${gaps.map((gap, i) => `${i ? "; " : ""}${gap}`)}.
          </p>`,
        ]
      : []),
    ...(promise.missing.length
      ? [
          html`<p class="label-words">
            The name promises ${promise.missing.map((name) => `“${name}”`).join(", ")}, which the recipe does
            not hold: take it out of “What the name promises”, or put it into the recipe.
          </p>`,
        ]
      : []),
  );
}

function piece({text, emphasised}: LabelText): Node {
  return emphasised ? html`<b class="allergen">${text}</b>` : document.createTextNode(text);
}

/** Names that the finished product may bear, by each standard's own conditions; whether it is law or custom is said. */
export function standardsSheet(product: Product, overrun: number): HTMLElement {
  const facts = attempt(() => productFacts(product, overrun));
  if ("mistake" in facts) return figure("What it may be called", facts.mistake);
  return sheet({
    heading: "What it may be called",
    reading:
      "The composition of the whole tub against published standards: fat, milk solids, weight, egg. Fruit, nuts and cocoa count as bulky flavours, for as much as 21 CFR 135.110(a)(3) lets them. A name by law is not to be used where it is not met; the UK’s were revoked in 2014 and are custom: to miss one breaks no law.",
    columns: [small("standard"), "met"],
    body: STANDARDS.map((standard) => {
      const checks = checkStandard(standard, facts.value);
      const failed = checks.filter(({met}) => !met);
      const aside = (text: string) => html`<span class="asked">${text}</span>`;
      const custom = STANDARD_FORCE[standard] === "custom";
      return row(
        [
          standard,
          aside(`${custom ? "Custom" : "Law"}: ${checks[0]!.source}`),
          ...failed.map((one) => aside(readable(shortfall(one)))),
        ],
        [
          failed.length
            ? html`<span class="none">${custom ? "below custom" : "no"}</span>`
            : html`<strong>yes</strong>`,
        ],
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

/** Cautions to mind, whatever else the page says. */
export function cautionList(cautions: readonly Caution[]): HTMLElement {
  return html`<section class="minding">
    <h3>Safety</h3>
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

/** Cautions that hold where nothing else is known: shown while the answer needs mending. */
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
