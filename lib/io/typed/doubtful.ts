import type {Ingredient} from "../../pantry/ingredient.ts";
import {amountFirst, isMass, type TypedAmount} from "./amount.ts";

/** A minus before the amount that ends a line: behind a mark, or a true one. A dash alone is a cook's. */
const MINUS_LAST = /(?:[:=,;|]\s*[-−–]\s*|\s−)(?=[\d.])/gu;

/** A true minus sign at the beginning; a dash there is the mark of a list. */
const MINUS_FIRST = /^−\s*(?=[\d.])/u;

const ZERO = /^0+(?:[.,]0+)?(?![\d.,/⁄½⅓⅔¼¾⅛-])\s*(?=\p{L}|$)/u;

/** The question about an amount that none can be: one below 0, or 0. */
export function amountDoubt(text: string): string | undefined {
  const first = MINUS_FIRST.exec(text);
  const last = [...text.matchAll(MINUS_LAST)].some(({index, 0: mark}) =>
    isAmount(text.slice(index + mark.length)),
  );
  if (first || last) return "an amount below 0? Write it without the minus";
  const zero =
    ZERO.test(text) || [...text.matchAll(/[\s:=,;|](?=0)/g)].some(({index}) => isZero(text.slice(index + 1)));
  return zero ? "0 of it is nothing: leave the line out, or write how much" : undefined;
}

function isAmount(text: string): boolean {
  return amountFirst(text)?.rest.trim() === "";
}

/** True for `0`, `0 g` and their like, and nothing behind. */
function isZero(text: string): boolean {
  const zero = ZERO.exec(text);
  return zero !== null && isAmount(`1 ${text.slice(zero[0].length)}`.trim());
}

/** Names of drinks that are steeped from what is strained out again. */
const BREW = /\bbrewed\b|\bespresso\b/i;

/** Words for the drink, and for what it is made from. */
const DRINK = /\b(?:brew(?:ed)?|espresso|strong|liquid|hot|cold|made|infused|black coffee)\b/i;
const GROUNDS = /\b(?:ground|beans?|leaf|leaves|loose|grounds|coarse)\b/i;

/**
 * The question about coffee or tea that is weighed or spooned like the dry thing: what is steeped and strained out again does not
 * count, the drink does.
 *
 * @param called the cook's name for it
 * @param text the line
 */
export function brewDoubt(
  {name}: Ingredient,
  amount: TypedAmount,
  called: string,
  text: string,
): string | undefined {
  if (!BREW.test(name)) return undefined;
  const dry = isMass(amount) || /spoon|^ts?b?sp/i.test(amount.unit ?? "");
  if (!GROUNDS.test(called) && (!dry || DRINK.test(text))) return undefined;
  return `is that the drink, or what it is steeped from? What is strained out again does not count: write how much of the drink stays in, as “100 ml ${name}”`;
}
