import {heatShock as heatShockIn, unclippedIce} from "../../freezing/ice.ts";
import {ice} from "./ice.ts";
import type {Measure, MixContext} from "./measure.ts";
import {namedBetween} from "./naming.ts";
import {PERCENT} from "./units.ts";
import {rowOf, weightedSum, weightsOf} from "./weighted-sum.ts";

/** Ice that melts and freezes again between two temperatures, °C. */
export interface HeatShockSubject {
  readonly kind: "heatShock";
  readonly from: number;
  readonly to: number;
}

const {name, named} = namedBetween("heatShock", "heat shock");
const sum = weightedSum<HeatShockSubject>(name, ({from, to}, {composition}) => {
  const [cold, warm] = from < to ? [from, to] : [to, from];
  return unclippedIce(composition, cold) - unclippedIce(composition, warm);
});

const iceAt = (temperature: number, context: MixContext) =>
  weightsOf(context, (one) => ice.weight({kind: "ice", at: temperature}, one));

/**
 * Ice that melts and freezes again between two temperatures, g per 100 g: the difference of their ice before it is cut off at zero, so
 * that it stays linear, and exact for mixes that still have ice at the warm end. Others have less than that: as much as they have in the
 * cold, if any. So "at most m" is safe, and "at least m" holds for the ice in the cold as well.
 */
export const heatShock: Measure<HeatShockSubject, "swing"> = {
  ...sum,
  kind: "heatShock",
  written: "swing",
  meaning: "ice that melts between two temperatures, g per 100 g of mix",
  named,
  unit: () => PERCENT,
  range: () => [0, 100],
  isOnlyKeptSmall: true,
  rows: (subject, limits, context) => [
    ...sum.rows(subject, limits, context),
    ...(limits.min
      ? [rowOf(name(subject), iceAt(Math.min(subject.from, subject.to), context), {min: limits.min})]
      : []),
  ],
  coordinate: (subject, context) => ({
    ...sum.coordinate(subject, context),
    there: iceAt(Math.max(subject.from, subject.to), context),
  }),
  value: ({from, to}, {composition}) => heatShockIn(composition, from, to),
  offers: [
    {
      key: "heatShock",
      subject: (at) => ({kind: "heatShock", from: at, to: Math.min(at + 4, -0.01)}),
      axis: {
        name: "ice that melts and freezes when the freezer swings 4 degrees",
        better: "minimise",
        ends: ["least shocked", "most shocked"],
      },
    },
  ],
};
