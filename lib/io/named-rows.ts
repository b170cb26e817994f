import {InputError} from "../core/errors.ts";
import {nearestNames} from "../core/nearest.ts";
import {nameKey} from "../pantry/pantry.ts";
import {type CsvRow, type CsvTable, readCsv} from "./csv.ts";

/** A row of a table of named things. */
export interface NamedRow {
  readonly name: string;
  readonly row: CsvRow;
}

/**
 * The rows of a CSV text whose column `name` names each thing once.
 *
 * @param columns the columns that it may have
 * @param prefix columns of this prefix are accepted too
 * @throws InputError naming row and column for an unknown column, with the nearest ones, a missing column `name`, and an
 *   empty or repeated name
 */
export function readNamedRows(
  text: string,
  place: string,
  columns: readonly string[],
  prefix?: string,
): {table: CsvTable; rows: NamedRow[]} {
  const table = readCsv(text, place);
  for (const column of table.columns) {
    const ofPrefix = prefix !== undefined && column.startsWith(prefix) && column.length > prefix.length;
    if (ofPrefix || columns.includes(column)) continue;
    const near = nearestNames(column, columns);
    throw new InputError(
      `${place}, row 1, ${column}`,
      "unknown column",
      column,
      near.length
        ? `did you mean ${near.join(" or ")}`
        : `use ${columns.join(", ")}${prefix ? `, ${prefix}…` : ""}`,
    );
  }
  if (!table.columns.includes("name"))
    throw new InputError(`${place}, row 1`, "no column name", undefined, "add a column called name");
  const lineOf = new Map<string, number>();
  const rows = table.rows.map((row) => {
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
        "give each a name of its own",
      );
    lineOf.set(nameKey(name), row.line);
    return {name, row};
  });
  return {table, rows};
}
