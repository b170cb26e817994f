import type {Row} from "../../lp/program/program.ts";
import type {DoseLimit, Target} from "../brief/brief.ts";

/** What a row of the program stands for in the brief. */
export type Meaning =
  | {readonly kind: "batch"}
  | {readonly kind: "target"; readonly target: Target}
  | {readonly kind: "dose"; readonly dose: DoseLimit}
  /** That a mix has the temperature which a target sets an upper limit to: it freezes, or hardens, at all. */
  | {readonly kind: "frozen"; readonly target: Target}
  /** A practical rule: its name, which side it limits, and the limit as the cook gave it. */
  | {
      readonly kind: "rule";
      /** Where it stands in the brief: `ingredients[2].ratio`. */
      readonly path: string;
      readonly name: string;
      readonly bound: "min" | "max" | "equal";
      readonly limit: number;
      /** The limit in per cent of the batch, where the cook gave it so. */
      readonly percent?: number;
    }
  /** The least amount of the ingredient with this index. */
  | {readonly kind: "minimum"; readonly index: number}
  /** A row that only helps to state another. */
  | {readonly kind: "help"};

/** A row and what it stands for. */
export interface MeantRow extends Row {
  readonly meaning: Meaning;
}

/** One of many rows with few coefficients: those by the index of their variable. */
export interface SparseRow extends Omit<MeantRow, "coefficients"> {
  readonly coefficients: ReadonlyMap<number, number>;
}
