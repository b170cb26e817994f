import {beforeTime, type Deadline} from "../program/deadline.ts";
import {type DenseProgram, denseForm} from "../program/dense.ts";
import {continuousOutcome} from "./outcome.ts";
import type {LinearProgram, Outcome} from "../program/program.ts";
import {isOptimal, optimality} from "../proof/proof.ts";
import {scale} from "../program/scale.ts";
import {primalSimplex} from "../engines/simplex.ts";
import {solve} from "./solve.ts";
import {type Basis, kernelOf, vertexOf} from "../proof/vertex.ts";

/** So many bases of earlier answers are tried. */
const KEPT = 8;

/**
 * A solver for many continuous programs of one shape that differ in some numbers: a basis that proved an earlier answer
 * often proves the next one, and where none does, the simplex goes on from the latest. Every answer is proved as in
 * {@link solve}, which takes over wherever that does not lead to an optimum.
 *
 * @param deadline of all programs together; by default each has the usual time
 */
export function solverOfMany(deadline?: Deadline): (program: LinearProgram) => Outcome {
  let bases: Basis[] = [];
  const options = deadline ? {deadline} : {};
  return (program) => {
    if (deadline && !(deadline.left() > 0)) return solve(program, options);
    const scaled = scale(denseForm(program));
    const {columns, rows} = scaled.dense;
    bases = bases.filter((basis) => basis.length === columns + rows);
    const prove = (basis: Basis, engine: string): Outcome | undefined => {
      const kernel = kernelOf(scaled.dense, basis);
      if (!kernel) return undefined;
      const {values, duals} = vertexOf(scaled.dense, basis, kernel);
      const figures = optimality(scaled.dense, values, duals);
      if (!isOptimal(figures)) return undefined;
      bases = [basis, ...bases.filter((other) => other !== basis)].slice(0, KEPT);
      return continuousOutcome(program, scaled, {
        proof: {status: "optimal", values, duals, figures},
        basis,
        engine,
      });
    };
    for (const basis of bases) {
      const outcome = prove(basis, "a basis found before");
      if (outcome) return outcome;
    }
    const next = bases[0] && withinTime(scaled.dense, bases[0], deadline);
    const outcome = (next && prove(next, "mixwright simplex")) ?? solve(program, options);
    if (bases.length === 0 && outcome.status === "optimal" && outcome.basis) {
      const codes = {lower: 0, upper: 1, basic: 2, zero: 3};
      bases = [Uint8Array.from([...outcome.basis.variables, ...outcome.basis.rows], (place) => codes[place])];
    }
    return outcome;
  };
}

/** The basis that the simplex reaches from another, if it does so in time. */
function withinTime(program: DenseProgram, start: Basis, deadline: Deadline | undefined): Basis | undefined {
  return beforeTime(
    () => primalSimplex(program, start, deadline),
    () => undefined,
  );
}
