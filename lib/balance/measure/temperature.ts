import type {Limits} from "../../core/numbers.ts";
import type {Piece} from "../../freezing/pieces.ts";
import type {Composition} from "../../pantry/parts.ts";
import type {Measure, MixContext, Temperature} from "./measure.ts";
import {namedPlainly} from "./naming.ts";
import {DEGREES} from "./units.ts";
import {reaching, rowOf, rowsOfPieces} from "./weighted-sum.ts";

/** Temperature difference for a slope along temperature, °C. */
const STEP = 1e-3;

/** A measure that is the temperature at which a falling curve of the mix passes a level. */
interface Curve extends Omit<Temperature, "rowAt"> {
  /**
   * The curve at a temperature, °C, as pieces over some compositions, g per 100 g: a mix has the largest of them, and at least the
   * first, in which everything is dissolved.
   */
  readonly pieces: (compositions: readonly Composition[], at: number) => readonly Piece[];
  readonly level: (context: MixContext) => number;
  /** Value that the curve must reach at `coldest`, °C, for a mix to have such a temperature at all. */
  readonly least: (context: MixContext) => number;
  readonly coldest: number;
}

/**
 * The parts of a measure that follow from its curve. "At most t" is one row at t: the curve there is at most at its level.
 *
 * @param kind its key and its name
 */
export function temperature<K extends string>(
  kind: K,
  {pieces, level, least, coldest, ...rest}: Curve,
): Omit<Measure<{readonly kind: K}, "temperature">, "meaning" | "value" | "offers"> {
  const piecesAt = (at: number, {ingredients}: MixContext) =>
    pieces(
      ingredients.map(({ingredient}) => ingredient.composition),
      at,
    );
  const along = (composition: Composition, at: number) =>
    Math.max(...pieces([composition], at).map(([value]) => value!));
  return {
    kind,
    written: "temperature",
    ...namedPlainly(kind),
    unit: () => DEGREES,
    range: () => [-40, -0.01],
    weight: () => noSum(kind),
    rows(_, {min, max}, context) {
      const rows = (at: number, limits: Limits) => rowsOfPieces(kind, piecesAt(at, context), limits);
      const edge = level(context);
      if (min !== undefined && min === max) return rows(min, {min: edge, max: edge});
      return [
        ...(max === undefined ? [] : rows(max, {max: edge})),
        ...(min === undefined ? [] : rows(min, {min: edge})),
      ];
    },
    // A lower limit already implies that a mix with any water has such a temperature.
    existence: (_, {min, max}, context) =>
      max === undefined || min !== undefined
        ? undefined
        : rowOf(kind, piecesAt(coldest, context)[0]!, {min: least(context)}),
    coordinate: () => noSum(kind),
    aim: () => noSum(kind),
    slope: (_, at, composition) =>
      (along(composition, at - STEP) - along(composition, at + STEP)) / (2 * STEP),
    temperature: {
      rowAt(at, context) {
        const [weights, ...others] = piecesAt(at, context);
        const edge = level(context);
        return {coordinate: {weights: weights!, atLeast: reaching(others, edge)}, level: edge};
      },
      ...rest,
    },
  };
}

function noSum(kind: string): never {
  throw new RangeError(`${kind} is no weighted sum of the ingredients`);
}
