import {InputError} from "../../core/errors.ts";
import {oneOfThese} from "../../core/nearest.ts";
import {INGREDIENT_CLASSES} from "../../pantry/from-label.ts";
import type {OwnFigures} from "../../pantry/own-ingredient.ts";
import {type CsvRow, type CsvTable, numberIn, placeIn} from "./csv.ts";

/** Figures that a label must have: those of Regulation (EU) 1169/2011, article 30, without energy and saturates. */
const REQUIRED = ["fat", "carbohydrate", "sugars", "protein", "salt"] as const;
const OPTIONAL = ["saturates", "fibre", "polyols", "alcohol", "water"] as const;

/** Energy, which only serves to check the figures. */
const ENERGY = ["kilojoules", "kilocalories"] as const;

const CLASS = "label_class";
const columnOf = (figure: string) => `label_${figure}_g`;

/** The columns of a nutrition label, g per 100 g, and of the class that it is read by. */
export const LABEL_COLUMNS: readonly string[] = [
  CLASS,
  ...[...REQUIRED, ...OPTIONAL].map(columnOf),
  ...ENERGY.map((figure) => `label_${figure}`),
];

/**
 * The nutrition label of a row; `undefined` where it names no class, since the figures are then for human readers only.
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
      oneOfThese(typed, INGREDIENT_CLASSES),
    );
  const figure = (name: string) => numberIn(table, row, columnOf(name), {min: 0}, "g per 100 g");
  const required = (name: string) => {
    const grams = figure(name);
    if (grams !== undefined) return grams;
    refuseMissing(table, columnOf(name));
    throw new InputError(
      placeIn(table, row, columnOf(name)),
      "no figure",
      undefined,
      "give it as the packet does, 0 if it says so",
    );
  };
  const given = OPTIONAL.flatMap((name) => {
    const grams = figure(name);
    return grams === undefined ? [] : [[name, grams] as const];
  });
  const energy = ENERGY.flatMap((name) => {
    const value = numberIn(table, row, `label_${name}`, {min: 0}, "per 100 g");
    return value === undefined ? [] : [[name, value] as const];
  });
  return {
    class: known,
    fat: required("fat"),
    carbohydrate: required("carbohydrate"),
    sugars: required("sugars"),
    protein: required("protein"),
    salt: required("salt"),
    ...Object.fromEntries(given),
    ...Object.fromEntries(energy),
  };
}

/**
 * Refuses a row with figures of a label but no class to read them by.
 *
 * @throws InputError naming the row and the empty cell, or the missing column
 */
export function requireClass(table: CsvTable, row: CsvRow): void {
  if (row.cells.has(CLASS) || !LABEL_COLUMNS.some((column) => row.cells.has(column))) return;
  const advice = `name the class that the label is read by: ${INGREDIENT_CLASSES.join(", ")}`;
  if (!table.columns.includes(CLASS))
    throw new InputError(
      row.place,
      `a label and neither a composition nor a column ${CLASS}`,
      undefined,
      `add the column and ${advice}`,
    );
  throw new InputError(placeIn(table, row, CLASS), "empty, beside the figures of a label", undefined, advice);
}

/** Refuses a table that has no column for a figure which every label needs. */
function refuseMissing(table: CsvTable, column: string): void {
  if (table.columns.includes(column)) return;
  // `salt g` is a part of a composition; beside a label, the label's salt was probably meant.
  const mistaken = table.written?.get(column.replace(/^label_/, ""));
  throw new InputError(
    `${table.place}, row 1`,
    `no column ${column}`,
    mistaken,
    mistaken === undefined
      ? `add it, as every row with a ${CLASS} needs the figure: as the packet has it, 0 if it says so`
      : `rename ${mistaken} to ${column} if it is a figure of the label; otherwise add ${column}`,
  );
}
