import type {ProgramBuilder, VariableRef} from "../../lp/program/builder.ts";
import type {Aim, Brief} from "../brief/brief.ts";
import {HELP, type RowOrigin} from "./row-origin.ts";

/** Packs of one ingredient that a batch opens. */
export interface OpenedPacks {
  readonly ingredient: string;
  readonly packs: number;
  /** Rest in the last pack, g. */
  readonly left: number;
}

/** Whether opened packs are paid in full: where a brief with `wholePacks` minimises its cost. */
export function paysPacks({wholePacks = false}: Brief, aim: Aim | undefined): boolean {
  return wholePacks && aim?.subject.kind === "cost" && aim.sense === "minimise";
}

/** Indices of the ingredients that are paid by the pack; their amounts then cost nothing further. */
export function paidByPack(brief: Brief, aim: Aim | undefined): number[] {
  if (!paysPacks(brief, aim)) return [];
  return brief.ingredients.flatMap(({pack}, j) => (pack === undefined ? [] : [j]));
}

/**
 * Counts packs as whole numbers: with p packs of an ingredient opened, its share of the batch is at most p times that of a pack, and
 * each pack costs its whole price.
 *
 * @param amounts the ingredients' variables
 * @param units share of the batch that one unit of each of them is
 */
export function addPacks(
  builder: ProgramBuilder<RowOrigin>,
  {batch, ingredients}: Brief,
  counted: readonly number[],
  amounts: readonly VariableRef[],
  units: readonly number[],
): void {
  const packs = counted.map((j) => {
    const {pack, ingredient} = ingredients[j]!;
    const cost = ((ingredient.price ?? 0) * pack!) / batch;
    return {j, pack: builder.variable({name: `packs of ${ingredient.name}`, cost, integer: true})};
  });
  for (const {j, pack} of packs) {
    const terms = [[amounts[j]!, units[j]!] as const, [pack, -ingredients[j]!.pack! / batch] as const];
    builder.row({name: `packs of ${ingredients[j]!.ingredient.name}`, terms, upper: 0}, HELP);
  }
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
