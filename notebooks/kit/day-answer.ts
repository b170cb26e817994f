import {html} from "htl";
import type {CostLine} from "../../lib/kitchen/cost.ts";
import {priceForMargin} from "../../lib/kitchen/cost.ts";
import {COOLING} from "../../lib/kitchen/pasteurisation.ts";
import {productLines} from "../../lib/kitchen/product.ts";
import {decimal, degrees, grams} from "../../lib/core/figures.ts";
import type {Day, DayWish} from "./day.ts";
import {limit, setting} from "./numbers.ts";
import {figure} from "./plot.ts";
import {readable} from "./readable.ts";
import {cell, head, row} from "./row.ts";
import {sheet} from "./sheet.ts";

/** The day in words: how much, whether it is safe, how long, what for. */
export function dayVerdict(day: Day, wish: DayWish, margin: number): HTMLElement {
  const {scaled, process, chillMinutes, cost, plan, rounding} = day;
  const point = (heading: string, text: string, amiss = false) =>
    html`<li class=${amiss ? "amiss" : ""}><strong>${heading}</strong><span>${readable(text)}</span></li>`;
  const short = shortOf(day);
  const met =
    process.steps.some(({pairs}) => pairs.length) && !process.untreated.some((name) => isTender(day, name));
  const inTime = process.cooledInTime !== false;
  return html`<section class="verdict" aria-live="polite">
    <h2>
      ${readable(yieldWords(day, wish))} in <b>${scaled.runs === 1 ? "one run" : `${scaled.runs} runs`}</b>
    </h2>
    <ul class="says">
      ${point(
        "Make",
        `${grams(scaled.mixGrams)} g of mix (${decimal(scaled.mixMillilitres / 1000, 2)} l)${scaled.runs > 1 ? `, ${grams(scaled.gramsPerRun)} g in each run` : ""}${rippleWords(day)}. A full tub weighs ${grams(day.tubGrams)} g.`,
      )}
      ${point("Heat", heatWords(day), !met)}
      ${point(
        "Cool",
        `${decimal(chillMinutes, 0)} minutes at ${limit(wish.chiller)} W to ${setting(wish.heating.cool)}. ${inTime ? "That is within" : "Too slow: published are at most"} ${COOLING.minutes} minutes to ${degrees(COOLING.temperature)}.${inTime ? "" : " Split it into flat pans, use more ice, or make less."}`,
        !inTime,
      )}
      ${point("Day", dayWords(plan.minutesUntilHard))}
      ${point(
        "Money",
        `${decimal(cost.total, 2)} for the batch: ${decimal(cost.perTub, 2)} a tub, ${decimal(cost.perPortion, 2)} a portion. A tub sells at ${decimal(priceForMargin(cost.perTub, margin), 2)} before tax for a margin of ${limit(margin)} %.`,
      )}
      ${short.length ? point("Shelf", `Not enough on it: buy ${short.join(", ")}.`, true) : ""}
      ${
        rounding.percent >= 2
          ? point(
              "Scale",
              `Its step moves ${rounding.ingredient} by ${decimal(rounding.percent, 0)} %: use a finer one for that.`,
              rounding.percent >= 5,
            )
          : ""
      }
    </ul>
  </section>`;
}

function yieldWords({scaled}: Day, {to, tub, overrun}: DayWish): string {
  if ("tubs" in to) return `${to.tubs} tubs of ${limit(tub)} ml at ${limit(overrun)} % overrun,`;
  return `${decimal(scaled.grams / 1000, 2)} kg of ice cream`;
}

function rippleWords({scaled}: Day): string {
  const ripple = scaled.product.components.find(({churned}) => !churned);
  return ripple ? `, and ${grams(ripple.mass)} g of ripple` : "";
}

/** What the heat does, and whether that is a published pair. */
export function heatWords(day: Day): string {
  const {steps, untreated, peak} = day.process;
  const pairs = steps.flatMap((step) => step.pairs);
  if (!pairs.length) {
    return `The mix gets to about ${degrees(peak, 0)}. That alone is no published pasteurisation pair: buy milk, cream and egg pasteurised, or heat and hold the mix.`;
  }
  const tender = untreated.filter((name) => isTender(day, name));
  const named = [
    ...new Set(
      pairs.map(
        ({country, temperature, seconds}) =>
          `${country} ${degrees(temperature)} for ${seconds >= 120 ? `${seconds / 60} min` : `${seconds} s`}`,
      ),
    ),
  ];
  const late = untreated.filter((name) => !tender.includes(name));
  return `A published pasteurisation pair is met: ${named.join("; ")}.${tender.length ? ` Not by ${tender.join(", ")}, which come later.` : ""}${late.length ? ` ${late.join(", ")} go in unheated: wash and peel them well.` : ""}`;
}

function isTender({scaled}: Day, name: string): boolean {
  return productLines(scaled.product).some(
    ({ingredient}) =>
      ingredient.name === name && ingredient.allergens?.some((one) => one === "eggs" || one === "milk"),
  );
}

function dayWords(minutes: number | undefined): string {
  return minutes === undefined
    ? "The tubs never get as cold as asked: the freezer is too warm for it."
    : `About ${decimal(minutes / 60, 1)} hours from the heat to hard tubs.`;
}

function shortOf({scaled}: Day): string[] {
  return productLines(scaled.product, scaled.grams).flatMap(({ingredient: {name, stock}, grams: g}) =>
    stock !== undefined && g > stock ? [`${grams(g - stock)} g ${name}`] : [],
  );
}

/** The day in one line, for a phone. */
export function dayShortly(day: Day, wish: DayWish): string {
  return `${yieldWords(day, wish).replace(/,$/, "")}: ${decimal(day.cost.perTub, 2)} a tub`;
}

/** What to weigh, in working order, by component. */
export function daySheet({sheet: {runs, sections}}: Day): HTMLElement {
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
export function heatSheet({process}: Day): HTMLElement {
  return sheet({
    heading: "How warm it gets",
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

/** What each ingredient costs, with the packs to open and what they leave. */
export function spendSheet({cost}: Day): HTMLElement {
  const packed = cost.lines.some(({packs}) => packs !== undefined);
  const pack = ({packs, leftover}: Partial<CostLine> = {}) => {
    if (!packed) return [];
    return packs === undefined ? ["", ""] : [String(packs), grams(leftover ?? 0)];
  };
  return sheet({
    heading: "Where the money goes",
    reading:
      "At the price per kg of the shelf, or as typed behind “@” in the recipe; a pack there, as in “@ 6.20 for 1000 g”, adds how many to open and what is left.",
    columns: ["", "g", "money", ...(packed ? ["packs", "left, g"] : [])],
    body: [...cost.lines]
      .sort((a, b) => b.cost - a.cost)
      .map((line) => row(line.ingredient, [grams(line.grams), decimal(line.cost, 2), ...pack(line)])),
    foot: [
      row("in all", [
        grams(cost.lines.reduce((sum, line) => sum + line.grams, 0)),
        decimal(cost.total, 2),
        ...pack(),
      ]),
      ...(packed ? [row("to lay out, whole packs", ["", decimal(cost.outlay, 2), ...pack()])] : []),
    ],
  });
}
