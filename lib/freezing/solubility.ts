import {expectComposition} from "../pantry/expect.ts";
import type {Composition, Part} from "../pantry/parts.ts";
import {quantityOf} from "../pantry/quantities.ts";
import {ice} from "./ice.ts";
import {SOLUBILITY} from "./tables.ts";

/** How near a solute is to crystallising. */
export interface Saturation {
  readonly part: Part;
  /** In the unfrozen water, g per 100 g. */
  readonly concentration: number;
  /** In water alone, g per 100 g. */
  readonly solubility: number;
  /** Concentration over solubility: above 1 it can crystallise, though slowly in the cold. */
  readonly ratio: number;
}

/**
 * Solubility of a part in water, g per 100 g, by a van 't Hoff line (ln s against 1 / T) through the points of
 * `datasets/solubility.csv`, which are from memory; it is extrapolated below them.
 *
 * @param part lactose (as its monohydrate), dextrose (as its monohydrate), sucrose or erythritol
 * @param temperature °C
 */
export function solubility(part: keyof typeof SOLUBILITY, temperature: number): number {
  const {x, y} = SOLUBILITY[part];
  const inverse = (t: number) => 1 / (t + 273.15);
  const [t0, t1] = [inverse(x[0]), inverse(x[1])];
  const slope = (Math.log(y[1]) - Math.log(y[0])) / (t1 - t0);
  return y[0] * Math.exp(slope * (inverse(temperature) - t0));
}

/**
 * Lactose, dextrose, sucrose and erythritol of a mix in its unfrozen water, against their solubility in water alone.
 *
 * The ice is that of a mix in which they all stay dissolved, as lactose mostly does: what crystallised would hold no
 * water.
 *
 * @param temperature °C, -40 or above
 * @returns one row for each that is there, the most supersaturated first; none where no water is left liquid
 * @throws InputError below -40 °C
 */
export function saturations(composition: Composition, temperature: number): Saturation[] {
  expectComposition(composition);
  const liquid = (composition.water ?? 0) - ice(composition, temperature);
  if (liquid <= 0) return [];
  return (Object.keys(SOLUBILITY) as (keyof typeof SOLUBILITY)[])
    .filter((part) => composition[part])
    .map((part) => {
      const concentration = (100 * composition[part]!) / liquid;
      const limit = solubility(part, temperature);
      return {part, concentration, solubility: limit, ratio: concentration / limit};
    })
    .sort((a, b) => b.ratio - a.ratio);
}

/** Whether lactose is likely to crystallise into sand. */
export interface Sandiness {
  /** MSNF, g per 100 g. */
  readonly msnf: number;
  /** Most MSNF for ice cream stored for months, g per 100 g. */
  readonly longStorage: number;
  /** Most MSNF for ice cream sold within weeks, g per 100 g. */
  readonly quickTurnover: number;
  readonly caution: "none" | "sell soon" | "likely";
}

/**
 * Caution for sandiness, by the rule of the trade: MSNF at most 15 % of itself and the water together for long
 * storage, 18.5 % for a quick turnover (W. S. Arbuckle, Ice Cream; from memory). Stabilisers and nuclei that hinder
 * crystals, and heat shock that feeds them, are left out.
 */
export function sandiness(composition: Composition): Sandiness {
  const msnf = quantityOf(composition, "msnf");
  const serum = msnf + (composition.water ?? 0);
  const [longStorage, quickTurnover] = [0.15 * serum, 0.185 * serum];
  return {
    msnf,
    longStorage,
    quickTurnover,
    caution: msnf <= longStorage ? "none" : msnf <= quickTurnover ? "sell soon" : "likely",
  };
}
