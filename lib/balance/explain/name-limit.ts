import type {Limit} from "../../lp/program/limits.ts";
import type {ConflictingLimit} from "../mix/answer.ts";
import type {Brief} from "../brief/brief.ts";
import {doseLimit, ingredientLimit, percentOf, targetLimit} from "../mix/binding.ts";
import type {Formulation} from "../program/formulate.ts";

/**
 * A limit of a program as the cook gave it, or `undefined` for one that always holds.
 *
 * Least amounts are expected as rows (see `explainConflict`), not as lower limits of variables.
 */
export function nameLimit(
  brief: Brief,
  {origins}: Pick<Formulation, "origins">,
  {of, index, side}: Limit,
): ConflictingLimit | undefined {
  if (of === "variable") {
    const choice = brief.ingredients[index];
    // No amount is negative, and the batch limits an amount in steps where the cook does not: these limits always hold.
    if (!choice || side === "lower" || choice.max === Infinity) return undefined;
    const {min, max, ingredient, percents} = choice;
    return {
      ...ingredientLimit(index, ingredient.name),
      bound: min === max ? "equal" : "max",
      limit: max,
      ...percentOf(percents, "max"),
      ...(max === ingredient.stock && {inStock: true}),
    };
  }
  const origin = origins[index]!;
  if (origin.kind === "minimum") {
    const {ingredient, min, max, percents} = brief.ingredients[origin.index]!;
    return {
      ...ingredientLimit(origin.index, ingredient.name),
      bound: min === max ? "equal" : "min",
      limit: min,
      ...percentOf(percents, "min"),
    };
  }
  if (origin.kind === "rule") {
    const {kind: _kind, name, ...rule} = origin;
    return {of: "rule", target: name, ...rule};
  }
  if (origin.kind === "dose") return doseLimit(origin.dose);
  if (origin.kind === "frozen") return targetLimit(brief, origin.target, false);
  return origin.kind === "target" ? targetLimit(brief, origin.target, side === "lower") : undefined;
}
