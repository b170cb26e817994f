import {html} from "htl";
import type {Conflict, ConflictingLimit, LimitSide, Relaxation} from "../../../lib/balance/mix/answer.ts";
import {bounded, limit} from "../words/numbers.ts";
import {inWords} from "../words/take-words.ts";
import {labelOf} from "../controls/targets.ts";

/** Circumstances that the notice needs beside the conflict. */
interface Around {
  /** °C. */
  readonly freezer: number;
  /** Makes the least change that lets the brief be met. */
  readonly relax: (changes: readonly Relaxation[]) => void;
}

/** Why no mix exists, the least change that would help, and a button that makes it. */
export function conflictNotice(conflict: Conflict, {freezer, relax}: Around): HTMLElement {
  const {targets, relaxations, relaxation, reach, openers, more, behind, cutShort} = conflict;
  const button = html`<button type="button">Make this change</button>`;
  button.addEventListener("click", () => relax(relaxations));
  const item = (one: LimitSide, words: string) =>
    html`<li>
      <span><strong>${limitLabel(one, freezer)}</strong> ${words}</span>
    </li>`;
  return html`<section class="verdict trouble" aria-live="polite">
    <h2><b>No mix</b> of these ingredients keeps every limit</h2>
    <p>${targets.length < 2 ? "This cannot be met at all:" : "These cannot hold together:"}</p>
    <ul class="conflict">
      ${targets.map((one) => item(one, limitText(one)))}
    </ul>
    ${more ? html`<p>Other conflicts wait behind this one: to drop one of these limits is not enough.</p>` : ""}
    ${
      behind?.targets.length
        ? html`<p>
              Without “${limitLabel(behind.without, freezer)} ${limitText(behind.without)}”, these still
              cannot hold:
            </p>
            <ul>
              ${behind.targets.map((one) => item(one, limitText(one)))}
            </ul>`
        : ""
    }
    ${
      relaxations.length
        ? html`<div>
            <p>
              The least change that
              ${more ? "lets all of them meet" : targets.length < 2 ? "makes it possible" : "lets them meet"}:
            </p>
            <ul>
              ${relaxations.map((one) => item(one, changeText(one)))}
            </ul>
            ${button}
          </div>`
        : html`<p>
            ${relaxation === "impossible" ? "No change of these limits alone will do" : "No small change was found"}:
            loosen an “at least” or an “at most”, or allow another ingredient.
          </p>`
    }
    ${targets.some(({of}) => of === "dose") ? html`<p>A customary limit is raised under “Customary limits”.</p>` : ""}
    ${reach ? html`<p>By itself, ${labelOf(reach.target, freezer)} reaches ${limit(reach.best)} with these ingredients.</p>` : ""}
    ${openers.length ? html`<p>Or let one of these in, and it can be met: ${inWords(openers)}.</p>` : ""}
    ${cutShort ? html`<p class="aside">Time ran out before all of this was known.</p>` : ""}
  </section>`;
}

/** Name of a limit on a page. */
export function limitLabel({of, target, own}: LimitSide, freezer: number): string {
  if (of === "target") return labelOf(target, freezer);
  return of === "dose" && !own ? `Customary: ${target}` : target;
}

/** A limit in the unit in which it was given: `at least 20 %`. */
export function limitText({
  of,
  bound,
  limit: value,
  percent,
  inStock,
}: Omit<ConflictingLimit, "path" | "target">): string {
  return `${bounded(bound, percent ?? value)}${unitOf(of, percent)}${inStock ? ", all there is" : ""}`;
}

function changeText({of, bound, from, to, percent, toPercent, inStock, dropped}: Relaxation): string {
  if (dropped) return "dropped";
  const unit = unitOf(of, toPercent);
  const before = `${limit(percent ?? from)}${unitOf(of, percent)}`;
  return `${bounded(bound, toPercent ?? to)}${unit} instead of ${before}${inStock ? ", all there is" : ""}`;
}

function unitOf(of: LimitSide["of"], percent: number | undefined): string {
  if (of === "ingredient") return percent === undefined ? "\u00a0g" : "\u00a0%";
  return of === "dose" ? "\u00a0%" : "";
}
