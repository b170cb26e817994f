import {csvFormatRow} from "d3-dsv";

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Text for HTML, between tags or inside a quoted attribute: nothing in it is read as markup. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => ENTITIES[sign]!);
}

/**
 * Text for one line of Markdown (CommonMark, and tables of GitHub's dialect), nothing in it read as markup, HTML, a link or, at
 * its start, as a heading, list or rule; line breaks become spaces. Plain words and numbers stay readable as they are.
 */
export function escapeMarkdown(text: string): string {
  return text
    .replace(/[\p{Cc}\u2028\u2029]+/gu, " ")
    .replace(/[\\`*_[\]|~]/g, "\\$&")
    .replace(/[&<>]/g, (sign) => ENTITIES[sign]!)
    .replace(/:(?=\/\/)|(?<=\bwww)\./gi, "\\$&")
    .replace(/^(\s*)([#=]|[+-](?=[\s-]|$))/, "$1\\$2")
    .replace(/^(\s*\d+)([.)])(?=\s|$)/, "$1\\$2");
}

/**
 * Rows as CSV text (RFC 4180, CRLF) that no spreadsheet reads as a formula.
 *
 * A text that starts, after any blanks and control characters, with `=`, `+`, `-`, `@` or one of their full-width forms gets an
 * apostrophe in front, as OWASP advises against CSV injection; numbers stay numbers.
 *
 * @param columns header, one name per cell of each row
 * @param rows text, number or `undefined` for an empty cell
 */
export function csvText(
  columns: readonly string[],
  rows: readonly (readonly (string | number | undefined)[])[],
): string {
  return [columns, ...rows].map((row) => csvFormatRow(row.map(plainCell))).join("\r\n");
}

/** Beginning of a formula. */
const FORMULA = /^[\s\p{Cc}]*[=+\-@＝＋－＠\t\r]/u;

function plainCell(cell: string | number | undefined): string {
  if (typeof cell === "string") return FORMULA.test(cell) ? `'${cell}` : cell;
  return cell === undefined ? "" : String(cell);
}
