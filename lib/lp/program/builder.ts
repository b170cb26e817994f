import {checkTime, type Deadline, NO_DEADLINE} from "./deadline.ts";
import type {LinearProgram, Row, Variable} from "./program.ts";

/** A variable of a program that is being built. It is also the variable's position in the values of an outcome. */
export type VariableRef = number & {readonly [VARIABLE]: true};

/** A row of a program that is being built, and its position in the activities of an outcome. */
export type RowRef = number & {readonly [ROW]: true};

declare const VARIABLE: unique symbol;
declare const ROW: unique symbol;

/** A weighted sum of variables; those that it leaves out count 0. */
export type Terms = readonly (readonly [variable: VariableRef, coefficient: number])[];

/** A row by its terms: lower <= sum of the terms <= upper. */
export interface TermRow extends Omit<Row, "coefficients"> {
  readonly terms: Terms;
}

/** A program with what each of its rows stands for. */
export interface Built<Origin> {
  readonly program: LinearProgram;
  /** One per row. */
  readonly origins: readonly Origin[];
}

interface PendingRow {
  readonly row: Omit<Row, "coefficients">;
  /** Coefficients of the variables that were there when the row came with its program. */
  readonly first: readonly number[];
  readonly terms: Terms;
  /** Variables, added later, by which the row may be missed. */
  readonly missed: (readonly [variable: VariableRef, coefficient: number])[];
}

/**
 * Builds a linear program: variables and rows in the order in which they are added, each row by its terms and with what it stands
 * for. It alone keeps track of positions and widths.
 */
export class ProgramBuilder<Origin = void> {
  readonly #variables: Variable[];
  readonly #rows: PendingRow[];
  readonly #origins: Origin[];
  readonly #sense: LinearProgram["sense"];

  /** An empty program, or more of one that is there. */
  constructor({variables, rows, sense}: LinearProgram = NOTHING, origins: readonly Origin[] = []) {
    this.#variables = [...variables];
    this.#rows = rows.map((row) => ({row, first: row.coefficients, terms: [], missed: []}));
    this.#origins = [...origins];
    this.#sense = sense;
  }

  /** Adds a variable. */
  variable(variable: Variable): VariableRef {
    return (this.#variables.push(variable) - 1) as VariableRef;
  }

  /** A variable of the program that was there. */
  variableAt(position: number): VariableRef {
    return position as VariableRef;
  }

  /** A row of the program that was there. */
  rowAt(position: number): RowRef {
    return position as RowRef;
  }

  /** Adds a row. */
  row(row: TermRow, origin: Origin): RowRef {
    this.#origins.push(origin);
    return (this.#rows.push({row, first: [], terms: row.terms, missed: []}) - 1) as RowRef;
  }

  /**
   * Lets a row miss its lower or upper limit at a price; returns the variable that measures how far.
   *
   * @param missed its cost is the price of one unit, its upper limit the farthest
   */
  elastic(row: RowRef, side: "lower" | "upper", missed: Variable): VariableRef {
    const by = this.variable(missed);
    this.elasticBy(row, side, by);
    return by;
  }

  /** Lets a row miss its lower or upper limit by a variable that is there: several rows may be missed by the same. */
  elasticBy(row: RowRef, side: "lower" | "upper", by: VariableRef): void {
    this.#rows[row]!.missed.push([by, side === "lower" ? 1 : -1]);
  }

  /**
   * A variable that is at least the distance between a sum and a value, and just that where its cost keeps it small.
   *
   * @param unit what one unit of the variable is of the sum, above 0
   */
  distance(apart: Variable, terms: Terms, value: number, origin: Origin, unit = 1): VariableRef {
    const by = this.variable(apart);
    this.row({name: `${apart.name}, more`, terms: [...terms, [by, -unit]], upper: value}, origin);
    this.row({name: `${apart.name}, less`, terms: [...terms, [by, unit]], lower: value}, origin);
    return by;
  }

  /**
   * The program as it is now.
   *
   * @param sense by default that of the program that was there, and to minimise where there was none
   * @throws OutOfTime soon after the deadline
   */
  build(sense = this.#sense, deadline: Deadline = NO_DEADLINE): Built<Origin> {
    const rows = this.#rows.map((row, i) => {
      if (i % 64 === 63) checkTime(deadline);
      return this.#dense(row);
    });
    return {
      program: {...(sense && {sense}), variables: [...this.#variables], rows},
      origins: [...this.#origins],
    };
  }

  #dense({row: {name, lower, upper}, first, terms, missed}: PendingRow): Row {
    const coefficients = [...first];
    // Pushed one by one, the entries stay a packed array of numbers; with thousands of rows any other way takes seconds.
    for (let j = first.length; j < this.#variables.length; j++) coefficients.push(0);
    for (const [variable, coefficient] of terms) coefficients[variable]! += coefficient;
    for (const [variable, coefficient] of missed) coefficients[variable]! += coefficient;
    const dense: {-readonly [key in keyof Row]: Row[key]} = {name, coefficients};
    if (lower !== undefined) dense.lower = lower;
    if (upper !== undefined) dense.upper = upper;
    return dense;
  }
}

const NOTHING: LinearProgram = {variables: [], rows: []};
