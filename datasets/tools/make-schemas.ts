/**
 * Writes the JSON Schemas of a brief, a recipe and an ingredient (`datasets/schemas/`) from the schemas that the library
 * itself reads with. Run it after a change to one of those, from anywhere:
 *
 *     npx tsx datasets/tools/make-schemas.ts
 *
 * A JSON Schema says what shape is read. What it cannot say (parts that sum to 100 g, names that the pantry has, limits that
 * do not contradict) is checked by the reader.
 */
import {mkdirSync, writeFileSync} from "node:fs";
import * as z from "zod/mini";
import {briefSchema} from "../../lib/balance/brief-schema.ts";
import {recipeSchema} from "../../lib/io/recipe-json.ts";
import {ingredientSchema} from "../../lib/pantry/ingredient-schema.ts";
import {PARTS} from "../../lib/pantry/parts.ts";

/** Units and meanings of the keys, for an editor to show. */
const MEANINGS: Readonly<Record<string, string>> = {
  at: "°C",
  from: "°C",
  to: "°C, or the ingredient that a ratio is to",
  batch: "g",
  freezer: "°C",
  composition: "g per 100 g by part, together 100",
  label: "g per 100 g as on the packet, and the class of ingredients to read it by",
  dextroseEquivalent: "of the glucose-syrup solids, dextrose = 100",
  class: "kind of food: it tells which sugars, fats and proteins the figures are made of",
  saturates: "of the fat, g per 100 g",
  carbohydrate: "without fibre, g per 100 g",
  sugars: "of the carbohydrate, g per 100 g",
  protein: "g per 100 g",
  polyols: "of the carbohydrate, g per 100 g",
  price: "money per kg",
  stock: "g on the shelf",
  unit: "mass of one whole unit, g",
  density: "g/ml",
  portions: "mass of one, g, by name",
  step: "g",
  minIfUsed: "g",
  grams: "g",
  measure: 'a kitchen measure, e.g. "2 tablespoons"',
  properties: "any further numbers per 100 g, by name",
  source: "key into datasets/sources.csv",
  pantry: "path of a CSV file beside the brief",
  prices: "path of a CSV file beside the brief",
  ...Object.fromEntries([...PARTS, "msnf", "wheySolids", "fat"].map((part) => [part, "g per 100 g"])),
};

const SCHEMAS = {
  brief: {title: "Brief of a frozen-dessert mix", schema: briefSchema},
  recipe: {title: "Recipe of a frozen-dessert mix", schema: recipeSchema},
  ingredient: {title: "Ingredient of a frozen-dessert mix", schema: ingredientSchema},
} as const;

/** The text of each schema file, by the file's name. */
export function schemaFiles(): Record<string, string> {
  return Object.fromEntries(
    Object.entries(SCHEMAS).map(([name, {title, schema}]) => {
      const {$schema, ...rest} = z.toJSONSchema(schema, {io: "input", override: describe});
      return [`${name}.schema.json`, `${JSON.stringify({$schema, title, ...rest}, undefined, 2)}\n`];
    }),
  );
}

/** Adds to each property the unit that its key has, and to an ingredient that something must say what is in it. */
function describe({
  zodSchema,
  jsonSchema,
}: {
  zodSchema: unknown;
  jsonSchema: z.core.JSONSchema.BaseSchema;
}): void {
  // What the reader checks by a function.
  if (zodSchema === ingredientSchema)
    jsonSchema.oneOf = ["composition", "label"].map((key) => ({properties: {[key]: {}}, required: [key]}));
  for (const [key, property] of Object.entries(jsonSchema.properties ?? {})) {
    const meaning = MEANINGS[key];
    if (meaning !== undefined && typeof property === "object") property.description = meaning;
  }
}

const folder = new URL("../schemas/", import.meta.url);
if (process.argv[1] === new URL(import.meta.url).pathname) {
  mkdirSync(folder, {recursive: true});
  for (const [name, text] of Object.entries(schemaFiles())) writeFileSync(new URL(name, folder), text);
}
