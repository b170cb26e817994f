import {InputError} from "./errors.ts";

/** Limits of a number, both inclusive; an absent limit is open. */
export interface Limits {
  readonly min?: number;
  readonly max?: number;
}

/**
 * The value itself if it is a finite number within the limits.
 *
 * @param place where the value stands, for the error
 * @param limits inclusive limits, none by default
 * @param unit unit of the value, for the error, e.g. `g` or `°C`
 * @throws InputError naming the place, the value and the accepted range
 */
export function finite(value: unknown, place: string, limits: Limits = {}, unit = ""): number {
  const {min = -Infinity, max = Infinity} = limits;
  if (typeof value !== "number" || !Number.isFinite(value)) {
    throw new InputError(place, "not a finite number", value, `give a number${range(min, max, unit)}`, {
      code: value === undefined ? "missing" : "wrong type",
    });
  }
  if (value < min || value > max)
    throw new InputError(place, "out of range", value, `give a number${range(min, max, unit)}`, {
      code: "out of range",
    });
  return value;
}

/**
 * The value itself if it is a finite number above 0.
 *
 * @throws InputError naming the place and the value
 */
export function positive(value: unknown, place: string): number {
  const number = finite(value, place);
  if (number > 0) return number;
  throw new InputError(place, "out of range", value, "give a number above 0", {code: "out of range"});
}

function range(min: number, max: number, unit: string): string {
  const of = unit && ` ${unit}`;
  if (min > -Infinity && max < Infinity) return ` from ${min} to ${max}${of}`;
  if (min > -Infinity) return ` of at least ${min}${of}`;
  if (max < Infinity) return ` of at most ${max}${of}`;
  return unit && ` in ${unit}`;
}

/** Sum of the values, 0 for none. */
export function sum(values: Iterable<number>): number {
  let total = 0;
  for (const value of values) total += value;
  return total;
}
