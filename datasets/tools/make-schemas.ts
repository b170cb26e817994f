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
import {briefSchema} from "../../lib/balance/brief/brief-schema.ts";
import {MEASURES, SPECIAL_SUBJECTS} from "../../lib/balance/measure/measures.ts";
import {recipeSchema} from "../../lib/io/json/recipe-json.ts";
import {ingredientSchema} from "../../lib/pantry/ingredient-schema.ts";
import {NUTRIENTS} from "../../lib/pantry/nutrient-keys.ts";
import {PARTS} from "../../lib/pantry/parts.ts";
import {QUANTITIES, type Quantity} from "../../lib/pantry/quantities.ts";

/** Meanings and units of the keys, for an editor to show. */
const MEANINGS: Readonly<Record<string, string>> = {
  $schema: "address of this schema, for editors",
  name: "what it is called",
  batch: "how much to make, g; 1000 unless given",
  pantry: "path of a CSV file of ingredients beside the brief",
  prices: "path of a CSV file of prices and stock beside the brief",
  freezer: "temperature of the freezer that the tub is served from, °C; -18 unless given",
  overrun: "air beaten in, % of the mix's volume; 30, a small batch machine, unless given: more of it makes a tub softer",
  learned: "what the kitchen's own reports have taught of when its tubs scoop, as calibrate returns it",
  reports: "reports that it rests on",
  shift: "firmness by which the kitchen's tubs scoop harder than the book's, points",
  narrowing: "what is left of the doubt that there was before the reports",
  scatter: "scatter of the ln of hardness from batch to batch",
  maxIngredients: "most ingredients that may be used, a whole number",
  ingredients: "what may go in: names of the pantry, or ingredients described here",
  targets: "limits of what the mix is to be, by what is limited",
  wholePacks: "whether every opened pack is paid in full",
  spread: "how far the kitchen may be off",
  margin: "whether the targets hold however far the kitchen is off within `spread`",
  near: "a recipe that one of the other mixes stays close to, g by ingredient",
  minimise: "what is to be as little as possible: cost unless given",
  maximise: "what is to be as much as possible",
  weighing: "largest error of one weighing, g",
  parts: "largest error of a part, g per 100 g, by ingredient and part",
  aliases: "other names that it is found by",
  allergens: "what it contains of the 14 allergens of Regulation (EU) 1169/2011, annex II",
  group: "kind of ingredient, e.g. dairy, sugar, fruit",
  grade: "how well its figures are known",
  pack: "mass of the pack it is bought in, g",
  ingredient: "name of the other ingredient",
  min: "lower limit, in the unit of what is limited",
  max: "upper limit, in the unit of what is limited",
  equal: "value to be met, in the unit of what is limited",
  ...Object.fromEntries(SPECIAL_SUBJECTS.map((key) => [key, MEASURES[key].meaning])),
  at: "temperature, °C",
  from: "the colder temperature, °C",
  to: "the warmer temperature, °C",
  composition: "what 100 g consist of: g per 100 g by part, together 100",
  label: "g per 100 g as on the packet, and the class of ingredients to read it by",
  dextroseEquivalent: "of the glucose-syrup solids, dextrose = 100",
  class: "kind of food: it tells which sugars, fats and proteins the figures are made of",
  fat: "all fats, g per 100 g",
  saturates: "of the fat, g per 100 g",
  carbohydrate: "without fibre, g per 100 g",
  sugars: "of the carbohydrate, g per 100 g",
  protein: "g per 100 g",
  polyols: "of the carbohydrate, g per 100 g",
  price: "money per kg",
  stock: "how much there is, g",
  unit: "mass of one whole unit, g",
  density: "g/ml",
  portions: "mass of one, g, by name",
  step: "whole multiples only of so much, g",
  minIfUsed: "none, or at least so much, g",
  onlyWith: "used only beside enough of another ingredient",
  ratio: "so much of it per g of another ingredient",
  grams: "how much, g",
  measure: 'a kitchen measure, e.g. "2 tablespoons"',
  nutrients: "what no composition tells, per 100 g: absent is unknown, 0 is none",
  ...Object.fromEntries(
    Object.entries(NUTRIENTS)
      .filter(([key]) => key !== "carbohydrate" && key !== "saturates")
      .map(([key, {unit, name}]) => [key, `${name}, ${unit} per 100 g`]),
  ),
  properties: "any further numbers per 100 g, by name",
  source: "key into datasets/sources.csv",
  doses: 'customary upper limits: "customary" unless given, "none", or limits of your own, g per 100 g of mix by name',
  ...Object.fromEntries(PARTS.map((part) => [part, `${spelled(part)}, g per 100 g`])),
  gelatine: "gelatine, protein that sets, g per 100 g",
  otherCarbohydrate: "carbohydrate that is neither sugar, starch nor fibre, such as dextrins, g per 100 g",
  msnf: "milk solids-not-fat (MSNF), g per 100 g",
  wheySolids: "whey solids, g per 100 g",
};

/** Meanings that a key has only beside another: the other key first. */
const BESIDE: readonly (readonly [beside: string, key: string, meaning: string])[] = [
  ["grams", "to", "name of the other ingredient"],
  ["to", "grams", "g per g of the other ingredient"],
  ["ingredient", "min", "how much of the other ingredient there is at least, g"],
  ["batch", "name", "what the mix is called"],
  ["price", "min", "at least so much of it, g"],
  ["price", "max", "at most so much of it, g"],
];

/** Quantities of a mix that a brief can limit, as an editor offers them. */
const QUANTITY_MEANINGS: Readonly<Partial<Record<Quantity, string>>> = {
  fat: "all fats, g per 100 g of mix",
  milkSolids: "milk fat and milk solids-not-fat, g per 100 g of mix",
  sugars: "sugars and glucose-syrup solids without lactose, g per 100 g of mix",
  totalSugars: "sugars as a label counts them, lactose included, g per 100 g of mix",
  glucose: "dextrose and glucose-syrup solids, g per 100 g of mix",
  totalSolids: "all but water and alcohol, g per 100 g of mix",
  protein: "milk and other protein, g per 100 g of mix",
  polyols: "sugar alcohols, g per 100 g of mix",
  eggYolkSolids: "solids of egg yolk, g per 100 g of mix",
  sweetness: "sweetness, sucrose = 100",
};

/** A key in plain words: `milkFat` is "milk fat". */
function spelled(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

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
  const properties = jsonSchema.properties ?? {};
  if ("scoopTemperature" in properties) offerQuantities(jsonSchema);
  for (const [key, property] of Object.entries(properties)) {
    const beside = BESIDE.find(([other, of]) => of === key && other in properties);
    const meaning = beside?.[2] ?? MEANINGS[key];
    if (meaning !== undefined && typeof property === "object") property.description ??= meaning;
  }
}

/** Names in the targets what a brief can limit besides: read as any other name is, but offered and explained by an editor. */
function offerQuantities(targets: z.core.JSONSchema.BaseSchema): void {
  const meanings = [
    ...QUANTITIES.map((quantity) => {
      const plain = MEANINGS[quantity] ?? `${spelled(quantity)}, g per 100 g`;
      return [quantity, QUANTITY_MEANINGS[quantity] ?? `${plain} of mix`] as const;
    }),
    ...Object.entries(NUTRIENTS).map(
      ([key, {unit, name}]) => [key, `${name}, ${unit} per 100 g of mix`] as const,
    ),
    ...SPECIAL_SUBJECTS.filter((key) => MEASURES[key].written === "limits").map(
      (key) => [key, MEASURES[key].meaning] as const,
    ),
  ];
  for (const [key, description] of meanings)
    (targets.properties ??= {})[key] = {$ref: "#/properties/targets/additionalProperties", description};
}

const folder = new URL("../schemas/", import.meta.url);
if (process.argv[1] === new URL(import.meta.url).pathname) {
  mkdirSync(folder, {recursive: true});
  for (const [name, text] of Object.entries(schemaFiles())) writeFileSync(new URL(name, folder), text);
}
