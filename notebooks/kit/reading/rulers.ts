import {html} from "htl";
import {decimal} from "../../../lib/core/format.ts";
import type {Norm} from "../../../lib/kitchen/reading/norms.ts";
import {fullName} from "../../../lib/io/text/plain-name.ts";
import {figure} from "../page/plot.ts";
import {unbroken} from "../words/numbers.ts";

/** Room beside the norm on its ruler, of its width. */
const BESIDE = 0.75;

/** One ruler for each property of the kind: the norm as a stretch of it, the recipe as a mark, the source below. */
export function normRulers(kind: string, norms: readonly Norm[]): HTMLElement | undefined {
  const known = norms.filter(({value}) => value !== undefined);
  if (!known.length) return undefined;
  return figure(
    `Beside others of its kind: ${kind}`,
    "The thick stretch of each ruler is what published recipes, codes and laws have; the mark is yours. Outside is not wrong, but unlike the others.",
    html`<ul class="rulers">
      ${known.map(ruler)}
    </ul>`,
  );
}

function ruler({property, min, max, unit, value, lies, source, where, read}: Norm): HTMLElement {
  const [low, high] = [min ?? Math.min(max! - 1, value!), max ?? Math.max(min! + 1, value!)];
  const room = Math.max(high - low, 0.1 * Math.abs(high), 0.5) * BESIDE;
  const [from, to] = [Math.min(low - room, value! - room / 4), Math.max(high + room, value! + room / 4)];
  const at = (x: number) => `${(100 * (x - from)) / (to - from)}%`;
  const shown = unit === "%" || unit === "°C" ? ` ${unit}` : "";
  const range = [min === undefined ? "" : decimal(min, 1), max === undefined ? "" : decimal(max, 1)];
  const norm =
    min === undefined
      ? `at most ${range[1]}`
      : max === undefined
        ? `at least ${range[0]}`
        : range.join(" to ");
  const words = {below: "below", within: "within", above: "above", none: "beside"}[lies];
  return html`<li data-lies=${lies}>
    <span class="what">${fullName(property)} <b>${unbroken(`${decimal(value!, 1)}${shown}`)}</b></span>
    <span class="track" aria-hidden="true"
      ><i
        style=${`left: ${min === undefined ? "0%" : at(low)}; right: ${max === undefined ? "0%" : `calc(100% - ${at(high)})`}`}
      ></i
      ><b style=${`left: ${at(value!)}`}></b
    ></span>
    <small
      >${words} ${unbroken(`${norm}${shown}`)}:
      ${source}${where ? `, ${where}` : ""}${read && read !== "primary text" ? ` (${read})` : ""}</small
    >
  </li>`;
}
