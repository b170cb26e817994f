import type {Variable} from "../../lp/program/program.ts";
import type {Aim, Brief} from "../brief/brief.ts";
import type {MeantRow} from "./meaning.ts";

/** Packs of one ingredient that a batch opens. */
export interface OpenedPacks {
  readonly ingredient: string;
  readonly packs: number;
  /** What is left in the last one, g. */
  readonly left: number;
}

/** The part of a program that counts packs: whole numbers of them, each row saying that they hold the amount used. */
export interface PackCount {
  /** Indices of the ingredients that are paid by the pack, so that their amounts themselves cost nothing. */
  readonly counted: readonly number[];
  readonly variables: readonly Variable[];
  readonly rows: readonly MeantRow[];
}

/**
 * Packs as whole numbers, where a brief with `wholePacks` minimises its cost: with p packs of an ingredient opened, its share of
 * the batch is at most p times what a pack is of the batch, and each pack costs its whole price.
 *
 * @param first index of the first variable that is returned
 */
export function countPacks(
  {batch, ingredients, wholePacks}: Brief,
  aim: Aim | undefined,
  first: number,
): PackCount {
  if (!wholePacks || aim?.subject.kind !== "cost") return {counted: [], variables: [], rows: []};
  const counted = ingredients.flatMap(({pack}, j) => (pack === undefined ? [] : [j]));
  return {
    counted,
    variables: counted.map((j) => {
      const {pack, ingredient} = ingredients[j]!;
      return {
        name: `packs of ${ingredient.name}`,
        cost: ((ingredient.price ?? 0) * pack!) / batch,
        integer: true,
      };
    }),
    rows: counted.map((j, k) => {
      const coefficients = Array.from({length: first + k + 1}, () => 0);
      coefficients[j] = 1;
      coefficients[first + k] = -ingredients[j]!.pack! / batch;
      return {
        name: `packs of ${ingredients[j]!.ingredient.name}`,
        coefficients,
        upper: 0,
        meaning: {kind: "help"},
      };
    }),
  };
}

/** The packs that amounts open, for the ingredients whose pack is known. */
export function openedPacks({ingredients}: Brief, grams: readonly number[]): OpenedPacks[] {
  return ingredients.flatMap(({pack, ingredient}, j) => {
    if (pack === undefined || grams[j]! < 1e-6) return [];
    const packs = Math.ceil(grams[j]! / pack - 1e-9);
    return [{ingredient: ingredient.name, packs, left: packs * pack - grams[j]!}];
  });
}

/** Money for the batch with every opened pack paid in full; absent where something used has no price. */
export function outlayOf({ingredients}: Brief, grams: readonly number[]): number | undefined {
  let total = 0;
  for (const [j, {pack, ingredient}] of ingredients.entries()) {
    if (grams[j]! < 1e-6) continue;
    if (ingredient.price === undefined) return undefined;
    total +=
      (ingredient.price * (pack === undefined ? grams[j]! : Math.ceil(grams[j]! / pack - 1e-9) * pack)) /
      1000;
  }
  return total;
}
