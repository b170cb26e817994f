import {expect} from "vitest";

/** Holds `actual` within `tolerance` of `expected`; a failure says which value, by how much, and why it matters. */
export function within(actual: number | undefined, expected: number, tolerance: number, what: string): void {
  const off = Math.abs((actual ?? NaN) - expected);
  expect(
    off <= tolerance,
    `${what}: ${actual} should be within ${tolerance} of ${expected} (off by ${off})`,
  ).toBe(true);
}
