import {dsvFormat} from "d3-dsv";
import {InputError} from "../../core/errors.ts";

/** A record of a CSV text, and the line of the text on which it starts. */
export interface CsvRecord {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A cell whose quotes RFC 4180 does not allow. */
export interface Misquoted {
  readonly line: number;
  /** Position of the cell in its record, from 0. */
  readonly index: number;
  readonly problem: string;
  readonly text: string;
}

/**
 * The records of a CSV text (RFC 4180), read by d3-dsv.
 *
 * @param first line on which the text starts, a count from 1
 * @param most largest number of records
 * @throws InputError for more than that, naming the row
 */
export function recordsOf(
  text: string,
  delimiter: "," | ";",
  place: string,
  first: number,
  most: number,
): CsvRecord[] {
  let line = first;
  return dsvFormat(delimiter).parseRows(text, (cells, i) => {
    // Stopped early, so that a file of nothing but line breaks does not fill the memory.
    if (i >= most)
      throw new InputError(
        `${place}, row ${line}`,
        `more than ${most} rows`,
        undefined,
        "split it into smaller files",
      );
    const record = {line, cells};
    line += 1;
    for (const cell of cells) line += lineEnds(cell);
    return record;
  });
}

/**
 * The first cell that is opened by a quote and not closed by one before the next delimiter, line break or the end: d3-dsv would
 * read on in silence.
 *
 * @param first line on which the text starts, a count from 1
 */
export function misquoted(text: string, delimiter: string, first: number): Misquoted | undefined {
  let [i, line, index] = [0, first, 0];
  while (i < text.length) {
    const start = i;
    if (text[i] === '"') {
      do {
        const close = text.indexOf('"', i + 1);
        if (close < 0)
          return {line, index, problem: "opened and never closed", text: text.slice(start, start + 100)};
        i = close + 1;
      } while (text[i] === '"');
      const after = text[i];
      if (after !== undefined && after !== delimiter && after !== "\n" && after !== "\r")
        return {line, index, problem: "text after the closing one", text: text.slice(start, i + 20)};
      line += lineEnds(text.slice(start, i));
    } else while (i < text.length && text[i] !== delimiter && text[i] !== "\n" && text[i] !== "\r") i++;
    if (text[i] === delimiter) index++;
    else {
      if (text[i] === "\r" && text[i + 1] === "\n") i++;
      line++;
      index = 0;
    }
    i++;
  }
  return undefined;
}

/** Number of line breaks, counted sign by sign: an open quote can make one cell of a whole file. */
function lineEnds(cell: string): number {
  let count = 0;
  for (let i = 0; i < cell.length; i++)
    if (cell[i] === "\n" || (cell[i] === "\r" && cell[i + 1] !== "\n")) count++;
  return count;
}
