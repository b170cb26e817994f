import {InputError} from "../core/errors.ts";
import {nearestNames} from "../core/nearest.ts";
import {finite} from "../core/numbers.ts";
import {refuseBeyond, refuseSlips} from "./label-slips.ts";

/** A nutrition label: g per 100 g, as Regulation (EU) 1169/2011 has it (carbohydrate without fibre). */
export interface Label {
  readonly name: string;
  readonly fat: number;
  /** Of the fat; it tells coconut fat from other plant fat. */
  readonly saturates?: number;
  /** Sugars, starch, polyols and acids, but not fibre. */
  readonly carbohydrate: number;
  /** Of the carbohydrate. */
  readonly sugars: number;
  readonly protein: number;
  readonly salt: number;
  /** Guessed by the class when absent. */
  readonly fibre?: number;
  /** Of the carbohydrate. */
  readonly polyols?: number;
  /** g, not ml: % vol times 0.789 over the density in g/ml. */
  readonly alcohol?: number;
  /** The remainder of 100 g that the other figures leave, where absent. */
  readonly water?: number;
  /** kJ per 100 g: only to check the other figures, so that a slip shows. */
  readonly kilojoules?: number;
  /** kcal per 100 g, likewise. */
  readonly kilocalories?: number;
}

const FIGURES = ["fat", "carbohydrate", "sugars", "protein", "salt"] as const;
const OPTIONAL = ["saturates", "fibre", "polyols", "alcohol", "water"] as const;
const ENERGY = ["kilojoules", "kilocalories"] as const;

/**
 * The label itself, checked; its carbohydrate raised to its sugars and polyols where rounding has printed it smaller.
 *
 * @throws InputError naming the figure for one unknown, missing or not from 0 to 100, or a part larger than its whole,
 *   and for energy that the other figures contradict
 */
export function readLabel(label: Label): Label {
  if (typeof label !== "object" || label === null || Array.isArray(label))
    throw new InputError("label", "not an object", label, `give name, ${FIGURES.join(", ")}`);
  const {name} = label;
  if (typeof name !== "string" || name.trim() === "" || name.length > 200)
    throw new InputError("label.name", "no name", name, "give a name of 1 to 200 characters");
  const place = `label "${name}"`;
  const known: readonly string[] = ["name", ...FIGURES, ...OPTIONAL, ...ENERGY];
  const stranger = Object.keys(label).find((key) => !known.includes(key));
  if (stranger === "class")
    throw new InputError(
      place,
      "the class among the figures",
      (label as {readonly class?: unknown}).class,
      'give it as the second argument: fromLabel(label, "dairy")',
    );
  if (stranger !== undefined) {
    const near = nearestNames(stranger, known);
    throw new InputError(
      place,
      "unknown figure",
      stranger,
      near.length ? `did you mean ${near.join(" or ")}` : `use ${known.join(", ")}`,
    );
  }
  const limits = {min: 0, max: 100};
  for (const key of [...FIGURES, ...OPTIONAL]) refuseBeyond(label[key], `${place}: ${key}`);
  for (const key of FIGURES) finite(label[key], `${place}: ${key}`, limits, "g per 100 g");
  for (const key of OPTIONAL)
    if (label[key] !== undefined) finite(label[key], `${place}: ${key}`, limits, "g per 100 g");
  for (const key of ENERGY) if (label[key] !== undefined) finite(label[key], `${place}: ${key}`, {min: 0});
  refuseSlips(label, place);
  const {carbohydrate, sugars, polyols = 0} = label;
  return {...label, carbohydrate: Math.max(carbohydrate, sugars + polyols)};
}
