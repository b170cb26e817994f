import {InputError} from "../../core/errors.ts";
import {finite, sum} from "../../core/numbers.ts";
import {expectList} from "../../core/shape.ts";

/** Pieces folded into the frozen mix: they hold no air. */
export interface Particulates {
  /** Density of the pieces themselves or, if they leave gaps, of the heap, g/ml. */
  readonly density: number;
  /** g per 100 g of the finished product. */
  readonly percent: number;
}

/**
 * Overrun from weighing: the volume that the mix gained from air, in % of the mix's own volume.
 *
 * (mass of mix - mass of the same volume frozen) / mass frozen x 100.
 * Source: H. D. Goff, Ice Cream Technology, University of Guelph e-book, "Overrun calculations".
 *
 * @param mixGrams mass of a cup filled with mix, without the cup, g
 * @param frozenGrams mass of the same cup filled with the frozen product, g
 * @throws InputError when the frozen cup is heavier than the mix, or a mass is not above 0
 *
 * @example
 * ```ts
 * overrunFromWeights(545, 420); // => 30
 * ```
 */
export function overrunFromWeights(mixGrams: number, frozenGrams: number): number {
  finite(mixGrams, "mixGrams", {min: 0.1}, "g");
  finite(frozenGrams, "frozenGrams", {min: 0.1}, "g");
  if (frozenGrams > mixGrams) {
    throw new InputError(
      "frozenGrams",
      "a cup of frozen mix heavier than a cup of mix",
      frozenGrams,
      "weigh both without the cup, and the frozen one without gaps",
    );
  }
  return (100 * (mixGrams - frozenGrams)) / frozenGrams;
}

/**
 * Mass of a full tub, g: the finished product of a given overrun in a given volume.
 *
 * Each 100 g hold (100 - percent of pieces) g of mix, blown up to (1 + overrun/100) times its volume, and the pieces in their own.
 * Source: H. D. Goff, Ice Cream Technology, University of Guelph e-book, "Figuring target package weights".
 *
 * @param millilitres volume of the tub, at least 1 ml
 * @param mixDensity g/ml, from the function of that name
 * @param overrun % of the mix's volume, 0 to 300
 * @param pieces fruit, ripple, nuts: anything that goes in after churning
 * @throws InputError for a number outside its range, or pieces of 100 % and more
 *
 * @example
 * ```ts
 * targetWeight(500, 1.09, 30); // => 419
 * ```
 */
export function targetWeight(
  millilitres: number,
  mixDensity: number,
  overrun: number,
  pieces: readonly Particulates[] = [],
): number {
  return finite(millilitres, "tub", {min: 1}, "ml") * finishedDensity(mixDensity, overrun, pieces);
}

/**
 * Density of the finished product, g/ml.
 *
 * Arguments and formula are those of {@link targetWeight}.
 *
 * @throws InputError for a number outside its range, or pieces of 100 % and more
 *
 * @example
 * ```ts
 * finishedDensity(1.09, 30); // => 0.84
 * ```
 */
export function finishedDensity(
  mixDensity: number,
  overrun: number,
  pieces: readonly Particulates[] = [],
): number {
  finite(mixDensity, "mixDensity", {min: 0.5, max: 2}, "g/ml");
  finite(overrun, "overrun", {min: 0, max: 300}, "%");
  expectList(pieces, {density: "number", percent: "number"}, "pieces", "give {density, percent} of each");
  for (const piece of pieces) {
    finite(piece.density, "density of the pieces", {min: 0.05, max: 3}, "g/ml");
    finite(piece.percent, "percent of pieces", {min: 0, max: 99}, "%");
  }
  const percent = sum(pieces.map((piece) => piece.percent));
  if (percent >= 100) throw new InputError("pieces", "no mix left", percent, "give less than 100 % together");
  const mix = ((100 - percent) / mixDensity) * (1 + overrun / 100);
  return 100 / (mix + sum(pieces.map((piece) => piece.percent / piece.density)));
}
