import {html} from "htl";
import {glassTransition} from "../../../lib/freezing/glass-transition.ts";
import {saturations, sandiness} from "../../../lib/freezing/solubility.ts";
import {extrapolations} from "../../../lib/freezing/validity.ts";
import {decimal, degrees} from "../../../lib/core/format.ts";
import {plainName} from "../../../lib/io/text/plain-name.ts";
import type {Composition} from "../../../lib/pantry/parts.ts";
import {setting, unbroken} from "../words/numbers.ts";
import {figure} from "../page/plot.ts";
import {row, small} from "../page/row.ts";
import {sheet, table} from "../page/sheet.ts";

/** Solutes that may crystallise in the unfrozen water, whether lactose may turn to sand, and how far the glass is. */
export function crystalSheet(composition: Composition, freezer: number): HTMLElement {
  const body = saturations(composition, freezer).map(({part, concentration, solubility, ratio}) =>
    row(plainName(part), [decimal(concentration, 0), decimal(solubility, 0), `${decimal(ratio, 1)}×`]),
  );
  const columns = [small("g per 100 g of water"), "dissolved", "soluble", "over"];
  return figure(
    "What may crystallise",
    `What the water still liquid at ${setting(freezer)} has dissolved, against what it could at rest. Above 1 crystals can form, though cold syrup is slow: lactose needs weeks. The source of most solubilities is not checked; they are for one substance alone in water, and extrapolated below their data.`,
    ...(body.length ? [table({name: "What may crystallise", columns, body})] : []),
    html`<ul class="cautions">
      <li>${sandWords(composition)}</li>
      <li>${glassWords(composition, freezer)}</li>
    </ul>`,
  );
}

const SAND = {
  none: "By the rule of the trade, lactose stays dissolved over months of storage",
  "sell soon": "By the rule of the trade, lactose may turn to sand in storage; sell it within weeks",
  likely: "By the rule of the trade, lactose is likely to turn to sand",
} as const;

function sandWords(composition: Composition): HTMLElement {
  const {lactose, longStorage, quickTurnover, caution} = sandiness(composition);
  if (lactose === 0) return html`<span><strong>No lactose</strong> that could turn to sand.</span>`;
  const words = `the mix has ${decimal(lactose, 1)} g of lactose in 100 g, the rule allows its water ${decimal(longStorage, 1)} g for long storage and ${decimal(quickTurnover, 1)} g for quick sale (Arbuckle, source not checked).`;
  return html`<span><strong>${SAND[caution]}:</strong> ${unbroken(words)}</span>`;
}

function glassWords(composition: Composition, freezer: number): HTMLElement {
  const glass = glassTransition(composition);
  if (glass === undefined)
    return html`<span><strong>No sugars,</strong> so no glass of theirs to speak of.</span>`;
  const above = freezer - glass;
  return html`<span
    ><strong
      >${above > 0 ? `Ice crystals go on growing at ${setting(freezer)}:` : "Ice crystals rest:"}</strong
    >
    what is not frozen turns to glass near ${degrees(glass, 0)} (the sugars’ own transitions by mass, source
    not checked), and the freezer stands ${decimal(Math.abs(above), 0)} °C ${above > 0 ? "above" : "below"}
    that. ${above > 0 ? "Colder and steadier keeps the texture longer." : ""}</span
  >`;
}

/** The solutes that the curve uses beyond what was measured, and how much of the liquid water rests on each. */
export function extrapolationSheet(composition: Composition, freezer: number): HTMLElement {
  const heading = "Used beyond its data";
  const beyond = extrapolations(composition, freezer);
  if (!beyond.length)
    return figure(heading, `Every solute of this mix was measured down to ${setting(freezer)}.`);
  return sheet({
    heading,
    reading:
      "Solutes whose measured freezing points end before the freezer’s temperature; below, their curve goes on in the manner of sucrose.",
    columns: ["solute", "data end at", "keeps liquid, g in 100 g"],
    body: beyond.map(({part, coldest, held}) => row(plainName(part), [degrees(coldest), decimal(held, 1)])),
  });
}
