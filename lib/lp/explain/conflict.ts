import {deadlineIn, USUAL_TIME} from "../program/deadline.ts";
import {expectFunction} from "../../core/shape.ts";
import {expectProgram} from "../program/expect-program.ts";
import {limitsOf, withoutLimits, type Limit} from "../program/limits.ts";
import type {LinearProgram} from "../program/program.ts";
import {withCosts} from "../program/with-costs.ts";
import {expectSolveOptions, solve, type SolveOptions} from "../solve/solve.ts";

/** Limits that cannot hold together. */
export interface Conflict {
  readonly limits: readonly Limit[];
  /** True where each is shown to be needed: without any one of them, the rest can hold. False where a program stayed undecided or time ran out. */
  readonly irreducible: boolean;
}

/**
 * A smallest set of limits that cannot hold together: dropping any one of them ends the conflict. There may be others.
 *
 * Deletion filter: each limit is left out in turn, and stays out where the rest is still proved infeasible; what a proof does not use
 * goes at once. With whole values the program without them is asked first: where that has no answer either, its proof leaves
 * few limits, and where it has one, limits are left out by the dozen as long as that goes.
 *
 * Source: J. W. Chinneck, Feasibility and Infeasibility in Optimization (2008), section 6.2.
 *
 * @param isHard limits that always hold and are not listed, such as the size of a batch; none by default
 * @param options how long to search and with what, for all programs together
 * @param together what limits that are left out together have in common, such as the target that several rows state; each alone by default
 * @returns `undefined` where the program is not proved infeasible
 *
 * @example
 * ```ts
 * const conflict = irreducibleConflict({
 *   variables: [
 *     {name: "x", cost: 1, upper: 3},
 *     {name: "y", cost: 1, upper: 9},
 *   ],
 *   rows: [
 *     {name: "least", coefficients: [1, 0], lower: 5},
 *     {name: "any", coefficients: [1, 1], lower: 1},
 *   ],
 * });
 * conflict?.limits.map(({of, index}) => `${of} ${index}`); // => ["row 0", "variable 0"]
 * ```
 */
export function irreducibleConflict(
  program: LinearProgram,
  isHard: (limit: Limit) => boolean = () => false,
  options: SolveOptions = {},
  together: (limit: Limit) => unknown = (limit) => limit,
): Conflict | undefined {
  expectProgram(program);
  expectFunction(isHard, "isHard");
  expectSolveOptions(options);
  expectFunction(together, "together");
  const soft = limitsOf(program).filter((limit) => !isHard(limit));
  const groups = new Map<unknown, Limit[]>();
  for (const limit of soft) {
    const key = together(limit);
    groups.set(key, [...(groups.get(key) ?? []), limit]);
  }
  /** The groups of which a proof uses any limit. */
  const used = (multipliers: readonly number[] | undefined, among: readonly (readonly Limit[])[]) => {
    const limits = new Set(usedBy(multipliers, program, among.flat()));
    return among.filter((group) => group.some((limit) => limits.has(limit)));
  };
  const anyPoint = withCosts(program, () => 0, program.sense);
  const deadline = options.deadline ?? deadlineIn(options.timeLimit ?? USUAL_TIME, options.now);
  const ask = (asked: LinearProgram) => {
    const relaxed = asked.variables.some(({integer}) => integer)
      ? solve(withoutWhole(asked), {...options, deadline})
      : undefined;
    return relaxed?.status === "infeasible" ? relaxed : solve(asked, {...options, deadline});
  };
  const outcome = ask(anyPoint);
  if (outcome.status !== "infeasible") return undefined;
  let [kept, irreducible] = [used(outcome.certificate, [...groups.values()]), true];
  let several = outcome.certificate ? 1 : Math.max(1, kept.length >> 1);
  for (let k = 0; k < kept.length;) {
    if (!(deadline.left() > 0)) return {limits: kept.flat(), irreducible: false};
    const rest = [...kept.slice(0, k), ...kept.slice(k + several)];
    const outcome = ask(withoutLimits(anyPoint, without(soft, rest.flat())));
    if (outcome.status === "infeasible") {
      // Limits before k are needed by whatever conflict remains, so only later ones can drop out here.
      kept = used(outcome.certificate, rest);
    } else if (several > 1) several >>= 1;
    else {
      if (outcome.status === "undecided") irreducible = false;
      k++;
    }
  }
  return {limits: kept.flat(), irreducible};
}

function withoutWhole(program: LinearProgram): LinearProgram {
  return {...program, variables: program.variables.map(({integer: _integer, ...variable}) => variable)};
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
