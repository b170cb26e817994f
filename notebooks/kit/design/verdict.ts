import {html} from "htl";
import type {Balanced, Relaxation} from "../../../lib/balance/mix/answer.ts";
import {firstWarnings} from "../../../lib/kitchen/product/first-warnings.ts";
import {noDessert} from "../../../lib/kitchen/product/no-dessert.ts";
import {mixCautions} from "../../../lib/kitchen/product/mix-cautions.ts";
import {decimal, degrees, grams} from "../../../lib/core/format.ts";
import {objectiveSentence} from "../../../lib/io/report/objective-words.ts";
import {counterWait} from "../../../lib/kitchen/safety/counter-wait.ts";
import {hardWarning, outOfFreezer, scoopsClause} from "../../../lib/kitchen/size/scoop-words.ts";
import type {PageAnswer} from "../views/answers.ts";
import {conflictNotice} from "../views/conflict-notice.ts";
import {keyOf, type ShownMix} from "../page/mixes.ts";
import type {MixMoney} from "../views/mix-money.ts";
import {askPrices} from "../words/invented-money.ts";
import {limit, setting, unbroken} from "../words/numbers.ts";
import {TRACE} from "../views/tables.ts";

/** Circumstances that the words need beside the answer. */
interface Circumstances {
  /** °C. */
  readonly freezer: number;
  readonly money: MixMoney;
  /** Names that were chosen and are not on the cook's shelf. */
  readonly leftOut: readonly string[];
  /** Properties that no further mix could have: `softer`. */
  readonly missing: readonly string[];
  /** Makes the least change that lets an infeasible brief be met. */
  readonly relax: (changes: readonly Relaxation[]) => void;
}

/** The answer in words, whatever it is. */
export function verdictOn(
  answer: PageAnswer,
  mixes: readonly ShownMix[],
  circumstances: Circumstances,
): HTMLElement {
  const verdict = verdictAlone(answer, mixes, circumstances);
  const {leftOut} = circumstances;
  if (leftOut.length)
    verdict.append(
      html`<p class="aside">
        Not on <a href="./my-shelf.html">your shelf</a>, so left out: ${leftOut.join(", ")}.
      </p>`,
    );
  return verdict;
}

function verdictAlone(
  answer: PageAnswer,
  mixes: readonly ShownMix[],
  circumstances: Circumstances,
): HTMLElement {
  switch (answer.status) {
    case "optimal":
      return success(mixes, circumstances);
    case "infeasible":
      return conflictNotice(answer.conflict, circumstances);
    case "mistaken":
      return notice("Please correct", answer.message);
    default:
      return notice("There is no answer that could be checked", answer.reason);
  }
}

/** The answer in one line, for a phone. */
export function shortly(answer: PageAnswer): string {
  if (answer.status === "optimal") {
    const {cost, batch, scoop} = answer;
    const price = cost === undefined ? "Balanced" : `${decimal((cost / batch) * 1000, 2)} per kg`;
    if (noDessert(answer.composition)) return `${price}, but not a dessert`;
    const state = {soft: "soft in the freezer, ", hard: "too hard in the freezer, "};
    return `${price}, ${state[scoop.verdict as "soft" | "hard"] ?? ""}${scoopsClause(scoop)}`;
  }
  return answer.status === "infeasible" ? "No mix keeps every limit" : "Please correct an entry";
}

/** One line on top, then a plain sentence for each mix. */
function success(mixes: readonly ShownMix[], {missing, money}: Circumstances): HTMLElement {
  const {mix} = mixes[0]!;
  const byCost = isCheapest(mix);
  const first = firstWarnings(mix);
  const hard = hardWarning(mix.scoop);
  return html`<section class="verdict" aria-live="polite">
    <h2>${cheapest(mix, money)}</h2>
    ${first.map((warning) =>
      // A tub that is too hard can wait on the counter: no alarm.
      warning === hard
        ? html`<p><b>${unbroken(warning)}</b></p>`
        : html`<p class="alarm" role="alert"><b>${unbroken(warning)}</b></p>`,
    )}
    ${
      money.words &&
      html`<p class="aside invented">Costs are ${money.words}: ${askPrices(money.invented)}.</p>`
    }
    <ul>
      ${mixes.map(
        (shown) =>
          html`<li>
            ${keyOf(shown.style)}<span><strong>${shown.label}.</strong> ${sentence(shown.mix, mix)}</span>
          </li>`,
      )}
    </ul>
    ${(mix.beyondDoses ?? []).map(
      ({name, has, limit: most}) =>
        html`<p class="aside">
          <b>More ${name} than is customary:</b> ${decimal(has, 2)} %, where at most ${limit(most)} % is
          usual.
        </p>`,
    )}
    ${mixCautions(mix.composition)
      .filter((words) => !first.includes(words))
      .map((words) => html`<p class="aside">${unbroken(words)}</p>`)}
    ${byCost ? "" : html`<p class="aside">${unbroken(objectiveSentence(mix))}</p>`}
    ${missing.map((name) => html`<p class="aside">No other mix ${byCost ? "within 15 % of that cost" : "as good"} is ${name}: the ones above are already as far as the limits, and a tub that holds its shape, allow.</p>`)}
  </section>`;
}

function isCheapest({objective}: Balanced): boolean {
  return objective?.sense === "minimise" && objective.name.startsWith("cost");
}

function cheapest(mix: Balanced, money: MixMoney): HTMLElement {
  const {cost, batch, scoop} = mix;
  const price =
    cost === undefined
      ? html`<span>This mix</span>`
      : html`<span
          >${isCheapest(mix) ? "The cheapest" : "This"} mix costs
          <b>${money.write(`${decimal((cost / batch) * 1000, 2)} per kg`)}</b></span
        >`;
  return html`<span>${price} and <b>${unbroken(scoopsClause(scoop))}</b></span>`;
}

/** One mix in a sentence or two, against the cheapest. */
function sentence(mix: Balanced, first: Balanced): string {
  const point = mix.freezing.initialFreezingPoint;
  return [
    mix === first ? ofBatch(mix) : against(mix, first),
    `Freezing point ${point === undefined ? "below −40 °C" : degrees(point)}; it ${scoopsClause(mix.scoop)}.`,
    `From a freezer at ${setting(mix.scoop.freezer)} ${outOfFreezer(mix.scoop, counterWait(mix.composition, mix.scoop))}.`,
  ]
    .join(" ")
    .replaceAll(/ (?=[°%])/g, "\u00a0");
}

function ofBatch({cost, batch, shares}: Balanced): string {
  const tastes = `sweetness ${decimal(shares.sweetness ?? 0, 1)} (sucrose\u00a0=\u00a0100)`;
  return cost === undefined
    ? `${tastes[0]!.toUpperCase()}${tastes.slice(1)}.`
    : `A batch of ${grams(batch)} g costs ${decimal(cost, 2)}; ${tastes}.`;
}

function against(mix: Balanced, first: Balanced): string {
  const sweeter = (mix.shares.sweetness ?? 0) - (first.shares.sweetness ?? 0);
  const taste =
    Math.abs(sweeter) < 0.05
      ? "just as sweet"
      : `${sweeter > 0 ? "sweeter" : "less sweet"} (${decimal(mix.shares.sweetness ?? 0, 1)} against ${decimal(first.shares.sweetness ?? 0, 1)})`;
  if (mix.cost === undefined || !first.cost) return `It is ${taste}.`;
  const without = first.amounts.flatMap(({ingredient, percent}, i) =>
    percent > TRACE && mix.amounts[i]!.percent <= TRACE ? [ingredient] : [],
  );
  const dearer = (mix.cost / first.cost - 1) * 100;
  const price =
    Math.abs(dearer) < 0.05
      ? "Costs the same"
      : `Costs ${decimal(Math.abs(dearer), 1)} % ${dearer > 0 ? "more" : "less"}`;
  return `${without.length ? `Does without ${listed(without)}. ` : ""}${price} and is ${taste}.`;
}

/** Names as a cook would say them: "milk, cream and sugar". */
function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

/** Something that the cook must see to before there can be an answer. */
function notice(heading: string, text: string): HTMLElement {
  return html`<section class="verdict trouble" aria-live="polite">
    <h2>${heading}</h2>
    <p>${text}</p>
  </section>`;
}
