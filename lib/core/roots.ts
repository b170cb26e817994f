/**
 * Root of a continuous function between two points where it has opposite signs, by bisection.
 *
 * Chosen over faster methods because it cannot fail on the kinks that freezing brings into every curve here.
 *
 * @param f function whose zero is sought
 * @param low one end, where `f` has one sign (or is zero)
 * @param high the other end, where `f` has the other sign (or is zero)
 * @param tolerance width of the final bracket, in the unit of `low`
 * @returns the root, or `undefined` when `f` has the same sign at both ends
 */
export function bisect(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance = 1e-9,
): number | undefined {
  let atLow = f(low);
  if (atLow === 0) return low;
  const atHigh = f(high);
  if (atHigh === 0) return high;
  if (Math.sign(atLow) === Math.sign(atHigh) || Number.isNaN(atLow) || Number.isNaN(atHigh)) return undefined;
  for (let i = 0; i < 200 && Math.abs(high - low) > tolerance; i++) {
    const middle = (low + high) / 2;
    const atMiddle = f(middle);
    if (atMiddle === 0) return middle;
    if (Math.sign(atMiddle) === Math.sign(atLow)) {
      low = middle;
      atLow = atMiddle;
    } else high = middle;
  }
  return (low + high) / 2;
}
