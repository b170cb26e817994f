import type {ShelfEntry} from "../pantry/stocked.ts";
import {numberIn} from "./csv.ts";
import {readNamedRows} from "./named-rows.ts";

const COLUMNS = ["name", "price_per_kg", "stock_g", "note"];

/**
 * Prices and stock from the text of a CSV file with the columns `name`, `price_per_kg` (money per kg) and, if wanted,
 * `stock_g` (g) and `note`.
 *
 * @param place name of the file, for errors
 * @throws InputError naming row, column and value for an unknown column, an empty or repeated name or a negative number
 */
export function readPricesCsv(text: string, place = "prices"): ShelfEntry[] {
  const {table, rows} = readNamedRows(text, place, COLUMNS);
  return rows.map(({name, row}) => {
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
