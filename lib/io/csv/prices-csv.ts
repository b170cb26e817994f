import type {ShelfEntry} from "../../pantry/stocked.ts";
import {amountIn, type Columns, PRICE, STOCK} from "./columns.ts";
import {eachOnce, readNamedRows} from "./named-rows.ts";

const COLUMNS: Columns = {
  price_per_kg: ["per_kg", "cost_per_kg"],
  price_per_100_g: [],
  stock_g: [],
  stock_kg: [],
  note: [],
};

/**
 * Prices and stock from the text of a CSV file with the columns `name`, `price_per_kg` (money per kg) or `price_per_100_g`
 * and, if wanted, `stock_g` or `stock_kg`, and `note`; headers as in {@link readPantryCsv}.
 *
 * @param place name of the file, for errors
 * @returns price in money per kg, stock in g
 * @throws InputError naming row, column and value for an unknown column, an empty or repeated name or a negative number
 *
 * @example
 * ```ts
 * readPricesCsv("name,price per kg,stock g\nsugar,1.10,5000\n")[0]; // => {name: "sugar", price: 1.1, stock: 5000, place: "prices, row 2"}
 * ```
 */
export function readPricesCsv(text: string, place = "prices"): ShelfEntry[] {
  const {table, rows} = readNamedRows(text, place, COLUMNS);
  return eachOnce(table, rows).map(({name, row}) => {
    const price = amountIn(table, row, PRICE, {min: 0});
    const stock = amountIn(table, row, STOCK, {min: 0});
    return {
      name,
      ...(price === undefined ? {} : {price}),
      ...(stock === undefined ? {} : {stock}),
      place: row.place,
    };
  });
}
