import {readFileSync} from "node:fs";
import Papa from "papaparse";
import {type PublishedTables, TABLES} from "./row.ts";

/** The published tables from `datasets/`. */
export function readTables(): PublishedTables {
  const entries = TABLES.map((name) => {
    const text = readFileSync(new URL(`../../datasets/${name}.csv`, import.meta.url), "utf8").trimEnd();
    return [name, Papa.parse<Record<string, string>>(text, {header: true}).data] as const;
  });
  return Object.fromEntries(entries) as unknown as PublishedTables;
}
