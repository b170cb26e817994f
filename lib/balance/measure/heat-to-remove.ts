import {heatToRemove as heatIn, heatWithoutIce, unclippedHeatToRemove} from "../../freezing/enthalpy.ts";
import type {Coordinate} from "./coordinate.ts";
import type {Measure, MixContext} from "./measure.ts";
import {namedAt} from "./naming.ts";
import {HEAT} from "./units.ts";
import {rowsOfPieces, weightedSum, weightsOf} from "./weighted-sum.ts";

/** Heat to take out of an aged mix, down to a temperature, °C. */
export interface HeatToRemoveSubject {
  readonly kind: "heatToRemove";
  readonly at: number;
}

/** Temperature of an aged mix, °C: common practice, no source. */
const AGED = 4;

const {name, named} = namedAt("heatToRemove", "heat to remove down to");
const sum = weightedSum<HeatToRemoveSubject>(name, ({at}, {composition}) =>
  unclippedHeatToRemove(composition, AGED, at),
);
const withoutIce = (at: number, context: MixContext) =>
  weightsOf(context, ({composition}) => heatWithoutIce(composition, AGED, at));

/** The heat without ice, and that of the ice. */
const cutOff = (subject: HeatToRemoveSubject, context: MixContext): Coordinate => {
  const weights = withoutIce(subject.at, context);
  const ofIce = sum.coordinate(subject, context).weights.map((heat, j) => heat - weights[j]!);
  return {weights, cutOff: [{name: `heat of the ice at ${subject.at} °C`, weights: ofIce}]};
};

/**
 * Heat to take out of a mix on its way from 4 °C to a temperature, kJ per kg: the work of the machine, and so its time for a batch. Most
 * of it is the heat of fusion of the ice, so less ice churns quicker.
 *
 * The ice is counted before it is cut off at zero, so that it stays linear. "At most m" has a second row without ice, and so has the aim
 * to make it smallest: ice that is not there takes no heat away.
 */
export const heatToRemove: Measure<HeatToRemoveSubject, "at"> = {
  ...sum,
  kind: "heatToRemove",
  written: "at",
  meaning: "heat to take out of the mix from 4 °C down to a temperature, kJ per kg of mix",
  named,
  unit: () => HEAT,
  range: () => [0, 1000],
  rows: (subject, limits, context) =>
    rowsOfPieces(
      name(subject),
      [sum.coordinate(subject, context).weights, withoutIce(subject.at, context)],
      limits,
    ),
  coordinate: cutOff,
  aim: (subject, sense, context) => (sense === "minimise" ? cutOff : sum.coordinate)(subject, context),
  value: ({at}, {composition}) => heatIn(composition, AGED, at),
  // Below the most that a mix without ice can need, a row of its own says so.
  lowest: ({at}, limit, context) => Math.min(limit, Math.max(...withoutIce(at, context))),
  offers: [
    {
      key: "heatToRemove",
      subject: () => ({kind: "heatToRemove", at: -6}),
      axis: {
        name: "heat that the machine takes out down to −6 °C",
        better: "minimise",
        digits: 0,
        ends: ["quickest to churn", "slowest to churn"],
      },
    },
  ],
};
