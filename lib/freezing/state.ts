import {finite} from "../core/numbers.ts";
import {expectComposition} from "../pantry/expect.ts";
import type {Composition, Part} from "../pantry/parts.ts";
import {
  CRYSTAL_TABLE,
  CRYSTALLISING,
  type Crystal,
  type Crystallising,
  dissolvedPerLiquid,
} from "./crystals.ts";
import {activityOfIce, addCurve, COLDEST, mixCoefficients} from "./held-water.ts";
import {type HeldWaterCoefficients, heldWaterPerGram} from "./solute.ts";

/** A mix summed up once, for its state at many temperatures. */
export interface Mixture {
  /** All water but that of the crystals that are there at every temperature. */
  readonly water: number;
  /** Of what never crystallises, of bound water, and of what is dissolved of lactose. */
  readonly coefficients: HeldWaterCoefficients;
  /** Sweeteners whose crystals come and go with temperature. */
  readonly crystals: readonly {readonly crystal: Crystal; readonly grams: number}[];
  /** Dry lactose beyond what the milk-solids rule leaves dissolved. */
  readonly lactose: number;
}

/** Ice, crystals and what is left liquid at a temperature, g per 100 g of mix. */
export interface FrozenState {
  readonly ice: number;
  /** Unfrozen water, that of crystals left out. */
  readonly liquid: number;
  /** Sweeteners that have crystallised, dry. */
  readonly crystallised: Readonly<Partial<Record<Part, number>>>;
  /** All crystals of sweeteners, with their crystal water. */
  readonly crystals: number;
}

/** Ice before it is cut off at zero, unfrozen water and crystals; `crystals` are with their water. */
interface Balance {
  readonly ice: number;
  readonly liquid: number;
  readonly crystals: number;
}

/** Sums a mix up. */
export function mixtureOf(composition: Composition): Mixture {
  const coefficients = mixCoefficients(composition) as [number, number, number, number, number, number];
  const all = composition.water ?? 0;
  const lactose = Math.max(0, (composition.lactose ?? 0) - CRYSTAL_TABLE.lactose.perWater * all);
  if (lactose > 0) addCurve(coefficients, CRYSTAL_TABLE.lactose.coefficients, -lactose);
  const crystals: {crystal: Crystal; grams: number}[] = [];
  for (const part of SOLUBLE) {
    const grams = composition[part];
    if (!grams) continue;
    const crystal = CRYSTAL_TABLE[part];
    addCurve(coefficients, crystal.coefficients, -grams);
    crystals.push({crystal, grams});
  }
  const water = Math.max(0, all - CRYSTAL_TABLE.lactose.water * lactose);
  return {water, coefficients, crystals, lactose};
}

/** The sweeteners that the unfrozen water dissolves as far as it can. */
const SOLUBLE: readonly Crystallising[] = CRYSTALLISING.filter((part) => part !== "lactose");

/**
 * State of a mix at a temperature: ice, unfrozen water and the sweeteners that have crystallised out of it.
 *
 * Every solute holds its water as far as it is dissolved. Of a sweetener that crystallises no more is dissolved than
 * `perLiquid` times the unfrozen water or, of lactose, `perWater` times all water; the rest is crystals, which bind
 * their crystal water. With m the masses, d what is dissolved, h the held water per g, k crystal water, s = perLiquid,
 * r = perWater, W the water and A the water held by everything else:
 *
 *     d <= m,   d <= s L + r W,   L <= A + Σ h d,   L <= W - Σ k (m - d)        and the largest d and L that there are.
 *
 * The largest exists, because each of the limits rises with the others, and is found exactly: beginning with all dissolved,
 * the set of the saturated only grows, and with a given set the limits are linear. Ice is W - Σ k (m - d) - L.
 *
 * At the largest d and L ice is as small as these limits let it be, and so is firmness. That makes both convex functions of the
 * amounts, the largest of a few linear pieces: `piecesOf` has them as rows of a linear program.
 *
 * @param composition g per 100 g
 * @param temperature °C, -40 or above
 * @throws InputError below -40 °C
 *
 * @example
 * ```ts
 * frozenState({erythritol: 20, water: 80}, -18).crystallised.erythritol; // => 20
 * ```
 */
export function frozenState(composition: Composition, temperature: number): FrozenState {
  expectComposition(composition);
  finite(temperature, "temperature", {min: COLDEST}, "°C");
  const mixture = mixtureOf(composition);
  const activity = temperature < 0 ? activityOfIce(temperature) : undefined;
  const {ice, liquid, crystals} = balanceAt(mixture, temperature, activity);
  const crystallised: Partial<Record<Part, number>> = {};
  if (mixture.lactose > 0) crystallised.lactose = mixture.lactose;
  for (const {crystal, grams} of mixture.crystals) {
    const most = dissolvedPerLiquid(crystal, temperature) * liquid;
    if (grams > most) crystallised[crystal.part] = grams - most;
  }
  return {ice: Math.max(0, ice), liquid, crystallised, crystals};
}

/**
 * The balance of water at a temperature.
 *
 * @param activity of ice; `undefined` where it is too warm for any
 */
export function balanceAt(mixture: Mixture, temperature: number, activity: number | undefined): Balance {
  const {water, coefficients, crystals, lactose} = mixture;
  const rest = activity === undefined ? Infinity : heldWaterPerGram(coefficients, activity);
  const settled = (1 + CRYSTAL_TABLE.lactose.water) * lactose;
  if (crystals.length === 0) return {ice: water - rest, liquid: Math.min(rest, water), crystals: settled};
  const terms = crystals.map(({crystal, grams}) => ({
    grams,
    held: activity === undefined ? 0 : heldWaterPerGram(crystal.coefficients, activity),
    perLiquid: dissolvedPerLiquid(crystal, temperature),
    water: crystal.water,
    saturated: false,
  }));
  // All dissolved at first; then what exceeds its limit is saturated, and so on: each round has less water liquid.
  for (;;) {
    let [held, gain, bound, freed] = [rest, 0, 0, 0];
    for (const {grams, held: h, perLiquid, water: k, saturated} of terms) {
      if (!saturated) held += h * grams;
      else {
        gain += h * perLiquid;
        bound += k * grams;
        freed += k * perLiquid;
      }
    }
    const byHolding = gain < 1 ? held / (1 - gain) : Infinity;
    const byWater = Math.max(0, (water - bound) / (1 - freed));
    const liquid = Math.min(byHolding, byWater);
    let changed = false;
    for (const term of terms) {
      if (!term.saturated && term.grams > term.perLiquid * liquid) changed = term.saturated = true;
    }
    if (changed) continue;
    let solid = settled;
    for (const {grams, perLiquid, water: k, saturated} of terms) {
      if (saturated) solid += (1 + k) * (grams - perLiquid * liquid);
    }
    return {ice: water - bound + freed * liquid - held - gain * liquid, liquid, crystals: solid};
  }
}

/**
 * Water that everything but the crystallising sweeteners keeps liquid, g per 100 g: A in the rows of {@link frozenState}.
 * Linear in the masses.
 *
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function heldByRest(composition: Composition, temperature: number): number {
  const coefficients = mixCoefficients(composition) as [number, number, number, number, number, number];
  for (const part of CRYSTALLISING) {
    const grams = composition[part];
    if (grams) addCurve(coefficients, CRYSTAL_TABLE[part].coefficients, -grams);
  }
  return heldWaterPerGram(coefficients, activityOfIce(temperature));
}
