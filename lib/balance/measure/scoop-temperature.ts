import {firmnessReference} from "../../freezing/firmness.ts";
import {piecesOf} from "../../freezing/pieces.ts";
import {COLDEST_SCOOP, scoopTemperature as scoopsAt} from "../../freezing/scoop.ts";
import type {Measure, MixContext} from "./measure.ts";
import {tubOf} from "./tub-of.ts";
import {temperature} from "./temperature.ts";

/** Room for rounding above the reference, g per 100 g: a mix counts as hardening when it exceeds the reference by so much. */
export const REACH_ROOM = 1e-6;

const reference = ({overrun, learned}: MixContext) => firmnessReference(overrun, learned);

/** The scoop temperature, °C: the temperature at which the firmness is that of a tub that scoops. */
export const scoopTemperature: Measure<{readonly kind: "scoopTemperature"}, "temperature"> = {
  ...temperature("scoopTemperature", {
    pieces(compositions, at) {
      const {firmness, withoutIce} = piecesOf(compositions, at);
      return [...firmness, ...withoutIce];
    },
    level: reference,
    least: (context) => reference(context) + REACH_ROOM,
    coldest: COLDEST_SCOOP,
    twin: (at) => ({kind: "firmness", at}),
    usual: -14,
    without: "never gets as hard as scooped ice cream",
  }),
  meaning: "scoop temperature, °C: where the tub, with its overrun, is as firm as one that scoops",
  digits: 1,
  value: (_, {composition, brief}) => scoopsAt(composition, tubOf(brief)).temperature,
  offers: [
    {
      key: "scoopTemperature",
      subject: () => ({kind: "scoopTemperature"}),
      target: {label: "Scoop temperature", from: -24, to: -6, step: 0.5},
      axis: {name: "scoop temperature", better: "minimise", ends: ["softest", "firmest"]},
    },
  ],
};
