import {type Deadline, NO_DEADLINE} from "../program/deadline.ts";
import type {DenseProgram} from "../program/dense.ts";
import {isOptimal, optimality, TOLERANCE} from "../proof/proof.ts";
import {proofOf, type Proof} from "../proof/proof-of.ts";
import {primalSimplex} from "../engines/simplex.ts";
import {basisByTableau} from "../engines/standard-form.ts";
import type {Basis} from "../proof/vertex.ts";

/** The proof on a continuous program, who found it and the basis that proves it. */
export interface Found {
  readonly proof: Proof;
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
export function findBasis(program: DenseProgram, deadline: Deadline = NO_DEADLINE): Found | undefined {
  return propose(program, deadline) ?? solveWithinTolerance(program, deadline);
}

function propose(program: DenseProgram, deadline: Deadline): Found | undefined {
  let basis = basisByTableau(program, deadline);
  let engine = "javascript-lp-solver";
  for (let attempt = 0; attempt < 3; attempt++) {
    const proof = basis && proofOf(program, basis, deadline);
    if (basis && proof) return {proof, basis, engine};
    basis = primalSimplex(program, basis, deadline);
    engine = "mixwright simplex";
  }
  return undefined;
}

function solveWithinTolerance(program: DenseProgram, deadline: Deadline): Found | undefined {
  const widened = (limits: Float64Array, step: number) =>
    limits.map((limit) => limit + step * Math.max(1, Math.abs(limit)));
  const wider: DenseProgram = {
    ...program,
    lower: widened(program.lower, -TOLERANCE / 2),
    upper: widened(program.upper, TOLERANCE / 2),
    rowLower: widened(program.rowLower, -TOLERANCE / 2),
    rowUpper: widened(program.rowUpper, TOLERANCE / 2),
  };
  const found = propose(wider, deadline);
  if (found?.proof.status !== "optimal") return found;
  const {values, duals} = found.proof;
  const figures = optimality(program, values, duals);
  return isOptimal(figures) ? {...found, proof: {...found.proof, figures}} : undefined;
}
