import type {LinearProgram, Outcome} from "../../lp/program/program.ts";

/** A proved optimum. */
export type Optimal = Extract<Outcome, {status: "optimal"}>;

const OUTCOMES = new WeakMap<LinearProgram, Optimal>();

/** Keeps the optimum of a program for as long as the program is there. */
export function keepOutcome(program: LinearProgram, outcome: Optimal): void {
  OUTCOMES.set(program, outcome);
}

/** The optimum of a program that was solved before. */
export function outcomeOf(program: LinearProgram): Optimal | undefined {
  return OUTCOMES.get(program);
}
