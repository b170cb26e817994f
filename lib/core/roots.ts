/**
 * Root of a continuous function between two points where it has opposite signs.
 *
 * The ITP method: straight-line interpolation, held close enough to the middle that it never takes more steps than
 * bisection does. The root stays bracketed all the time, so it cannot be lost at the kinks that freezing brings into
 * every curve here.
 *
 * Source: I. F. D. Oliveira & R. H. C. Takahashi, An enhancement of the bisection method average performance preserving
 * minmax optimality, ACM Transactions on Mathematical Software 47 (2020), with kappa1 = 0.2 / width, kappa2 = 2, n0 = 1.
 *
 * @param f function whose zero is sought
 * @param low one end, where `f` has one sign (or is zero)
 * @param high the other end, where `f` has the other sign (or is zero)
 * @param tolerance how far the result may be from the root, in the unit of `low`
 * @returns the root, or `undefined` when `f` has the same sign at both ends or is not a number there
 */
export function rootBetween(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance = 1e-9,
): number | undefined {
  const [atLow, atHigh] = [f(low), f(high)];
  if (atLow === 0) return low;
  if (atHigh === 0) return high;
  // Signs, not the product of the values: that of two tiny ones is 0.
  if (Math.sign(atLow) !== -Math.sign(atHigh)) return undefined;
  const rising = atLow < 0 ? 1 : -1;
  let [a, b, atA, atB] = [low, high, rising * atLow, rising * atHigh];
  const width = b - a;
  const steps = Math.ceil(Math.log2(Math.max(1, width / (2 * tolerance)))) + 1;
  for (let step = 0; step <= steps && b - a > 2 * tolerance; step++) {
    const middle = (a + b) / 2;
    const straight = (atB * a - atA * b) / (atB - atA);
    const side = Math.sign(middle - straight);
    const nudge = (0.2 / width) * (b - a) ** 2;
    const inward = nudge <= Math.abs(middle - straight) ? straight + side * nudge : middle;
    const reach = tolerance * 2 ** (steps - step) - (b - a) / 2;
    const x = Math.abs(inward - middle) <= reach ? inward : middle - side * reach;
    const atX = rising * f(x);
    if (atX === 0) return x;
    if (atX > 0) [b, atB] = [x, atX];
    else [a, atA] = [x, atX];
  }
  return (a + b) / 2;
}
