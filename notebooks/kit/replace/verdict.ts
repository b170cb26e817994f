import {html} from "htl";
import type {Alternative, Substitution} from "../../../lib/balance/substitute/substitution-types.ts";
import {decimal} from "../../../lib/core/format.ts";
import {scoopsAgainst, softWarning, verdictAgainst} from "../../../lib/kitchen/size/scoop-words.ts";
import {type Standard, STANDARD_FORCE, type StandardCheck} from "../../../lib/kitchen/label/standards.ts";
import type {WeighedMix} from "../page/mixes.ts";
import {unbroken} from "../words/numbers.ts";
import {wayName} from "./search.ts";
import {inWords, mostNoticed, noticedWords, takesWords} from "../words/take-words.ts";

/** So many ways are told at first. */
const FIRST = 6;

/** Circumstances that the words need beside the answer. */
interface Circumstances {
  readonly substitution: Substitution;
  /** The way that is looked at. */
  readonly chosen: Alternative;
  readonly before: WeighedMix;
  readonly after: WeighedMix;
  readonly freezer: number;
  /** Checks of each way against the legal name; empty where none was asked for. */
  readonly checks: (alternative: Alternative) => readonly StandardCheck[];
  readonly checksBefore: readonly StandardCheck[];
  readonly legalName: Standard | undefined;
  readonly choose: (way: string) => void;
}

/** The way that is looked at in words, and all others to choose from, the least noticed first. */
export function replaceVerdict(circumstances: Circumstances): HTMLElement {
  const {substitution, chosen, before, after, choose} = circumstances;
  const ways = substitution.alternatives.map((one, i) => wayItem(one, i, circumstances));
  const list = (items: readonly HTMLElement[], start: number) =>
    html`<ol class="ways" start=${start}>
      ${items}
    </ol>`;
  const more = ways.slice(FIRST);
  const at = substitution.alternatives.indexOf(chosen);
  const element = html`<section class="verdict swap" aria-live="polite">
    <h2>Instead of <b>${substitution.without}</b>, ${headline(chosen)}: ${noticedWords(chosen)}</h2>
    ${alarms(circumstances)}
    <p>${unbroken(freezing(before, after))}</p>
    ${
      substitution.notCompared.includes("cost")
        ? html`<p class="aside">The cost could not be compared: not everything in question has a price.</p>`
        : ""
    }
    ${list(ways.slice(0, FIRST), 1)}
    ${
      more.length
        ? html`<details class="more" open=${at >= FIRST}>
            <summary>${more.length} more ways</summary>
            ${list(more, FIRST + 1)}
          </details>`
        : ""
    }
  </section>`;
  element.addEventListener("click", (event) => {
    const button = (event.target as HTMLElement).closest<HTMLElement>("[data-way]");
    if (button) choose(button.dataset.way!);
  });
  return element;
}

function headline(chosen: Alternative): string {
  if (chosen.kind === "left out" || !chosen.by.length) return "take nothing";
  const names = chosen.by.length > 3 ? [...chosen.by.slice(0, 2), `${chosen.by.length - 2} more`] : chosen.by;
  return `take ${inWords(names)}`;
}

function wayItem(
  one: Alternative,
  i: number,
  {chosen, checks, legalName, substitution}: Circumstances,
): HTMLElement {
  const takes = takesWords(one, substitution.out);
  const broken = legalName && checks(one).some(({met}) => !met);
  return html`<li>
    <button type="button" class="way" data-way=${wayName(one)} aria-pressed=${String(one === chosen)}>
      <strong
        >${i === 0 ? "Least noticed: " : ""}${unbroken(i === 0 ? takes : `${takes[0]!.toUpperCase()}${takes.slice(1)}`)}</strong
      >
      <span>
        <em>${KINDS[one.kind]}</em> ${unbroken(mostNoticed(one.changes))}
        ${one.newAllergens.length ? html`<b class="warn">New allergen: ${one.newAllergens.join(", ")}</b>` : ""}
        ${broken ? html`<b class="warn">${STANDARD_FORCE[legalName!] === "custom" ? "Below custom for" : "Not"} ${legalName}</b>` : ""}
      </span>
    </button>
  </li>`;
}

const KINDS = {
  "left out": "Left out.",
  "one for one": "One for one.",
  "two for one": "Two for one.",
  "re-balanced": "All else moves too.",
} as const;

/** Alarms that must not be overlooked: allergens, the legal name, flavours that are no longer there. */
function alarms({chosen, checks, checksBefore, legalName, substitution}: Circumstances): HTMLElement {
  const {newAllergens, goneAllergens, flavours} = chosen;
  const broken = checks(chosen).filter(({met}) => !met);
  const tasted = substitution.out.filter((name) => flavours.lost.includes(name));
  const wasNot = checksBefore.some(({met}) => !met);
  return html`<div>
    ${
      newAllergens.length
        ? html`<p class="alarm" role="alert">
            <b>New allergen: ${inWords(newAllergens)}.</b> The recipe had none of it. Change the label and the
            allergen sheet, and tell those who ask, before you make it.
          </p>`
        : ""
    }
    ${
      broken.length
        ? html`<p class="alarm" role="alert">
            <b>${lacking(legalName, wasNot)}</b> ${broken.map(
              ({rule, found, unit, min, max}) =>
                `${rule[0]!.toUpperCase()}${rule.slice(1)} comes to ${decimal(found, 2)} ${unit}, where ${min === undefined ? `at most ${decimal(max!, 2)}` : `at least ${decimal(min, 2)}`} is asked for. `,
            )}
          </p>`
        : ""
    }
    ${tasted.length ? html`<p class="alarm"><b>The flavour changes:</b> ${inWords(tasted)} gave it its taste.</p>` : ""}
    ${goneAllergens.length ? html`<p class="aside">No longer in it: ${inWords(goneAllergens)}.</p>` : ""}
  </div>`;
}

/** That a name no longer fits: against the law, or only against custom. */
function lacking(name: Standard | undefined, before: boolean): string {
  return name && STANDARD_FORCE[name] === "custom"
    ? `Below what custom expects of ${name}${before ? ", as it was before" : ""}.`
    : `It cannot be called ${name}${before ? ", nor could it before" : ""}.`;
}

function freezing({scoop: before}: WeighedMix, {scoop: after}: WeighedMix): string {
  return `${softWarning(after) ?? ""} ${scoopsAgainst(after, before)} ${verdictAgainst(after, before)}`.trim();
}

/** The answer in one line, for a phone. */
export function replaceShortly(chosen: Alternative | undefined): string {
  if (!chosen) return "";
  return `${headline(chosen).replace(/^./, (letter) => letter.toUpperCase())}${chosen.newAllergens.length ? " (new allergen)" : ""}: ${noticedWords(chosen)}`;
}

/** While nothing is known yet. */
export function lookingNotice(): HTMLElement {
  return html`<section class="verdict looking" aria-live="polite">
    <h2>Looking along the shelf …</h2>
  </section>`;
}
