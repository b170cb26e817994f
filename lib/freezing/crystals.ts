import {SHORTHANDS} from "../pantry/composition.ts";
import {SOLUTE_TABLE} from "./solute-table.ts";
import {type HeldWaterCoefficients, heldWaterPerGram} from "./solute.ts";
import {activityOfIce} from "./held-water.ts";
import {CRYSTALS, SOLUBILITY} from "./tables.ts";

/** A sweetener that crystallises in a freezer; the other sugars stay in their syrup, however strong it gets. */
export type Crystallising = keyof typeof CRYSTALS;

/** The sweeteners that crystallise in a freezer (`datasets/crystals.csv`). */
export const CRYSTALLISING = Object.keys(CRYSTALS) as readonly Crystallising[];

/**
 * Lactose that stays dissolved, g per g of all water, in ice cream stored for months and in one sold within weeks: the trade's rule
 * that MSNF may be at most 15 % of itself and the water together, or 18.5 % (W. S. Arbuckle, Ice Cream; from memory), in terms of
 * the lactose of ordinary MSNF, 54 % of it (H. D. Goff, Ice Cream Technology, University of Guelph e-book; see `SHORTHANDS`). So it
 * holds for whey, permeate and protein powders too.
 */
export const LACTOSE_TO_WATER = {longStorage: lactoseToWater(0.15), quickTurnover: lactoseToWater(0.185)};

function lactoseToWater(msnfOfSerum: number): number {
  return (SHORTHANDS.msnf.lactose! * msnfOfSerum) / (1 - msnfOfSerum);
}

/** Data of a crystallising sweetener from which follows how much of it is dissolved. */
export interface Crystal {
  readonly part: Crystallising;
  readonly coefficients: HeldWaterCoefficients;
  /** Water in the crystals, g per g of the dry sweetener. */
  readonly water: number;
  /** Dissolved at most, g per g of all water of the mix: 0 but for lactose. */
  readonly perWater: number;
  /** ln of the solubility, g per g, is `[0] + [1] / T`, T in K: the van 't Hoff line. Absent for lactose. */
  readonly line?: readonly [number, number];
}

/**
 * The crystallising sweeteners. Erythritol, trehalose, mannitol, isomalt and isomaltulose stay dissolved as far as the unfrozen water can
 * dissolve them. Lactose stays dissolved far beyond its solubility in any well-made ice cream; it counts as crystals only
 * beyond the trade's limit for milk solids, which is a share of the water and no matter of temperature.
 */
export const CRYSTAL_TABLE: Readonly<Record<Crystallising, Crystal>> = Object.fromEntries(
  CRYSTALLISING.map((part): [Crystallising, Crystal] => {
    const {water, limit} = CRYSTALS[part];
    const {coefficients} = SOLUTE_TABLE[part];
    return limit === "solubility"
      ? [part, {part, coefficients, water, perWater: 0, line: solubilityLine(part)}]
      : [part, {part, coefficients, water, perWater: LACTOSE_TO_WATER.quickTurnover}];
  }),
) as never;

/**
 * Solubility in water by a van 't Hoff line through two points: ln of it, g per g, is `[0] + [1] / T`, T in K.
 */
export function solubilityLine(part: keyof typeof SOLUBILITY): readonly [number, number] {
  const {x, y} = SOLUBILITY[part];
  const [i0, i1] = [1 / (x[0] + 273.15), 1 / (x[1] + 273.15)];
  const slope = (Math.log(y[1]) - Math.log(y[0])) / (i1 - i0);
  return [Math.log(y[0] / 100) - slope * i0, slope];
}

/**
 * Solubility at a temperature, g per g of unfrozen water.
 *
 * @param temperature °C
 * @returns 0 for lactose, whose limit is another
 */
export function dissolvedPerLiquid({line}: Crystal, temperature: number): number {
  return line ? Math.exp(line[0] + line[1] / (temperature + 273.15)) : 0;
}

/** Terms of one crystallising sweetener at a temperature, for a linear program (see `piecesOf`). */
export interface CrystalTerms {
  readonly part: Crystallising;
  /** Water that a dissolved g holds, g per g. */
  readonly held: number;
  /** Dissolved at most, g per g of unfrozen water. */
  readonly perLiquid: number;
  /** Dissolved at most, g per g of all water of the mix, besides. */
  readonly perWater: number;
  /** Water in the crystals, g per g of the dry sweetener. */
  readonly water: number;
}

/**
 * The terms of a crystallising sweetener at a temperature, for the rows of a linear program (see `frozenState`).
 *
 * @param temperature °C, from -40 to below 0
 * @throws InputError outside the temperature range
 */
export function crystalTerms(part: Crystallising, temperature: number): CrystalTerms {
  const crystal = CRYSTAL_TABLE[part];
  return {
    part,
    held: heldWaterPerGram(crystal.coefficients, activityOfIce(temperature)),
    perLiquid: dissolvedPerLiquid(crystal, temperature),
    perWater: crystal.perWater,
    water: crystal.water,
  };
}
