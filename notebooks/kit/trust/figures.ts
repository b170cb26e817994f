import {decimal} from "../../../lib/core/format.ts";
import {parseTable, parseTables} from "../../../datasets/published/parse-tables.ts";
import {
  holds,
  type PublishedTables,
  type TableName,
  type ValidationRow,
} from "../../../datasets/published/row.ts";
import {validationRows} from "../../../datasets/published/rows.ts";

/** Data of the page of published figures: the table that `npm run validate` prints, and where each row is from. */
export interface Figures {
  readonly tables: PublishedTables;
  readonly rows: readonly ValidationRow[];
  /** A source in words, by the key that rows have. */
  readonly titles: ReadonlyMap<string, string>;
}

interface TextFile {
  text(): Promise<string>;
}

/** Reads the published tables and compares each figure with what the library computes. */
export async function readFigures(
  files: Readonly<Record<TableName, TextFile>>,
  sources: TextFile,
): Promise<Figures> {
  const texts = Object.entries(files).map(async ([name, file]) => [name, await file.text()] as const);
  const tables = parseTables(Object.fromEntries(await Promise.all(texts)) as Record<TableName, string>);
  const titles = parseTable(await sources.text()).map((row) => [row.key!, titleOf(row)] as const);
  return {tables, rows: validationRows(tables), titles: new Map(titles)};
}

function titleOf({author, title, year}: Readonly<Record<string, string>>): string {
  return `${author ? `${author}: ` : ""}${title}${year ? ` (${year})` : ""}`;
}

/** Plain names of the groups of figures, for headings and axes. */
const GROUPS: Readonly<Record<string, string>> = {
  ice: "ice itself",
  solutions: "solutions of one solute",
  "Norrish curves": "curves at 25 °C",
  "sucrose equivalents": "sucrose equivalents",
  milk: "milk",
  "worked example": "worked example",
  "measured mixes": "measured mixes",
  "published mixes": "published mixes",
  firmness: "firmness index",
  "classes of dessert": "firmness index by class",
  heat: "heat",
};

/** A group of figures in plain words. */
export function groupName({group}: Pick<ValidationRow, "group">): string {
  return GROUPS[group] ?? group;
}

/** Name of a figure, with true minus signs. */
export function nameOf({what}: ValidationRow): string {
  return what.replaceAll(/-(?=\d)/g, "−").replaceAll(" °C", "\u00a0°C");
}

/** Share of its tolerance that a figure uses, %: more than 100 is outside. Infinite where nothing could be computed. */
export function toleranceUsed({difference, tolerance}: ValidationRow): number {
  const used = (100 * Math.abs(difference)) / tolerance;
  return Number.isFinite(used) ? used : difference === 0 ? 0 : Infinity;
}

/** A figure with one decimal more than its tolerance has, so that no difference hides in the rounding. */
export function figureText(value: number, {tolerance}: ValidationRow): string {
  if (!Number.isFinite(value)) return "none";
  return decimal(value, Math.min(7, Math.max(1, Math.ceil(-Math.log10(tolerance)) + 1)));
}

/** The rows outside their tolerance. */
export function outside(rows: readonly ValidationRow[]): ValidationRow[] {
  return rows.filter((row) => !holds(row));
}

/** Root mean square of differences. */
export function rms(rows: readonly ValidationRow[]): number {
  return Math.sqrt(rows.reduce((total, {difference}) => total + difference ** 2, 0) / rows.length);
}

/** Things by a name of theirs, in the order in which the names first come. */
export function byName<T>(all: readonly T[], nameOf: (one: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const name = nameOf(one);
    const group = groups.get(name);
    if (group) group.push(one);
    else groups.set(name, [one]);
  }
  return groups;
}
