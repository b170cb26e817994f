import {firmness as firmnessIn, firmnessReference, unclippedFirmness} from "../../freezing/firmness.ts";
import {type Piece, type Pieces, piecesOf} from "../../freezing/pieces.ts";
import type {Coordinate} from "./coordinate.ts";
import type {Measure, MixContext} from "./measure.ts";
import {namedAt} from "./naming.ts";
import {POINTS} from "./units.ts";
import {rowsOfPieces, weightedSum} from "./weighted-sum.ts";

/** Firmness at a temperature, °C. */
export interface FirmnessSubject {
  readonly kind: "firmness";
  readonly at: number;
}

const {name, named} = namedAt("firmness", "firmness at");
const sum = weightedSum<FirmnessSubject>(name, ({at}, {composition}) => unclippedFirmness(composition, at));

/** The pieces of the firmness beyond that of a tub that scoops; the part that is the same for all mixes is taken off each weight. */
function piecesAt(at: number, {ingredients, overrun, learned}: MixContext): Pieces {
  const {ice, firmness, withoutIce} = piecesOf(
    ingredients.map(({ingredient}) => ingredient.composition),
    at,
  );
  const reference = firmnessReference(overrun, learned);
  const beyond = (pieces: readonly Piece[]) =>
    pieces.map((piece) => piece.map((weight) => weight - reference));
  return {ice, firmness: beyond(firmness), withoutIce: beyond(withoutIce)};
}

/** Firmness without ice, and the ice; where sweeteners crystallise, more. */
const cutOff = ({at}: FirmnessSubject, context: MixContext): Coordinate => {
  const {ice, firmness, withoutIce} = piecesAt(at, context);
  return {
    weights: withoutIce[0]!,
    cutOff: [{name: `ice at ${at} °C`, weights: ice[0]!}],
    atLeast: [...firmness.slice(1), ...withoutIce.slice(1)],
  };
};

/**
 * Firmness at a temperature in points, g per 100 g of mix, beyond that of a tub that scoops: 0 where it scoops best, 7 where it is
 * twice as hard. It follows the index of `firmness` in the floor below, and the overrun.
 *
 * At most m holds for each piece of the index, at least m for the one without crystals.
 */
export const firmness: Measure<FirmnessSubject, "at"> = {
  ...sum,
  kind: "firmness",
  written: "at",
  meaning:
    "firmness at a temperature, in points: 0 where it scoops best, 7 where it is twice as hard, -7 half as hard",
  named,
  digits: 1,
  unit: () => POINTS,
  range: () => [-100, 100],
  rows(subject, limits, context) {
    const pieces = piecesAt(subject.at, context);
    return rowsOfPieces(name(subject), [...pieces.firmness, ...pieces.withoutIce], limits);
  },
  coordinate: cutOff,
  aim: (subject, sense, context) =>
    sense === "minimise" ? cutOff(subject, context) : {weights: piecesAt(subject.at, context).firmness[0]!},
  value: ({at}, {composition, brief: {overrun, learned}}) =>
    firmnessIn(composition, at) - firmnessReference(overrun, learned),
  // Down to where the firmness without ice gets a row of its own; with rows for crystals there already, no lower at all.
  lowest({at}, limit, context) {
    const {firmness: pieces, withoutIce} = piecesAt(at, context);
    return pieces.length > 1 ? limit : Math.min(limit, Math.max(...withoutIce[0]!));
  },
  offers: [
    {
      key: "firmness",
      subject: (at) => ({kind: "firmness", at}),
      target: {
        label: "Firmness in the freezer (0 scoops best, 7 is twice as hard)",
        from: -20,
        to: 30,
        step: 0.5,
      },
      axis: {name: "firmness in the freezer", better: "minimise", ends: ["softest", "hardest"]},
    },
  ],
};
