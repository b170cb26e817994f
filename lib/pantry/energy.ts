import type {Composition} from "./parts.ts";
import {quantityIn} from "./quantities.ts";

/**
 * Energy factors per g, kJ and kcal: Regulation (EU) No 1169/2011, Annex XIV. Erythritol has 0; all other sugar alcohols,
 * glycerol among them, count as polyols. Polydextrose, oligofructose and inulin count as fibre. Trehalose, isomaltulose, tagatose and allulose are sugars and
 * carbohydrate there; of allulose other laws see less (United States: 0.4 kcal/g and no sugar, FDA guidance of 2020, from
 * memory), and in the European Union it was not yet an authorised food when last known (from memory).
 */
export const ENERGY_FACTORS = {
  carbohydrate: {kilojoules: 17, kilocalories: 4},
  polyols: {kilojoules: 10, kilocalories: 2.4},
  protein: {kilojoules: 17, kilocalories: 4},
  fat: {kilojoules: 37, kilocalories: 9},
  alcohol: {kilojoules: 29, kilocalories: 7},
  organicAcids: {kilojoules: 13, kilocalories: 3},
  fibre: {kilojoules: 8, kilocalories: 2},
} as const;

/** Label figures that follow from a composition alone, g per 100 g; none of them is ever unknown. */
export interface LabelFigures {
  /** All fat, emulsifiers among it. */
  readonly fat: number;
  /** Without fibre: sugars, starch, glucose-syrup solids, polyols, other carbohydrate. */
  readonly carbohydrate: number;
  readonly sugars: number;
  readonly polyols: number;
  /** Soluble fibre and gums among it. */
  readonly fibre: number;
  readonly protein: number;
}

/** Label figures of a composition, g per 100 g. Stabilisers other than gelatine count as fibre (gums are), emulsifiers as fat. */
export function labelFigures(composition: Composition): LabelFigures {
  const polyols = quantityIn(composition, "polyols");
  return {
    fat: quantityIn(composition, "fat") + (composition.emulsifier ?? 0),
    carbohydrate:
      quantityIn(composition, "sugars") +
      (composition.lactose ?? 0) +
      (composition.starch ?? 0) +
      (composition.otherCarbohydrate ?? 0) +
      polyols,
    sugars: quantityIn(composition, "totalSugars"),
    polyols,
    fibre: quantityIn(composition, "fibre") + (composition.stabiliser ?? 0),
    protein: quantityIn(composition, "protein"),
  };
}

/** Energy of 100 g by {@link ENERGY_FACTORS}, kJ or kcal. */
export function energyOf(composition: Composition, unit: "kilojoules" | "kilocalories"): number {
  const {carbohydrate, polyols, protein, fat, fibre} = labelFigures(composition);
  const grams = {
    carbohydrate: carbohydrate - polyols,
    polyols: polyols - (composition.erythritol ?? 0),
    protein,
    fat,
    alcohol: composition.alcohol ?? 0,
    organicAcids: composition.organicAcids ?? 0,
    fibre,
  };
  let total = 0;
  for (const name of Object.keys(ENERGY_FACTORS) as (keyof typeof ENERGY_FACTORS)[])
    total += grams[name] * ENERGY_FACTORS[name][unit];
  return total;
}
