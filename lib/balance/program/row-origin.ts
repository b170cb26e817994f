import type {DoseLimit, Target} from "../brief/brief.ts";

/** Meaning of a row of the program in the brief. */
export type RowOrigin =
  | {readonly kind: "batch"}
  | {readonly kind: "target"; readonly target: Target}
  | {readonly kind: "dose"; readonly dose: DoseLimit}
  /** A row that says that the mix has the temperature which a target limits from above: that it freezes, or hardens, at all. */
  | {readonly kind: "frozen"; readonly target: Target}
  | RuleOrigin
  /** The least amount of the ingredient with this index. */
  | {readonly kind: "minimum"; readonly index: number}
  /** A row that only helps to state another. */
  | {readonly kind: "help"};

/** A practical rule by its key in the brief, with the ingredient that it is on and the other one that it speaks of. */
export type RuleReference =
  | {readonly kind: "rule"; readonly rule: "maxIngredients"}
  | {readonly kind: "rule"; readonly rule: "minIfUsed"; readonly ingredient: string}
  | {
      readonly kind: "rule";
      readonly rule: "onlyWith" | "ratio";
      readonly ingredient: string;
      readonly other: string;
    };

/** A practical rule: its name, which side it limits, and the limit as the cook gave it. */
export interface RuleOrigin {
  readonly kind: "rule";
  /** Path in the brief: `ingredients[2].ratio`. */
  readonly path: string;
  readonly name: string;
  /** The same for code. */
  readonly on: RuleReference;
  readonly bound: "min" | "max" | "equal";
  readonly limit: number;
  /** The limit in per cent of the batch, where the cook gave it so. */
  readonly percent?: number;
}

/** The origin of a row that only helps to state another. */
export const HELP: RowOrigin = {kind: "help"};
