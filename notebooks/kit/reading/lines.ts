import {html} from "htl";
import type {TypedLine} from "../../../lib/io/typed/typed-line.ts";
import {decimal, grams} from "../../../lib/core/format.ts";
import {packetLink} from "../words/packet-link.ts";
import {unbroken} from "../words/numbers.ts";

/** Number of nearest names offered for one that is not known. */
const OFFERED = 3;

/**
 * Each line of the recipe with what became of it; those that ask something come first, with what may be picked.
 *
 * @param choose called with a line and the name that the cook picked for it
 */
export function lineList(
  lines: readonly TypedLine[],
  choose: (line: TypedLine, name: string) => void,
): HTMLElement {
  const asking = lines.filter((line) => "question" in line);
  const counted = lines.filter((line) => "grams" in line);
  const skipped = lines.filter((line) => line.status === "skipped" && line.why !== "heading");
  return html`<section class="lines" data-side="answer">
    ${
      asking.length
        ? html`<ul class="asking">
            ${asking.map((line) => askingItem(line, choose))}
          </ul>`
        : ""
    }
    <details>
      <summary>
        ${tally(counted.length, counted.filter(({status}) => status === "taken").length, skipped.length)}
      </summary>
      <ul>
        ${counted.map(countedItem)}
        ${skipped.map((line) => html`<li class="skipped"><q>${line.text}</q> <span>is no ingredient: left out</span></li>`)}
      </ul>
    </details>
  </section>`;
}

function tally(counted: number, taken: number, skipped: number): string {
  const words = [`${counted} ${counted === 1 ? "line counts" : "lines count"}`];
  if (taken) words.push(`${taken} with something taken for granted`);
  if (skipped) words.push(`${skipped} left out as no ingredient`);
  return words.join(", ");
}

function countedItem(line: TypedLine): HTMLElement {
  if (!("grams" in line)) return html`<li></li>`;
  const same = line.called.toLowerCase() === line.ingredient.name.toLowerCase();
  const taken = line.status === "taken" ? line.taken.join("; ") : "";
  return html`<li>
    <span>${unbroken(`${grams(line.grams)} g`)} <b>${line.ingredient.name}</b></span>
    ${same && !taken ? "" : html`<small>${[same ? "" : `from “${line.text}”`, taken].filter(Boolean).join(": ")}</small>`}
  </li>`;
}

function askingItem(line: TypedLine, choose: (line: TypedLine, name: string) => void): HTMLElement {
  const names =
    line.status === "which" ? line.choices : line.status === "unknown" ? line.near.slice(0, OFFERED) : [];
  const asked =
    line.status === "which" ? `Which ${line.name} is it?` : "question" in line ? sentence(line.question) : "";
  return html`<li>
    <q>${line.text}</q> <span>${unbroken(asked)} Until then it is left out.</span>
    <span class="picks"
      >${names.map((name) => pick(name, () => choose(line, name)))}
      ${line.status === "unknown" && line.name.trim() ? packetLink(line.name) : ""}</span
    >
  </li>`;
}

function pick(name: string, take: () => void): HTMLElement {
  const button = html`<button type="button">${name}</button>`;
  button.addEventListener("click", take);
  return button;
}

function sentence(text: string): string {
  const capital = `${text[0]!.toUpperCase()}${text.slice(1)}`;
  return /[.?!]$/.test(capital) ? capital : `${capital}.`;
}

/** A text in which one line names its ingredient as the cook picked. */
export function withName(text: string, line: TypedLine, name: string): string {
  const rows = text.split("\n");
  const written = "name" in line ? line.name : "";
  const typed = rows[line.line - 1];
  if (typed === undefined) return text;
  const at = typed.toLowerCase().lastIndexOf(written.toLowerCase());
  rows[line.line - 1] =
    written && at >= 0
      ? `${typed.slice(0, at)}${name}${typed.slice(at + written.length)}`
      : `${typed.trim()} (${name})`;
  return rows.join("\n");
}

/** A share as a cook reads it. */
export function shareText(percent: number): string {
  return `${decimal(percent, percent < 10 ? 1 : 0)} %`;
}
