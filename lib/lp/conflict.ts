import {limitsOf, withoutLimits, type Limit} from "./limits.ts";
import type {LinearProgram} from "./program.ts";
import {solve} from "./solve.ts";

/** Limits that cannot hold together. */
export interface Conflict {
  readonly limits: readonly Limit[];
  /** Whether each was shown to be needed: without any one of them, the rest can hold. False where a program stayed undecided. */
  readonly irreducible: boolean;
}

/**
 * A smallest set of limits that cannot hold together: dropping any one of them ends the conflict. There may be others.
 *
 * Deletion filter: each limit is left out in turn, and stays out where the rest is still proved infeasible; what a proof does not use
 * goes at once.
 *
 * Source: J. W. Chinneck, Feasibility and Infeasibility in Optimization (2008), section 6.2.
 *
 * @param isHard limits that always hold and are not listed, such as the size of a batch; none by default
 * @returns `undefined` where the program is not proved infeasible
 */
export function irreducibleConflict(
  program: LinearProgram,
  isHard: (limit: Limit) => boolean = () => false,
): Conflict | undefined {
  const soft = limitsOf(program).filter((limit) => !isHard(limit));
  const anyPoint: LinearProgram = {
    ...program,
    variables: program.variables.map((variable) => ({...variable, cost: 0})),
  };
  const outcome = solve(anyPoint);
  if (outcome.status !== "infeasible") return undefined;
  let [kept, irreducible] = [usedBy(outcome.certificate, program, soft), true];
  for (let k = 0; k < kept.length;) {
    const rest = kept.filter((_, index) => index !== k);
    const outcome = solve(withoutLimits(anyPoint, without(soft, rest)));
    if (outcome.status === "infeasible") {
      // Limits before k are needed by whatever conflict remains, so only later ones can drop out here.
      kept = usedBy(outcome.certificate, program, rest);
    } else {
      if (outcome.status === "undecided") irreducible = false;
      k++;
    }
  }
  return {limits: kept, irreducible};
}

/** The limits that a proof of infeasibility uses; all of them where it has no multipliers (programs with whole values). */
function usedBy(
  multipliers: readonly number[] | undefined,
  {rows, variables}: LinearProgram,
  limits: readonly Limit[],
): readonly Limit[] {
  if (!multipliers) return limits;
  const sums = new Float64Array(variables.length);
  const sizes = new Float64Array(variables.length);
  for (const [i, {coefficients}] of rows.entries()) {
    if (multipliers[i] === 0) continue;
    for (const [j, coefficient] of coefficients.entries()) {
      sums[j]! += multipliers[i]! * coefficient;
      sizes[j]! += Math.abs(multipliers[i]! * coefficient);
    }
  }
  return limits.filter(({of, index, side}) => {
    const pull =
      of === "row"
        ? multipliers[index]!
        : Math.abs(sums[index]!) <= 1e-13 * sizes[index]!
          ? 0
          : -sums[index]!;
    return side === "lower" ? pull > 0 : pull < 0;
  });
}

function without(all: readonly Limit[], some: readonly Limit[]): readonly Limit[] {
  const left = new Set(some);
  return all.filter((limit) => !left.has(limit));
}
