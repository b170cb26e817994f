import {InputError} from "../../core/errors.ts";
import {nameKey} from "../../pantry/pantry.ts";
import {type Columns, withColumns} from "./columns.ts";
import {type CsvRow, type CsvTable, placeIn, readCsv} from "./csv.ts";
import {LONGEST_NAME} from "../text/limits.ts";

/** A row of a table of named things. */
export interface NamedRow {
  readonly name: string;
  readonly row: CsvRow;
}

/**
 * The rows of a CSV text whose column `name` (or `ingredient`) names something in each.
 *
 * @param columns the further columns that it may have
 * @param prefix columns of this prefix are accepted too
 * @throws InputError naming row and column for an unknown column, a missing column `name`, and a name that is empty or
 *   longer than 200 characters
 */
export function readNamedRows(
  text: string,
  place: string,
  columns: Columns,
  prefix?: string,
): {table: CsvTable; rows: NamedRow[]} {
  const table = withColumns(readCsv(text, place), place, {name: ["ingredient"], ...columns}, prefix);
  if (!table.columns.includes("name"))
    throw new InputError(`${place}, row 1`, "no column name", undefined, "add a column called name");
  const rows = table.rows.map((row) => {
    const name = row.cells.get("name");
    if (!name)
      throw new InputError(
        placeIn(table, row, "name"),
        "empty",
        undefined,
        "give the ingredient a name, or empty the row",
      );
    if (name.length > LONGEST_NAME)
      throw new InputError(
        placeIn(table, row, "name"),
        `longer than ${LONGEST_NAME} characters`,
        name,
        "shorten it",
      );
    return {name, row};
  });
  return {table, rows};
}

/**
 * The rows themselves, if no two have the same name.
 *
 * @throws InputError naming the row that repeats an earlier one
 */
export function eachOnce(table: CsvTable, rows: readonly NamedRow[]): readonly NamedRow[] {
  const lineOf = new Map<string, number>();
  for (const {name, row} of rows) {
    const earlier = lineOf.get(nameKey(name));
    if (earlier !== undefined)
      throw new InputError(
        placeIn(table, row, "name"),
        `the name of row ${earlier} again`,
        name,
        "give each a name of its own",
      );
    lineOf.set(nameKey(name), row.line);
  }
  return rows;
}
