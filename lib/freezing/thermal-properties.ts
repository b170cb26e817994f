import type {Composition, Part} from "../pantry/parts.ts";
import {PARTS} from "../pantry/parts.ts";
import {COMPONENT_PROPERTIES} from "./tables.ts";

/** a0 + a1 t + a2 t², t in °C. */
export type Quadratic = readonly [number, number, number];

/** Properties of one component, from a table. */
export interface Properties {
  /** kJ/(kg K). */
  readonly cp: Quadratic;
  /** kg/m³. */
  readonly density: Quadratic;
  /** W/(m K). */
  readonly conductivity: Quadratic;
}

/**
 * Properties of the components of food, -40 to 150 °C.
 *
 * Source: Y. Choi and M. R. Okos, Effects of temperature and composition on the thermal properties of foods (1986), as
 * printed in ASHRAE Handbook Refrigeration (2006), chapter 9, tables 1 and 2. The heat capacity of water there, 4.1289,
 * is 1.3 % below measured water; their original constant, 4.1762 kJ/(kg K), is from memory, and so is ethanol.
 */
export const {protein, fat, carbohydrate, fiber: fibre, ash, ice: iceProperties} = COMPONENT_PROPERTIES;
export const water: Properties = {
  ...COMPONENT_PROPERTIES.water,
  cp: [4.1762, COMPONENT_PROPERTIES.water.cp[1], COMPONENT_PROPERTIES.water.cp[2]],
};
const ethanol: Properties = {
  cp: [2.35, 0.004, 0],
  density: [806, -0.85, 0],
  conductivity: [0.176, -0.0002, 0],
};

/** Component that each part counts as; a part not named is carbohydrate. */
const COMPONENT_OF: Partial<Record<Part, Properties>> = {
  milkFat: fat,
  eggFat: fat,
  cocoaButter: fat,
  coconutFat: fat,
  otherFat: fat,
  emulsifier: fat,
  milkProtein: protein,
  otherProtein: protein,
  gelatine: protein,
  fibre,
  milkSalts: ash,
  plantSalts: ash,
  salt: ash,
  alcohol: ethanol,
};

/** Value of a property at a temperature, °C. */
export function valueAt([a0, a1, a2]: Quadratic, temperature: number): number {
  return a0 + temperature * (a1 + temperature * a2);
}

/** Integral of a property from 0 °C to a temperature, in its unit times K. */
export function integralFromZero([a0, a1, a2]: Quadratic, temperature: number): number {
  return temperature * (a0 + temperature * (a1 / 2 + (temperature * a2) / 3));
}

/** A component and its mass, g per 100 g of mix. */
export interface Component {
  readonly properties: Properties;
  readonly grams: number;
}

/** The dry parts of a mix as components, each kind once; how much of the water is ice depends on the temperature. */
export function dryComponents(composition: Composition): Component[] {
  const grams = new Map<Properties, number>();
  for (const part of PARTS) {
    if (part === "water" || !composition[part]) continue;
    const properties = COMPONENT_OF[part] ?? carbohydrate;
    grams.set(properties, (grams.get(properties) ?? 0) + composition[part]);
  }
  return [...grams].map(([properties, held]) => ({properties, grams: held}));
}

/** Dry parts, unfrozen water and ice of a mix. */
export function componentsWith(
  composition: Composition,
  ice: number,
  dry: readonly Component[] = dryComponents(composition),
): Component[] {
  return [
    ...dry,
    {properties: water, grams: (composition.water ?? 0) - ice},
    {properties: iceProperties, grams: ice},
  ];
}

/** Density of a mix without air, kg/m³: its components side by side. */
export function density(components: readonly Component[], temperature: number): number {
  let [mass, volume] = [0, 0];
  for (const {properties, grams} of components) {
    mass += grams;
    volume += grams / valueAt(properties.density, temperature);
  }
  return mass / volume;
}

/** Conductivity of a mix without air, W/(m K): the mean by volume (parallel model of Choi and Okos). */
export function conductivity(components: readonly Component[], temperature: number): number {
  let [volume, total] = [0, 0];
  for (const {properties, grams} of components) {
    const part = grams / valueAt(properties.density, temperature);
    volume += part;
    total += part * valueAt(properties.conductivity, temperature);
  }
  return total / volume;
}

/** Conductivity of air near -10 °C, W/(m K) (CRC Handbook, from memory). */
const AIR_CONDUCTIVITY = 0.0236;

/**
 * Conductivity of a mix with air whipped in, W/(m K): bubbles in a continuous mix, by the equation of J. C. Maxwell
 * (1873) in the form of A. Eucken (1940), as in ASHRAE Handbook Refrigeration (2006), chapter 9.
 *
 * @param solid conductivity of the mix without air, W/(m K)
 * @param overrun % of the mix's volume
 */
export function withAir(solid: number, overrun: number): number {
  const air = overrun / (100 + overrun);
  const [sum, gap] = [2 * solid + AIR_CONDUCTIVITY, solid - AIR_CONDUCTIVITY];
  return (solid * (sum - 2 * air * gap)) / (sum + air * gap);
}
