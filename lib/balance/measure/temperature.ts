import type {Limits} from "../../core/numbers.ts";
import {COLDEST} from "../../freezing/held-water.ts";
import type {Composition} from "../../pantry/parts.ts";
import type {Measure, MixContext, Temperature} from "./measure.ts";
import type {MixRow} from "./mix-row.ts";
import {namedPlainly} from "./naming.ts";
import {DEGREES} from "./units.ts";
import {rowOf, weightsOf} from "./weighted-sum.ts";

/** Temperature difference for a slope along temperature, °C. */
const STEP = 1e-3;

/** A measure that is the temperature at which a falling curve of the mix passes a level. */
interface Curve extends Omit<Temperature, "rowAt"> {
  /** The curve, linear in the composition: g per 100 g at a temperature, °C. */
  readonly along: (composition: Composition, at: number) => number;
  readonly level: (context: MixContext) => number;
  /** What the curve must reach at the coldest temperature of the model for a mix to have such a temperature at all. */
  readonly least: (context: MixContext) => number;
}

/**
 * All of a temperature that follows from its curve. At most t is a row at t: there the curve is at most at its level.
 *
 * @param kind its key and its name
 */
export function temperature<K extends string>(
  kind: K,
  {along, level, least, ...rest}: Curve,
): Omit<Measure<{readonly kind: K}, "temperature">, "meaning" | "value" | "offers"> {
  const weightsAt = (at: number, context: MixContext) =>
    weightsOf(context, ({composition}) => along(composition, at));
  return {
    kind,
    written: "temperature",
    ...namedPlainly(kind),
    unit: () => DEGREES,
    range: () => [-40, -0.01],
    weight: () => noSum(kind),
    rows(_, {min, max}, context) {
      const row = (at: number, limits: Limits): MixRow => rowOf(kind, weightsAt(at, context), limits);
      const edge = level(context);
      if (min !== undefined && min === max) return [row(min, {min: edge, max: edge})];
      return [
        ...(max === undefined ? [] : [row(max, {max: edge})]),
        ...(min === undefined ? [] : [row(min, {min: edge})]),
      ];
    },
    // A lower limit says by itself that there is such a temperature.
    existence: (_, {min, max}, context) =>
      max === undefined || min !== undefined
        ? undefined
        : rowOf(kind, weightsAt(COLDEST, context), {min: least(context)}),
    coordinate: () => noSum(kind),
    aim: () => noSum(kind),
    slope: (_, at, composition) =>
      (along(composition, at - STEP) - along(composition, at + STEP)) / (2 * STEP),
    temperature: {
      rowAt: (at, context) => ({coordinate: {weights: weightsAt(at, context)}, level: level(context)}),
      ...rest,
    },
  };
}

function noSum(kind: string): never {
  throw new RangeError(`${kind} is no weighted sum of the ingredients`);
}
