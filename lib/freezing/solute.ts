import type {Grade} from "../pantry/ingredient.ts";

/** Molar mass of water, g/mol (IUPAC standard atomic weights). */
export const WATER_MOLAR_MASS = 18.0153;

/**
 * Coefficients of a solute's binary freezing curve, each g water per g solute: `[ideal, root, c0, c1, c2, c3]`.
 *
 * See {@link heldWaterPerGram}.
 */
export type HeldWaterCoefficients = readonly [number, number, number, number, number, number];

/** A solute's binary freezing curve, and how far it is to be trusted. */
export interface SoluteCurve {
  readonly coefficients: HeldWaterCoefficients;
  /** Lowest freezing point that went into the fit, °C: below it the curve is extrapolated. */
  readonly coldest: number;
  /** Strongest solution that went into the fit, g per g water. */
  readonly strongest: number;
  /** Number of points fitted; 0 for a curve borrowed from another solute. */
  readonly points: number;
  /** Root mean square and largest difference from the points fitted, °C. */
  readonly rms: number;
  readonly largest: number;
  readonly grade: Grade;
}

/**
 * Water that one g of a solute keeps liquid in its own binary solution, g per g: 1 / c(T).
 *
 * With u = 1 - a, a the water activity of ice, it is
 * `ideal a/u + root/√u + c0 + c1 u + c2 u² + c3 u³`: an ideal solution (a = mole fraction of water) whose molecules
 * moreover bind some water, as in the hydration equation of R. A. Robinson and R. H. Stokes, Electrolyte Solutions
 * (1959), chapter 9. `ideal` is (particles per formula) × 18.0153 / molar mass, so the curve starts with the right
 * freezing-point depression; `root` is the Debye-Hückel term of salts (of ethanol one more term of the fit); the polynomial is the bound water, which falls
 * as the solution strengthens.
 *
 * @param activity water activity of ice, from 0.67 to below 1
 */
export function heldWaterPerGram(coefficients: HeldWaterCoefficients, activity: number): number {
  const u = 1 - activity;
  const [ideal, root, c0, c1, c2, c3] = coefficients;
  return (ideal * activity) / u + root / Math.sqrt(u) + c0 + u * (c1 + u * (c2 + u * c3));
}
