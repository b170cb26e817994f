import {readFileSync} from "node:fs";
import {Ajv2020, type ValidateFunction} from "ajv/dist/2020.js";
import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import {schemaFiles} from "../../datasets/tools/make-schemas.ts";
import {briefSchema} from "../../lib/balance/brief/brief-schema.ts";
import {recipeSchema} from "../../lib/io/json/recipe-json.ts";
import {ingredientSchema} from "../../lib/pantry/ingredient-schema.ts";
import {HOSTILE_KINDS} from "../support/hostile.ts";
import {realPantry} from "../support/pantry.ts";

const file = (name: string) =>
  readFileSync(new URL(`../../datasets/schemas/${name}.schema.json`, import.meta.url), "utf8");
const compiled = new Map<string, ValidateFunction>();

/** A schema file as ajv checks it, compiled once: a brief's takes a fifth of a second. */
function compile(name: string): ValidateFunction {
  const known =
    compiled.get(name) ??
    new Ajv2020({strict: true, strictTypes: false}).compile(JSON.parse(file(name)) as object);
  compiled.set(name, known);
  return known;
}

/** Each schema file, the schema that the reader uses, and the fuzzed input that reaches it. */
const SCHEMAS = [
  ["brief", briefSchema, "brief", (value: unknown) => [value]],
  ["recipe", recipeSchema, "recipe JSON", (value: unknown) => [value]],
  ["ingredient", ingredientSchema, "pantry JSON", (value: unknown) => (Array.isArray(value) ? value : [])],
] as const;

describe("the JSON Schemas that come with the package", () => {
  test("are those of the readers: run datasets/tools/make-schemas.ts after a change", () => {
    for (const [name, text] of Object.entries(schemaFiles()))
      expect(file(name.replace(".schema.json", ""))).toBe(text);
  });

  test.each(SCHEMAS)(
    "agree with the reader of a %s on spoiled input, by ajv",
    (name, schema, kind, values) => {
      const validate = compile(name);
      const {input} = HOSTILE_KINDS.find((known) => known.name === kind)!;
      const tally = {valid: 0, invalid: 0};
      fc.assert(
        fc.property(input, (text) => {
          let parsed: unknown;
          try {
            parsed = JSON.parse(text);
          } catch {
            return;
          }
          for (const value of values(parsed)) {
            const valid = schema.safeParse(value).success;
            expect(validate(value), JSON.stringify(value)).toBe(valid);
            tally[valid ? "valid" : "invalid"]++;
          }
        }),
        {numRuns: 400, seed: 1},
      );
      expect(tally.valid).toBeGreaterThan(50);
      expect(tally.invalid).toBeGreaterThan(50);
    },
  );

  test.each(SCHEMAS)("explain every key of a %s, and never with a temperature what is a name", (name) => {
    const silent: string[] = [];
    const walk = (schema: unknown, path: string) => {
      if (typeof schema !== "object" || schema === null) return;
      for (const [key, value] of Object.entries(schema)) {
        if (key !== "properties") {
          walk(value, path);
          continue;
        }
        // A schema of nothing stands where one of two keys is required: it says nothing of its own.
        for (const [name, property] of Object.entries(value as Record<string, {description?: string}>)) {
          if (Object.keys(property).length > 0 && !property.description) silent.push(`${path}.${name}`);
          walk(property, `${path}.${name}`);
        }
      }
    };
    walk(JSON.parse(file(name)), name);
    expect(silent).toEqual([]);
  });

  test("tell the targets' units, and a ratio's other ingredient from a temperature", () => {
    const {properties} = JSON.parse(file("brief")) as {
      properties: {targets: {properties: Record<string, unknown>}; ingredients: unknown};
    };
    const {heatShock, sugars, glucose, sweetness} = properties.targets.properties;
    expect(heatShock).toMatchObject({
      items: {
        properties: {
          from: {description: "the colder temperature, °C"},
          to: {description: "the warmer temperature, °C"},
        },
      },
    });
    for (const quantity of [sugars, glucose])
      expect(quantity).toMatchObject({description: expect.stringContaining("g per 100 g of mix") as string});
    expect(sweetness).toMatchObject({description: "sweetness, sucrose = 100"});
    expect(JSON.stringify(properties.ingredients)).toContain('"name of the other ingredient"');
  });

  test("accept what is real: the demo brief and every ingredient of the pantry", () => {
    const demo = readFileSync(new URL("../../datasets/demo/pear-base.json", import.meta.url), "utf8");
    expect(compile("brief")(JSON.parse(demo))).toBe(true);
    const validate = compile("ingredient");
    for (const ingredient of realPantry.ingredients)
      expect(validate(JSON.parse(JSON.stringify(ingredient))), ingredient.name).toBe(true);
  });

  test.each([
    ["brief", {ingredients: []}],
    ["brief", {ingredients: ["milk"], batch: "5 kg"}],
    ["brief", {ingredients: ["milk"], tragets: {}}],
    ["brief", {ingredients: ["milk"], targets: {ice: [{max: 40}]}}],
    ["recipe", {name: "custard", ingredients: [{name: "milk", grams: -1}]}],
    ["recipe", {ingredients: [{name: "milk", grams: 1}]}],
    ["ingredient", {name: "milk", composition: {watr: 100}}],
    ["ingredient", {name: "milk", composition: {water: 101}}],
    ["ingredient", {name: "milk", composition: {water: 100}, allergens: ["lactose"]}],
  ])("refuse a %s such as %j", (name, value) => {
    expect(compile(name)(value)).toBe(false);
  });
});
