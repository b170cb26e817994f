import Papa from "papaparse";
import {InputError} from "../core/errors.ts";
import {finite, type Limits} from "../core/numbers.ts";

/** One row of a CSV file: trimmed cells by column; an empty cell is absent. */
export interface CsvRow {
  /** Line of the file on which the row starts; the header is line 1. */
  readonly line: number;
  /** Where the row stands, for errors, e.g. `pantry.csv, row 37`. */
  readonly place: string;
  readonly cells: ReadonlyMap<string, string>;
}

/** A CSV file as rows, with its columns in order. */
export interface CsvTable {
  readonly columns: readonly string[];
  readonly rows: readonly CsvRow[];
  /** Whether numbers may use a decimal comma, as in files delimited by semicolons. */
  readonly decimalComma: boolean;
}

/**
 * Rows of a CSV text (RFC 4180; comma or semicolon, told apart by the header line).
 *
 * A byte-order mark, either line ending, quoted cells and blank rows are accepted.
 *
 * @param place name of the file, for errors
 * @throws InputError naming row and column for malformed quotes, a wrong number of cells, or a header that is missing,
 *   empty or repeated
 */
export function readCsv(text: string, place = "CSV"): CsvTable {
  const body = text.replace(/^\uFEFF/, "");
  const delimiter = delimiterOf(body);
  const {data, errors} = Papa.parse<string[]>(body, {delimiter});
  const lines = startLines(data);
  const [header = [""], ...records] = data;
  const columns = header.map((column) => column.trim());
  for (const {row = 0, message, type} of errors) {
    if (type !== "Quotes") continue;
    const record = data[row] ?? [];
    const open = record.findIndex((cell) => cell.includes('"'));
    const index = open < 0 ? Math.max(0, record.length - 1) : open;
    throw new InputError(
      `${place}, row ${lines[row] ?? 1}, ${columns[index] ?? `column ${index + 1}`}`,
      `malformed quotes: ${message}`,
      record[index],
      'put quotes around the whole cell and double those inside, e.g. "18"" tin"',
    );
  }
  checkHeader(columns, place);
  const rows: CsvRow[] = [];
  for (const [i, record] of records.entries()) {
    if (record.every((cell) => cell.trim() === "")) continue;
    const line = lines[i + 1] ?? 1;
    const rowPlace = `${place}, row ${line}`;
    if (record.length !== columns.length) {
      const at = columns[record.length] ?? `column ${columns.length + 1}`;
      throw new InputError(
        `${rowPlace}, ${at}`,
        `${record.length} cells under ${columns.length} columns`,
        record.length > columns.length ? record[columns.length] : undefined,
        `give one cell a column, and quote a cell that holds a ${delimiter === "," ? "comma" : "semicolon"}`,
      );
    }
    const cells = new Map<string, string>();
    for (const [j, column] of columns.entries()) {
      const cell = record[j]?.trim();
      if (cell) cells.set(column, cell);
    }
    rows.push({line, place: rowPlace, cells});
  }
  return {columns, rows, decimalComma: delimiter === ";"};
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
    : numberFrom(cell, table.decimalComma, `${row.place}, ${column}`, limits, unit);
}

/**
 * A number from a piece of text.
 *
 * @throws InputError naming the place, the text and the accepted range
 */
export function numberFrom(
  text: string,
  decimalComma: boolean,
  place: string,
  limits: Limits = {},
  unit = "",
): number {
  const plain = decimalComma ? text.replace(",", ".") : text;
  const value = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain) ? Number(plain) : text;
  return finite(value, place, limits, unit);
}

function checkHeader(columns: readonly string[], place: string): void {
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

/** The semicolon if the header line, quoted cells aside, has more semicolons than commas; otherwise the comma. */
function delimiterOf(text: string): "," | ";" {
  const header = (/^.*/.exec(text)?.[0] ?? "").replace(/"[^"]*"/g, "");
  return header.split(";").length > header.split(",").length ? ";" : ",";
}

/** Line on which each record starts: quoted cells may span several. */
function startLines(records: readonly (readonly string[])[]): number[] {
  let line = 1;
  return records.map((record) => {
    const start = line;
    line += 1;
    for (const cell of record) line += cell.split(/\r\n|\r|\n/).length - 1;
    return start;
  });
}
