import {ice as iceIn, unclippedIce} from "../../freezing/ice.ts";
import type {CutOff} from "./coordinate.ts";
import type {Measure, MixContext} from "./measure.ts";
import {namedAt} from "./naming.ts";
import {PERCENT} from "./units.ts";
import {rowOf, weightedSum, weightsOf} from "./weighted-sum.ts";

/** Ice at a temperature, °C. */
export interface IceSubject {
  readonly kind: "ice";
  readonly at: number;
}

const {name, named} = namedAt("ice", "ice at");

/**
 * Ice at a temperature, g per 100 g of mix.
 *
 * Its weight is ice before it is cut off at zero, so that it stays linear: an ingredient that holds more water than it has counts
 * negative and melts the ice of the others. At least m is as written, since ice that must be there needs no cutting off.
 */
export const ice: Measure<IceSubject, "at"> = {
  ...weightedSum<IceSubject>(name, ({at}, {composition}) => unclippedIce(composition, at)),
  kind: "ice",
  written: "at",
  meaning: "ice, g per 100 g of mix, at a temperature",
  named,
  unit: () => PERCENT,
  range: () => [0, 100],
  rows: (subject, {min, max}, context) => [
    rowOf(name(subject), iceOf(subject.at, context).weights, {
      ...(min !== undefined && min !== 0 && {min}),
      ...(max !== undefined && {max}),
    }),
  ],
  coordinate: ({at}, context) => ({weights: weightsOf(context, () => 0), cutOff: [iceOf(at, context)]}),
  value: ({at}, {composition}) => iceIn(composition, at),
  offers: [
    {
      key: "ice",
      subject: (at) => ({kind: "ice", at}),
      target: {label: "Ice in the freezer", from: 20, to: 65, step: 0.5},
      axis: {name: "ice in the freezer", better: "minimise"},
    },
  ],
};

/** Ice at a temperature as a part that counts from none up. */
export function iceOf(at: number, context: MixContext): CutOff {
  return {
    name: name({at}),
    weights: weightsOf(context, ({composition}) => unclippedIce(composition, at)),
  };
}
