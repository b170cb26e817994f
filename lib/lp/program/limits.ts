import {expectProgram} from "./expect-program.ts";
import type {LinearProgram, Row, Variable} from "./program.ts";

/** One limit of a program: the lower or upper one of a row or of a variable. */
export interface Limit {
  readonly of: "row" | "variable";
  readonly index: number;
  readonly side: "lower" | "upper";
}

/** All finite limits of a program, rows first; an equation has two, and a variable's default lower limit of 0 counts. */
export function limitsOf(program: LinearProgram): Limit[] {
  expectProgram(program);
  const limits: Limit[] = [];
  const add = (of: Limit["of"], index: number, lower: number, upper: number) => {
    if (Number.isFinite(lower)) limits.push({of, index, side: "lower"});
    if (Number.isFinite(upper)) limits.push({of, index, side: "upper"});
  };
  for (const [i, {lower = -Infinity, upper = Infinity}] of program.rows.entries())
    add("row", i, lower, upper);
  for (const [j, {lower = 0, upper = Infinity}] of program.variables.entries())
    add("variable", j, lower, upper);
  return limits;
}

/** The value of a limit; infinite where there is none. */
export function limitValue(program: LinearProgram, {of, index, side}: Limit): number {
  const holder: Row | Variable = of === "row" ? program.rows[index]! : program.variables[index]!;
  if (side === "upper") return holder.upper ?? Infinity;
  return holder.lower ?? (of === "row" ? -Infinity : 0);
}

/** The program with some limits at new values. */
export function withLimits(
  program: LinearProgram,
  changes: Iterable<readonly [limit: Limit, value: number]>,
): LinearProgram {
  const rows = program.rows.slice();
  const variables = program.variables.slice();
  for (const [{of, index, side}, value] of changes) {
    if (of === "row") rows[index] = {...rows[index]!, [side]: value};
    else variables[index] = {...variables[index]!, [side]: value};
  }
  return {...program, rows, variables};
}

/** The program with some limits removed. */
export function withoutLimits(program: LinearProgram, limits: readonly Limit[]): LinearProgram {
  return withLimits(
    program,
    limits.map((limit) => [limit, limit.side === "lower" ? -Infinity : Infinity]),
  );
}
