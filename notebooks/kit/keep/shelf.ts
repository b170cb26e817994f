import {isDay} from "../words/day.ts";
import {objectIn} from "../words/object-in.ts";
import {keeping} from "./database.ts";
import {changeUndoably} from "./undoable.ts";

/** The cook's price for a pack of so much. */
export interface PackPrice {
  readonly money: number;
  /** The pack as the cook wrote it: `1 l`, `12`, `600 g`. */
  readonly pack: string;
  /** Weight of the pack, g. */
  readonly grams: number;
  /** The day that the price was set, `2026-11-26`. */
  readonly on: string;
}

/** The cook's notes on one ingredient; all but its name may be unknown. */
export interface ShelfLine {
  /** Name of an ingredient, included or own. */
  readonly name: string;
  readonly price?: PackPrice;
  /** Amount in stock, as the cook wrote it, and its weight in g. */
  readonly have?: {readonly text: string; readonly grams: number};
  /** Out of stock. */
  readonly out?: true;
  /** Best before, `2026-12-24`. */
  readonly best?: string;
}

/** Money per kg. */
export function perKilogram({money, grams}: PackPrice): number {
  return (1000 * money) / grams;
}

/** A line as the browser kept it, whoever wrote it: what makes no sense in it is left out; nothing where no line is left. */
export function parseLine(value: unknown): ShelfLine | undefined {
  const {name, price, have, out, best} = objectIn(value);
  if (!isText(name, 200)) return undefined;
  const {money, pack, grams, on} = objectIn(price);
  const {text, grams: weight} = objectIn(have);
  return {
    name,
    ...(isNumber(money, 0, 1e6) &&
      isText(pack, 60) &&
      isNumber(grams, 1e-3, 1e9) &&
      isDay(on) && {price: {money, pack, grams, on}}),
    ...(isText(text, 60) && isNumber(weight, 1e-3, 1e9) && {have: {text, grams: weight}}),
    ...(out === true && {out}),
    ...(isDay(best) && {best}),
  };
}

/** All lines of the shelf that can be read. */
export async function readShelf(): Promise<ShelfLine[]> {
  const all = await (await keeping()).drawer("shelf").all();
  return [...all].flatMap(([key, value]) => {
    const line = parseLine(value);
    return line?.name === key ? [line] : [];
  });
}

/** New lines of some names; a line that is `undefined` goes. */
export type ShelfEdits = ReadonlyMap<string, (present: ShelfLine) => ShelfLine | undefined>;

/** Changes lines of the shelf: see {@link changeUndoably}. */
export function changeShelf(edits: ShelfEdits): Promise<() => Promise<void>> {
  return changeUndoably(
    "shelf",
    new Map([...edits].map(([name, edit]) => [name, (before) => edit(parseLine(before) ?? {name})])),
  );
}

function isText(value: unknown, longest: number): value is string {
  return typeof value === "string" && value.trim() !== "" && value.length <= longest;
}

function isNumber(value: unknown, min: number, max: number): value is number {
  return typeof value === "number" && value >= min && value <= max;
}
