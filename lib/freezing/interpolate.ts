/** A curve through points that rise in x. */
export interface Curve {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** Value of a curve, straight between its points and level beyond its ends. */
export function interpolate({x, y}: Curve, at: number): number {
  const next = x.findIndex((d) => d >= at);
  if (next === 0) return y[0]!;
  if (next === -1) return y.at(-1)!;
  const [x0, x1] = [x[next - 1]!, x[next]!];
  const [y0, y1] = [y[next - 1]!, y[next]!];
  return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
}
