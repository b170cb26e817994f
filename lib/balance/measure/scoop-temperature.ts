import {unclippedHardPhase} from "../../freezing/ice.ts";
import {referenceHardPhase, scoopTemperature as scoopsAt} from "../../freezing/scoop.ts";
import type {Measure} from "./measure.ts";
import {temperature} from "./temperature.ts";

/** Room for rounding above the reference, g per 100 g: a mix that reaches it by that much is found to harden. */
export const REACH_ROOM = 1e-6;

/** The scoop temperature, °C: there the hard phase is the reference. */
export const scoopTemperature: Measure<{readonly kind: "scoopTemperature"}, "temperature"> = {
  ...temperature("scoopTemperature", {
    along: unclippedHardPhase,
    level: () => referenceHardPhase().mean,
    least: () => referenceHardPhase().mean + REACH_ROOM,
    twin: (at) => ({kind: "hardPhase", at}),
    usual: -14,
    without: "never gets as hard as scooped ice cream",
  }),
  meaning: "scoop temperature, °C: where the mix is as hard as published hard ice creams are when dipped",
  digits: 1,
  value: (_, {composition}) => scoopsAt(composition).temperature,
  offers: [
    {
      key: "scoopTemperature",
      subject: () => ({kind: "scoopTemperature"}),
      target: {label: "Scoop temperature", from: -24, to: -6, step: 0.5},
      axis: {name: "scoop temperature", better: "minimise", ends: ["softest", "firmest"]},
    },
  ],
};
