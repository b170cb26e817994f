/**
 * Derives `datasets/ingredients.csv`: the composition of each ingredient on the shelf (`shelf.csv`) from published
 * figures (`food-tables.csv`, g per 100 g as the sources print them) by the rules below, with its nutrients as `nutrients.csv` has
 * them. Run it after a change to one of the tables, from anywhere:
 *
 *     npx tsx datasets/tools/make-ingredients.ts
 *
 * In all four files an empty cell is an unknown value or, for a part of a composition, one that is not there: a part that
 * is truly zero is empty too.
 */
import {readFileSync, writeFileSync} from "node:fs";
import {numberFrom} from "../../lib/io/csv/csv-number.ts";
import {type CsvRow, type CsvTable, numberIn, readCsv} from "../../lib/io/csv/csv.ts";
import {energyOf} from "../../lib/pantry/energy.ts";
import {NUTRIENTS, SAID_NUTRIENTS} from "../../lib/pantry/nutrient-keys.ts";
import {PARTS, type Part} from "../../lib/pantry/parts.ts";
import type {Food, Sugars} from "./rule-kinds.ts";
import {derive} from "./rules.ts";

const here = (name: string) => new URL(name, import.meta.url);
const table = (name: string) => readCsv(readFileSync(here(name), "utf8"), name);

/** Columns of the nutrients: name and unit. */
const NUTRIENT_COLUMNS = SAID_NUTRIENTS.map((key) => `${key}_${NUTRIENTS[key].unit.replace("µ", "u")}`);

/** The text of `ingredients.csv`. */
export function ingredientsCsv(): string {
  const foods = foodTable(table("food-tables.csv"));
  const shelf = table("shelf.csv");
  const nutrients = new Map(table("nutrients.csv").rows.map(({cells}) => [cells.get("name"), cells]));
  const header = [
    "name",
    "aliases",
    "group",
    ...PARTS.map((part) => `${part}_g`),
    ...NUTRIENT_COLUMNS,
    "dextrose_equivalent",
    "density_g_per_ml",
    "unit_g",
    "portions",
    "allergens",
    "energy_kcal",
    "label_fat_g",
    "label_protein_g",
    "label_carbohydrate_g",
    "label_sugars_g",
    "grade",
    "source",
    "source_id",
    "rule",
    "note",
  ];
  const lines = shelf.rows.map((row) => {
    const cells = ingredientCells(shelf, row, foods);
    const said = nutrients.get(row.cells.get("name"));
    for (const column of NUTRIENT_COLUMNS) if (said?.has(column)) cells.set(column, said.get(column)!);
    return header.map((column) => quoted(cells.get(column) ?? "")).join(",");
  });
  return `${[header.join(","), ...lines].join("\n")}\n`;
}

/** The published foods by key, e.g. `sr28 01077`. */
export function foodTable(foods: CsvTable): Map<string, Food> {
  return new Map(
    foods.rows.map((row) => {
      const text = (column: string) => row.cells.get(column) ?? "";
      const number = (column: string) => numberIn(foods, row, column);
      const grams = (name: string) => number(`${name}_g`);
      return [
        text("food"),
        {
          source: text("source"),
          sourceId: text("source_id"),
          byDifference: text("carbohydrate_basis") === "by difference",
          sugarsMeasured: text("sugars_basis") === "measured",
          liquid: text("liquid") === "yes",
          grams,
          sodium: number("sodium_mg"),
          potassium: number("potassium_mg"),
          energy: number("energy_kcal"),
          density: number("density_g_per_ml"),
          portions: text("portions"),
        },
      ];
    }),
  );
}

function ingredientCells(
  shelf: CsvTable,
  row: CsvRow,
  foods: ReadonlyMap<string, Food>,
): Map<string, string> {
  const {cells} = row;
  const foodOf = (column: string) => {
    const key = cells.get(column);
    const food = key === undefined ? undefined : foods.get(key);
    if (key !== undefined && !food) throw new Error(`${row.place}: no food ${key}`);
    return food;
  };
  const food = foodOf("food");
  const {DE, ...stated} = statedParts(cells.get("parts") ?? "", row.place);
  const rule = cells.get("rule") ?? "";
  const {composition, steps} = derive({
    rule,
    food,
    stated,
    sugarsFrom: foodOf("sugars_from") ?? food,
    sugarsAs: (cells.get("sugars_as") ?? "amounts") as Sugars,
    ...(cells.has("parts_from") && {partsFrom: cells.get("parts_from")!}),
    place: row.place,
  });
  const fixed = (value: number | undefined, digits = 3) =>
    value === undefined ? "" : `${Number(value.toFixed(digits))}`;
  const result = new Map(
    ["name", "aliases", "group", "unit_g", "allergens", "grade", "note"].map((column) => [
      column,
      cells.get(column) ?? "",
    ]),
  );
  for (const part of PARTS) if (composition[part]) result.set(`${part}_g`, fixed(composition[part], 4));
  result.set("dextrose_equivalent", fixed(DE));
  const ownDensity = numberIn(shelf, row, "density_g_per_ml");
  const derived = cells.get("density_from_portions") === "no" ? undefined : densityOf(food);
  result.set("density_g_per_ml", fixed(ownDensity ?? derived));
  result.set("portions", portionsOf(food));
  result.set("source", cells.get("source") ?? food?.source ?? "");
  result.set("rule", steps.join("; "));
  // By Regulation (EU) 1169/2011, Annex XIV, so that rows compare: tables print energy by factors of their own.
  result.set("energy_kcal", fixed(energyOf(composition, "kilocalories"), 0));
  if (!food) return result;
  if (cells.has("source")) return result.set("source_id", `portions ${food.source} ${food.sourceId}`);
  for (const name of ["fat", "protein"]) result.set(`label_${name}_g`, fixed(food.grams(name), 4));
  const carbohydrate = food.grams("carbohydrate");
  // As on a label, without fibre: tables by difference have it in.
  const fibre = food.byDifference ? (food.grams("fibre") ?? 0) : 0;
  if (carbohydrate !== undefined)
    result.set("label_carbohydrate_g", fixed(Math.max(0, carbohydrate - fibre), 4));
  if (food.sugarsMeasured) result.set("label_sugars_g", fixed(food.grams("sugars"), 4));
  const split = foodOf("sugars_from");
  result.set(
    "source_id",
    split && split !== food ? `${food.sourceId}; sugars ${split.source} ${split.sourceId}` : food.sourceId,
  );
  return result;
}

function statedParts(text: string, place: string): Partial<Record<Part | "DE", number>> {
  const parts: Partial<Record<Part | "DE", number>> = {};
  for (const piece of text.split(";").filter(Boolean)) {
    const [name = "", grams = ""] = piece.split("=").map((word) => word.trim());
    if (name !== "DE" && !(PARTS as readonly string[]).includes(name))
      throw new Error(`${place}: no part ${name}`);
    parts[name as Part | "DE"] = numberFrom(grams, false, `${place}, parts`);
  }
  return parts;
}

/** US customary measures, ml: 1 fluid ounce 29.5735, 1 cup 236.588 (NIST Handbook 44, Appendix C). */
const MEASURES = [
  [/(?:^|; )1 fl oz = ([\d.]+) g/, 29.5735],
  [/(?:^|; )1 cup(?:, fluid[^=]*)? = ([\d.]+) g/, 236.588],
] as const;

/** Density, g/ml, as the source prints it or, for a liquid, from the mass of its fluid ounce or cup. */
function densityOf(food: Food | undefined): number | undefined {
  if (!food?.liquid) return undefined;
  if (food.density !== undefined) return food.density;
  for (const [pattern, volume] of MEASURES) {
    const mass = pattern.exec(food.portions)?.[1];
    if (mass !== undefined) return Number(mass) / volume;
  }
  return undefined;
}

const KITCHEN_WORDS = {cup: "cup", tbsp: "tablespoon", tablespoon: "tablespoon", tsp: "teaspoon"} as const;

/** Portions that are not of the food as bought. */
const OTHER_STATES = /yield|pits|shell|whipped|thawed/;

/** Cups, tablespoons and teaspoons of the source, in its own words, e.g. `cup sliced=166`; masses of one, g. */
function portionsOf(food: Food | undefined): string {
  const portions = new Map<string, number>();
  for (const piece of food?.portions.split("; ") ?? []) {
    const [, count, measure, rest = "", grams] =
      /^([\d.]+) (cup|tbsp|tablespoon|tsp)\b(.*) = ([\d.]+) g$/.exec(piece) ?? [];
    if (count === undefined || measure === undefined || OTHER_STATES.test(rest.replace(/\(.*\)/, "")))
      continue;
    const words = rest
      .replace(/\([^)]*\)|,|fluid/g, " ")
      .trim()
      .split(/\s+/);
    const name = [KITCHEN_WORDS[measure as keyof typeof KITCHEN_WORDS], ...words].join(" ").trim();
    if (!portions.has(name) || count === "1") {
      portions.set(name, Number((Number(grams) / Number(count)).toFixed(2)));
    }
  }
  return [...portions].map(([name, grams]) => `${name}=${grams}`).join("; ");
}

function quoted(cell: string): string {
  return /[",\n]/.test(cell) ? `"${cell.replace(/"/g, '""')}"` : cell;
}

if (process.argv[1] === here("make-ingredients.ts").pathname)
  writeFileSync(here("../ingredients.csv"), ingredientsCsv());
