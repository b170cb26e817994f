/** Content of a column of a table. */
export type Column =
  | "name"
  | "grams"
  | "kilograms"
  | "millilitres"
  | "amount"
  | "unit"
  | "percent"
  | "price"
  | "other";

/** A line of a text, with its cells where it belongs to a table. */
export interface TextRow {
  /** From 1. */
  readonly line: number;
  readonly text: string;
  /** Two or more cells. */
  readonly cells?: readonly string[];
  /** Content of the columns, by the heading above. */
  readonly columns?: readonly Column[];
  /** Whether it is a heading of columns or a rule between them. */
  readonly ruled?: boolean;
  /** Whether it is too long to be a line of a recipe; `text` is its beginning. */
  readonly long?: boolean;
}

/** Longest line that is read, characters. */
export const LONGEST_LINE = 300;

const HEADINGS: readonly (readonly [pattern: RegExp, column: Column])[] = [
  [/^(?:ingredients?|names?|items?|what|products?|foods?)\b/i, "name"],
  [
    /^(?:g|gr|grams?|grammes?|weight(?:,? ?\(?g\)?)?|mass(?:,? ?\(?g\)?)?|weigh,? g|g in the batch)$/i,
    "grams",
  ],
  [/^(?:kg|kilos?|weight,? ?\(?kg\)?)$/i, "kilograms"],
  [/^(?:ml|millilit(?:er|re)s?|volume(?:,? ?\(?ml\)?)?)$/i, "millilitres"],
  [/^(?:amounts?|qty|quantity|quantities|how much|measures?)$/i, "amount"],
  [/^(?:units?|uom)$/i, "unit"],
  [/^(?:%|percent|per cent|share|g per 100 g|g in 100 g)$/i, "percent"],
  [/^(?:prices?|costs?)\b.*$/i, "price"],
];

/** The lines of a text; rows of a table have their cells and the columns of the heading. */
export function textRows(text: string): TextRow[] {
  const rows: TextRow[] = [];
  let columns: readonly Column[] | undefined;
  let mark: string | undefined;
  for (const [i, raw] of text.split(/\r\n|[\n\r\u2028\u2029\u0085\v\f]/u).entries()) {
    const line = i + 1;
    const typed = raw.replace(/\u00a0|\u202f/g, " ").trim();
    if (typed === "") {
      columns = mark = undefined;
      continue;
    }
    if (typed.length > LONGEST_LINE) {
      rows.push({line, text: typed.slice(0, LONGEST_LINE), long: true});
      continue;
    }
    const row = {line, text: typed.replace(/\s+/g, " ")};
    if (/^[\s|:=_*-]{3,}$/.test(typed)) {
      rows.push({...row, ruled: true});
      continue;
    }
    const headed = headingOf(typed);
    if (headed) {
      [columns, mark] = [headed.columns, headed.mark];
      rows.push({...row, ruled: true});
      continue;
    }
    const cells = mark === undefined ? looseCells(typed) : cellsBy(typed, mark);
    rows.push({...row, ...(cells && {cells}), ...(cells && columns && {columns})});
  }
  return rows;
}

/** Marks between cells, the surest first. */
const MARKS = ["\t", "|", ";", ","] as const;

function headingOf(text: string): {columns: readonly Column[]; mark: string} | undefined {
  for (const mark of [...MARKS, "  "]) {
    const cells = cellsBy(text, mark);
    if (!cells) continue;
    const columns = cells.map(
      (cell) =>
        HEADINGS.find(([pattern]) => pattern.test(cell.replace(/^["*]+|["*]+$/g, "").trim()))?.[1] ?? "other",
    );
    const amount = columns.some((column) => !["name", "other", "price", "unit"].includes(column));
    if (columns.includes("name") && amount) return {columns, mark};
  }
  return undefined;
}

/** Cells of a line outside a table with a heading: by tabs, bars or wide gaps, never by commas. */
function looseCells(text: string): readonly string[] | undefined {
  return (
    cellsBy(text, "\t") ??
    (text.startsWith("|") ? cellsBy(text, "|") : undefined) ??
    cellsBy(text, "  ") ??
    cellsBy(text, ";")
  );
}

/** The cells of a line by a mark between them, quoted as in CSV; `undefined` for fewer than two. */
function cellsBy(text: string, mark: string): readonly string[] | undefined {
  if (!text.includes(mark)) return undefined;
  const cells =
    mark === "  "
      ? text.split(/\s{2,}/)
      : mark === "|"
        ? text.replace(/^\||\|$/g, "").split("|")
        : quotedCells(text, mark);
  return cells.length > 1 ? cells.map((cell) => cell.trim()) : undefined;
}

function quotedCells(text: string, mark: string): string[] {
  const cells: string[] = [""];
  let quoted = false;
  for (const letter of text) {
    if (letter === '"') quoted = !quoted;
    else if (letter === mark && !quoted) cells.push("");
    else cells[cells.length - 1] += letter;
  }
  return cells;
}
