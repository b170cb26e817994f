import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {expectList, oneOf} from "../../core/shape.ts";
import type {Amount} from "./answer.ts";
import type {Brief} from "../brief/brief.ts";

/** The amounts of a mix, from the share of the batch of each ingredient. */
export function amountsOf({batch, ingredients}: Brief, shares: readonly number[]): Amount[] {
  return ingredients.map(({ingredient}, j) => ({
    ingredient: ingredient.name,
    grams: shares[j]! * batch,
    percent: shares[j]! * 100,
  }));
}

/**
 * The amounts of a mix as a caller may hold them: those of an answer, a candidate or `weighable` as they are, or g of each
 * ingredient in the brief's order.
 */
export type AmountsInput = readonly number[] | readonly Pick<Amount, "ingredient" | "grams">[];

/**
 * g of each ingredient in the brief's order; 0 for one that the amounts do not name.
 *
 * @throws InputError for anything but amounts, masses that are no numbers from 0, another number of them than the brief
 *   has ingredients, and an ingredient that the brief does not have or the amounts name twice
 */
export function gramsOf({ingredients}: Brief, amounts: AmountsInput): number[] {
  const advice = "give answer.amounts, or g of each ingredient in the brief's order";
  if (!Array.isArray(amounts))
    throw new InputError("amounts", "not a list of amounts", amounts, advice, {code: "wrong type"});
  const given: readonly unknown[] = amounts;
  if (given.every((entry) => typeof entry === "number")) {
    if (given.length !== ingredients.length)
      throw new InputError(
        "amounts",
        "not one mass for each of the brief's ingredients",
        given.length,
        advice,
      );
    return given.map((grams, i) => finite(grams, `amounts[${i}]`, {min: 0}, "g"));
  }
  expectList(given, {ingredient: "text", grams: "number"}, "amounts", advice);
  const names = ingredients.map(({ingredient}) => ingredient.name);
  const grams = names.map((): number | undefined => undefined);
  for (const [i, amount] of (given as readonly Amount[]).entries()) {
    const place = `amounts[${i}]`;
    const j = names.indexOf(oneOf(amount.ingredient, names, `${place}.ingredient`, "ingredient"));
    if (grams[j] !== undefined)
      throw new InputError(
        `${place}.ingredient`,
        "named twice",
        amount.ingredient,
        "give each ingredient once",
      );
    grams[j] = finite(amount.grams, `${place}.grams`, {min: 0}, "g");
  }
  return grams.map((mass) => mass ?? 0);
}
