import {columnKey, withColumns} from "../../../lib/io/csv/columns.ts";
import {type CsvTable, readCsv} from "../../../lib/io/csv/csv.ts";
import {LABEL_COLUMNS, labelIn} from "../../../lib/io/csv/label-columns.ts";
import {readPantryCsv} from "../../../lib/io/csv/pantry-csv.ts";
import {csvText} from "../../../lib/io/text/escape.ts";
import {NUTRIENTS, type SaidNutrient} from "../../../lib/pantry/nutrient-keys.ts";
import type {Own, OwnEntry} from "../keep/own-ingredients.ts";

type Cell = string | number | undefined;

/** Ingredients of the cook's own with the columns that `readPantryCsv` reads: the label of each, or its composition. */
export function ownCsv(own: readonly Own[]): string {
  const rows = own.map(({entry, ingredient}): Record<string, Cell> => {
    const {label} = entry;
    const {dextroseEquivalent, ...parts} = ingredient.composition;
    const {saturates: _, sodium: __, ...further} = ingredient.nutrients ?? {};
    return {
      name: entry.name,
      aliases: entry.aliases?.join("; "),
      group: ingredient.group,
      allergens: ingredient.allergens?.join("; "),
      density_g_per_ml: ingredient.density,
      unit_g: ingredient.unit,
      portions: Object.entries(ingredient.portions ?? {})
        .map(([portion, grams]) => `${portion}=${grams}`)
        .join("; "),
      ...(label
        ? Object.fromEntries(
            Object.entries(label).map(([figure, value]) => [labelColumn(figure), value as Cell]),
          )
        : {
            ...Object.fromEntries(Object.entries(parts).map(([part, grams]) => [`${part}_g`, grams])),
            dextrose_equivalent: dextroseEquivalent,
          }),
      ...Object.fromEntries(
        Object.entries(label ? further : (ingredient.nutrients ?? {})).map(([key, value]) => [
          nutrientColumn(key),
          value,
        ]),
      ),
      grade: label ? undefined : ingredient.grade,
    };
  });
  const columns = [
    ...new Set(
      rows.flatMap((row) => Object.keys(row).filter((key) => row[key] !== undefined && row[key] !== "")),
    ),
  ];
  return csvText(
    columns,
    rows.map((row) => columns.map((column) => row[column])),
  );
}

function labelColumn(figure: string): string {
  if (figure === "class") return "label_class";
  return `label_${figure}${["kilojoules", "kilocalories"].includes(figure) ? "" : "_g"}`;
}

function nutrientColumn(key: string): string {
  return `${key}_${NUTRIENTS[key as SaidNutrient].unit.replace("µ", "u")}`;
}

/** Whether a file describes ingredients, and not only what they cost. */
export function describesIngredients(text: string, place: string): boolean {
  const prices = [
    "name",
    "ingredient",
    "price_per_kg",
    "per_kg",
    "cost_per_kg",
    "price_per_100_g",
    "stock_g",
    "stock_kg",
    "note",
  ];
  const known = new Set(prices.map(columnKey));
  return !readCsv(text, place).columns.every((header) => known.has(columnKey(header)));
}

/**
 * The ingredients of a file as they are kept, those with a label by that.
 *
 * @throws InputError as `readPantryCsv`
 */
export function ownFrom(text: string, place: string): OwnEntry[] {
  const table = labelTable(readCsv(text, place), place);
  return readPantryCsv(text, place).map((ingredient, i): OwnEntry => {
    const {price: _, stock: __, composition, nutrients, grade, ...rest} = ingredient;
    const label = labelIn(table, table.rows[i]!);
    return label
      ? {...rest, label: label as NonNullable<OwnEntry["label"]>}
      : {...rest, composition, ...(nutrients && {nutrients}), ...(grade && {grade})};
  });
}

/** The table with nothing but its names and labels. */
function labelTable(table: CsvTable, place: string): CsvTable {
  const wanted = [
    "name",
    "ingredient",
    ...LABEL_COLUMNS,
    ...LABEL_COLUMNS.map((column) => `${column}_per_100_g`),
  ];
  const known = new Set(wanted.map(columnKey));
  return withColumns(
    {...table, columns: table.columns.filter((header) => known.has(columnKey(header)))},
    place,
    {
      name: ["ingredient"],
      ...Object.fromEntries(LABEL_COLUMNS.map((column) => [column, [`${column}_per_100_g`]])),
    },
  );
}
