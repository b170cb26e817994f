import type {Row} from "../../lp/program/program.ts";

/**
 * A linear condition on a mix: lower <= sum over the ingredients of share x weight, and of the extras <= upper.
 *
 * Measures give their rows in this form, so that they can be stated over shares, over whole steps or over masses.
 */
export interface MixRow extends MixSum, Omit<Row, "coefficients"> {
  /** True for a row that only ties an extra to the mix, and so states no limit of the brief. */
  readonly ties?: true;
}

/** A weighted sum over a mix. */
export interface MixSum {
  /** Contributions of 100 g of each ingredient, in the order of the context's ingredients. */
  readonly weights: readonly number[];
  /**
   * Amounts that are no sum over the ingredients (ice cut off at 0, crystals), g per 100 g of mix and at least 0, by name, each
   * with its weight. Each name becomes one variable of the program.
   */
  readonly extras?: readonly (readonly [name: string, weight: number])[];
}
