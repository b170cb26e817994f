import type {WeighableMix} from "../../balance/weigh/weighable.ts";
import {decimal, grams} from "../../core/format.ts";
import {expectShape} from "../../core/shape.ts";
import type {Figure} from "../text/figure.ts";
import {limitName} from "./report-lines.ts";
import {rounded, roundedGrams} from "../text/rounded.ts";
import {shareUnit} from "../text/share-unit.ts";
import type {TableSection} from "../text/tables.ts";

/** A mass as the scale shows it: whole grams, or tenths where there are any. */
export function scaleReading(mass: number): string {
  return Number.isInteger(mass) ? decimal(mass, 0) : grams(mass);
}

/** Cost of a batch in all and per kg, in words; `undefined` where a price is missing. */
export function costText(cost: number | undefined, mass: number): string | undefined {
  return cost === undefined
    ? undefined
    : `cost ${decimal(cost, 2)} for the batch, ${decimal((cost / mass) * 1000, 2)} per kg`;
}

/** Whole units to count, in words: `9 × egg yolk`. */
export function countsOf({counts}: WeighableMix): string[] {
  return Object.entries(counts).map(([name, count]) => `${count} × ${name}`);
}

/** Targets that the weighed mix misses, in words; empty where it keeps every target. */
export function missedBy({missed}: WeighableMix): string[] {
  return missed.map(
    ({value, ...limit}) =>
      `misses: ${limitName(limit)}, comes to ${value === undefined ? "none" : decimal(value, digitsApart(value, limit.limit))}`,
  );
}

/** Decimals of a value: two, or as many as tell it from a limit. */
function digitsApart(value: number, limit: number): number {
  return [2, 3, 4, 5].find((digits) => decimal(value, digits) !== decimal(limit, digits)) ?? 6;
}

/** A mix to weigh and count as figures: section `weigh` has the amounts, `count` whole units, `weighed` the rest. */
export function weighFigures(mix: WeighableMix): Figure[] {
  const {amounts, counts, total, cost, missed} = expected(mix);
  return [
    ...amounts.map(({ingredient, grams: g}): Figure => ["weigh", ingredient, roundedGrams(g), "g"]),
    ...Object.entries(counts).map(([name, count]): Figure => ["count", name, count, "units"]),
    ["weighed", "mass", roundedGrams(total), "g"],
    ...(cost === undefined ? [] : [["weighed", "cost", rounded(cost, 2), "money"] as const]),
    ...missed.map((m): Figure => [
      "missed",
      `${m.target} ${m.bound}`,
      m.value === undefined ? undefined : rounded(m.value, digitsApart(m.value, m.limit)),
      shareUnit(m.target),
    ]),
  ];
}

/** A mix to weigh and count as a section to be read. */
export function weighSection(mix: WeighableMix): TableSection {
  const {amounts, total, cost} = expected(mix);
  const counts = countsOf(mix);
  const costs = costText(cost, total);
  return {
    heading: "To weigh and count",
    sentences: [
      `Make this one: ${[`${scaleReading(total)} g`, ...(costs ? [costs] : [])].join(", ")}`,
      ...(counts.length ? [`That is ${counts.join(", ")}`] : []),
      ...(mix.missed.length ? missedBy(mix) : ["Every target is kept"]),
    ],
    columns: ["Ingredient", "g"],
    rows: amounts
      .filter(({grams: g}) => g > 0)
      .map(({ingredient, grams: g}) => [ingredient, scaleReading(g)]),
  };
}

function expected(mix: WeighableMix): WeighableMix {
  expectShape(
    mix,
    {amounts: "list", counts: "object", missed: "list", total: "number"},
    "weighable mix",
    "give what weighable(brief, amounts) returned",
  );
  return mix;
}
