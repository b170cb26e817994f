import {html} from "htl";
import {boilingPoint} from "../../../lib/kitchen/sugar/sucrose.ts";
import type {RippleInBase} from "../../../lib/kitchen/ripple/ripple-in-base.ts";
import type {RippleMade, RipplePlan} from "../../../lib/kitchen/ripple/ripple-brief.ts";
import {decimal, degrees, grams} from "../../../lib/core/format.ts";
import {styleOf} from "../page/mixes.ts";
import type {Attempt} from "../words/mistakes.ts";
import {limit, setting} from "../words/numbers.ts";
import {inventedPrices, inventedWords} from "../words/price-origin.ts";
import {packetLink} from "../words/packet-link.ts";
import {readable} from "../words/readable.ts";
import type {Asked} from "../words/recipe-text.ts";
import type {PlannedTub, RippleScene} from "./scene.ts";
import {row, withUnit} from "../page/row.ts";
import {keyed, sheet} from "../page/sheet.ts";

/** The two lines of the page's charts and tables. */
export const SIDES = {
  ripple: {label: "Ripple", style: styleOf(0)},
  base: {label: "Base", style: styleOf(1)},
} as const;

/** A line of the verdict. */
function point(heading: string, text: string, amiss = false, more: HTMLElement | "" = ""): HTMLElement {
  return html`<li class=${amiss ? "amiss" : ""}>
    <strong>${heading}</strong><span>${readable(text)} ${more}</span>
  </li>`;
}

/** The ripple in words: what to boil down to what, and how it behaves in the tub; what is asked comes first. */
export function tubVerdict(
  {plan, made, ripple, unpriced, own, onward}: PlannedTub,
  asked: readonly Asked[],
): HTMLElement {
  const misses = plan.status === "infeasible" ? plan.misses : [];
  const trouble = misses.length > 0;
  const behaves = "value" in ripple ? ripple.value : undefined;
  return html`<section class=${`verdict${trouble ? " trouble" : ""}`} aria-live="polite">
    <h2>
      ${
        trouble
          ? html`<span><b>No ripple</b> meets all of this; the nearest one</span>`
          : html`<span>The cheapest ripple</span>`
      }
      ${" "}${behaves ? headline(behaves.behaviour) : ""}
    </h2>
    <ul class="says">
      ${"mistake" in ripple ? point("Correct", ripple.mistake, true) : ""}
      ${asked.map(({text, leftOut, unknown}) => point(leftOut ? "Left out" : "Asked", text, true, unknown ? packetLink(unknown) : ""))}
      ${
        unpriced.length
          ? point(
              "Asked",
              `No price for ${unpriced.join(", ")}: planned as if it cost what the others do on average. Type it beside the ingredient, 0 for what costs nothing.`,
              true,
            )
          : ""
      }
      ${misses.map(({target, found, min, max, unit}) =>
        point(
          "Missed",
          `${target} comes to ${decimal(found, 1)}${unit && unit !== "°Brix" ? ` ${unit}` : ""}, ${min !== undefined && found < min ? `wanted at least ${limit(min)}` : `wanted at most ${limit(max ?? 0)}`}.`,
        ),
      )}
      ${potPoints(made, {unpriced, own})}
      ${
        behaves
          ? [
              point("Water", waterWords(behaves.behaviour, behaves.freezer)),
              point("Spoon", spoonWords(behaves.behaviour, behaves.freezer)),
            ]
          : ""
      }
    </ul>
    <p class="next">
      <a href=${onward}>Take it to the batch day</a>: scale it, heat it, cost it, print the sheet.
    </p>
  </section>`;
}

function potPoints(
  {recipe, cooked, cost}: RippleMade,
  {unpriced, own}: Pick<PlannedTub, "unpriced" | "own">,
): HTMLElement[] {
  const pot = recipe.lines.map(({ingredient, grams: g}) => `${grams(g)} g ${ingredient.name}`);
  const {grams: mass, waterBoiledOff, sievedOut} = cooked;
  const used = recipe.lines.map(({ingredient}) => ingredient);
  const gap = used.some(({name}) => unpriced.includes(name));
  const atInvented = inventedWords(inventedPrices(used, own), used.length);
  const costs = gap
    ? ""
    : ` It costs ${decimal((1000 * cost) / mass, 2)} a kilogram${atInvented && `, ${atInvented}`}.`;
  return [
    point(
      "Pot",
      `${pot.join(", ")}.${sievedOut > 0 ? ` Cook the fruit, sieve it and weigh: about ${grams(sievedOut)} g stay behind.` : ""}`,
    ),
    point(
      "Boil",
      `down to ${grams(mass)} g on the scale: ${grams(waterBoiledOff)} g of water go. A refractometer then shows ${decimal(cooked.brix, 0)} °Brix${cooked.brix <= 84 ? `, and it boils at about ${degrees(boilingPoint(cooked.brix), 0)} at sea level` : ""}.${costs}`,
    ),
  ];
}

/** Headline on how it will behave, in half a line. */
export function headline({bleeds, hard, runsWhenScooped, ripple}: RippleInBase): HTMLElement {
  if (bleeds) return html`<span>stays liquid in the freezer and <b>bleeds</b></span>`;
  if (hard) return html`<span>freezes <b>${ripple.verdict}</b></span>`;
  return runsWhenScooped
    ? html`<span>stays soft, and <b>runs where it is scooped</b></span>`
    : html`<span>stays <b>soft and in its place</b></span>`;
}

/** Direction in which water moves between ripple and base. */
function waterWords({base, ripple, waterMoves, bleeds, thirst}: RippleInBase, freezer: number): string {
  const points = `The ripple starts to freeze at ${pointOf(ripple.freezingPoint)}, the base at ${pointOf(base.freezingPoint)}.`;
  if (bleeds)
    return `${points} At ${setting(freezer)} the ripple holds no ice, so it goes on drawing water from the base: up to ${decimal(thirst, 0)} g per 100 g. It thins and bleeds. Use less sugar or syrup, or bind it with pectin or starch.`;
  const moves = {
    "into the ripple": "Until it freezes, water moves from the base into the ripple",
    "into the base": "Until it freezes, water moves from the ripple into the base, and its rim turns thicker",
    "neither way": "Neither draws water from the other",
  }[waterMoves];
  return `${points} ${moves}; once both hold ice they are in balance.`;
}

function spoonWords({ripple, base, hard, bleeds, runsWhenScooped}: RippleInBase, freezer: number): string {
  const compared = `At ${setting(freezer)} it is ${timesAsHard(ripple)} as hard as ice cream that scoops, the base ${timesAsHard(base)}`;
  if (hard)
    return `${compared}: it freezes ${ripple.verdict}. More sugar, or dextrose or glucose syrup in place of sugar, makes it softer.`;
  if (bleeds) return `${compared}: it is a syrup in the tub.`;
  const spoon =
    base.verdict === "firm" || base.verdict === "hard"
      ? `. The spoon goes through the ripple, but the base is ${base.verdict}`
      : ", so the spoon goes through";
  return runsWhenScooped
    ? `${compared}${spoon}. At −13 °C, where it is dipped, the ripple holds no ice and runs unless pectin or starch binds it.`
    : `${compared}${spoon}. At −13 °C, where it is dipped, the ripple still holds some ice.`;
}

/** Hardness as a multiple of what scoops, in words. */
function timesAsHard({hardness}: RippleInBase["base"]): string {
  return `${decimal(hardness, hardness < 9.95 ? 1 : 0)} times`;
}

function pointOf(value: number | undefined): string {
  return value === undefined ? "below −40 °C" : degrees(value);
}

/** The answer in one line, for a phone. */
export function rippleShortly(plan: RipplePlan, {cooked}: RippleMade, scene: Attempt<RippleScene>): string {
  const start = `${plan.status === "optimal" ? "" : "Nearest: "}${grams(cooked.grams)} g at ${decimal(cooked.brix, 0)} °Brix`;
  if ("mistake" in scene) return start;
  const {behaviour} = scene.value;
  const how = behaviour.bleeds
    ? "bleeds"
    : behaviour.hard
      ? `freezes ${behaviour.ripple.verdict}`
      : behaviour.runsWhenScooped
        ? "runs when scooped"
        : "soft, stays put";
  return `${start}, ${how}`;
}

/** Ripple and base beside each other in the freezer. */
export function sideBySide({base, ripple}: RippleInBase, freezer: number): HTMLElement {
  const both = (name: string, unit: string, read: (side: typeof base) => string) =>
    row(withUnit(name, unit), [read(ripple), read(base)]);
  return sheet({
    heading: "Side by side in the tub",
    reading: `At ${setting(freezer)}, in 100 g of each. A ripple holds no air, which makes it firmer.`,
    name: "Side by side",
    columns: ["", ...keyed([SIDES.ripple, SIDES.base])],
    body: [
      both("strength", "°Brix", (side) => decimal(side.brix, 1)),
      both("freezing point", "", (side) => pointOf(side.freezingPoint)),
      both("water activity there", "", ({waterActivity: value}) =>
        value === undefined ? "–" : decimal(value, 3),
      ),
      both("ice", "g", (side) => decimal(side.ice, 1)),
      both("water still liquid", "g", (side) => decimal(side.liquidWater, 1)),
      both("hard phase: ice and solid fat", "g", (side) => decimal(side.hardPhase, 1)),
      both("as hard as what scoops", "times", (side) => decimal(side.hardness, side.hardness < 9.95 ? 1 : 0)),
      both("from the freezer", "", (side) => side.verdict),
    ],
  });
}
