import {lusolve} from "mathjs";
import {sum} from "../../lib/core/numbers.ts";
import {rootBetween} from "../../lib/core/roots.ts";
import {type HeldWaterCoefficients, heldWaterPerGram, WATER_MOLAR_MASS} from "../../lib/freezing/solute.ts";
import {iceWaterActivity} from "../../lib/freezing/water-activity.ts";
import type {Grade} from "../../lib/pantry/ingredient.ts";
import type {Data, Point} from "./published-points.ts";

/** A fitted or borrowed solute, as a row of `datasets/solutes.csv`. */
export interface Fit {
  readonly part: string;
  readonly coefficients: HeldWaterCoefficients;
  readonly coldest: number;
  readonly strongest: number;
  readonly points: number;
  readonly rms: number;
  readonly largest: number;
  readonly grade: Grade;
  readonly source: string;
  readonly note: string;
}

/** Choices of a fit: directions in the space of coefficients, on top of the ideal term. */
export type Shape = readonly HeldWaterCoefficients[];

/** Freezing point of a binary solution by a curve, °C. */
function freezingPoint(coefficients: HeldWaterCoefficients, strength: number): number {
  return rootBetween(
    (t) => heldWaterPerGram(coefficients, iceWaterActivity(t)) - 1 / strength,
    -60,
    -1e-6,
    1e-12,
  )!;
}

/** Least squares in °C: an error in held water, over the slope of the curve, is an error in freezing point. */
function leastSquares(points: readonly Point[], ideal: number, shape: Shape): HeldWaterCoefficients {
  const start = [ideal, 0, 0, 0, 0, 0] as const;
  let coefficients: HeldWaterCoefficients = start;
  for (let round = 0; round < 12; round++) {
    const normal = shape.map(() => shape.map(() => 0));
    const right = shape.map(() => 0);
    for (const {strength, temperature} of points) {
      const held = (t: number) => heldWaterPerGram(coefficients, iceWaterActivity(t));
      const slope = (held(temperature * 0.999) - held(temperature * 1.001)) / (0.002 * temperature);
      const activity = iceWaterActivity(temperature);
      const terms = shape.map((direction) => heldWaterPerGram(direction, activity) / slope);
      const rest = (1 / strength - heldWaterPerGram(start, activity)) / slope;
      terms.forEach((x, i) => {
        right[i]! += x * rest;
        terms.forEach((y, j) => (normal[i]![j]! += x * y));
      });
    }
    const weights = (lusolve(normal, right) as number[][]).map((d) => d[0]!);
    coefficients = start.map(
      (d, i) => d + sum(shape.map((direction, j) => weights[j]! * direction[i]!)),
    ) as never;
  }
  return rounded(coefficients);
}

/** Seven significant digits: far below any error of the data, and the same on every machine. */
function rounded(coefficients: readonly number[]): HeldWaterCoefficients {
  return coefficients.map((d) => Number(d.toPrecision(7))) as never;
}

/**
 * A fitted curve with its errors.
 *
 * @param particles per formula unit in dilute solution: 1, or the number of ions of a salt
 */
export function fit(
  part: string,
  data: Data,
  particles: number,
  shape: Shape,
  note: string,
  grade: Grade = "compiled",
): Fit {
  const coefficients = leastSquares(data.points, (particles * WATER_MOLAR_MASS) / data.molarMass, shape);
  return {part, coefficients, ...errorsOf(coefficients, data.points), grade, source: data.source, note};
}

/** Distance of a curve from points, and the range of the points. */
function errorsOf(
  coefficients: HeldWaterCoefficients,
  points: readonly Point[],
): Pick<Fit, "coldest" | "strongest" | "points" | "rms" | "largest"> {
  // A point that is there several times, to count more in the fit, has one error.
  const errors = [...new Set(points)].map((d) => freezingPoint(coefficients, d.strength) - d.temperature);
  return {
    coldest: Math.min(...points.map((d) => d.temperature)),
    strongest: Number(Math.max(...points.map((d) => d.strength)).toFixed(3)),
    points: errors.length,
    rms: Number(Math.sqrt(sum(errors.map((d) => d * d)) / errors.length).toFixed(4)),
    largest: Number(Math.max(...errors.map(Math.abs)).toFixed(3)),
  };
}

/** A curve that is another one's multiple, with no points of its own. */
export function multiple(of: Fit, factor: number, part: string, grade: Grade, note: string): Fit {
  return {...of, coefficients: rounded(of.coefficients.map((d) => d * factor)), points: 0, part, grade, note};
}

/** Another solute's curve, with its errors against points of this one's own. */
export function borrowed(of: Fit, part: string, data: Data, note: string): Fit {
  return {
    ...of,
    part,
    ...errorsOf(of.coefficients, data.points),
    grade: "estimated",
    source: data.source,
    note,
  };
}
