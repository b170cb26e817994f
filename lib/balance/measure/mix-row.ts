import type {Row} from "../../lp/program/program.ts";

/**
 * A linear condition on a mix: lower <= sum over the ingredients of share x weight <= upper.
 *
 * Measures give their rows in this form, so that they can be stated over shares, over whole steps or over masses.
 */
export interface MixRow extends Omit<Row, "coefficients"> {
  /** Contributions of 100 g of each ingredient, in the order of the context's ingredients. */
  readonly weights: readonly number[];
}
