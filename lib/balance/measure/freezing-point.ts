import {COLDEST} from "../../freezing/held-water.ts";
import {initialFreezingPoint} from "../../freezing/ice.ts";
import {piecesOf} from "../../freezing/pieces.ts";
import type {Measure} from "./measure.ts";
import {temperature} from "./temperature.ts";

/** Ice that counts as frozen, g per 100 g, so that a mix without water does not. */
const SOME_ICE = 1e-3;

/** The freezing point, °C: the temperature at which the solutes hold all the water, and ice before it is cut off is just 0. */
export const freezingPoint: Measure<{readonly kind: "freezingPoint"}, "temperature"> = {
  ...temperature("freezingPoint", {
    pieces: (compositions, at) => piecesOf(compositions, at).ice,
    level: () => 0,
    least: () => SOME_ICE,
    coldest: COLDEST,
    twin: (at) => ({kind: "ice", at}),
    usual: -2.5,
    without: "does not freeze",
  }),
  meaning: "freezing point, °C",
  value: (_, {composition}) => initialFreezingPoint(composition),
  offers: [
    {
      key: "freezingPoint",
      subject: () => ({kind: "freezingPoint"}),
      target: {label: "Freezing point", from: -6, to: -1, step: 0.1},
      axis: {name: "freezing point", better: "minimise", digits: 2},
    },
  ],
};
