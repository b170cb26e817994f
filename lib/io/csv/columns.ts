import {InputError} from "../../core/errors.ts";
import {nearestNames} from "../../core/nearest.ts";
import type {Limits} from "../../core/numbers.ts";
import {type CsvRow, type CsvTable, numberIn, placeIn} from "./csv.ts";

/** Columns that a table may have: for each, the headers that are understood. */
export type Columns = Readonly<Record<string, readonly string[]>>;

/**
 * The form in which headers are compared: case, punctuation, brackets and currency signs or codes do not count, a slash is "per".
 *
 * `Milk fat (g)` and `milkFat_g` are the same, and so are `price per kg`, `Price (€/kg)`, `Price (EUR/kg)` and `price_per_kg`.
 */
export function columnKey(header: string): string {
  return header
    .replace(/\p{Sc}|\b[A-Z]{3}(?=\s*(?:\/|per\b))/gu, "")
    .replace(/\//g, " per ")
    .replace(/(\p{Ll})(?=\p{Lu})|(\p{N})(?=\p{L})/gu, "$1$2 ")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}%]+/gu, "_")
    .replace(/^_+|_+$/g, "");
}

/**
 * The table with its columns under the names that the reader knows.
 *
 * @param known the columns that it may have
 * @param prefix columns that start so are kept as they are written
 * @throws InputError naming the column for an unknown one, with the nearest, and for two headers of one meaning
 */
export function withColumns(table: CsvTable, place: string, known: Columns, prefix?: string): CsvTable {
  const byKey = new Map(
    Object.entries(known).flatMap(([column, headers]) =>
      [column, ...headers].map((header) => [columnKey(header), column] as const),
    ),
  );
  const written = new Map<string, string>();
  for (const header of table.columns) {
    const ofPrefix = prefix !== undefined && header.startsWith(prefix) && header.length > prefix.length;
    const column = ofPrefix ? header : byKey.get(columnKey(header));
    if (column === undefined) {
      const near = nearColumns(header, table, Object.keys(known));
      throw new InputError(
        `${place}, row 1, ${header}`,
        "unknown column",
        header,
        near.length
          ? `did you mean ${near.join(" or ")}`
          : `use ${Object.keys(known).join(", ")}${prefix ? `, ${prefix}…` : ""}`,
      );
    }
    const other = written.get(column);
    if (other !== undefined)
      throw new InputError(`${place}, row 1, ${header}`, `the column ${other} again`, header, "keep one");
    written.set(column, header);
  }
  const columnOf = new Map([...written].map(([column, header]) => [header, column]));
  return {
    ...table,
    columns: [...written.keys()],
    written,
    rows: table.rows.map((row) => ({
      ...row,
      cells: new Map([...row.cells].map(([header, cell]) => [columnOf.get(header)!, cell])),
    })),
  };
}

/** The columns most like an unknown one; beside others of a label, its own come first: `protein g` is `label_protein_g`. */
function nearColumns(header: string, table: CsvTable, known: readonly string[]): string[] {
  const near = nearestNames(header, known);
  const isOfLabel = table.columns.some((column) => columnKey(column).startsWith(LABEL));
  if (!isOfLabel) return near;
  const ofLabel = known.flatMap((column) => (column.startsWith(LABEL) ? [column.slice(LABEL.length)] : []));
  const first = nearestNames(header, ofLabel).map((column) => LABEL + column);
  return [...new Set([...first, ...near])].slice(0, 3);
}

/** Beginning of the names of a nutrition label's columns. */
const LABEL = "label_";

/**
 * A number from one of several columns, each with a unit of its own.
 *
 * @param units factor from the unit of each column to the unit wanted, e.g. `{stock_g: 1, stock_kg: 1000}`
 * @param limits inclusive limits of the number as it is written
 * @throws InputError naming row and column for a number out of range, and for two columns filled at once
 */
export function amountIn(
  table: CsvTable,
  row: CsvRow,
  units: Readonly<Record<string, number>>,
  limits: Limits,
): number | undefined {
  const filled = Object.keys(units).filter((column) => row.cells.has(column));
  const [column, other] = filled;
  if (column === undefined) return undefined;
  if (other !== undefined)
    throw new InputError(
      placeIn(table, row, other),
      `given beside ${table.written?.get(column) ?? column}`,
      row.cells.get(other),
      "fill one of them",
    );
  const value = numberIn(table, row, column, limits, UNIT_WORDS[column] ?? "");
  return value === undefined ? undefined : value * units[column]!;
}

/** Units of the columns, for errors. */
const UNIT_WORDS: Readonly<Record<string, string>> = {
  price_per_kg: "money per kg",
  price_per_100_g: "money per 100 g",
  stock_g: "g",
  stock_kg: "kg",
  g: "g",
  kg: "kg",
};

/** The columns of a price, each with the factor from its unit to money per kg. */
export const PRICE = {price_per_kg: 1, price_per_100_g: 10};

/** The columns of the stock, each with the factor from its unit to g. */
export const STOCK = {stock_g: 1, stock_kg: 1000};
