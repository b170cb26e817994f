import {hardPhase as hardPhaseIn, unclippedHardPhase} from "../../freezing/ice.ts";
import {solidFat} from "../../freezing/solid-fat.ts";
import type {Coordinate} from "./coordinate.ts";
import {ice, iceAt} from "./ice.ts";
import type {Measure, MixContext} from "./measure.ts";
import {namedAt} from "./naming.ts";
import {PERCENT} from "./units.ts";
import {rowOf, rowsOfPieces, weightedSum, weightsOf} from "./weighted-sum.ts";

/** Hard phase at a temperature, °C. */
export interface HardPhaseSubject {
  readonly kind: "hardPhase";
  readonly at: number;
}

const {name, named} = namedAt("hardPhase", "hard phase at");
const sum = weightedSum<HardPhaseSubject>(name, ({at}, {composition}) => unclippedHardPhase(composition, at));
const fatOf = (at: number, context: MixContext) =>
  weightsOf(context, ({composition}) => solidFat(composition, at));

const cutOff = ({at}: HardPhaseSubject, context: MixContext): Coordinate => {
  const fat = fatOf(at, context);
  const [dissolved, ...others] = iceAt(at, context);
  return {
    weights: fat,
    cutOff: [{name: ice.name({kind: "ice", at}), weights: dissolved!}],
    atLeast: others.map((piece) => plus(fat, piece)),
  };
};

function plus(some: readonly number[], others: readonly number[]): number[] {
  return some.map((weight, j) => weight + others[j]!);
}

/**
 * Hard phase at a temperature: ice and solid fat, g per 100 g of mix.
 *
 * "At most m" is a row with the ice, and one without it where fat alone could exceed m (ice is never negative). As an aim to be made
 * smallest it counts solid fat and the ice cut off at 0, so that a negative amount of ice cannot make up for fat.
 */
export const hardPhase: Measure<HardPhaseSubject, "at"> = {
  ...sum,
  kind: "hardPhase",
  written: "at",
  meaning: "hard phase, ice and solid fat, g per 100 g of mix, at a temperature",
  named,
  unit: () => PERCENT,
  range: () => [0, 100],
  rows(subject, limits, context) {
    const {max} = limits;
    const fat = fatOf(subject.at, context);
    const pieces = iceAt(subject.at, context).map((piece) => plus(fat, piece));
    const rows = rowsOfPieces(name(subject), pieces, limits);
    return max !== undefined && fat.some((grams) => grams > max)
      ? [...rows, rowOf(name(subject), fat, {max})]
      : rows;
  },
  coordinate: cutOff,
  aim: (subject, sense, context) =>
    sense === "minimise" ? cutOff(subject, context) : sum.aim(subject, sense, context),
  value: ({at}, {composition}) => hardPhaseIn(composition, at),
  // Down to the solid fat of the fattest ingredient, below which fat alone gets a row; with rows for crystals there already, no lower at all.
  lowest: ({at}, limit, context) =>
    iceAt(at, context).length > 1 ? limit : Math.min(limit, Math.max(...fatOf(at, context))),
  offers: [
    {
      key: "hardPhase",
      subject: (at) => ({kind: "hardPhase", at}),
      target: {label: "Ice and solid fat (hard phase) in the freezer", from: 30, to: 75, step: 0.5},
      axis: {name: "hard phase in the freezer", better: "minimise", ends: ["softest", "hardest"]},
    },
  ],
};
