import {InputError} from "../../core/errors.ts";
import {expectList, oneOf} from "../../core/shape.ts";
import {expectIngredient} from "../../pantry/expect.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {mixComposition} from "../../pantry/mix.ts";
import {type Quantity, QUANTITIES, quantityOf} from "../../pantry/quantities.ts";

/** An ingredient made of two others. */
export interface Split {
  /** Of the first and of the second, g per 100 g. */
  readonly grams: readonly [number, number];
  /** Quantities in which the blend differs from the ingredient by more than rounding, g per 100 g. */
  readonly differs: Readonly<Partial<Record<Quantity, number>>>;
}

/**
 * Amounts of two ingredients that together have the mass of 100 g of another and as much of one quantity: milk and butter for
 * cream, skimmed milk and cream for milk.
 *
 * If all three are a fat in skim milk, MSNF = 0.09 (100 - fat) (the skim-portion rule of H. D. Goff, Ice Cream
 * Technology, University of Guelph e-book), then equal fat makes MSNF and water equal too, since both are linear in the fat.
 *
 * @param quantity quantity to be made equal; fat by default
 * @returns `undefined` where the ingredient does not lie between the two
 * @throws InputError where both have the same of it
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const [milk, butter] = [
 *   findIngredient(pantry, "whole milk"),
 *   findIngredient(pantry, "unsalted butter"),
 * ] as const;
 * splitInto(findIngredient(pantry, "cream 40 %"), [milk, butter])?.grams; // => [52.8, 47.2]
 * ```
 */
export function splitInto(
  whole: Ingredient,
  parts: readonly [Ingredient, Ingredient],
  quantity: Quantity = "fat",
): Split | undefined {
  expectIngredient(whole);
  oneOf(quantity, QUANTITIES, "quantity", "quantity");
  if (Array.isArray(parts) && parts.length !== 2)
    throw new InputError("parts", "not two ingredients", parts.length, "give two ingredients");
  expectList(parts, {name: "text", composition: "object"}, "parts", "give two ingredients");
  const [first, second] = parts.map(({composition}) => quantityOf(composition, quantity)) as [number, number];
  if (Math.abs(first - second) < 1e-9) {
    throw new InputError(
      "parts",
      `both have the same ${quantity}`,
      first,
      "choose one with more than the other",
    );
  }
  const share = (quantityOf(whole.composition, quantity) - second) / (first - second);
  if (share < 0 || share > 1) return undefined;
  const blend = mixComposition([
    {composition: parts[0].composition, grams: share},
    {composition: parts[1].composition, grams: 1 - share},
  ]);
  const differs: Partial<Record<Quantity, number>> = {};
  for (const name of QUANTITIES) {
    const difference = quantityOf(blend, name) - quantityOf(whole.composition, name);
    if (Math.abs(difference) > 1e-9) differs[name] = difference;
  }
  return {grams: [100 * share, 100 * (1 - share)], differs};
}
