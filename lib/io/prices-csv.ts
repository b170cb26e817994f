import {InputError} from "../core/errors.ts";
import {nearestNames} from "../core/nearest.ts";
import {nameKey} from "../pantry/pantry.ts";
import type {ShelfEntry} from "../pantry/stocked.ts";
import {numberIn, readCsv} from "./csv.ts";

const COLUMNS = ["name", "price_per_kg", "stock_g", "note"];

/**
 * Prices and stock from the text of a CSV file with the columns `name`, `price_per_kg` (money per kg) and, if wanted,
 * `stock_g` (g) and `note`.
 *
 * @param place name of the file, for errors
 * @throws InputError naming row, column and value for an unknown column, an empty or repeated name or a negative number
 */
export function readPricesCsv(text: string, place = "prices"): ShelfEntry[] {
  const table = readCsv(text, place);
  for (const column of table.columns) {
    if (COLUMNS.includes(column)) continue;
    const near = nearestNames(column, COLUMNS);
    throw new InputError(
      `${place}, row 1, ${column}`,
      "unknown column",
      column,
      near.length ? `did you mean ${near.join(" or ")}` : `use ${COLUMNS.join(", ")}`,
    );
  }
  const lineOf = new Map<string, number>();
  return table.rows.map((row) => {
    const name = row.cells.get("name");
    if (!name)
      throw new InputError(
        `${row.place}, name`,
        "empty",
        undefined,
        "give the ingredient a name, or empty the row",
      );
    const earlier = lineOf.get(nameKey(name));
    if (earlier !== undefined)
      throw new InputError(
        `${row.place}, name`,
        `the name of row ${earlier} again`,
        name,
        "keep one of the two rows",
      );
    lineOf.set(nameKey(name), row.line);
    const price = numberIn(table, row, "price_per_kg", {min: 0}, "money per kg");
    const stock = numberIn(table, row, "stock_g", {min: 0}, "g");
    return {
      name,
      ...(price === undefined ? {} : {price}),
      ...(stock === undefined ? {} : {stock}),
      place: row.place,
    };
  });
}
