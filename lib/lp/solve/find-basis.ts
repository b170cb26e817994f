import {type Deadline, NO_DEADLINE} from "../program/deadline.ts";
import type {Dense} from "../program/dense.ts";
import {isOptimal, optimality, TOLERANCE} from "../proof/proof.ts";
import {verdictOf, type Verdict} from "../proof/verdict.ts";
import {primalSimplex} from "../engines/simplex.ts";
import {basisByTableau} from "../engines/standard-form.ts";
import type {Basis} from "../proof/vertex.ts";

/** The verdict on a continuous program, who found it and the basis that proves it. */
export interface Found {
  readonly verdict: Verdict;
  readonly basis: Basis;
  readonly engine: string;
}

/**
 * A proved basis of a scaled continuous program, or `undefined` where none is found.
 *
 * javascript-lp-solver proposes one; where that proves nothing, our own simplex goes on from there, and once more from where it
 * ended, with its table computed afresh. What then is neither feasible nor infeasible by more than the tolerance is solved
 * with its limits widened by half of that.
 *
 * @throws OutOfTime soon after the deadline
 */
export function findBasis(program: Dense, deadline: Deadline = NO_DEADLINE): Found | undefined {
  return propose(program, deadline) ?? atTheEdge(program, deadline);
}

function propose(program: Dense, deadline: Deadline): Found | undefined {
  let basis = basisByTableau(program, deadline);
  let engine = "javascript-lp-solver";
  for (let attempt = 0; attempt < 3; attempt++) {
    const verdict = basis && verdictOf(program, basis, deadline);
    if (basis && verdict) return {verdict, basis, engine};
    basis = primalSimplex(program, basis, deadline);
    engine = "mixwright simplex";
  }
  return undefined;
}

function atTheEdge(program: Dense, deadline: Deadline): Found | undefined {
  const widened = (limits: Float64Array, step: number) =>
    limits.map((limit) => limit + step * Math.max(1, Math.abs(limit)));
  const wider: Dense = {
    ...program,
    lower: widened(program.lower, -TOLERANCE / 2),
    upper: widened(program.upper, TOLERANCE / 2),
    rowLower: widened(program.rowLower, -TOLERANCE / 2),
    rowUpper: widened(program.rowUpper, TOLERANCE / 2),
  };
  const found = propose(wider, deadline);
  if (found?.verdict.status !== "optimal") return found;
  const {values, duals} = found.verdict;
  const figures = optimality(program, values, duals);
  return isOptimal(figures) ? {...found, verdict: {...found.verdict, figures}} : undefined;
}
