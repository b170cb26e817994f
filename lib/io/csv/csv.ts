import {InputError} from "../../core/errors.ts";
import type {Limits} from "../../core/numbers.ts";
import {numberFrom} from "./csv-number.ts";
import {misquoted, recordsOf} from "./csv-records.ts";
import {LONGEST_CELL, LONGEST_NAME, MOST_COLUMNS, MOST_ROWS, readable} from "../text/limits.ts";

/** One row of a CSV file: trimmed cells by column; an empty cell is absent. */
export interface CsvRow {
  /** Line of the file on which the row starts; the header is line 1. */
  readonly line: number;
  /** Place of the row, for errors, e.g. `pantry.csv, row 37`. */
  readonly place: string;
  readonly cells: ReadonlyMap<string, string>;
}

/** A CSV file as rows, with its columns in order. */
export interface CsvTable {
  /** Name of the file, for errors. */
  readonly place: string;
  readonly columns: readonly string[];
  readonly rows: readonly CsvRow[];
  /** Whether numbers may use a decimal comma, as in files delimited by semicolons. */
  readonly decimalComma: boolean;
  /** Columns as the file writes them, where that differs from the reader's names. */
  readonly written?: ReadonlyMap<string, string>;
}

/**
 * Rows of a CSV text (RFC 4180; comma or semicolon, told apart by the header line).
 *
 * A byte-order mark, either line ending, quoted cells and blank rows are accepted. An apostrophe that keeps a spreadsheet
 * from reading a cell as a formula (`'=A1`, `'-5 °C`) is left out, and so is a first line `sep=;`.
 *
 * @param text at most 5 million characters, 5000 rows, 300 columns and 10 000 characters a cell
 * @param place name of the file, for errors
 * @throws InputError naming row and column for malformed quotes, a wrong number of cells, a header that is missing,
 *   empty or repeated, or a text beyond these limits
 */
export function readCsv(text: string, place = "CSV"): CsvTable {
  const whole = readable(text, place);
  // Some spreadsheets begin with a line that names the delimiter.
  const body = whole.replace(/^sep=[,;][ \t]*\r?\n/i, "");
  const delimiter = delimiterOf(body);
  const first = body === whole ? 1 : 2;
  const [header, ...records] = recordsOf(body, delimiter, place, first, MOST_ROWS);
  const columns = (header?.cells ?? [""]).map((column) => column.trim());
  const bad = misquoted(body, delimiter, first);
  if (bad)
    throw new InputError(
      `${place}, row ${bad.line}, ${shortName(columns[bad.index]) ?? `column ${bad.index + 1}`}`,
      `malformed quotes: ${bad.problem}`,
      bad.text,
      'put quotes around the whole cell and double those inside, e.g. "18"" tin"',
    );
  checkHeader(columns, place);
  const rows: CsvRow[] = [];
  for (const {line, cells: record} of records) {
    if (record.every((cell) => cell.trim() === "")) continue;
    const rowPlace = `${place}, row ${line}`;
    if (record.length !== columns.length) {
      const at = columns[record.length] ?? `column ${columns.length + 1}`;
      throw new InputError(
        `${rowPlace}, ${at}`,
        `${record.length} cells under ${columns.length} columns`,
        record.length > columns.length ? record[columns.length] : undefined,
        record.length > columns.length && delimiter === ","
          ? "give one cell a column; quote a cell that holds a comma, or part all cells by semicolons: then numbers may have decimal commas"
          : `give one cell a column, and quote a cell that holds a ${delimiter === "," ? "comma" : "semicolon"}`,
      );
    }
    rows.push({line, place: rowPlace, cells: cellsOf(record, columns, rowPlace)});
  }
  return {place, columns, rows, decimalComma: delimiter === ";"};
}

function cellsOf(record: readonly string[], columns: readonly string[], place: string): Map<string, string> {
  const cells = new Map<string, string>();
  for (const [j, column] of columns.entries()) {
    const cell = record[j]?.trim().replace(/^'(?=\s*[=+\-@＝＋－＠])/, "");
    if (!cell) continue;
    if (cell.length > LONGEST_CELL)
      throw new InputError(
        `${place}, ${column}`,
        `longer than ${LONGEST_CELL} characters`,
        cell,
        "shorten it; if it holds rows, a quote is missing",
      );
    cells.set(column, cell);
  }
  return cells;
}

/**
 * The number in a cell, or nothing if the cell is empty.
 *
 * @param limits inclusive limits, none by default
 * @param unit unit of the value, for the error
 * @throws InputError naming row, column, value and the accepted range
 */
export function numberIn(
  table: CsvTable,
  row: CsvRow,
  column: string,
  limits: Limits = {},
  unit = "",
): number | undefined {
  const cell = row.cells.get(column);
  return cell === undefined
    ? undefined
    : numberFrom(cell, table.decimalComma, placeIn(table, row, column), limits, unit);
}

/** Place of a cell, with its column as the file writes it, e.g. `pantry.csv, row 37, Price (€/kg)`. */
export function placeIn(table: CsvTable, row: CsvRow, column: string): string {
  return `${row.place}, ${table.written?.get(column) ?? column}`;
}

function checkHeader(columns: readonly string[], place: string): void {
  if (columns.length > MOST_COLUMNS)
    throw new InputError(
      `${place}, row 1, column ${MOST_COLUMNS + 1}`,
      `more than ${MOST_COLUMNS} columns`,
      columns[MOST_COLUMNS],
      "keep the columns that are needed",
    );
  for (const [i, column] of columns.entries()) {
    if (column === "") {
      const problem = columns.length === 1 ? "no header" : "a column without a name";
      throw new InputError(
        `${place}, row 1, column ${i + 1}`,
        problem,
        column,
        "name every column in the first row",
      );
    }
    if (shortName(column) === undefined) {
      throw new InputError(
        `${place}, row 1, column ${i + 1}`,
        `a name longer than ${LONGEST_NAME} characters`,
        column,
        "name the columns in the first row, and check whether a line break is missing after it",
      );
    }
    if (columns.indexOf(column) < i) {
      throw new InputError(
        `${place}, row 1, column ${i + 1}`,
        "duplicate column",
        column,
        "keep one column of that name",
      );
    }
  }
}

/** The name of a column; `undefined` for one that is too long. */
function shortName(column: string | undefined): string | undefined {
  return column !== undefined && column.length <= LONGEST_NAME ? column : undefined;
}

/** The semicolon if the header line, quoted cells aside, has more semicolons than commas; otherwise the comma. */
function delimiterOf(text: string): "," | ";" {
  const header = (/^.*/.exec(text)?.[0] ?? "").replace(/"[^"]*"/g, "");
  return header.split(";").length > header.split(",").length ? ";" : ",";
}
