import type {Composition, Part} from "../pantry/parts.ts";
import {expectComposition} from "../pantry/expect.ts";
import {LACTOSE_TO_WATER, solubilityLine} from "./crystals.ts";
import {frozenState} from "./state.ts";
import {SOLUBILITY} from "./tables.ts";

/** Saturation of a solute: how near it is to crystallising. */
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
 * `datasets/solubility.csv`, which gives their sources; it is extrapolated below them.
 *
 * @param part any of `SOLUBILITY`, by the crystal that comes out of the cold: lactose, dextrose and maltose as monohydrate,
 *   isomaltulose too, trehalose as dihydrate, sucrose, erythritol, mannitol, isomalt
 * @param temperature °C
 */
export function solubility(part: keyof typeof SOLUBILITY, temperature: number): number {
  const [at, slope] = solubilityLine(part);
  return 100 * Math.exp(at + slope / (temperature + 273.15));
}

/**
 * The sweeteners of a mix in its unfrozen water, against their solubility in water alone. What crystallises readily (see
 * `CRYSTALLISING`) counts as if it were still dissolved, so a ratio above 1 says how much of it is crystals: all but
 * 1 / ratio. The others can crystallise above 1 but hardly do in the cold.
 *
 * @param temperature °C, -40 or above
 * @returns one row for each that is there, the most supersaturated first; none where no water is left liquid
 * @throws InputError below -40 °C
 *
 * @example
 * ```ts
 * saturations({water: 60, erythritol: 12, sucrose: 28}, -18).map(({part}) => part); // => ["erythritol", "sucrose"]
 * ```
 */
export function saturations(composition: Composition, temperature: number): Saturation[] {
  const {liquid} = frozenState(composition, temperature);
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
  /** g per 100 g of mix. */
  readonly lactose: number;
  /** Most lactose for ice cream stored for months, g per 100 g of mix. */
  readonly longStorage: number;
  /** Most lactose for ice cream sold within weeks, g per 100 g of mix. */
  readonly quickTurnover: number;
  readonly caution: "none" | "sell soon" | "likely";
}

/**
 * Caution for sandiness, by the lactose in the water of the mix (see `LACTOSE_TO_WATER`). Stabilisers and nuclei that hinder
 * crystals, and heat shock that feeds them, are left out.
 *
 * @example
 * ```ts
 * sandiness({water: 58, milkFat: 10, milkProtein: 5.5, lactose: 9, milkSalts: 1.5, sucrose: 16}).caution; // => "likely"
 * ```
 */
export function sandiness(composition: Composition): Sandiness {
  expectComposition(composition);
  const {lactose = 0, water = 0} = composition;
  const [longStorage, quickTurnover] = [
    LACTOSE_TO_WATER.longStorage * water,
    LACTOSE_TO_WATER.quickTurnover * water,
  ];
  return {
    lactose,
    longStorage,
    quickTurnover,
    caution: lactose <= longStorage ? "none" : lactose <= quickTurnover ? "sell soon" : "likely",
  };
}
