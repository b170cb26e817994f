import {type AmountFirst, amountFirst, plainAmount, type TypedAmount} from "./amount.ts";
import {priceLast, type TypedPrice} from "./price.ts";

/** A way to read a line: a name and an amount. The best way is the one whose name is known. */
export interface LineReading {
  readonly name: string;
  /** Words in brackets or behind a comma. */
  readonly notes: readonly string[];
  readonly amount?: TypedAmount;
}

/** A line taken apart. */
export interface SplitLine {
  /** The ways to read it, the likeliest first. */
  readonly readings: readonly LineReading[];
  readonly price?: TypedPrice;
}

/** Bullets, boxes to tick and numbers of a list before a line. */
const BULLET = /^(?:[\s•·*+\-–—▪◦‣□☐☑✓✔>]+|\[[ xX]?\]\s*|\(?\d{1,2}[.)]\s+(?=\S))+/u;

/** Most places in a line that are tried as the beginning of an amount. */
const MOST_STARTS = 12;

/** Takes a line apart in either order: `500 g whole milk`, `Whole milk: 500 g`, `Milk (500 ml)`, `Egg yolks x 6`. */
export function splitLine(typed: string): SplitLine {
  // A decimal comma in the strength of something, "milk 3,5 %", parts no words.
  const text = typed
    .replace(BULLET, "")
    .replace(/(?<=\d),(?=\d{1,2}\s?%)/g, ".")
    .trim();
  const price = priceLast(text);
  const line = juiceOf((price?.before ?? text).replace(/[\s;,|]+$/, ""));
  const first = amountFirst(line);
  const readings: LineReading[] = [];
  const startsWithNumber = /^[\d½⅓⅔¼¾⅛~≈.]/u.test(line);
  const last = amountLast(line);
  const front = first && named(first.rest, first);
  if (front && startsWithNumber) readings.push(front);
  if (last) readings.push(last);
  if (front && !startsWithNumber) readings.push(front);
  // Amounts at both ends, "2 eggs, 100 g": the mass is taken.
  const both = first && !first.percent ? amountLast(first.rest) : undefined;
  if (both?.amount?.unit !== undefined) readings.push(both);
  readings.push(named(line));
  return {readings: readings.filter(({name}) => /\p{L}/u.test(name)), ...(price && {price})};
}

/** `juice of 2 lemons` as `2 lemons juice`. */
function juiceOf(line: string): string {
  const found =
    /^(?:the |finely |grated |freshly squeezed )*(juice|zest|peel|rind)(?: and (?:zest|juice))? (?:of|from) (.+)$/i.exec(
      line,
    );
  return found ? `${found[2]} ${found[1]!.toLowerCase().replace(/rind/, "zest")}` : line;
}

/** The name and its notes; a note that is an amount is taken as the amount. */
function named(text: string, amount?: TypedAmount): LineReading {
  const notes: string[] = [];
  const bare = text
    .replace(/[([]([^()[\]]*)[)\]]/g, (_, note: string) => {
      notes.push(note.trim());
      return " ";
    })
    .replace(/^\s*(?:of\b|[-–—:=×x*]\s)\s*/i, "")
    .replace(/\s+/g, " ")
    .trim();
  const [name = "", ...after] = bare.split(
    /\s*[,;:]\s+|\s+[-–—]\s+|\s*(?=\+\s)|\s+and\s+(?=[\d½⅓⅔¼¾⅛])|\s*[,;:]$/u,
  );
  // A plus stays with what it adds: "+ 2 lemons" is no word on where the juice is from.
  notes.push(...after.map((note) => note.trim()));
  const said = amount ? undefined : notes.map(wholeAmount).find((one) => one !== undefined);
  const found = amount ?? said;
  return {name: name.trim(), notes: notes.filter(Boolean), ...(found && {amount: plainAmount(found)})};
}

/** The amount at the end of a line, from the earliest place after which everything is part of it. */
function amountLast(text: string): LineReading | undefined {
  const bare = text.replace(/\s*[([]([^()[\]]*)[)\]]\s*$/, (whole: string, note: string) => {
    const amount = wholeAmount(note);
    // "cream 200 ml (35 %)": a percentage behind another amount is the strength.
    return amount && !(amount.percent && /\d/.test(text.slice(0, -whole.length))) ? whole : "";
  });
  const note = bare === text ? [] : [/[([]([^()[\]]*)[)\]]\s*$/.exec(text)![1]!.trim()];
  let tried = 0;
  for (const found of bare.matchAll(/(?<=[\s:;,=|×x*–—-])(?=[~≈\d½⅓⅔¼¾⅛.])/gu)) {
    if (++tried > MOST_STARTS) return undefined;
    const amount = wholeAmount(bare.slice(found.index));
    if (!amount) continue;
    const before = bare.slice(0, found.index).replace(/[\s:;,=|.…–—-]+$|\s+[x×*]\s*$/gu, "");
    if (!/\p{L}/u.test(before)) continue;
    const {name, notes} = named(before, amount);
    return {name, notes: [...notes, ...note], amount: plainAmount(amount)};
  }
  return undefined;
}

/** The amount that a whole text is, words such as "about" apart. */
export function wholeAmount(text: string): AmountFirst | undefined {
  const amount = amountFirst(text.trim().replace(/^(?:about|approx\.?|ca\.?|=)\s*/i, ""));
  return amount && /^[\s.)\]]*$/.test(amount.rest) ? amount : undefined;
}
