import {describe, expect, test} from "vitest";
import {includedPantry} from "../../lib/pantry/included.ts";
import type {NutrientKey} from "../../lib/pantry/nutrient-keys.ts";
import {nutrientOf} from "../../lib/pantry/nutrients.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import {type Quantity, quantityOf} from "../../lib/pantry/quantities.ts";

const find = (name: string) => findIngredient(includedPantry(), name);

/** What 100 g of an ingredient have of something, in its unit. */
function figure(name: string, key: NutrientKey | "fat" | "protein" | "totalSugars"): number {
  const ingredient = find(name);
  if (key === "fat" || key === "protein" || key === "totalSugars")
    return quantityOf(ingredient.composition, key as Quantity);
  const value = nutrientOf(ingredient, key);
  if (value === undefined) throw new Error(`${name}: ${key}`);
  return value;
}

/**
 * Finished foods that a published table has and that a kitchen or a dairy makes of others it has: g that 100 g are made of, where milk
 * is boiled down or egg white dried more than 100, less what evaporates. The amounts follow from the table's own fat or protein, or
 * from the law or practice that is named; what is checked is everything else.
 */
const MADE: readonly {
  readonly food: string;
  readonly source: string;
  readonly of: Readonly<Record<string, number>>;
  readonly keys: readonly Parameters<typeof figure>[1][];
}[] = [
  {
    // A quarter of almonds (25 % at least in white marzipan; common practice, no source).
    food: "marzipan",
    source: "CoFID 2021, 14-875",
    of: {"blanched almonds": 24.5, sugar: 63.5, water: 8},
    keys: ["fat", "protein", "totalSugars", "carbohydrate", "kilocalories"],
  },
  {
    // By its protein.
    food: "meringue",
    source: "CIQUAL 2020, 24520",
    of: {"dried egg white": 5.1, sugar: 94},
    keys: ["protein", "carbohydrate", "sodium", "kilocalories"],
  },
  {
    // Milk boiled down by its fat, 2.2 times, and sugar.
    food: "sweetened condensed milk 8 %",
    source: "CoFID 2021, 12-520",
    of: {"whole milk 3.6 %": 222, sugar: 43},
    keys: ["fat", "protein", "carbohydrate", "saturates", "sodium", "calcium", "cholesterol", "kilocalories"],
  },
  {
    food: "sweetened condensed milk",
    // Its saturates are left out: 63 % of the fat where the table's milk has 57.
    source: "USDA SR28, 01095",
    of: {"whole milk": 260, sugar: 43},
    keys: ["fat", "protein", "carbohydrate", "calcium", "potassium", "kilocalories"],
  },
  {
    food: "evaporated milk 9 %",
    source: "CoFID 2021, 12-522",
    of: {"whole milk 3.6 %": 255},
    keys: ["fat", "protein", "carbohydrate", "saturates", "calcium", "kilocalories"],
  },
  {
    food: "whole milk powder",
    source: "USDA SR28, 01212",
    of: {"whole milk": 822},
    keys: ["fat", "protein", "carbohydrate", "saturates", "sodium", "calcium", "kilocalories"],
  },
  {
    // By its fat.
    food: "half-and-half",
    source: "USDA SR28, 01049",
    of: {"whole milk": 78.3, "cream 36 %": 21.7},
    keys: ["fat", "protein", "carbohydrate", "saturates", "calcium", "kilocalories"],
  },
  {
    // Nothing but the fat of butter.
    food: "butter oil",
    source: "USDA SR28, 01003",
    of: {"unsalted butter": 122.7},
    keys: ["fat", "saturates", "monounsaturates", "cholesterol", "kilocalories"],
  },
  {
    // A large egg: 17 g yolk and 33 g white (SR28 01125, 01124). Sodium is left out: the table's egg has more than its two parts.
    food: "whole egg",
    source: "USDA SR28, 01123",
    of: {"egg yolk": 34, "egg white": 66},
    keys: ["fat", "protein", "saturates", "cholesterol", "kilocalories"],
  },
  {
    // A tenth of sugar. Sodium is left out: 70 mg where 0.9 of the table's yolk has 60.
    food: "sugared egg yolk",
    source: "USDA SR28, 01127",
    of: {"pasteurised egg yolk": 90, sugar: 10},
    keys: ["fat", "protein", "saturates", "cholesterol", "kilocalories"],
  },
  {
    // Milk powder by its protein, cocoa butter by its fat.
    food: "white chocolate",
    source: "USDA SR28, 19087",
    of: {"cocoa butter": 26.1, "whole milk powder": 22.3, sugar: 50.5},
    keys: ["fat", "protein", "carbohydrate", "saturates", "sodium", "calcium", "potassium", "kilocalories"],
  },
  {
    // Milk powder by its calcium, cocoa mass by the rest of its protein, cocoa butter by its fat.
    food: "milk chocolate",
    source: "USDA SR28, 19120",
    of: {"cocoa mass": 15.4, "cocoa butter": 16.1, "whole milk powder": 20.7, sugar: 46.5},
    keys: ["fat", "protein", "carbohydrate", "saturates", "sodium", "potassium", "kilocalories"],
  },
  {
    // Cocoa mass by its protein, cocoa butter by its fat.
    food: "sweet dark chocolate 35 %",
    source: "USDA SR28, 19081",
    of: {"cocoa mass": 27.3, "cocoa butter": 19.9, sugar: 51.5},
    keys: ["fat", "protein", "totalSugars", "saturates", "kilocalories"],
  },
];

describe("foods composed of the pantry's rows come within 10 % of their own", () => {
  test.each(MADE.flatMap((made) => made.keys.map((key) => ({...made, key}))))(
    "$food: $key ($source)",
    ({food, of, key}) => {
      const made = Object.entries(of).reduce(
        (sum, [name, grams]) => sum + (grams * figure(name, key)) / 100,
        0,
      );
      const printed = figure(food, key);
      expect(printed).toBeGreaterThan(0);
      expect(Math.abs(made / printed - 1), `${made} of ${printed}`).toBeLessThan(0.1);
    },
  );
});
