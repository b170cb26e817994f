import {columnKey} from "../../../lib/io/csv/columns.ts";
import {readCsv} from "../../../lib/io/csv/csv.ts";
import {readPricesCsv} from "../../../lib/io/csv/prices-csv.ts";
import {csvText} from "../../../lib/io/text/escape.ts";
import {ingredientsNamed, type Pantry} from "../../../lib/pantry/pantry.ts";
import type {ShelfEntry} from "../../../lib/pantry/stocked.ts";
import {type PackPrice, perKilogram, type ShelfLine} from "../keep/shelf.ts";
import {moneyText} from "./words.ts";
import {isDay} from "../words/day.ts";

/** A shelf as the price list that the command and `readPricesCsv` read; what its columns cannot say stands in the note. */
export function shelfCsv(lines: readonly ShelfLine[]): string {
  return csvText(
    ["name", "price_per_kg", "stock_g", "note"],
    lines.map((line) => [
      line.name,
      line.price && Number(perKilogram(line.price).toPrecision(8)),
      line.out ? 0 : line.have && Number(line.have.grams.toPrecision(8)),
      noteOf(line),
    ]),
  );
}

function noteOf({price, have, out, best}: ShelfLine): string | undefined {
  const parts = [
    price && `${price.money} for ${price.pack}, set ${price.on}`,
    have && `have ${have.text}, ${Number(have.grams.toPrecision(8))} g`,
    best && `best before ${best}`,
    out && "out of stock",
  ].filter(Boolean);
  return parts.length ? parts.join("; ") : undefined;
}

/** Content of a file about the shelf. */
export interface ShelfFile {
  /** Lines by name, each as it becomes. */
  readonly lines: ReadonlyMap<string, ShelfLine>;
  /** Changes, a sentence a line. */
  readonly changes: readonly string[];
  /** Names that nothing goes by: kept, and told. */
  readonly unknown: readonly string[];
  /** Number of rows that say what the shelf says already. */
  readonly same: number;
}

/**
 * Merges a price list into the shelf: what the file does not say stays.
 *
 * @param present lines of the shelf
 * @param pantry where names are looked up
 * @param today the day that prices without one are set on
 * @throws InputError as `readPricesCsv`
 */
export function shelfFrom(
  text: string,
  place: string,
  {
    present,
    pantry,
    today,
  }: {readonly present: readonly ShelfLine[]; readonly pantry: Pantry; readonly today: string},
): ShelfFile {
  const entries = readPricesCsv(text, place);
  const notes = notesIn(text, place);
  const before = new Map(present.map((line) => [line.name, line]));
  const lines = new Map<string, ShelfLine>();
  const changes: string[] = [];
  const unknown: string[] = [];
  let same = 0;
  for (const [i, entry] of entries.entries()) {
    const [found, another] = ingredientsNamed(pantry, entry.name);
    const name = found && !another ? found.name : entry.name;
    if (name === entry.name && !(found && !another)) unknown.push(name);
    const old = lines.get(name) ?? before.get(name) ?? {name};
    const next = merged(old, entry, notes[i] ?? "", today);
    const words = changeWords(old, next);
    if (words.length || !before.has(name)) {
      lines.set(name, next);
      changes.push(`${name}: ${words.join(", ") || "on the shelf now"}.`);
    } else same++;
  }
  return {lines, changes, unknown, same};
}

function notesIn(text: string, place: string): string[] {
  const table = readCsv(text, place);
  const column = table.columns.find((header) => columnKey(header) === "note");
  return table.rows.map(({cells}) => (column === undefined ? "" : (cells.get(column) ?? "")));
}

const alike = (one: number, other: number) => Math.abs(one - other) <= 1e-6 * Math.max(one, other);

function merged(old: ShelfLine, {price, stock}: ShelfEntry, note: string, today: string): ShelfLine {
  const parts = note.split(";").map((part) => part.trim());
  const first = (pattern: RegExp) => parts.map((part) => pattern.exec(part)).find(Boolean);
  const [, best] = first(/^best before (\S+)$/) ?? [];
  const paid = price === undefined || price >= 1e6 ? old.price : paidFor(old, price, first, today);
  const [, amount, grams] = first(/^have (.{1,60}), (\d+(?:\.\d+)?(?:e[+-]?\d+)?) g$/) ?? [];
  const noted = amount !== undefined && Number(grams) > 0 ? {text: amount, grams: Number(grams)} : undefined;
  const out = stock === undefined ? old.out : stock === 0 ? true : undefined;
  const have =
    noted && noted.text !== old.have?.text && (!stock || alike(stock, noted.grams))
      ? noted
      : stock && !(old.have && alike(old.have.grams, stock))
        ? {text: `${Number(stock.toPrecision(6))} g`, grams: stock}
        : old.have;
  return {
    name: old.name,
    ...(paid && {price: paid}),
    ...(have && {have}),
    ...(out && {out}),
    ...(isDay(best) ? {best} : old.best !== undefined && {best: old.best}),
  };
}

function paidFor(
  old: ShelfLine,
  price: number,
  first: (pattern: RegExp) => RegExpExecArray | null | undefined,
  today: string,
): PackPrice {
  const [, money, pack, on] = first(/^(\d+(?:\.\d+)?) for (.{1,60}), set (\S+)$/) ?? [];
  const grams = (1000 * Number(money)) / price;
  // A price of nothing tells no weight.
  const noted =
    pack !== undefined && isDay(on) && grams > 0 ? {money: Number(money), pack, grams, on} : undefined;
  const asBefore = old.price && alike(perKilogram(old.price), price) ? old.price : undefined;
  if (asBefore && (!noted || noted.on <= asBefore.on)) return asBefore;
  return noted ?? {money: price, pack: "1 kg", grams: 1000, on: today};
}

function changeWords(old: ShelfLine, next: ShelfLine): string[] {
  const money = ({price}: ShelfLine) => (price ? `${moneyText(price.money)} for ${price.pack}` : "no price");
  const words: string[] = [];
  if (JSON.stringify(old.price) !== JSON.stringify(next.price))
    words.push(`${money(old)} is now ${money(next)}`);
  if (old.have?.text !== next.have?.text)
    words.push(`${old.have?.text ?? "unknown amount"} is now ${next.have?.text}`);
  if (old.out !== next.out) words.push(next.out ? "out of stock" : "there again");
  if (old.best !== next.best) words.push(`best before ${next.best}`);
  return words;
}
