import {InputError} from "../../core/errors.ts";
import {finite, sum} from "../../core/numbers.ts";
import {expectFlag, expectOptions} from "../../core/shape.ts";
import type {Sticker} from "../../kitchen/label/sticker.ts";
import {X_HEIGHT} from "../text/letter-widths.ts";
import {type Run, widthOf, wrapped} from "../text/wrapped.ts";

/** A sticker's size. */
export interface StickerSize {
  /** mm, 20 to 300, as the height. */
  readonly width: number;
  readonly height: number;
  /** Whether the pack's largest surface is below 80 cm², so that letters may be smaller; false by default. */
  readonly smallPack?: boolean;
}

/** A line of text with its position. */
export interface PlacedLine {
  readonly runs: readonly Run[];
  /** mm from the left and from the top to the foot of the letters. */
  readonly x: number;
  readonly y: number;
  /** Type size, mm. */
  readonly size: number;
  /** mm. */
  readonly width: number;
}

/** A sticker laid out. */
export interface StickerLayout {
  readonly lines: readonly PlacedLine[];
  /** mm from the top, of the two lines across. */
  readonly rules: readonly number[];
  /** Type size of the text, mm. */
  readonly size: number;
  /** mm. */
  readonly margin: number;
}

/** Height of small letters, mm: Regulation (EU) No 1169/2011, Article 13(2) and (3). */
const LEAST_HEIGHT = {usual: 1.2, small: 0.9} as const;

/** The largest type of the text, mm, and how much larger name and quantity are. */
const LARGEST = 3.4;
const TITLE = 1.7;
const QUANTITY = 1.5;

/** From line to line, and between paragraphs, of the type size. */
const LEADING = 1.2;
const GAP = 0.35;

/**
 * Lays a sticker out: the largest type that fits, never below what the law asks for; nutrition in a table if that fits, else in a line.
 *
 * @throws InputError for a size outside its range, and for words that do not fit, with the height that they need
 */
export function stickerLayout(sticker: Sticker, size: StickerSize): StickerLayout {
  expectOptions(size, ["width", "height", "smallPack"], "size");
  finite(size.width, "size.width", {min: 20, max: 300}, "mm");
  finite(size.height, "size.height", {min: 20, max: 300}, "mm");
  if (size.smallPack !== undefined) expectFlag(size.smallPack, "size.smallPack");
  const height = LEAST_HEIGHT[size.smallPack ? "small" : "usual"];
  // One per cent above the least, since printers round.
  const least = (1.01 * height) / X_HEIGHT;
  for (const table of sticker.nutrition?.rows ? [true, false] : [false]) {
    for (let type = LARGEST; type > least - 0.05; type -= 0.05) {
      const laid = layout(sticker, size, Math.max(type, least), table);
      if (laid) return laid;
    }
  }
  const needed = (width: number) => stickerParts(sticker, width, least, false).height;
  let wider = Math.ceil(size.width);
  while (wider < 300 && needed(wider) > (size.height * wider) / size.width) wider++;
  const likewise = `${wider} x ${Math.ceil((size.height * wider) / size.width)} mm`;
  throw new InputError(
    "sticker",
    `too small for its words in letters of ${height} mm`,
    `${size.width} x ${size.height} mm`,
    `take at least ${size.width} x ${Math.ceil(needed(size.width))} mm, or ${likewise}, or shorten the words`,
  );
}

const marginOf = (width: number) => (width < 60 ? 2 : 3);

/** Pieces of one line, each from its place, mm from the margin. */
type Row = readonly {readonly runs: readonly Run[]; readonly at: number}[];

/** The parts of a sticker at a type size: the rows of each, from top to bottom, and the height of all. */
function stickerParts(sticker: Sticker, width: number, type: number, table: boolean) {
  const inner = width - 2 * marginOf(width);
  const text = (runs: readonly Run[], room: number, size = type): Row[] =>
    wrapped(runs, room, size).map((line) => [{runs: line, at: 0}]);
  const title = text([{text: sticker.title, bold: true}], inner, TITLE * type);
  const {nutrition} = sticker;
  const rows = table ? tableRows(nutrition?.rows ?? [], inner, type) : undefined;
  const declared = !nutrition
    ? []
    : table
      ? [...(rows ?? []), ...(nutrition.note ? text([{text: nutrition.note, bold: false}], inner) : [])]
      : text([{text: nutrition.line, bold: false}], inner);
  const body = [
    ...sticker.paragraphs.map((pieces) => text(runsOf(pieces), inner)),
    ...(declared.length ? [declared] : []),
  ];
  const quantity: Run[] = sticker.quantity === undefined ? [] : [{text: sticker.quantity, bold: true}];
  const left = inner - (quantity.length ? widthOf(quantity, QUANTITY * type) + 2 * type : 0);
  // A quantity that leaves too little beside it gets lines of its own.
  const apart = left < inner / 3;
  const high = apart ? text(quantity, inner, QUANTITY * type) : [];
  const foot = sticker.foot.flatMap((pieces, i) => text(runsOf(pieces), i < 2 && !apart ? left : inner));
  const large = QUANTITY * type * LEADING * (apart ? high.length : Math.min(1, quantity.length));
  const low = foot.length * type * LEADING;
  const footHeight = apart ? large + low : Math.max(large, low);
  const bodyHeight = sum(body.map((lines) => lines.length * type * LEADING + GAP * type));
  const height =
    2 * marginOf(width) + title.length * TITLE * type * LEADING + bodyHeight + footHeight + 2 * GAP * type;
  return {
    inner,
    title,
    body,
    quantity,
    high,
    apart,
    foot,
    footHeight,
    height,
    fits: !table || rows !== undefined,
  };
}

/** The rows of a table, figures set to the right; `undefined` where a row does not fit. */
function tableRows(rows: readonly (readonly string[])[], inner: number, type: number): Row[] | undefined {
  const runs = (text: string, i: number): Run[] => [{text, bold: i === 0}];
  const columns = rows[0]?.length ?? 0;
  const wide = Array.from({length: columns}, (_, column) =>
    Math.max(...rows.map((row, i) => widthOf(runs(row[column] ?? "", i), type))),
  );
  const total = sum(wide) + 1.5 * type * (columns - 1);
  if (total > inner) return undefined;
  return rows.map((row, i) => {
    let edge = wide[0]!;
    return row.map((text, column) => {
      if (column > 0) edge += 1.5 * type + wide[column]!;
      const own = runs(text, i);
      return {runs: own, at: column === 0 ? 0 : edge - widthOf(own, type)};
    });
  });
}

function layout(
  sticker: Sticker,
  {width, height}: StickerSize,
  type: number,
  table: boolean,
): StickerLayout | undefined {
  const parts = stickerParts(sticker, width, type, table);
  if (!parts.fits || parts.height > height) return undefined;
  const margin = marginOf(width);
  const {inner, title, body, quantity, high, apart, foot, footHeight} = parts;
  const lines: PlacedLine[] = [];
  let y = margin;
  const put = (row: Row, size: number) => {
    for (const {runs, at} of row)
      lines.push({runs, x: margin + at, y: y + 0.86 * size, size, width: widthOf(runs, size)});
    y += size * LEADING;
  };
  for (const row of title) put(row, TITLE * type);
  const rules = [y + 0.1 * type];
  y += GAP * type;
  for (const paragraph of body) {
    for (const row of paragraph) put(row, type);
    y += GAP * type;
  }
  y = height - margin - footHeight;
  if (footHeight > 0) rules.push(y - 0.25 * type);
  const large = QUANTITY * type;
  if (apart) for (const row of high) put(row, large);
  else if (quantity.length) {
    put([{runs: quantity, at: inner - widthOf(quantity, large)}], large);
    y = height - margin - footHeight;
  }
  for (const row of foot) put(row, type);
  return {lines, rules, size: type, margin};
}

function runsOf(pieces: Sticker["paragraphs"][number]): Run[] {
  return pieces.map(({text, emphasised}) => ({text, bold: emphasised}));
}
