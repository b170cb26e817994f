import {decimal} from "../../../lib/core/format.ts";
import {perKilogram, type ShelfLine} from "../keep/shelf.ts";
import {awayWords, daysBetween} from "../words/day.ts";

/** From so many days before its date on, something is to be used first. */
export const SOON = 7;

/** Days from which the age of a price is told as old. */
const OLD = 180;

/** A day in words: `3 December 2026`. */
export function dayWords(day: string): string {
  return new Date(`${day}T12:00:00`).toLocaleDateString("en-GB", {
    day: "numeric",
    month: "long",
    year: "numeric",
  });
}

/** Money as a cook writes it: with two decimals, or as many as it has. */
export function moneyText(money: number): string {
  return Math.abs(money * 100 - Math.round(money * 100)) < 1e-6
    ? money.toFixed(2)
    : String(Number(money.toPrecision(6)));
}

/** The cook's price in words: `2.40 for 1 l, 2.33 per kg, set 3 days ago`. */
export function priceWords({price}: Pick<ShelfLine, "price">, today: string): string {
  if (!price) return "";
  const {money, pack, on} = price;
  const perKilo = decimal(perKilogram(price), 2);
  const age = daysBetween(on, today);
  const paid =
    pack === "1 kg" ? `${perKilo} per kg` : `${moneyText(money)} for ${pack}, that is ${perKilo} per kg`;
  return `${paid}, set ${age < 0 ? `on ${dayWords(on)}` : awayWords(-age)}${age >= OLD ? ": does it still hold" : ""}`;
}

/** Its date: what is past says so. */
export function bestWords(best: string, today: string): string {
  const days = daysBetween(today, best);
  return days < 0
    ? `Best before ${dayWords(best)}, ${days === -1 ? "a day" : `${-days} days`} past: throw it away if the pack says “use by”; otherwise go by your local code`
    : `Best before ${dayWords(best)}, ${awayWords(days)}`;
}

/** Urgency of a date. */
export function dueOf({best}: ShelfLine, today: string): "past" | "soon" | "later" | "none" {
  if (best === undefined) return "none";
  const days = daysBetween(today, best);
  return days < 0 ? "past" : days <= SOON ? "soon" : "later";
}

/** The lines in three heaps: to be used first, the others, and what is out; the soonest first, then by name. */
export function heapsOf(
  lines: readonly ShelfLine[],
  today: string,
): Readonly<Record<"first" | "there" | "out", readonly ShelfLine[]>> {
  const sorted = [...lines].sort(
    (a, b) => (a.best ?? "9999").localeCompare(b.best ?? "9999") || a.name.localeCompare(b.name, "en"),
  );
  const isDue = (line: ShelfLine) => ["past", "soon"].includes(dueOf(line, today));
  return {
    first: sorted.filter((line) => !line.out && isDue(line)),
    there: sorted.filter((line) => !line.out && !isDue(line)),
    out: sorted.filter(({out}) => out),
  };
}

/** The shelf in a sentence. */
export function shelfSentence(lines: readonly ShelfLine[], today: string): string {
  if (!lines.length) return "Nothing is on your shelf yet: find what you have, and say what it costs";
  const {first, out} = heapsOf(lines, today);
  const priced = lines.filter(({price}) => price).length;
  const things = `${lines.length} ${lines.length === 1 ? "thing" : "things"}`;
  const prices =
    priced === lines.length
      ? priced === 1
        ? "at your price"
        : "each at your price"
      : `${priced} of them at your price`;
  const past = first.filter((line) => dueOf(line, today) === "past").length;
  return [
    `${things} on your shelf, ${prices}`,
    ...(out.length ? [`${out.length} out of stock`] : []),
    ...(past ? [`${past} past ${past === 1 ? "its" : "their"} date`] : []),
  ].join("; ");
}
