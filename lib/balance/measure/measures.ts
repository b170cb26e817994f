import {cost} from "./cost.ts";
import {firmness} from "./firmness.ts";
import {freezingPoint} from "./freezing-point.ts";
import {hardPhase} from "./hard-phase.ts";
import {heatShock} from "./heat-shock.ts";
import {heatToRemove} from "./heat-to-remove.ts";
import {ice} from "./ice.ts";
import type {Measure} from "./measure.ts";
import {nutrient, type NutrientSubject} from "./nutrient.ts";
import {property, type PropertySubject} from "./property.ts";
import {quantity, type QuantitySubject} from "./quantity.ts";
import {scoopTemperature} from "./scoop-temperature.ts";
import type {Written} from "./written.ts";

/** The measures that have a key of their own in a brief's targets, in the order in which pages and messages name them. */
const SPECIAL = {
  cost,
  freezingPoint,
  scoopTemperature,
  firmness,
  ice,
  hardPhase,
  heatShock,
  heatToRemove,
} as const;

/** A key of its own in a brief's targets, beside the quantities and the properties. */
export type SpecialKind = keyof typeof SPECIAL;

/** The keys of the measures that are written in the form `W`. */
export type KeyWritten<W extends Written> = {
  [K in SpecialKind]: (typeof SPECIAL)[K]["written"] extends W ? K : never;
}[SpecialKind];

/** Subject of a target or an aim: plain data. Temperatures in °C. */
export type Subject =
  | QuantitySubject
  | NutrientSubject
  | PropertySubject
  | {[K in SpecialKind]: (typeof SPECIAL)[K] extends Measure<infer S> ? S : never}[SpecialKind];

/** A measure of any subject. */
export type AnyMeasure = Measure<Subject>;

/** Every measure by its kind. A name in an answer is that of the first that has it. */
export const MEASURES = {quantity, nutrient, ...SPECIAL, property} as unknown as Readonly<
  Record<Subject["kind"], AnyMeasure>
>;

/** Names of subjects that are no quantities of a composition. */
export const SPECIAL_SUBJECTS: readonly SpecialKind[] = Object.keys(SPECIAL) as SpecialKind[];

/** The measure of a subject. */
export function measureOf({kind}: Subject): AnyMeasure {
  return MEASURES[kind];
}

/** True where a text is the key of a measure. */
export function isSpecial(key: string): key is SpecialKind {
  return Object.hasOwn(SPECIAL, key);
}
