import type {Measure} from "./measure.ts";
import {OWN_UNIT} from "./units.ts";
import {weightedSum} from "./weighted-sum.ts";

/** A property of the cook's own. */
export interface PropertySubject {
  readonly kind: "property";
  readonly property: string;
}

/** Properties of the cook's own, such as the greenhouse gases of 100 g, as each ingredient states them. */
export const property: Measure<PropertySubject, "limits"> = {
  ...weightedSum<PropertySubject>(
    (subject) => subject.property,
    (subject, {properties}) => properties?.[subject.property] ?? 0,
  ),
  kind: "property",
  written: "limits",
  meaning: "a property that the ingredients have, per 100 g",
  named: (name) => ({kind: "property", property: name}),
  unit: () => OWN_UNIT,
  range: () => [-Infinity, Infinity],
  isUnknownIn: (subject, {properties}) => properties?.[subject.property] === undefined,
  offers: [],
};
