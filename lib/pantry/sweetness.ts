import type {Composition, Part} from "./parts.ts";

/**
 * Relative sweetness by mass, sucrose = 1.
 *
 * Sources: A Dictionary of Food and Nutrition (Oxford), entry "sweeteners": fructose, dextrose, maltose, lactose;
 * Varzakas et al., Sweeteners: Nutritional Aspects, Applications, and Production Technology (2012), table 2.1:
 * galactose, sorbitol; the erythritol, xylitol, maltitol, isomalt and polydextrose figures of table 2 in PubMed Central
 * article PMC10346066; lactitol and mannitol, the middle of their ranges, from Appl. Microbiol. Biotechnol. 102 (2017,
 * PMC5756564), table 1. Isomaltulose lies between the 0.4 of PMC10346066 and the 0.5 that its makers print (from memory);
 * oligofructose is what makes a powder with 5 % sugars the 0.4 of that table. Glycerol, allulose, trehalose and tagatose (0.92)
 * are from memory, and so is that pure inulin is not sweet: the tenth of sugar that its powder tastes like are the sugars in it.
 * Tables differ by about 10 % (dextrose 0.74 to 0.80, fructose 1.2 to 1.7 with temperature).
 */
export const RELATIVE_SWEETNESS: Readonly<Partial<Record<Part, number>>> = {
  sucrose: 1,
  dextrose: 0.74,
  fructose: 1.73,
  maltose: 0.33,
  lactose: 0.16,
  galactose: 0.3,
  sorbitol: 0.5,
  xylitol: 1,
  erythritol: 0.7,
  mannitol: 0.6,
  maltitol: 0.9,
  lactitol: 0.35,
  isomalt: 0.5,
  trehalose: 0.45,
  allulose: 0.7,
  isomaltulose: 0.45,
  tagatose: 0.92,
  polydextrose: 0.1,
  oligofructose: 0.37,
  glycerol: 0.6,
};

/**
 * Relative sweetness of glucose-syrup solids per point of dextrose equivalent: 36 DE is 0.35 to 0.40, 62 DE 0.65 to
 * 0.70 (from memory). A straight line, so that blends of syrups add up exactly; good from 20 to 70 DE. Above that
 * it reads too sweet (97 DE: 1.01, where dextrose itself is 0.74).
 */
export const SYRUP_SWEETNESS_PER_DE = 0.0104;

/**
 * Sweetness of a composition, g of sucrose that taste as sweet per 100 g (pure sucrose = 100).
 *
 * The sum over the sugars; synergy, acidity and serving temperature are left out.
 */
export function sweetnessOf(composition: Composition): number {
  let total =
    (composition.glucoseSyrupSolids ?? 0) * (composition.dextroseEquivalent ?? 0) * SYRUP_SWEETNESS_PER_DE;
  for (const [part, sweetness] of SWEET) total += sweetness * (composition[part] ?? 0);
  return total;
}

/** The sweet parts in a list, which is walked many times. */
const SWEET = Object.entries(RELATIVE_SWEETNESS) as [Part, number][];
