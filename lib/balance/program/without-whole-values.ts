import type {Brief, Choice} from "../brief/brief.ts";

/**
 * A brief without the rules that need whole numbers, and the names of those left out.
 *
 * Steps, whole units, "none or at least", "only with" and the number of ingredients split a brief's mixes into separate sets,
 * whose outline no linear program can follow. The outline without them is a bound: no mix that keeps them lies beyond it. Ratios
 * stay.
 */
export function withoutWholeValues(brief: Brief): {
  readonly brief: Brief;
  readonly leftOut: readonly string[];
} {
  const leftOut: string[] = [];
  const ingredients = brief.ingredients.map(({step, minIfUsed, onlyWith, ...choice}): Choice => {
    const {name} = choice.ingredient;
    if (step !== undefined) leftOut.push(`${name} in steps of ${step} g`);
    if (minIfUsed !== undefined) leftOut.push(`${name}, if used, at least ${minIfUsed} g`);
    if (onlyWith) leftOut.push(`${name} only with ${brief.ingredients[onlyWith.index]!.ingredient.name}`);
    return choice;
  });
  const {maxIngredients, ...rest} = brief;
  if (maxIngredients !== undefined) leftOut.push(`at most ${maxIngredients} ingredients`);
  return {brief: {...rest, ingredients}, leftOut};
}
