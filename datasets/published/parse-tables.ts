import {csvParseRows} from "d3-dsv";
import {type PublishedTables, type TableName, TABLES} from "./row.ts";

/** The published tables from the texts of their CSV files, by file name without `.csv`. */
export function parseTables(texts: Readonly<Record<TableName, string>>): PublishedTables {
  return Object.fromEntries(
    TABLES.map((name) => [name, parseTable(texts[name])]),
  ) as unknown as PublishedTables;
}

/** Rows of one CSV file, each a record by column. */
export function parseTable(text: string): Readonly<Record<string, string>>[] {
  const [columns = [], ...rows] = csvParseRows(text.trimEnd());
  return rows.map((cells) => Object.fromEntries(columns.map((column, j) => [column, cells[j] ?? ""])));
}
