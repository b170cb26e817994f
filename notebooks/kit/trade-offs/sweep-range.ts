/** A number of a brief that runs. */
export interface Ranged {
  /** As `sweep` takes it. */
  readonly path: string;
  readonly unit: string;
  readonly value: number;
  /** The other limit of the same target, beyond which this one cannot go. */
  readonly other?: Readonly<{min?: number | undefined; max?: number | undefined}>;
}

/** Range of a number at first: a little to either side, but not past the other limit of its target; a price from nothing to twice. */
export function rangeOf({path, value, unit, other}: Ranged): [number, number] {
  if (path.endsWith(".price")) return [0, 2 * value || 1];
  const room = unit === "°C" ? 1 : Math.max(1, 0.15 * Math.abs(value));
  const [least, most] = unit === "°C" ? [-Infinity, -0.1] : [value < 0 ? -Infinity : 0, Infinity];
  const low = Math.max(least, other?.min ?? -Infinity, value - room);
  const high = Math.min(most, other?.max ?? Infinity, value + room);
  // A target that is met exactly has both limits in one place: the reader is asked for a range of its own.
  return low < high ? [low, high] : [value - room, value + room];
}
