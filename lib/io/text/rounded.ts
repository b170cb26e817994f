/** A number rounded to at most so many decimals, as data. */
export function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

/** Grams as data, for a scale: to 0.1 g, to 0.01 g below 10 g. */
export function roundedGrams(grams: number): number {
  return rounded(grams, grams < 10 ? 2 : 1);
}
