import type {Composition} from "../pantry/parts.ts";
import {
  ANCHOR_SCALES,
  ANCHORS,
  FIRMNESS,
  FIRMNESS_COVARIANCE,
  LEFT_OUT_DISTANCE,
  LEFT_OUT_ERROR,
  SCATTER,
} from "./firmness-table.ts";
import {insoluble} from "./insoluble.ts";
import type {Learned} from "./learned.ts";
import {FATS, solidFatIn} from "./solid-fat.ts";
import {frozenState} from "./state.ts";
import {heldError} from "./validity.ts";

/** Water, fat, insoluble solids and ln of the volume, over their spread in the fit. */
function placeOf(grams: readonly [number, number, number], overrun: number): number[] {
  return [...grams, Math.log(1 + overrun / 100)].map((d, i) => d / ANCHOR_SCALES[i]!);
}

const PLACES = ANCHORS.map(([water, fat, solids, overrun]) => placeOf([water!, fat!, solids!], overrun!));

/**
 * Distance of a mix from the mixes of the fit, divided by that of a class that was left out of it from the others; at least 1.
 * A factor on the error of the fit.
 *
 * @param overrun %
 * @param crystals of sweeteners, g per 100 g, which count as insoluble
 */
export function strangeness(composition: Composition, overrun: number, crystals = 0): number {
  let fat = 0;
  for (const part of FATS) fat += composition[part] ?? 0;
  const place = placeOf([composition.water ?? 0, fat, insoluble(composition) + crystals], overrun);
  let nearest = Infinity;
  for (const other of PLACES) {
    let squares = 0;
    for (let i = 0; i < 4; i++) squares += (place[i]! - other[i]!) ** 2;
    nearest = Math.min(nearest, squares);
  }
  return Math.max(1, Math.sqrt(nearest) / LEFT_OUT_DISTANCE);
}

/**
 * Error of a scoop temperature by the form of the index, one standard deviation, °C: what it misses in a class that was left
 * out of the fit, times {@link strangeness}.
 *
 * @param temperature °C, -40 or above
 */
export function fitError(
  composition: Composition,
  temperature: number,
  overrun: number,
  learned?: Learned,
): number {
  const {crystals} = frozenState(composition, temperature);
  return LEFT_OUT_ERROR * strangeness(composition, overrun, crystals) * (learned?.narrowing ?? 1);
}

/**
 * Further error of the firmness of a mix at a temperature, one standard deviation, g per 100 g: by the spread of the
 * parameters, what is not known of the held water, and the scatter of the process.
 *
 * @param temperature °C, -40 or above
 * @param learned what a kitchen's reports have taught: it narrows all but the scatter, which it may widen
 */
export function firmnessBand(
  composition: Composition,
  temperature: number,
  overrun: number,
  learned?: Learned,
): number {
  const {crystals} = frozenState(composition, temperature);
  const gradient = [
    -1,
    solidFatIn(composition, temperature),
    insoluble(composition) + crystals,
    -Math.log((100 + overrun) / 130),
    -13 - temperature,
    0,
  ];
  let spread = 0;
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < 6; j++) spread += gradient[i]! * gradient[j]! * FIRMNESS_COVARIANCE[i]![j]!;
  }
  const held = temperature < 0 ? heldError(composition, temperature) : 0;
  const scatter = (learned?.scatter ?? SCATTER) / FIRMNESS.slope;
  return Math.sqrt((spread + held ** 2) * (learned?.narrowing ?? 1) ** 2 + scatter ** 2);
}
