import {type ProgramBuilder, type Terms, type VariableRef} from "../../lp/program/builder.ts";
import type {MixSum} from "../measure/mix-row.ts";

/** The variables of a program that stand for a mix. */
export interface MixVariables {
  /** A sum over the mix by its terms; an extra that it names for the first time becomes a variable. */
  terms(sum: MixSum): Terms;
}

/**
 * Amounts as the variables of a mix.
 *
 * @param amounts one variable per ingredient; a sum may name more ingredients, which then do not count
 * @param units amount that one unit of each variable stands for: a share of the batch, or g where rows are multiplied by the mass
 */
export function mixVariables<Origin>(
  builder: ProgramBuilder<Origin>,
  amounts: readonly VariableRef[],
  units?: readonly number[],
): MixVariables {
  const extras = new Map<string, VariableRef>();
  const extra = (name: string): VariableRef => {
    const known = extras.get(name) ?? builder.variable({name, cost: 0});
    extras.set(name, known);
    return known;
  };
  return {
    terms({weights, extras: named = []}) {
      const terms: [VariableRef, number][] = [];
      for (let j = 0; j < amounts.length; j++) {
        const weight = weights[j]!;
        if (weight) terms.push([amounts[j]!, units ? weight * units[j]! : weight]);
      }
      for (const [name, weight] of named) terms.push([extra(name), weight]);
      return terms;
    },
  };
}
