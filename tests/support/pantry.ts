import {readFileSync} from "node:fs";
import {readPantryCsv} from "../../lib/io/csv/pantry-csv.ts";
import {readPricesCsv} from "../../lib/io/csv/prices-csv.ts";
import {pantryOf} from "../../lib/pantry/pantry.ts";
import {stockedPantry} from "../../lib/pantry/stocked.ts";

/** Text of a file of `datasets/`. */
export function dataset(name: string): string {
  return readFileSync(new URL(`../../datasets/${name}`, import.meta.url), "utf8");
}

/** The ingredients that come with the package. */
export const realPantry = pantryOf(readPantryCsv(dataset("ingredients.csv"), "ingredients.csv"));

/** The same with the invented prices and stock of the demo shop. */
export const demoPantry = stockedPantry(realPantry, readPricesCsv(dataset("demo/prices.csv"), "prices.csv"));
