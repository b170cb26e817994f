// `mixwright/lp`: the linear programs beneath, with proofs, conflicts and sensitivities. They know no food.

export type {Check, LinearProgram, Outcome, BasisStatus, Row, Variable} from "./lp/program/program.ts";
export type {Deadline} from "./lp/program/deadline.ts";
export {solve, type SolveOptions} from "./lp/solve/solve.ts";
export {type Conflict as ProgramConflict, irreducibleConflict} from "./lp/explain/conflict.ts";
export type {Limit} from "./lp/program/limits.ts";
export {leastRelaxation, type Move, type Relaxation as ProgramRelaxation} from "./lp/explain/relaxation.ts";
export {
  type CostRange,
  sensitivity,
  type Sensitivity,
  type LimitPrice as ProgramLimitPrice,
} from "./lp/explain/sensitivity.ts";
