import type {Composition, Part} from "../pantry/parts.ts";

/** Coefficients of a heat capacity in kJ/(kg K): a0 + a1 t + a2 t², t in °C. */
type HeatCapacity = readonly [a0: number, a1: number, a2: number];

/**
 * Heat capacities of the components of food: Y. Choi and M. R. Okos 1986, as printed in ASHRAE Handbook - Refrigeration
 * (2006), chapter 9, tables 1 and 2, -40 to 150 °C. The constant of water there, 4.1289, is 1.3 % low: 4.1762 is the original
 * (from memory). Alcohol, 2.44, is from memory.
 */
const WATER: HeatCapacity = [4.1762, -9.0864e-5, 5.4731e-6];
const PROTEIN: HeatCapacity = [2.0082, 1.2089e-3, -1.3129e-6];
const FAT: HeatCapacity = [1.9842, 1.4733e-3, -4.8008e-6];
const CARBOHYDRATE: HeatCapacity = [1.5488, 1.9625e-3, -5.9399e-6];
const FIBRE: HeatCapacity = [1.8459, 1.8306e-3, -4.6509e-6];
const ASH: HeatCapacity = [1.0926, 1.8896e-3, -3.6817e-6];
const ALCOHOL: HeatCapacity = [2.44, 0, 0];

/** The parts that are not carbohydrate in this sense. */
const KINDS: Readonly<Partial<Record<Part, HeatCapacity>>> = {
  water: WATER,
  milkProtein: PROTEIN,
  otherProtein: PROTEIN,
  milkFat: FAT,
  eggFat: FAT,
  cocoaButter: FAT,
  coconutFat: FAT,
  otherFat: FAT,
  emulsifier: FAT,
  fibre: FIBRE,
  stabiliser: FIBRE,
  milkSalts: ASH,
  plantSalts: ASH,
  salt: ASH,
  alcohol: ALCOHOL,
};

/**
 * Heat that warms an unfrozen mix from one temperature to another, kJ/kg; negative for cooling.
 *
 * Sum over the components (see above), integrated over temperature. Left out: the melting of fat (milk fat takes about
 * 80 kJ per kg of fat between 4 and 40 °C, from memory) and the cold of dissolving sugar (sucrose about 16 kJ/kg, from memory):
 * together they make a mixed temperature some 1 to 3 °C lower than reckoned.
 *
 * @param composition g per 100 g
 * @param from °C, above the mix's freezing point
 * @param to °C, at most 150
 */
export function sensibleHeat(composition: Composition, from: number, to: number): number {
  let total = 0;
  for (const [part, grams] of Object.entries(composition)) {
    if (part === "dextroseEquivalent") continue;
    const [a0, a1, a2] = KINDS[part as Part] ?? CARBOHYDRATE;
    total +=
      (grams / 100) *
      (a0 * (to - from) + (a1 / 2) * (to ** 2 - from ** 2) + (a2 / 3) * (to ** 3 - from ** 3));
  }
  return total;
}
