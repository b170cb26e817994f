import {readFileSync} from "node:fs";
import {parseTables} from "./parse-tables.ts";
import {type PublishedTables, type TableName, TABLES} from "./row.ts";

/** The published tables from `datasets/`. */
export function readTables(): PublishedTables {
  const texts = TABLES.map((name) => [
    name,
    readFileSync(new URL(`../${name}.csv`, import.meta.url), "utf8"),
  ]);
  return parseTables(Object.fromEntries(texts) as Record<TableName, string>);
}
