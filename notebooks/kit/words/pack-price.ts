import {amountFirst} from "../../../lib/io/typed/amount.ts";
import {priceLast} from "../../../lib/io/typed/price.ts";
import {weighLine} from "../../../lib/io/typed/weigh-line.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {Attempt} from "./mistakes.ts";

/** An amount as the cook wrote it, and what it weighs. */
export interface Weighed {
  /** `1 l`, `12`, `600 g`. */
  readonly text: string;
  readonly grams: number;
  /** Assumption, to be told. */
  readonly taken: readonly string[];
}

/** Money for an amount. */
export interface Paid extends Weighed {
  readonly money: number;
}

/** A price as a cook writes it: `2.40 for 1 l`, `3.60 for 12`, `1.20/kg`; a number alone is for a kilogram. */
export async function paidIn(text: string, ingredient: Ingredient): Promise<Attempt<Paid>> {
  const typed = text.trim().replace(/^@/, "");
  const found =
    typed.length > 100 || /(?:\/|\b(?:for|per|a))$/i.test(typed) ? undefined : priceLast(`x @ ${typed}`);
  if (!found || !(found.price < 1e6) || found.before !== "x")
    return {
      mistake: `Price of ${ingredient.name}: not a price (it is “${clipped(typed)}”). Write what you pay, and for how much: “2.40 for 1 l”, “3.60 for 12”, “1.20 per kg”.`,
    };
  const {count, unit} = found.per;
  const weighed = await weigh({count, ...(unit !== undefined && {unit})}, typed, ingredient);
  return "value" in weighed ? {value: {...weighed.value, money: found.price}} : weighed;
}

/** An amount as a cook writes it: `3 l`, `12`, `2 x 250 g`. */
export async function amountIn(text: string, ingredient: Ingredient): Promise<Attempt<Weighed>> {
  const typed = text.trim();
  const found = typed.length > 100 ? undefined : amountFirst(typed);
  if (!found || found.percent || found.pack !== undefined || found.rest.trim() !== "" || !(found.count > 0))
    return {
      mistake: `How much ${ingredient.name} there is: no amount (it is “${clipped(typed)}”). Write a number and a unit: “3 l”, “500 g”, “12”; leave it empty where you do not know.`,
    };
  return weigh(found, typed, ingredient);
}

async function weigh(
  {
    count,
    unit,
    taken = [],
  }: {readonly count: number; readonly unit?: string; readonly taken?: readonly string[]},
  written: string,
  ingredient: Ingredient,
): Promise<Attempt<Weighed>> {
  const text = `${Number(count.toPrecision(6))}${unit === undefined ? "" : ` ${unit}`}`;
  const weighed = await weighLine(
    ingredient,
    {count, taken, ...(unit !== undefined && {unit})},
    written,
    "EU",
  );
  if (!("question" in weighed) && weighed.grams > 0 && weighed.grams < 1e9)
    return {value: {text, grams: weighed.grams, taken: weighed.taken}};
  return {
    mistake: `${text} of ${ingredient.name}: nobody has said what that weighs. Write its weight: “for 1 kg”, “500 g”.`,
  };
}

function clipped(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
