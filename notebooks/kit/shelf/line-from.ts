import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {PackPrice, ShelfLine} from "../keep/shelf.ts";
import {isDay} from "../words/day.ts";
import type {Attempt} from "../words/mistakes.ts";
import {amountIn, paidIn} from "../words/pack-price.ts";
import {bestWords, moneyText, priceWords} from "./words.ts";

/** Entries in the boxes of a line. */
export interface LineBoxes {
  readonly paid: string;
  readonly there: string;
  /** A day; what is no day is refused. */
  readonly best: string;
  readonly out: boolean;
}

/** A line as it becomes, and what is new about it in a sentence. */
interface Changed {
  readonly line: ShelfLine;
  readonly words: string;
}

/** The boxes as they stand for a line. */
export function boxesOf({price, have, best, out}: ShelfLine): LineBoxes {
  return {
    paid: price ? paidText(price) : "",
    there: have?.text ?? "",
    best: best ?? "",
    out: out === true,
  };
}

function paidText({money, pack}: PackPrice): string {
  return `${moneyText(money)} for ${pack}`;
}

/**
 * A line as its boxes say it, or what is amiss.
 *
 * @param line as it was
 * @param ingredient that of the line; where there is none, price and amount stay as they were
 * @param today the day that a new price is set on
 */
export async function lineFrom(
  boxes: LineBoxes,
  line: ShelfLine,
  ingredient: Ingredient | undefined,
  today: string,
): Promise<Attempt<Changed>> {
  const {name} = line;
  const before = boxesOf(line);
  const next: {-readonly [K in keyof ShelfLine]: ShelfLine[K]} = {name};
  const news: string[] = [];
  const told = (taken: readonly string[]) => (taken.length ? ` (${taken.join("; ")})` : "");
  if (!ingredient || boxes.paid.trim() === before.paid) {
    if (line.price) next.price = line.price;
  } else if (boxes.paid.trim() === "") news.push("no price of yours any more");
  else {
    const read = await paidIn(boxes.paid, ingredient);
    if ("mistake" in read) return read;
    const {money, text: pack, grams, taken} = read.value;
    next.price = {money, pack, grams, on: today};
    news.push(`costs ${priceWords(next, today)}${told(taken)}`);
  }
  if (!ingredient || boxes.there.trim() === before.there) {
    if (line.have) next.have = line.have;
  } else if (boxes.there.trim() === "") news.push("nobody knows how much is there");
  else {
    const read = await amountIn(boxes.there, ingredient);
    if ("mistake" in read) return read;
    const {text, grams, taken} = read.value;
    next.have = {text, grams};
    news.push(`${text} there${told(taken)}`);
  }
  if (boxes.best !== "") {
    const written = boxes.best.slice(0, 20);
    if (!isDay(boxes.best))
      return {
        mistake: `Best before of ${name}: no day of the calendar (it is “${written}”). Choose a day, or empty the box.`,
      };
    next.best = boxes.best;
    if (boxes.best !== before.best)
      news.push(bestWords(boxes.best, today).replace(/^B/, "b").replace(/:.*$/, ""));
  } else if (line.best !== undefined) news.push("no date any more");
  if (boxes.out) next.out = true;
  if (boxes.out !== before.out) news.push(boxes.out ? "out of stock" : "there again");
  return {value: {line: next, words: `${name}: ${news.join(", ") || "on your shelf"}.`}};
}
