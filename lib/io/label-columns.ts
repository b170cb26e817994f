import {InputError} from "../core/errors.ts";
import {INGREDIENT_CLASSES} from "../pantry/from-label.ts";
import type {OwnFigures} from "../pantry/own-ingredient.ts";
import {type CsvRow, type CsvTable, numberIn, placeIn} from "./csv.ts";

/** Figures that a label must have, as Regulation (EU) 1169/2011, article 30, has them but for energy and saturates. */
const REQUIRED = ["fat", "carbohydrate", "sugars", "protein", "salt"] as const;
const OPTIONAL = ["saturates", "fibre", "polyols", "alcohol", "water"] as const;

const CLASS = "label_class";
const columnOf = (figure: string) => `label_${figure}_g`;

/** The columns of a nutrition label, g per 100 g, and of the class that it is read by. */
export const LABEL_COLUMNS: readonly string[] = [CLASS, ...[...REQUIRED, ...OPTIONAL].map(columnOf)];

/**
 * The nutrition label of a row; nothing where it names no class, since the figures are then for the reader only.
 *
 * @throws InputError naming row, column and value for an unknown class, and a figure missing or not from 0 to 100
 */
export function labelIn(table: CsvTable, row: CsvRow): OwnFigures["label"] {
  const typed = row.cells.get(CLASS);
  if (typed === undefined) return undefined;
  const known = INGREDIENT_CLASSES.find((name) => name === typed.toLowerCase());
  if (known === undefined)
    throw new InputError(
      placeIn(table, row, CLASS),
      "unknown class",
      typed,
      `use ${INGREDIENT_CLASSES.join(", ")}`,
    );
  const figure = (name: string) => numberIn(table, row, columnOf(name), {min: 0, max: 100}, "g per 100 g");
  const required = (name: string) => {
    const grams = figure(name);
    if (grams !== undefined) return grams;
    throw new InputError(
      `${row.place}, ${columnOf(name)}`,
      "no figure",
      undefined,
      "give it as the packet does, 0 if it says so",
    );
  };
  const given = OPTIONAL.flatMap((name) => {
    const grams = figure(name);
    return grams === undefined ? [] : [[name, grams] as const];
  });
  return {
    class: known,
    fat: required("fat"),
    carbohydrate: required("carbohydrate"),
    sugars: required("sugars"),
    protein: required("protein"),
    salt: required("salt"),
    ...Object.fromEntries(given),
  };
}
