import {ice as iceIn, unclippedIce} from "../../freezing/ice.ts";
import {type Piece, piecesOf} from "../../freezing/pieces.ts";
import type {Measure, MixContext} from "./measure.ts";
import {namedAt} from "./naming.ts";
import {PERCENT} from "./units.ts";
import {rowsOfPieces, weightedSum, weightsOf} from "./weighted-sum.ts";

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
 * negative and melts the ice of the others. "At least m" is one row, exact since a mix with that much ice is not cut off. "At most m"
 * is a row for each piece, so that it is exact where sweeteners crystallise.
 */
export const ice: Measure<IceSubject, "at"> = {
  ...weightedSum<IceSubject>(name, ({at}, {composition}) => unclippedIce(composition, at)),
  kind: "ice",
  written: "at",
  meaning: "ice, g per 100 g of mix, at a temperature",
  named,
  unit: () => PERCENT,
  range: () => [0, 100],
  rows: (subject, {min, max}, context) =>
    rowsOfPieces(name(subject), iceAt(subject.at, context), {
      ...(min !== undefined && min !== 0 && {min}),
      ...(max !== undefined && {max}),
    }),
  coordinate({at}, context) {
    const [dissolved, ...others] = iceAt(at, context);
    const cutOff = [{name: name({at}), weights: dissolved!}];
    return {weights: weightsOf(context, () => 0), cutOff, atLeast: others};
  },
  // With rows for crystals as well, one of them would state any lower limit.
  lowest: ({at}, limit, context) => (iceAt(at, context).length > 1 ? limit : -Infinity),
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

/** The pieces of the ice at a temperature. */
export function iceAt(at: number, {ingredients}: MixContext): readonly Piece[] {
  return piecesOf(
    ingredients.map(({ingredient}) => ingredient.composition),
    at,
  ).ice;
}
