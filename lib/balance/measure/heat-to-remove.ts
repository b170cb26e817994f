import {heatToRemove as heatIn, unclippedHeatToRemove} from "../../freezing/enthalpy.ts";
import {ice} from "./ice.ts";
import type {Measure} from "./measure.ts";
import {namedAt} from "./naming.ts";
import {HEAT} from "./units.ts";
import {weightedSum, weightsOf} from "./weighted-sum.ts";

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

/**
 * Heat to take out of a mix on its way from 4 °C to a temperature, kJ per kg: the work of the machine, and so its time for a batch. Most
 * of it is the heat of fusion of the ice, so less ice churns quicker. A weighted sum over mixes that have ice at that temperature.
 */
export const heatToRemove: Measure<HeatToRemoveSubject, "at"> = {
  ...sum,
  kind: "heatToRemove",
  written: "at",
  meaning: "heat to take out of the mix from 4 °C down to a temperature, kJ per kg of mix",
  named,
  unit: () => HEAT,
  range: () => [0, 1000],
  coordinate: (subject, context) => ({
    ...sum.coordinate(subject, context),
    there: weightsOf(context, (one) => ice.weight({kind: "ice", at: subject.at}, one)),
  }),
  value: ({at}, {composition}) => heatIn(composition, AGED, at),
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
