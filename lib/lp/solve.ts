import {denseForm, type Dense} from "./dense.ts";
import type {LinearProgram, Outcome} from "./program.ts";
import {verdictOf, type Verdict} from "./proof.ts";
import {scale, type Scaled} from "./scale.ts";
import {primalSimplex} from "./simplex.ts";
import {basisByTableau} from "./standard-form.ts";
import type {Basis} from "./vertex.ts";

/** The verdict on a continuous program, who found it and the basis that proves it. */
export interface Found {
  readonly verdict: Verdict;
  readonly basis: Basis;
  readonly engine: string;
}

/**
 * Solves a linear program; every answer is proved from the program's own numbers before it is returned.
 *
 * javascript-lp-solver proposes a basis; where that proves nothing, a simplex of our own goes on from there.
 *
 * @throws InputError for numbers that are not finite, rows of the wrong length, crossed limits
 */
export function solve(program: LinearProgram): Outcome {
  const scaled = scale(denseForm(program));
  const found = findBasis(scaled.dense);
  return found
    ? outcomeOf(program, scaled, found)
    : {status: "undecided", reason: "no basis found by either engine could be proved"};
}

/** A proved basis of a scaled continuous program, or `undefined` where both engines fail. */
export function findBasis(program: Dense): Found | undefined {
  let basis = basisByTableau(program);
  let engine = "javascript-lp-solver";
  for (let attempt = 0; attempt < 4; attempt++) {
    const verdict = basis && verdictOf(program, basis);
    if (basis && verdict) return {verdict, basis, engine};
    basis = primalSimplex(program, basis);
    engine = "mixwright simplex";
  }
  return undefined;
}

/** A verdict in the units and the sense of the program it answers. */
export function outcomeOf(program: LinearProgram, scaled: Scaled, {verdict, engine}: Found): Outcome {
  const {column, row, objective} = scaled;
  const sign = program.sense === "maximise" ? -1 : 1;
  if (verdict.status === "infeasible") {
    return {
      status: "infeasible",
      certificate: Array.from(verdict.multipliers, (y, i) => y / row[i]!),
      engine,
    };
  }
  if (verdict.status === "unbounded") {
    return {status: "unbounded", ray: Array.from(verdict.ray, (d, j) => d * column[j]!), engine};
  }
  const {values, duals, figures} = verdict;
  const original = Array.from(values, (value, j) => value * column[j]!);
  return {
    status: "optimal",
    objective: original.reduce((total, value, j) => total + value * program.variables[j]!.cost, 0),
    values: original,
    activities: Array.from(figures.activities, (value, i) => value * row[i]!),
    duals: Array.from(duals, (price, i) => (sign * price * objective) / row[i]!),
    reducedCosts: Array.from(figures.reducedCosts, (price, j) => (sign * price * objective) / column[j]!),
    degenerate: false,
    engine,
    check: {residual: figures.residual, fraction: 0, gap: figures.gap},
  };
}
