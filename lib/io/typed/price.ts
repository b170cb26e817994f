import {unitFirst} from "./unit.ts";
import {numberFirst} from "./number.ts";

/** A price at the end of a line. */
export interface TypedPrice {
  /** Money for `per`. */
  readonly price: number;
  /** Amount that it buys: so much of a unit, or so many whole ones where there is no unit; a kilogram by default. */
  readonly per: {readonly count: number; readonly unit?: string};
  /** The line without the price. */
  readonly before: string;
}

/** `@ 2.40 for 12`, `@ 1.20/kg`, `@ £4.20 for 600 g`, `(€3.10 per litre)`. */
const PRICE =
  /\s*[([]?\s*(?:@|\bat(?=\s*[£$€]))\s*[£$€]?\s*([\d.,]+)\s*[£$€]?(?:\s*(?:\/|for|per|a\b|each\b)\s*(.*?))?\s*[)\]]?$/iu;
const MARKED = /\s*[([]?\s*[£$€]\s*([\d.,]+)(?:\s*(?:\/|for|per|a\b)\s*(.*?))?\s*[)\]]?$/iu;

/** The price at the end of a line, if there is one that can be read. */
export function priceLast(text: string): TypedPrice | undefined {
  const found = PRICE.exec(text) ?? MARKED.exec(text);
  const price = found && numberFirst(found[1]!);
  if (!found || !price || price.rest !== "" || !(price.value < 1e6)) return undefined;
  const before = text.slice(0, found.index);
  const each = /\beach\s*[)\]]?$/i.test(found[0]);
  const per = perOf(found[2]?.trim() ?? "", each);
  return per && {price: price.value, per, before};
}

function perOf(words: string, each: boolean): TypedPrice["per"] | undefined {
  if (words === "") return each ? {count: 1} : {count: 1, unit: "kg"};
  const number = numberFirst(words) ?? {value: 1, rest: words};
  const unit = unitFirst(number.rest);
  if (unit) return unit.rest.trim() === "" ? {count: number.value * unit.times, unit: unit.word} : undefined;
  return /^\s*(?:pieces?|eggs?|pcs?|of them|whole)?\s*$/i.test(number.rest) ||
    /^(?:piece|one|egg)$/i.test(words)
    ? {count: number.value}
    : undefined;
}
