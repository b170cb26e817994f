import {InputError} from "../core/errors.ts";
import {findIngredient, type Pantry} from "../pantry/pantry.ts";
import {type Recipe, type RecipeLine, recipeMass} from "../pantry/recipe.ts";
import {amountIn, type Columns} from "./columns.ts";
import {type CsvTable, placeIn} from "./csv.ts";
import {csvText} from "./escape.ts";
import {type NamedRow, readNamedRows} from "./named-rows.ts";
import {measuredGrams} from "./recipe-json.ts";

const COLUMNS: Columns = {
  g: ["grams", "mass_g", "weight_g", "amount_g"],
  kg: ["mass_kg", "weight_kg", "amount_kg"],
  measure: ["amount", "quantity"],
  percent: ["%"],
  note: [],
};

/**
 * A recipe from the text of a CSV file: one row an ingredient, with the columns `ingredient` (or `name`) and `g` (or `kg`),
 * or `measure` for kitchen measures such as `2 tablespoons` or `4 eggs`; `percent` and `note` are for the reader of the
 * file only. Headers are read as {@link readPantryCsv} does: `Weight (g)` is `g`.
 *
 * @param text as for `readCsv`
 * @param pantry where the ingredients are looked up
 * @param place name of the file, for errors; without folder and extension it is the recipe's name
 * @throws InputError naming row, column and value for an unknown column or ingredient, a negative or missing amount, two
 *   amounts in one row, or a measure that is none
 */
export async function readRecipeCsv(text: string, pantry: Pantry, place = "recipe"): Promise<Recipe> {
  const {table, rows} = readNamedRows(text, place, COLUMNS);
  const lines: RecipeLine[] = [];
  for (const named of rows) lines.push(await readLine(table, named, pantry));
  if (!lines.length)
    throw new InputError(`${place}, row 2`, "no ingredients", undefined, "give one ingredient a row");
  return {name: place.replace(/^.*[/\\]/, "").replace(/(?<=.)\.\w+$/, ""), lines};
}

async function readLine(table: CsvTable, {name, row}: NamedRow, pantry: Pantry): Promise<RecipeLine> {
  const ingredient = findIngredient(pantry, name, placeIn(table, row, "name"));
  const grams = amountIn(table, row, {g: 1, kg: 1000}, {min: 0, max: 1e9});
  const measure = row.cells.get("measure");
  const at = placeIn(table, row, "measure");
  if (grams !== undefined) {
    if (measure !== undefined)
      throw new InputError(at, "given beside grams", measure, "fill one of the two cells");
    return {ingredient, grams};
  }
  if (measure === undefined) {
    const column = table.columns.find((known) => ["g", "kg", "measure"].includes(known)) ?? "g";
    throw new InputError(
      placeIn(table, row, column),
      "no amount",
      undefined,
      `say how many g of ${name}, or a measure such as 2 tablespoons`,
    );
  }
  return {ingredient, grams: await measuredGrams(ingredient, measure, at)};
}

/**
 * A recipe as CSV with the columns `ingredient`, `g` and `percent` (g per 100 g of the whole, to 0.01); no spreadsheet reads a name
 * as a formula, and {@link readRecipeCsv} reads it back.
 */
export function recipeCsv(recipe: Recipe): string {
  const mass = recipeMass(recipe);
  return csvText(
    ["ingredient", "g", "percent"],
    recipe.lines.map(({ingredient, grams}) => [
      ingredient.name,
      grams,
      mass > 0 ? Math.round((1e4 * grams) / mass) / 100 : undefined,
    ]),
  );
}
