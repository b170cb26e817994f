import {html} from "htl";
import type {Alternative, NoticedChange} from "../../../lib/balance/substitute/substitution-types.ts";
import {decimal, grams, tenth} from "../../../lib/core/format.ts";
import {scoopsAt} from "../../../lib/kitchen/size/scoop-words.ts";
import type {StandardCheck} from "../../../lib/kitchen/label/standards.ts";
import type {ShownMix, WeighedMix} from "../page/mixes.ts";
import type {MixMoney} from "../views/mix-money.ts";
import {inWords, NOTICED_WORDS, showsChange} from "../words/take-words.ts";
import {cell, row, withUnit} from "../page/row.ts";
import {keyed, sheet} from "../page/sheet.ts";

/** As it was and as it becomes. */
type BeforeAfter = readonly [before: ShownMix<WeighedMix>, after: ShownMix<WeighedMix>];

/** Amounts to weigh instead, with what is more and less. */
export function swapSheet(
  {amounts}: Alternative,
  [before, after]: BeforeAfter,
  money: MixMoney,
): HTMLElement {
  const sum = ({mix}: ShownMix<WeighedMix>) =>
    mix.cost === undefined ? "–" : money.write(decimal(mix.cost, 2));
  return sheet({
    heading: "What to weigh",
    reading: `Grams for a batch of ${grams(after.mix.batch)} g.${money.words && ` Money ${money.words}.`}`,
    columns: ["", ...keyed([before, after]), "change"],
    body: amounts.map(({ingredient, before: old, after: now, change}) =>
      row(ingredient, [
        old > 0 ? grams(old) : "–",
        now > 0.005 ? grams(now) : "–",
        showsChange(change) ? changed(change, grams) : "–",
      ]),
    ),
    foot: [row("cost of the batch", [sum(before), sum(after), money.write(costChange(before, after))])],
  });
}

function costChange({mix: before}: ShownMix<WeighedMix>, {mix: after}: ShownMix<WeighedMix>): string {
  return before.cost === undefined || after.cost === undefined
    ? "–"
    : changed(after.cost - before.cost, (value) => decimal(value, 2));
}

/** Quantity by quantity what is different, and how much each counts. */
export function noticedSheet(
  {changes, score}: Alternative,
  [before, after]: BeforeAfter,
  money: MixMoney,
): HTMLElement {
  const differs = ({what, change}: NoticedChange) =>
    Math.abs(change) >= 0.5 * 10 ** -NOTICED_WORDS[what].digits;
  const counting = changes.filter(differs).sort((a, b) => b.counts - a.counts);
  const same = changes
    .filter((one) => !differs(one) && one.before > 0.005)
    .map(({what}) => NOTICED_WORDS[what].name);
  const most = Math.max(1, ...counting.map(({counts}) => counts));
  const scoop = ({mix}: ShownMix<WeighedMix>) => scoopsAt(mix.scoop);
  return sheet({
    heading: "What is different",
    reading: `The bar is what a change counts; one that reaches the line may just be noticed. All together: ${decimal(score, 1)}, with new ingredients and new allergens.${same.length ? ` As before: ${inWords(same)}.` : ""}`,
    columns: ["", ...keyed([before, after]), "change", "counts"],
    body: [
      ...counting.map(({what, before: old, after: now, change, counts}) => {
        const {name, unit, digits} = NOTICED_WORDS[what];
        const read = (value: number) => decimal(value, digits);
        return row(withUnit(name, unit), [
          ...[read(old), read(now), changed(change, read)].map((text) =>
            what === "cost" ? money.write(text) : text,
          ),
          html`<td class="counts" style=${`--counts: ${counts / most}; --just: ${1 / most}`}>
            <span>${decimal(counts, 1)}</span>
          </td>`,
        ]);
      }),
      row("scoop temperature", [scoop(before), scoop(after), scoopChange(before, after), ""]),
    ],
  });
}

function scoopChange({mix: before}: ShownMix<WeighedMix>, {mix: after}: ShownMix<WeighedMix>): string {
  const [old, now] = [before, after].map(({scoop}) => (scoop.unsure ? undefined : scoop.temperature));
  // The change of what is printed, so that the three figures agree.
  return old === undefined || now === undefined
    ? "–"
    : changed(tenth(now) - tenth(old), (value) => decimal(value, 1));
}

/** A legal name rule by rule, as it was and as it becomes. */
export function legalSheet(
  name: string,
  [was, is]: readonly [readonly StandardCheck[], readonly StandardCheck[]],
  mixes: BeforeAfter,
): HTMLElement | undefined {
  if (!is.length) return undefined;
  const limits = ({min, max, below}: StandardCheck) =>
    min !== undefined && max !== undefined
      ? `${decimal(min, 2)} to ${decimal(max, 2)}`
      : min !== undefined
        ? `at least ${decimal(min, 2)}`
        : `${below ? "below" : "at most"} ${decimal(max!, 2)}`;
  return sheet({
    heading: `May it be called ${name}?`,
    reading: `Rule by rule, fruit, nuts and spices counting as bulky flavours. Source: ${[...new Set(is.map(({source}) => source))].join("; ")}. No legal advice.`,
    columns: ["", ...keyed(mixes), "asked for", "met"],
    body: is.map((check, i) =>
      row(withUnit(check.rule, check.unit), [
        was[i] ? decimal(was[i].found, 2) : "–",
        decimal(check.found, 2),
        limits(check),
        check.met ? "yes" : cell("no", "unmet"),
      ]),
    ),
  });
}

/** A change with its sign; none where it does not show. */
function changed(value: number, read: (value: number) => string): string {
  const text = read(Math.abs(value));
  if (/^[0. ]*$/.test(text)) return "–";
  return `${value > 0 ? "+" : "−"}${text}`;
}
