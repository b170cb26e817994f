import type {Terms, VariableRef} from "../../lp/program/builder.ts";

/**
 * A weighted sum over a mix as terms of a program.
 *
 * @param amounts one variable per ingredient
 * @param weights contribution of each ingredient; those of further ingredients do not count
 * @param units amount that one unit of each variable stands for: a share of the batch, or g where rows are multiplied by the mass;
 *   1 by default
 */
export function mixTerms(
  amounts: readonly VariableRef[],
  weights: readonly number[],
  units?: readonly number[],
): Terms {
  const terms: [VariableRef, number][] = [];
  for (let j = 0; j < amounts.length; j++) {
    const weight = weights[j];
    if (weight) terms.push([amounts[j]!, units ? weight * units[j]! : weight]);
  }
  return terms;
}
