import {readFileSync} from "node:fs";
import {csvParse} from "d3-dsv";

/** One row of a table, by column. */
export type Row = Readonly<Record<string, string>>;

/** The rows of a table in `datasets/`. */
export function readTable(name: string): Row[] {
  const text = readFileSync(new URL(`../${name}`, import.meta.url), "utf8").trimEnd();
  return csvParse(text) as Row[];
}
