import {FRACTION_SIGNS, FRACTIONS} from "../../core/fractions.ts";

/** A number at the start of a text, as a cook writes it. */
export interface TypedNumber {
  readonly value: number;
  /** The text behind it. */
  readonly rest: string;
  /** Assumption, in words for the cook; absent where there is only one way to read it. */
  readonly taken?: string;
}

const GLYPH = `[${FRACTION_SIGNS}]`;

const WORDS: Readonly<Record<string, number>> = {
  a: 1,
  an: 1,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  eleven: 11,
  twelve: 12,
  dozen: 12,
  half: 0.5,
  quarter: 0.25,
};

/** Ways to write a number, the longest first, each with its value. */
const WAYS: readonly (readonly [pattern: RegExp, value: (found: RegExpExecArray) => number])[] = [
  // 1 1/2, 1-1/2, 1 and 1/2
  [/^(\d+)\s*(?:-|\band\b|\s)\s*(\d+)\s*[/⁄]\s*(\d+)/u, (d) => Number(d[1]) + Number(d[2]) / Number(d[3])],
  [new RegExp(`^(\\d+)\\s*(?:and\\s*)?(${GLYPH})`, "u"), (d) => Number(d[1]) + FRACTIONS[d[2]!]!],
  [/^(\d+)\s*[/⁄]\s*(\d+)/u, (d) => Number(d[1]) / Number(d[2])],
  [new RegExp(`^(${GLYPH})`, "u"), (d) => FRACTIONS[d[1]!]!],
  [/^(?:one|1) and a half\b/i, () => 1.5],
  [/^(?:two|2) and a half\b/i, () => 2.5],
  [/^(?:a )?half (?:a |an )?dozen\b/i, () => 6],
  [/^(?:a |one )?dozen\b/i, () => 12],
  [/^(?:a )?half(?: an?\b| of an?\b)?/i, () => 0.5],
  [/^(?:a |one )?quarter(?: of an?\b)?/i, () => 0.25],
  [/^(\d+(?:\.\d+)?)(?![.,]?\d)/, (d) => Number(d[1])],
  [/^(\d+),(\d{1,2}|\d{4,})(?![.,]?\d)/, (d) => Number(`${d[1]}.${d[2]}`)],
  [/^(\.\d+)(?![.,]?\d)/, (d) => Number(d[1])],
  [/^(\p{L}+)\b/u, (d) => WORDS[d[1]!.toLowerCase()] ?? Number.NaN],
];

/** Thousands: 1,250 or 1.250 or 1'250 or 1 250; three digits after one mark may also be decimals. */
const THOUSANDS = /^(\d{1,3})([,.'’\u00a0\u202f ])(\d{3})(?:\2(\d{3}))?(?![.,]?\d)/u;

/** Marks of "about" before a number. */
const ABOUT = /^(?:about|approx(?:imately)?\.?|roughly|circa|ca\.?|c\.|~|≈)\s*/i;

/** Between two numbers of a range. */
const TO = /^\s*(?:-|–|—|\bto\b|\bor\b)\s*/;

/** Beginning of a text that may follow a range: a blank, a further number, a word, or nothing. */
const AFTER_RANGE = new RegExp(`^[\\s\\d${FRACTION_SIGNS}]|^\\s*\\p{L}|^$`, "u");

/**
 * The number that a text begins with: `2`, `2.5`, `2,5`, `1/2`, `1 1/2`, `1½`, `three`, `half a`, `1,250`, `2-3`, `about 5`.
 * `undefined` where it begins with none, or with one that is not above 0.
 */
export function numberFirst(text: string): TypedNumber | undefined {
  const about = ABOUT.exec(text)?.[0] ?? "";
  const first = oneNumber(text.slice(about.length));
  if (!first) return undefined;
  const between = TO.exec(first.rest);
  const second = between && !first.taken ? oneNumber(first.rest.slice(between[0].length)) : undefined;
  if (!second || second.taken || second.value <= first.value || !AFTER_RANGE.test(second.rest)) return first;
  const value = (first.value + second.value) / 2;
  return {
    value,
    rest: second.rest,
    taken: `${text.slice(0, text.length - second.rest.length).trim()} taken as ${value}`,
  };
}

/** Words for an uncertain number, each with the number taken for it. */
const SOME = /^(?:(?:a )?(few|couple)(?: of)?|(several))\b/i;

function oneNumber(text: string): TypedNumber | undefined {
  const some = SOME.exec(text);
  if (some) {
    const value = some[1]?.toLowerCase() === "couple" ? 2 : 3;
    return {value, rest: text.slice(some[0].length), ...(value === 3 && {taken: `${some[0]} taken as 3`})};
  }
  const thousands = THOUSANDS.exec(text);
  if (thousands) return thousandsOf(thousands, text);
  for (const [pattern, valueOf] of WAYS) {
    const found = pattern.exec(text);
    if (!found) continue;
    const value = valueOf(found);
    if (value > 0 && Number.isFinite(value)) return {value, rest: text.slice(found[0].length)};
  }
  return undefined;
}

/** A number with a mark that may part thousands or decimals, read as one of them with a note. */
function thousandsOf(
  [whole, first, mark, second, third]: RegExpExecArray,
  text: string,
): TypedNumber | undefined {
  const rest = text.slice(whole!.length);
  const big = Number(`${first}${second}${third ?? ""}`);
  if (mark === " " || mark === "\u00a0" || mark === "\u202f") {
    // "2 250 g tubs" are two tubs, "1 250 g" is a mass: only the latter is followed by its unit and a thing that is no pack.
    return {value: big, rest, taken: `${whole} taken as ${big}`};
  }
  if (third !== undefined || mark === "'" || mark === "’") return {value: big, rest};
  const small = Number(`${first}.${second}`);
  // A kilogram or litre is written with decimals, a gram or millilitre with thousands.
  const kilo = /^\s*(?:kg|kilos?|l|lit(?:er|re)s?|ltr)\b/i.test(rest);
  const value = small > 0 && (kilo || first === "0") ? small : big;
  if (first === "0") return {value: small, rest};
  return value > 0 ? {value, rest, taken: `${whole} taken as ${value}`} : undefined;
}
