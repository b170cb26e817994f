// How the state of a page is written in its address, and read back from whatever an address holds: text that makes no sense
// is none. Nothing here needs a page.
import type {Source} from "./load-recipe.ts";

/** Lower and upper limit of a target; an absent one is open. */
export interface Window {
  readonly min?: number;
  readonly max?: number;
}

/** An ingredient that the cook allows in the mix: its least and most, in percent of the batch or in g, and its price per kg. */
export interface Picked {
  readonly name: string;
  readonly min?: number;
  readonly max?: number;
  readonly unit: "%" | "g";
  readonly price?: number;
}

/** Place that the page looks at: a corner of the front (where it bends most, to begin with), or a cell of the map. */
export type Mark =
  | {readonly at: "bend"}
  | {readonly at: "front"; readonly index: number}
  | {readonly at: "map"; readonly row: number; readonly column: number};

/** A number as it is written, or nothing. There is one way only to match it, so that no address takes long to read. */
const NUMBER = String.raw`(-?\d+(?:\.\d+)?(?:e[+-]?\d+)?)?`;
const WINDOW = new RegExp(String.raw`^${NUMBER}\.\.${NUMBER}$`);
const PICKED = new RegExp(String.raw`^${NUMBER}\.\.${NUMBER}(%?)@${NUMBER} ([\s\S]{1,200})$`);

/** Longest name of a file, characters: file systems take no more. */
const LONGEST_FILE_NAME = 255;

/** A number, if it lies within the limits. */
export function numberFrom(text: string, min: number, max: number): number | undefined {
  const value = Number(text);
  return text.trim() && value >= min && value <= max ? value : undefined;
}

/** Limits as `8..10`, each empty where it is open. */
export function windowText({min, max}: Window): string {
  return `${min ?? ""}..${max ?? ""}`;
}

/** Window that {@link windowText} wrote. */
export function windowFrom(text: string): Window | undefined {
  const match = WINDOW.exec(text);
  if (!match) return undefined;
  const [min, max] = [match[1], match[2]].map(finiteFrom);
  if ((match[1] && min === undefined) || (match[2] && max === undefined)) return undefined;
  if (min !== undefined && max !== undefined && min > max) return undefined;
  return {...(min !== undefined && {min}), ...(max !== undefined && {max})};
}

/** A point of the trade-off: the number of its corner, or row and column of its cell. */
export function markText(mark: Mark): string {
  if (mark.at === "bend") return "";
  return mark.at === "front" ? String(mark.index) : `${mark.row},${mark.column}`;
}

/** Mark that {@link markText} wrote; the bend where it is none of that. */
export function markFrom(text: string): Mark {
  const [, first, second] = /^(\d{1,3})(?:,(\d{1,3}))?$/.exec(text) ?? [];
  if (first === undefined) return {at: "bend"};
  if (second === undefined) return {at: "front", index: Number(first)};
  return {at: "map", row: Number(first), column: Number(second)};
}

/** Shares of a mix as per cents. */
export function sharesText(shares: readonly number[]): string {
  return shares.map((share) => String(Number((100 * share).toFixed(4)))).join(",");
}

/** Shares that {@link sharesText} wrote; they sum to 1. */
export function sharesFrom(text: string): number[] | undefined {
  const percents = text.split(",").map(Number);
  const sum = percents.reduce((total, percent) => total + percent, 0);
  if (percents.some((percent) => !(percent >= 0)) || !(Math.abs(sum - 100) <= 0.1)) return undefined;
  return percents.map((percent) => percent / sum);
}

/** An ingredient as `min..max@price name` with limits in g, or `min..max%@price name`; each number empty where there is none. */
export function pickedText({name, min, max, unit, price}: Picked): string {
  const window = windowText({...(min !== undefined && {min}), ...(max !== undefined && {max})});
  return `${window}${unit === "%" && window !== ".." ? "%" : ""}@${price ?? ""} ${name}`;
}

/** Entry that {@link pickedText} wrote. */
export function pickedFrom(text: string): Picked | undefined {
  const match = PICKED.exec(text);
  if (!match) return undefined;
  const [min, max, price] = [match[1], match[2], match[4]].map(notNegativeFrom);
  const limited = min !== undefined || max !== undefined;
  return {
    name: match[5]!,
    unit: limited && match[3] !== "%" ? "g" : "%",
    ...(min !== undefined && {min}),
    ...(max !== undefined && {max}),
    ...(price !== undefined && {price}),
  };
}

/** A file of the cook's own, as its name and its text. */
export function sourceFrom([file, text]: readonly string[]): Source | undefined {
  if (!file?.trim() || file.length > LONGEST_FILE_NAME || text === undefined) return undefined;
  return {file, text};
}

function finiteFrom(digits: string | undefined): number | undefined {
  return digits !== undefined && Number.isFinite(Number(digits)) ? Number(digits) : undefined;
}

function notNegativeFrom(digits: string | undefined): number | undefined {
  const value = finiteFrom(digits);
  return value !== undefined && value >= 0 ? value : undefined;
}

/** A page beside this one with its state, as a way back to it; nothing where an address holds anything else. */
export function wayBack(text: string | undefined): string | undefined {
  return text !== undefined && /^\.\/[a-z-]{1,60}\.html(?:#[^\s]*)?$/.test(text) ? text : undefined;
}
