import {readFileSync} from "node:fs";
import Papa from "papaparse";

/** One row of a table, by column. */
export type Row = Readonly<Record<string, string>>;

/** The rows of a table in `datasets/`. */
export function readTable(name: string): Row[] {
  const text = readFileSync(new URL(`../${name}`, import.meta.url), "utf8").trimEnd();
  return Papa.parse<Row>(text, {header: true}).data;
}
