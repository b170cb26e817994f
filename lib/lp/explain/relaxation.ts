import {expectFunction} from "../../core/shape.ts";
import {expectProgram} from "../program/expect-program.ts";
import {InputError} from "../../core/errors.ts";
import {beforeTime, type Deadline, deadlineIn, USUAL_TIME} from "../program/deadline.ts";
import {ProgramBuilder} from "../program/builder.ts";
import {limitsOf, limitValue, withLimits, withoutLimits, type Limit} from "../program/limits.ts";
import type {LinearProgram, Outcome} from "../program/program.ts";
import {withCosts} from "../program/with-costs.ts";
import {expectSolveOptions, solve, type SolveOptions} from "../solve/solve.ts";

/** A limit and how far it has to give way, in its own unit, above 0. */
export interface Move {
  readonly limit: Limit;
  readonly by: number;
}

/** The least that limits must give way so that all can hold. */
export interface Relaxation {
  readonly moves: readonly Move[];
  /** Sum of weight x distance over the moves. */
  readonly total: number;
  /** The program with its limits moved. */
  readonly program: LinearProgram;
  /** Outcome of that program, with its own objective. */
  readonly outcome: Outcome;
}

/**
 * The least weighted movement of limits that makes a program feasible, and the best point then.
 *
 * An elastic program: every soft limit may be overstepped at a price, and the sum of what is paid is minimised; then the limits move
 * that far and the program's own objective decides.
 *
 * Source: Chinneck (2008), section 6.1.
 *
 * @param weight price of overstepping a limit by one unit, above 0; `undefined` for limits that must hold
 * @param most how far a limit may be overstepped at most, above 0; as far as it takes by default
 * @returns the relaxation (without moves where the program is feasible), or the outcome where even the limits that must hold conflict
 * @throws InputError for a weight that is not above 0
 *
 * @example
 * ```ts
 * const relaxation = leastRelaxation(
 *   {
 *     variables: [{name: "x", cost: 1, upper: 3}],
 *     rows: [{name: "least", coefficients: [1], lower: 5}],
 *   },
 *   ({of}) => (of === "row" ? 1 : undefined),
 * );
 * "moves" in relaxation && relaxation.moves.map(({by}) => by); // => [2]
 * ```
 */
export function leastRelaxation(
  program: LinearProgram,
  weight: (limit: Limit) => number | undefined,
  options: SolveOptions = {},
  most: (limit: Limit) => number = () => Infinity,
): Relaxation | Exclude<Outcome, {status: "optimal"}> {
  expectProgram(program);
  expectFunction(weight, "weight");
  expectFunction(most, "most");
  expectSolveOptions(options);
  const soft = limitsOf(program).flatMap((limit) => {
    const price = weight(limit);
    if (price === undefined) return [];
    if (!(price > 0 && price < Infinity)) {
      throw new InputError(
        "weight",
        `no price for the ${limit.side} limit of ${limit.of} ${limit.index}`,
        price,
        "give a number above 0",
      );
    }
    return [{limit, price, most: most(limit)}];
  });
  const deadline = options.deadline ?? deadlineIn(options.timeLimit ?? USUAL_TIME, options.now);
  const within = {...options, deadline};
  const elastic = beforeTime(
    () => solve(elasticProgram(program, soft, deadline), within),
    (): Outcome => ({status: "undecided", reason: "the time limit came before a relaxation"}),
  );
  if (elastic.status !== "optimal") return elastic;
  const n = program.variables.length;
  const size = (limit: Limit) => Math.max(1e-6, Math.abs(limitValue(program, limit)));
  const moves = soft.flatMap(({limit}, k) => {
    const by = elastic.values[n + k]!;
    return by > 1e-9 * size(limit) ? [{limit, by}] : [];
  });
  const relaxed = withLimits(
    program,
    moves.map(({limit, by}) => [limit, limitValue(program, limit) + (limit.side === "lower" ? -by : by)]),
  );
  return {moves, total: elastic.objective, program: relaxed, outcome: solve(relaxed, within)};
}

/** The program with a further variable for each soft limit: the distance by which it is overstepped. */
function elasticProgram(
  program: LinearProgram,
  soft: readonly {readonly limit: Limit; readonly price: number; readonly most: number}[],
  deadline: Deadline,
): LinearProgram {
  const opened = withoutLimits(
    program,
    soft.map(({limit}) => limit).filter(({of}) => of === "variable"),
  );
  const builder = new ProgramBuilder(withCosts(opened, () => 0));
  for (const {limit, price, most} of soft) {
    const {of, index, side} = limit;
    const row =
      of === "row"
        ? builder.rowAt(index)
        : builder.row({
            name: program.variables[index]!.name,
            terms: [[builder.variableAt(index), 1]],
            [side]: limitValue(program, limit),
          });
    builder.elastic(row, side, {name: "distance", cost: price, upper: most});
  }
  return builder.build("minimise", deadline).program;
}
