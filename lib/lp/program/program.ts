/**
 * A linear program as plain, readonly data. This floor knows nothing of food.
 *
 * minimise (or maximise) sum of cost x value over the variables, with lower <= coefficients . values <= upper in every row.
 * A limit is a number below 1e20 in size: a lower one of -1e20 or less and an upper one of 1e20 or more count as none.
 */
export interface LinearProgram {
  readonly sense?: "minimise" | "maximise";
  readonly variables: readonly Variable[];
  readonly rows: readonly Row[];
}

/** A quantity to be chosen. */
export interface Variable {
  /** For reports only; any text, need not be unique. */
  readonly name: string;
  readonly cost: number;
  /** Default 0; may be `-Infinity`. */
  readonly lower?: number;
  /** Default `Infinity`. */
  readonly upper?: number;
  /** Only whole values. */
  readonly integer?: boolean;
}

/** A linear condition: lower <= sum of coefficient x value <= upper; equal limits make an equation. */
export interface Row {
  /** For reports only; any text, need not be unique. */
  readonly name: string;
  /** One coefficient per variable, in the order of the variables. */
  readonly coefficients: readonly number[];
  /** Default `-Infinity`. */
  readonly lower?: number;
  /** Default `Infinity`. */
  readonly upper?: number;
}

/** Errors with which an answer satisfies its program, all relative to the size of the numbers involved. */
export interface Check {
  /** Largest violation of a row or a bound. */
  readonly residual: number;
  /** Largest distance of an integer variable from a whole number; 0 where there is none. */
  readonly fraction: number;
  /** Difference between the objective and the bound that the duals prove; absent for integer programs. */
  readonly gap?: number;
}

/** Position of a variable or a row's sum in a vertex: at a limit, between (it then follows from the others), or left at 0. */
export type BasisStatus = "lower" | "upper" | "basic" | "zero";

/** Outcome of a linear program. Only verified answers are returned. */
export type Outcome =
  | {
      readonly status: "optimal";
      readonly objective: number;
      /** Value of each variable. */
      readonly values: readonly number[];
      /** Value of each row's sum. */
      readonly activities: readonly number[];
      /** Change of the objective per unit of each row's binding limit; absent for integer programs. */
      readonly duals?: readonly number[];
      /** Change of the objective per unit of each variable's binding bound; absent for integer programs. */
      readonly reducedCosts?: readonly number[];
      /** The basis that proves the vertex; absent for integer programs. */
      readonly basis?: {readonly variables: readonly BasisStatus[]; readonly rows: readonly BasisStatus[]};
      /** Whether a basic variable or row sits on a limit: duals are then one choice among several. False for integer programs. */
      readonly degenerate: boolean;
      readonly engine: string;
      readonly check: Check;
    }
  | {
      readonly status: "infeasible";
      /** Farkas multipliers, one per row: their combination of the rows contradicts the bounds. Absent for integer programs. */
      readonly certificate?: readonly number[];
      readonly engine: string;
    }
  | {
      readonly status: "unbounded";
      /** A direction along which every row and bound still holds and the objective improves for ever. */
      readonly ray: readonly number[];
      readonly engine: string;
    }
  | {
      readonly status: "undecided";
      /** Why no engine gave an answer that could be verified. */
      readonly reason: string;
      /** The best point found that keeps every condition of an integer program; whether a better one exists is open. */
      readonly best?: {readonly objective: number; readonly values: readonly number[]};
    };
