/** A condition of `datasets/reserved_names.csv`. */
export interface ReservedRow {
  readonly country: string;
  readonly name: string;
  /** A quantity of the composition, or fruit, milk, egg yolk as used, or the weight or the solids of a litre. */
  readonly quantity: string;
  readonly min?: number;
  /** In place of `min` where the fruit is citrus. */
  readonly minSour?: number;
  readonly max?: number;
  readonly where: string;
}
