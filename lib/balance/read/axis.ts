import * as z from "zod/mini";
import {InputError} from "../../core/errors.ts";
import {nearestNames} from "../../core/nearest.ts";
import {parse} from "../../core/schema.ts";
import {QUANTITIES} from "../../pantry/quantities.ts";
import {aimSchema} from "../brief/brief-schema.ts";
import type {Aim, Choice} from "../brief/brief.ts";
import {isSpecial, MEASURES, SPECIAL_SUBJECTS} from "../measure/measures.ts";
import {AT_TEMPERATURES, isAtTemperatures} from "../measure/written.ts";
import {readAim, requireKnown, specialSubject} from "./read-subject.ts";

const axisSchema = z.union([
  aimSchema,
  z.strictObject({minimise: aimSchema}),
  z.strictObject({maximise: aimSchema}),
]);

/**
 * Subject of one axis, written as what a brief minimises: `"cost"`, `"fat"`, `{"hardPhase": {"at": -18}}`, and also
 * `"freezingPoint"` and `"scoopTemperature"`. Where the better direction matters, `{"maximise": "fat"}` says so; the
 * bare form means minimise.
 */
export type AxisInput = z.input<typeof axisSchema>;

/**
 * The axis of a diagram of the mixes of some ingredients, with the direction that is better.
 *
 * @param place name of the axis in errors, e.g. `x`
 * @throws InputError for an unknown quantity, a missing temperature, or a property or price that an ingredient lacks
 */
export function readAxis(input: unknown, choices: readonly Choice[], place: string): Aim {
  refuseStrangeKeys(input, place);
  refuseShapeless(input, place);
  const known = ["minimise", "maximise", "at", "from", "to", ...SPECIAL_SUBJECTS, ...QUANTITIES];
  const axis = parse(axisSchema, input, place, known);
  const [sense, wish] =
    typeof axis === "string" || !("minimise" in axis || "maximise" in axis)
      ? (["minimise", axis] as const)
      : "minimise" in axis
        ? (["minimise", axis.minimise] as const)
        : (["maximise", axis.maximise] as const);
  // A brief cannot minimise a temperature; an axis can show one.
  if (typeof wish === "string" && isSpecial(wish) && MEASURES[wish].temperature)
    return {sense, subject: specialSubject(wish, {})};
  const aim = readAim({[sense]: wish}, choices, place)!;
  requireKnown(aim.subject, choices, place);
  return aim;
}

/**
 * Both axes of a diagram.
 *
 * @throws InputError for anything but `{x, y}`, and as {@link readAxis}
 */
export function readAxes(
  axes: {readonly x: AxisInput; readonly y: AxisInput},
  choices: readonly Choice[],
): {x: Aim; y: Aim} {
  const given: unknown = axes;
  if (typeof given !== "object" || given === null || !("x" in given && "y" in given))
    throw new InputError("axes", "not two axes", given, 'give {x, y}, e.g. {x: "cost", y: "sweetness"}');
  return {x: readAxis(axes.x, choices, "x"), y: readAxis(axes.y, choices, "y")};
}

/** Forms of the objects that name the subject of an axis. */
const WRITTEN = new Map(
  SPECIAL_SUBJECTS.flatMap((key) => {
    const {written} = MEASURES[key];
    return isAtTemperatures(written) ? [[key as string, AT_TEMPERATURES[written]] as const] : [];
  }),
);

/** Refuses an axis without a subject in a cook's words; the schema would list all the shapes that it has tried. */
function refuseShapeless(input: unknown, place: string, mayHaveSense = true): void {
  if (typeof input === "string") return;
  const keys = typeof input === "object" && input !== null ? Object.keys(input) : [];
  const [key, other] = keys;
  const written = WRITTEN.get(key ?? "");
  if (key === undefined || Array.isArray(input) || (written === undefined && !mayHaveSense))
    throw new InputError(
      place,
      "names nothing to show",
      input,
      `name a quantity, e.g. "cost" or "sweetness", or one at a temperature, e.g. {"hardPhase": {"at": -18}}`,
    );
  if (other !== undefined)
    throw new InputError(place, "names more than one thing", input, `keep ${key} or ${other}`);
  const value = (input as Readonly<Record<string, unknown>>)[key];
  if (written === undefined) return refuseShapeless(value, `${place}.${key}`, false);
  const keysOfValue = typeof value === "object" && value !== null ? Object.keys(value) : [];
  if (!written.keys.every((name) => keysOfValue.includes(name)))
    throw new InputError(`${place}.${key}`, written.needs, value, `write {"${key}": ${written.example}}`);
}

/** Refuses an unknown key before the many shapes of an axis are tried, so that the error names the key. */
function refuseStrangeKeys(input: unknown, place: string): void {
  if (typeof input !== "object" || input === null) return;
  const known = ["minimise", "maximise", ...WRITTEN.keys()];
  for (const key of Object.keys(input)) {
    if (known.includes(key)) continue;
    const near = nearestNames(key, known);
    throw new InputError(
      place,
      `unknown key ${JSON.stringify(key)}`,
      undefined,
      near.length ? `did you mean ${near.join(" or ")}` : `write a text, or use ${known.join(", ")}`,
    );
  }
}
