import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {expectComposition} from "../../pantry/expect.ts";
import type {Composition} from "../../pantry/parts.ts";

const SUCROSE = 342.3;
const WATER = 18.015;

/**
 * A composition in which part of the sucrose has split into dextrose and fructose, as it does when cooked with acid fruit.
 *
 * Stoichiometry: 342.30 g sucrose and 18.015 g water give 180.16 g of each. How much splits depends on acidity, heat and time;
 * a fruit sauce of pH about 3 boiled for a quarter of an hour inverts something like a quarter (from memory). Inverted
 * sugar keeps more water unfrozen: the sauce is softer.
 *
 * @param composition g per 100 g
 * @param share share of the sucrose that splits, 0 to 1
 * @throws InputError for a share outside 0 to 1, and for one that takes more water than there is
 *
 * @example
 * ```ts
 * invert({water: 40, sucrose: 60}, 0.5); // => {water: 38.4, sucrose: 30, dextrose: 15.8, fructose: 15.8}
 * ```
 */
export function invert(composition: Composition, share: number): Composition {
  const split = invertedIn(composition, share);
  const {water: left = 0} = split;
  if (left >= -1e-9) return split;
  const {water = 0} = composition;
  throw new InputError(
    "inversion",
    `too little water to split so much: ${water.toFixed(1)} g per 100 g, and it takes ${(water - left).toFixed(1)} g`,
    share,
    "add water, or give a smaller share",
    {code: "out of range"},
  );
}

/** As {@link invert}, of what need not hold the water itself: one ingredient of a pot, in a linear program. */
export function invertedIn(composition: Composition, share: number): Composition {
  expectComposition(composition);
  const split = (composition.sucrose ?? 0) * finite(share, "inversion", {min: 0, max: 1});
  if (split === 0) return composition;
  const each = (split * (SUCROSE + WATER)) / SUCROSE / 2;
  return {
    ...composition,
    sucrose: (composition.sucrose ?? 0) - split,
    water: (composition.water ?? 0) - (split * WATER) / SUCROSE,
    dextrose: (composition.dextrose ?? 0) + each,
    fructose: (composition.fructose ?? 0) + each,
  };
}
