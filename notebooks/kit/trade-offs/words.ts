import {html} from "htl";
import type {BindingLimit, Turnover} from "../../../lib/balance/mix/changes-between.ts";
import {decimal} from "../../../lib/core/format.ts";
import {bounded, unbroken} from "../words/numbers.ts";
import {inWords} from "../words/take-words.ts";
import {cell, column, row} from "../page/row.ts";
import {sheet} from "../page/sheet.ts";
import {labelOf} from "../controls/targets.ts";
import {type Axis, valueText} from "./axes.ts";
import {askPrices} from "../words/invented-money.ts";
import {type MixMoney, OWN_MONEY} from "../views/mix-money.ts";
import {compromiseOf, type Front, type TradeScene} from "./scene.ts";

/** The front in words: its ends, and what the first and the last step along it cost. */
export function tradeVerdict(scene: TradeScene, money: MixMoney = OWN_MONEY): HTMLElement {
  const invented =
    money.words &&
    html`<p class="aside invented">Costs are ${money.words}: ${askPrices(money.invented)}.</p>`;
  const {front, x, y} = scene;
  const {points} = front;
  const [first, last] = [points[0]!, points.at(-1)!];
  if (points.length === 1) {
    return html`<section class="verdict" aria-live="polite">
      <h2>There is nothing to trade: <b>one mix</b> is best in both</h2>
      <p>
        ${unbroken(`It has ${x.name} ${valueText(x, first.x)} and ${y.name} ${valueText(y, first.y)}. Choose another pair, or change a limit.`)}
      </p>
      ${invented}${leftOut(front)}
    </section>`;
  }
  return html`<section class="verdict" aria-live="polite">
    <h2>
      From <b>${nonbreaking(valueText(x, first.x))}</b> at ${y.name} ${nonbreaking(valueText(y, first.y))} to
      <b>${nonbreaking(valueText(x, last.x))}</b> at ${nonbreaking(y.read(last.y))}
    </h2>
    <ul class="says">
      ${say(capital(x.best), point(scene, 0))} ${say(capital(y.best), point(scene, points.length - 1))}
      ${between(scene)}
    </ul>
    ${invented}${leftOut(front)}
  </section>`;
}

/** Words on the mixes between the ends: the one to choose, or that none stands out. */
function between(scene: TradeScene): HTMLElement | string {
  const index = compromiseOf(scene.front);
  if (index !== undefined)
    return say("Best compromise", `${point(scene, index)} Further either way costs more than it gains.`);
  return scene.front.points.length > 2
    ? say("In between", "No mix stands out: all along the line, what one side gains the other loses.")
    : "";
}

function say(heading: string, text: string): HTMLElement {
  return html`<li><strong>${heading}</strong><span>${unbroken(text)}</span></li>`;
}

/** A corner of the front in a sentence. */
function point({front, x, y, brief}: TradeScene, index: number): string {
  const {x: atX, y: atY, mix} = front.points[index]!;
  const cost =
    mix.cost === undefined || x.key === "cost" || y.key === "cost"
      ? ""
      : `, at ${decimal((1000 * mix.cost) / brief.batch, 2)} per kg`;
  return `${capital(x.name)} ${valueText(x, atX)}, ${y.name} ${valueText(y, atY)}${cost}.`;
}

function nonbreaking(text: string): string {
  return text.replaceAll(" ", "\u00a0");
}

function leftOut({leftOut: rules}: Front): HTMLElement | string {
  return rules.length
    ? html`<p class="aside">
        Whole units and least amounts were left out here (${inWords(rules)}): no mix with them lies beyond the
        line.
      </p>`
    : "";
}

/** The answer in one line, for a phone. */
export function tradeShortly({front, x}: TradeScene): string {
  const [first, last] = [front.points[0]!, front.points.at(-1)!];
  return front.points.length === 1
    ? "One mix is best in both"
    : `${capital(x.name)} from ${valueText(x, first.x)} to ${valueText(x, last.x)}`;
}

/** Ingredients that come in and go out, and limits that begin to hold, along the front. */
export function turnoverSheet({front, x, y, brief}: TradeScene): HTMLElement | undefined {
  const body = front.points.flatMap(({x: atX, y: atY, turnover}) => {
    const said = turnover ? words(turnover, brief.freezer) : [];
    return said.length ? [row(valueText(x, atX), [valueText(y, atY), cell(said.join("; "), "words")])] : [];
  });
  if (!body.length) return undefined;
  return sheet({
    heading: "What changes along the line",
    reading: `From the best ${x.name} to the best ${y.name}. Between two of these the same ingredients and limits decide.`,
    columns: [x.name, y.name, column("from here on", "words")],
    body,
    className: "turns",
  });
}

/** Differences in kind, in words. */
export function words({enters, leaves, binds, frees}: Turnover, freezer: number): string[] {
  const limits = (met: readonly BindingLimit[]) => inWords(met.map((one) => limitWords(one, freezer)));
  return [
    ...(enters.length ? [`${inWords(enters)} ${enters.length > 1 ? "come" : "comes"} in`] : []),
    ...(leaves.length ? [`${inWords(leaves)} ${leaves.length > 1 ? "go" : "goes"} out`] : []),
    ...(binds.length ? [`held by ${limits(binds)}`] : []),
    ...(frees.length ? [`no longer held by ${limits(frees)}`] : []),
  ];
}

/** A limit that holds, as a noun: `freezing point at most −2.4`. */
function limitWords({of, target, bound, limit}: BindingLimit, freezer: number): string {
  const name = of === "target" ? lower(labelOf(target, freezer)) : target;
  const unit = {target: "", rule: "", ingredient: " g", dose: " %"}[of];
  return `${name} ${bounded(bound, limit)}${unit}`;
}

/** A value of an axis in a table's head: its name and unit. */
export function axisName({name, unit}: Axis): string {
  return `${name}, ${unit}`;
}

function capital(text: string): string {
  return `${text[0]!.toUpperCase()}${text.slice(1)}`;
}

function lower(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? `${text[0]!.toLowerCase()}${text.slice(1)}` : text;
}

/** While nothing is known, or where there is no mix. */
export function waitingNotice(text: string): HTMLElement {
  return html`<section class="verdict" aria-live="polite"><h2>${text}</h2></section>`;
}
