import {InputError} from "../../core/errors.ts";
import {findIngredient, type Pantry} from "../../pantry/pantry.ts";
import {type Recipe, type RecipeLine, recipeMass} from "../../pantry/recipe.ts";
import {amountIn, type Columns} from "./columns.ts";
import {type CsvTable, numberIn, placeIn} from "./csv.ts";
import {csvText} from "../text/escape.ts";
import {LONGEST_NAME} from "../text/limits.ts";
import {type NamedRow, readNamedRows} from "./named-rows.ts";
import {measuredGrams} from "../json/recipe-json.ts";
import {rounded, roundedGrams} from "../text/rounded.ts";

const COLUMNS: Columns = {
  g: ["grams", "mass_g", "weight_g", "amount_g"],
  kg: ["mass_kg", "weight_kg", "amount_kg"],
  measure: ["amount", "quantity"],
  percent: ["%"],
  recipe: ["recipe name"],
  overrun: ["overrun_percent", "overrun %"],
  note: [],
};

/**
 * A recipe from the text of a CSV file: one row an ingredient, with the columns `ingredient` (or `name`) and `g` (or `kg`),
 * or `measure` for kitchen measures such as `2 tablespoons` or `4 eggs`; a column `recipe` may name it, in one row or in all, and
 * `overrun` give the air beaten in, % of the mix's volume; `percent` and `note` are for human readers only. Headers are read as
 * {@link readPantryCsv} does: `Weight (g)` is `g`.
 *
 * @param text as for `readCsv`
 * @param pantry where the ingredients are looked up
 * @param place name of the file, for errors; without folder and extension it is the name of a recipe that has none
 * @throws InputError naming row, column and value for an unknown column or ingredient, a negative or missing amount, two
 *   amounts in one row, a measure that is not understood, or two names of the recipe
 *
 * @example
 * ```ts
 * const recipe = await readRecipeCsv("ingredient,g\nwhole milk,800\nsugar,200\n", includedPantry());
 * recipe.lines.map(({ingredient, grams}) => `${grams} g ${ingredient.name}`); // => ["800 g whole milk", "200 g sucrose"]
 * ```
 */
export async function readRecipeCsv(text: string, pantry: Pantry, place = "recipe"): Promise<Recipe> {
  const {table, rows} = readNamedRows(text, place, COLUMNS);
  const lines: RecipeLine[] = [];
  for (const named of rows) lines.push(await readLine(table, named, pantry));
  if (!lines.length)
    throw new InputError(`${place}, row 2`, "no ingredients", undefined, "give one ingredient a row");
  const name = recipeName(table, rows) ?? place.replace(/^.*[/\\]/, "").replace(/(?<=.)\.\w+$/, "");
  const overrun = recipeOverrun(table, rows);
  return {name, lines, ...(overrun !== undefined && {overrun})};
}

/** The overrun that a row gives the recipe, if one does. */
function recipeOverrun(table: CsvTable, rows: readonly NamedRow[]): number | undefined {
  const said = rows.map(({row}) => numberIn(table, row, "overrun", {min: 0, max: 200}));
  const [first, other] = [...new Set(said.filter((overrun) => overrun !== undefined))];
  if (other === undefined) return first;
  const {row} = rows[said.indexOf(other)]!;
  throw new InputError(placeIn(table, row, "overrun"), "another overrun", other, `give one, here ${first}`);
}

/** The name that the rows give their recipe, if any does. */
function recipeName(table: CsvTable, rows: readonly NamedRow[]): string | undefined {
  let found: string | undefined;
  for (const {row} of rows) {
    const name = row.cells.get("recipe");
    if (name === undefined) continue;
    const at = placeIn(table, row, "recipe");
    if (found !== undefined && name !== found)
      throw new InputError(at, "another recipe's name", name, `give one recipe a file, here ${found}`);
    if (name.length > LONGEST_NAME)
      throw new InputError(at, `longer than ${LONGEST_NAME} characters`, name, "shorten it");
    found = name;
  }
  return found;
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
 * A recipe as CSV with the columns `ingredient`, `g` (to 0.1 g, below 10 g to 0.01 g), `percent` (g per 100 g of the whole, to 0.01) and
 * `recipe`, its name, in the first row, and `overrun` beside it where the recipe says one;
 * no spreadsheet reads a name as a formula, and {@link readRecipeCsv} reads it back.
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "sucrose"), grams: 90}];
 * recipeCsv({name: "syrup", lines}).split("\r\n")[0]; // => "ingredient,g,percent,recipe"
 * ```
 */
export function recipeCsv(recipe: Recipe): string {
  const mass = recipeMass(recipe);
  return csvText(
    ["ingredient", "g", "percent", "recipe", ...(recipe.overrun === undefined ? [] : ["overrun"])],
    recipe.lines.map(({ingredient, grams}, i) => [
      ingredient.name,
      roundedGrams(grams),
      mass > 0 ? rounded((100 * grams) / mass, 2) : undefined,
      i === 0 ? recipe.name : undefined,
      ...(recipe.overrun === undefined ? [] : [i === 0 ? recipe.overrun : undefined]),
    ]),
  );
}
