import {html} from "htl";
import type {BatchSheet} from "../../../lib/kitchen/day/batch-sheet.ts";
import {mixPairs} from "../../../lib/kitchen/cooking/mix-pairs.ts";
import {priceForMargin} from "../../../lib/kitchen/product/cost.ts";
import type {ProcessReport} from "../../../lib/kitchen/cooking/follow-process.ts";
import {isFreshDairy, isSourMilk} from "../../../lib/kitchen/cooking/dairy.ts";
import {COOLING} from "../../../lib/kitchen/cooking/pasteurisation.ts";
import {metWords} from "../../../lib/kitchen/cooking/process-steps.ts";
import {productLines} from "../../../lib/kitchen/product/product.ts";
import {decimal, degrees, grams} from "../../../lib/core/format.ts";
import type {Amounts, Day, DayWish, Heating} from "./day.ts";
import {attempt} from "../words/mistakes.ts";
import {type Money, unpricedWords} from "../words/money.ts";
import {limit, setting} from "../words/numbers.ts";
import {figure} from "../page/plot.ts";
import {packetLink} from "../words/packet-link.ts";
import {readable} from "../words/readable.ts";
import type {Asked} from "../words/recipe-text.ts";
import {cell, head, row} from "../page/row.ts";
import {sheet} from "../page/sheet.ts";

/** A line of the verdict. */
function point(heading: string, text: string, amiss = false, more: HTMLElement | "" = ""): HTMLElement {
  return html`<li class=${amiss ? "amiss" : ""}>
    <strong>${heading}</strong><span>${readable(text)} ${more}</span>
  </li>`;
}

/** The day in words: how much, whether it is safe, how long, what for; what must be corrected or is asked comes first. */
export function dayVerdict(
  day: Day,
  wish: DayWish,
  {margin, asked}: {readonly margin: number; readonly asked: readonly Asked[]},
): HTMLElement {
  const {amounts, heating, plan, money, mistakes} = day;
  const made = "value" in amounts ? amounts.value : undefined;
  return html`<section class=${`verdict${made ? "" : " trouble"}`} aria-live="polite">
    <h2>
      ${
        made
          ? html`<span
              >${readable(yieldWords(made, wish))} in
              <b>${made.scaled.runs === 1 ? "one run" : `${made.scaled.runs} runs`}</b></span
            >`
          : html`<span>Please <b>correct</b> this; the rest of the page stands</span>`
      }
    </h2>
    <ul class="says">
      ${mistakes.filter(Boolean).map((mistake) => point("Correct", mistake, true))}
      ${asked.map(({text, leftOut, unknown}) => point(leftOut ? "Left out" : "Asked", text, true, unknown ? packetLink(unknown) : ""))}
      ${made ? makePoints(made, day) : ""} ${"value" in heating ? heatPoints(day, heating.value, wish) : ""}
      ${"value" in plan ? point("Day", dayWords(plan.value.minutesUntilHard)) : ""}
      ${"value" in money ? moneyPoint(money.value, margin) : ""}
    </ul>
  </section>`;
}

function makePoints({scaled, rounding}: Amounts, {tubGrams}: Day): HTMLElement[] {
  const short = shortOf(scaled);
  const full = "value" in tubGrams ? ` A full tub weighs ${grams(tubGrams.value)} g.` : "";
  return [
    point(
      "Make",
      `${grams(scaled.mixGrams)} g of mix (${decimal(scaled.mixMillilitres / 1000, 2)} l)${scaled.runs > 1 ? `, ${grams(scaled.gramsPerRun)} g in each run` : ""}${rippleWords(scaled)}.${full}`,
    ),
    ...(short.length ? [point("Shelf", `Not enough on it: buy ${short.join(", ")}.`, true)] : []),
    ...(rounding.percent >= 2
      ? [
          point(
            "Scale",
            `Its step moves ${rounding.ingredient} by ${decimal(rounding.percent, 0)} %: use a finer one for that.`,
            rounding.percent >= 5,
          ),
        ]
      : []),
  ];
}

function heatPoints(day: Day, {process, chillMinutes}: Heating, wish: DayWish): HTMLElement[] {
  const met =
    isPasteurised(process, wish) &&
    !process.untreated.some((name) => isTender(day, name) && !isSour(day, name));
  const inTime = process.cooledInTime !== false;
  return [
    point("Heat", heatWords(day, process, wish), !met),
    point(
      "Cool",
      `${decimal(chillMinutes, 0)} minutes at ${limit(wish.chiller)} W to ${setting(wish.heating.cool)}. ${inTime ? "That is within" : "Too slow: published are at most"} ${COOLING.minutes} minutes to ${degrees(COOLING.temperature)}.${inTime ? "" : " Split it into flat pans, use more ice, or make less."}`,
      !inTime,
    ),
  ];
}

function moneyPoint({known, whole, unpriced, atInvented}: Money, margin: number): HTMLElement {
  if (!whole) {
    return point(
      "Money",
      `At least ${decimal(known.total, 2)} for the batch. ${unpricedWords(unpriced)}`,
      true,
    );
  }
  const price = attempt(() => decimal(priceForMargin(whole.perTub, margin), 2));
  const sells =
    "value" in price
      ? ` A tub sells at ${price.value} before tax for a margin of ${limit(margin)} %${atInvented && `, ${atInvented}: type yours behind “@”`}.`
      : ` ${price.mistake}`;
  return point(
    "Money",
    `${decimal(whole.total, 2)} for the batch: ${decimal(whole.perTub, 2)} a tub, ${decimal(whole.perPortion, 2)} a portion${atInvented && `, ${atInvented}`}.${sells}`,
  );
}

function yieldWords({scaled}: Amounts, {to, tub, overrun}: DayWish): string {
  if ("tubs" in to) return `${to.tubs} tubs of ${limit(tub)} ml at ${limit(overrun)} % overrun,`;
  return `${decimal(scaled.grams / 1000, 2)} kg of ice cream`;
}

function rippleWords({product}: Amounts["scaled"]): string {
  const ripple = product.components.find(({churned}) => !churned);
  return ripple ? `, and ${grams(ripple.grams)} g of ripple` : "";
}

/** Sentences on the heat, and on whether it pasteurises. */
function heatWords(day: Day, process: ProcessReport, wish: DayWish): string {
  const {untreated, steps} = process;
  if (!isPasteurised(process, wish)) {
    // What goes in cold makes the mix heavier: the hottest that it was, before.
    const peak = Math.max(...steps.filter(({step}) => step.into === "mix").map(({after}) => after));
    return `The mix gets to about ${degrees(peak, 0)}. Not enough by itself to pasteurise: buy milk, cream and egg pasteurised, or heat and hold the mix.`;
  }
  const sour = untreated.filter((name) => isSour(day, name));
  const tender = untreated.filter((name) => isTender(day, name) && !sour.includes(name));
  const late = untreated.filter((name) => !tender.includes(name) && !sour.includes(name));
  return [
    metWords(mixPairs(process)),
    ...(tender.length ? [`Not so ${tender.join(", ")}, which come later.`] : []),
    ...(sour.length
      ? [`${sour.join(", ")}: stirred in cold, not pasteurised by this heat, so buy what was.`]
      : []),
    ...(late.length ? [`${late.join(", ")}: stirred in cold.`] : []),
  ].join(" ");
}

/** Whether the mix is heated so, and not only fruit that goes into it. */
function isPasteurised(process: ProcessReport, {heating}: DayWish): boolean {
  return heating.way !== "cold" && mixPairs(process).length > 0;
}

function isSour({product}: Day, name: string): boolean {
  return productLines(product).some(({ingredient}) => ingredient.name === name && isSourMilk(ingredient));
}

function isTender({product}: Day, name: string): boolean {
  return productLines(product).some(
    ({ingredient}) =>
      ingredient.name === name && (ingredient.allergens?.includes("eggs") || isFreshDairy(ingredient)),
  );
}

function dayWords(minutes: number | undefined): string {
  return minutes === undefined
    ? "The tubs never get as cold as asked: the freezer is too warm for it."
    : `About ${decimal(minutes / 60, 1)} hours from the heat to hard tubs, the base’s rest not counted.`;
}

function shortOf({product, grams: total}: Amounts["scaled"]): string[] {
  return productLines(product, total).flatMap(({ingredient: {name, stock}, grams: g}) =>
    stock !== undefined && g > stock ? [`${grams(g - stock)} g ${name}`] : [],
  );
}

/** The day in one line, for a phone. */
export function dayShortly({amounts, money}: Day, wish: DayWish): string {
  if (!("value" in amounts)) return "Please correct: see the answer";
  const {whole, atInvented} = "value" in money ? money.value : {};
  const words = yieldWords(amounts.value, wish).replace(/,$/, "");
  return whole ? `${words}: ${decimal(whole.perTub, 2)} a tub${atInvented && " (invented prices)"}` : words;
}

/** Amounts to weigh, in working order, by component. */
export function daySheet({runs, sections}: Pick<BatchSheet, "runs" | "sections">): HTMLElement {
  const several = runs > 1;
  const section = ({heading, grams: total, lines}: (typeof sections)[number]) =>
    html`<tbody>
      <tr class="part">
        <th scope="colgroup" colspan=${several ? 4 : 3}>${heading}, ${grams(total)} g when done</th>
      </tr>
      ${lines.map(({ingredient, grams: g, gramsPerRun, measure}) =>
        row(ingredient, [
          grams(g),
          ...(several ? [gramsPerRun === undefined ? "" : grams(gramsPerRun)] : []),
          cell(measure ?? "", "unit"),
        ]),
      )}
    </tbody>`;
  return figure(
    "What to weigh",
    `In working order, in steps of the scale (a tenth of a step below 20 g)${several ? ", and what one run takes" : ""}.`,
    html`<table class="sheet" aria-label="What to weigh, g">
      ${head(["", "g", ...(several ? ["a run"] : []), "or"])}${sections.map(section)}
    </table>`,
  );
}

/** The heat step by step: what is done, and how warm it is then. */
export function heatSheet({process}: Heating): HTMLElement {
  return sheet({
    heading: "Heating",
    reading: "Worked out by heat balance for a pan that loses nothing: a thermometer in the mix decides.",
    columns: ["", "from", "to"],
    body: process.steps.map(({text, notes, before, after}) =>
      row(
        [readable(text), ...notes.map((note) => html`<span class="asked">${readable(note)}</span>`)],
        [degrees(before, 0), degrees(after, 0)],
      ),
    ),
  });
}
