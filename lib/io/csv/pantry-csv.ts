import {InputError} from "../../core/errors.ts";
import {oneOfThese} from "../../core/nearest.ts";
import {readComposition} from "../../pantry/composition.ts";
import {ALLERGENS, GRADES, type Ingredient} from "../../pantry/ingredient.ts";
import {withInferred} from "../../pantry/inferred.ts";
import {type Nutrients, NUTRIENTS, SAID_NUTRIENTS, type SaidNutrient} from "../../pantry/nutrient-keys.ts";
import {refuseBeyond} from "../../pantry/label-slips.ts";
import {ownIngredient} from "../../pantry/own-ingredient.ts";
import {PARTS} from "../../pantry/parts.ts";
import {amountIn, type Columns, PRICE, STOCK} from "./columns.ts";
import {LABEL_COLUMNS, labelIn, requireClass} from "./label-columns.ts";
import {type CsvRow, type CsvTable, numberIn, placeIn} from "./csv.ts";
import {numberFrom} from "./csv-number.ts";
import {MOST_WORDS} from "../text/limits.ts";
import {eachOnce, type NamedRow, readNamedRows} from "./named-rows.ts";

/** Column of every part and shorthand of a composition, g per 100 g. */
const COMPOSITION_COLUMNS: ReadonlyMap<string, string> = new Map([
  ...PARTS.map((part) => [`${part}_g`, part] as const),
  ["msnf_g", "msnf"],
  ["fat_g", "fat"],
  ["whey_solids_g", "wheySolids"],
]);

/** Column of every nutrient that an ingredient says of itself, in its unit per 100 g: `sodium_mg`, `vitaminD_ug`. */
const NUTRIENT_COLUMNS: ReadonlyMap<string, SaidNutrient> = new Map(
  SAID_NUTRIENTS.map((key) => [`${key}_${NUTRIENTS[key].unit.replace("µ", "u")}`, key]),
);

/** Columns of an ingredient, and headers of the same meaning; those from `energy_kcal` on are for the reader of the file only. */
const COLUMNS: Columns = {
  aliases: [],
  group: [],
  ...Object.fromEntries([...COMPOSITION_COLUMNS.keys()].map((column) => [column, [`${column}_per_100_g`]])),
  ...Object.fromEntries(
    [...NUTRIENT_COLUMNS].map(([column, key]) => [
      column,
      [`${column}_per_100_g`, `${key}_${NUTRIENTS[key].unit}`, `${key}_${NUTRIENTS[key].unit}_per_100_g`],
    ]),
  ),
  dextrose_equivalent: ["DE"],
  density_g_per_ml: [],
  unit_g: [],
  portions: [],
  allergens: [],
  price_per_kg: [],
  price_per_100_g: [],
  stock_g: [],
  stock_kg: [],
  grade: [],
  source: [],
  ...Object.fromEntries(LABEL_COLUMNS.map((column) => [column, [`${column}_per_100_g`]])),
  energy_kcal: [],
  source_id: [],
  rule: [],
  note: [],
};

/** Columns of this prefix become properties per 100 g, e.g. `property_co2`. */
const PROPERTY = "property_";

/**
 * Ingredients from the text of a CSV file with the columns of `datasets/ingredients.csv`.
 *
 * All columns but `name` are optional. A part's column is its name and `_g` (g per 100 g); `msnf_g`, `fat_g` and
 * `whey_solids_g` are split as in {@link readComposition}. An empty cell is an unknown value or a part that is not there.
 * `price_per_kg` is money per kg (or `price_per_100_g`), `stock_g` what there is in g (or `stock_kg`), `unit_g` the mass of a
 * whole unit in g, `density_g_per_ml` is in g/ml, `portions` lists masses in g (`tablespoon=15; cup=244`), `aliases` and
 * `allergens` are separated by semicolons (at most 20), and `property_co2` gives the property `co2` per 100 g.
 *
 * `saturates_g`, `sodium_mg`, `vitaminD_ug` and the like are nutrients per 100 g, in the units of `NUTRIENTS`; an empty cell is unknown.
 *
 * Instead of a composition a row may have the nutrition label of the packet: `label_class` names the class of ingredients that
 * it is read by (see `fromLabel`), `label_fat_g`, `label_carbohydrate_g`, `label_sugars_g`, `label_protein_g` and
 * `label_salt_g` are needed, `label_saturates_g`, `label_fibre_g`, `label_polyols_g`, `label_alcohol_g` and `label_water_g` are
 * optional; `label_kilojoules` and `label_kilocalories` are checked against them, so that a slip shows.
 *
 * Headers are compared by `columnKey`: `Milk fat (g)`, `milk fat g/100 g` and `milkFat_g` are the same.
 *
 * @param text as for `readCsv`
 * @param place name of the file, for errors
 * @throws InputError naming row, column and value for an unknown column, a repeated name or a value that does not fit
 *
 * @example
 * ```ts
 * readPantryCsv("name,water_g,sucrose_g\nour syrup,40,60\n")[0]; // => {name: "our syrup", composition: {water: 40, sucrose: 60}}
 * ```
 */
export function readPantryCsv(text: string, place = "pantry"): Ingredient[] {
  const {table, rows} = readNamedRows(text, place, COLUMNS, PROPERTY);
  return eachOnce(table, rows).map((named) => readIngredient(table, named));
}

/** Grams per 100 g in a cell; the error for more than 100 names the likely slip. */
function gramsIn(table: CsvTable, row: CsvRow, column: string): number | undefined {
  try {
    return numberIn(table, row, column, {min: 0, max: 100}, "g per 100 g");
  } catch (error) {
    if (error instanceof InputError) refuseBeyond(error.value, error.place);
    throw error;
  }
}

function readIngredient(table: CsvTable, {name, row}: NamedRow): Ingredient {
  const {cells} = row;
  const positive = (column: string, unit: string) => numberIn(table, row, column, {min: 1e-6}, unit);
  const grams = new Map<string, number>();
  for (const [column, part] of COMPOSITION_COLUMNS) {
    const value = gramsIn(table, row, column);
    if (value !== undefined) grams.set(part, value);
  }
  const equivalent = numberIn(table, row, "dextrose_equivalent", {min: 5, max: 100});
  if (equivalent !== undefined) grams.set("dextroseEquivalent", equivalent);
  const properties = table.columns
    .filter((column) => column.startsWith(PROPERTY))
    .flatMap((column) => {
      const value = numberIn(table, row, column);
      return value === undefined ? [] : [[column.slice(PROPERTY.length), value] as const];
    });
  const wordIn = <T extends string>(words: readonly T[], word: string, column: string) =>
    oneOf(words, word, placeIn(table, row, column));
  const optional = {
    aliases: listIn(table, row, "aliases"),
    price: amountIn(table, row, PRICE, {min: 0}),
    stock: amountIn(table, row, STOCK, {min: 0}),
    unit: positive("unit_g", "g"),
    density: positive("density_g_per_ml", "g/ml"),
    portions: portionsIn(table, row),
    allergens: listIn(table, row, "allergens")?.map((word) => wordIn(ALLERGENS, word, "allergens")),
    properties: properties.length ? Object.fromEntries(properties) : undefined,
    group: cells.get("group"),
    grade: cells.has("grade") ? wordIn(GRADES, cells.get("grade")!, "grade") : undefined,
    source: cells.get("source"),
  };
  const label = labelIn(table, row);
  if (!label && grams.size === 0) requireClass(table, row);
  const parts = Object.fromEntries(grams);
  const {group, allergens} = optional;
  const own = label
    ? ownIngredient({name, composition: grams.size ? parts : undefined, label, group, allergens}, row.place)!
    : withInferred({
        name,
        composition: readComposition(parts, `${row.place}, ${name}`),
        ...present({group, allergens}),
      });
  const nutrients = {...own.nutrients, ...nutrientsIn(table, row)};
  return {
    ...own,
    ...(Object.keys(nutrients).length > 0 && {nutrients}),
    ...present({...optional, group: undefined, allergens: undefined}),
  };
}

/** The nutrients in a row, in their units per 100 g. */
function nutrientsIn(table: CsvTable, row: CsvRow): Nutrients {
  const said = [...NUTRIENT_COLUMNS].flatMap(([column, key]) => {
    const {unit} = NUTRIENTS[key];
    const value = numberIn(
      table,
      row,
      column,
      {min: 0, ...(unit === "g" && {max: 100})},
      `${unit} per 100 g`,
    );
    return value === undefined ? [] : [[key, value] as const];
  });
  return Object.fromEntries(said);
}

/** The entries that are not `undefined`. */
function present<T extends object>(entries: T): {[K in keyof T]?: Exclude<T[K], undefined>} {
  return Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}

/** The pieces of a cell between semicolons. */
function listIn(table: CsvTable, row: CsvRow, column: string): string[] | undefined {
  const cell = row.cells.get(column);
  const words = cell
    ?.split(";")
    .map((word) => word.trim())
    .filter(Boolean);
  if (words && words.length > MOST_WORDS)
    throw new InputError(placeIn(table, row, column), `more than ${MOST_WORDS} words`, cell, "keep fewer");
  return words?.length ? words : undefined;
}

function portionsIn(table: CsvTable, row: CsvRow): Record<string, number> | undefined {
  const place = placeIn(table, row, "portions");
  const entries = listIn(table, row, "portions")?.map((text) => {
    const [, name, mass] = /^([^=]*[^=\s])\s*=\s*(.+)$/.exec(text) ?? [];
    if (name === undefined || mass === undefined)
      throw new InputError(place, "not a portion", text, "write name=grams, e.g. tablespoon=15; cup=244");
    return [name, numberFrom(mass, table.decimalComma, place, {min: 1e-6}, "g")] as const;
  });
  return entries && Object.fromEntries(entries);
}

function oneOf<T extends string>(words: readonly T[], typed: string, place: string): T {
  const word = words.find((known) => known === typed.toLowerCase());
  if (word === undefined) throw new InputError(place, "unknown word", typed, oneOfThese(typed, words));
  return word;
}
