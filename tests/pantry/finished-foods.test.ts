import {describe, expect, test} from "vitest";
import {includedPantry} from "../../lib/pantry/included.ts";
import type {NutrientKey} from "../../lib/pantry/nutrient-keys.ts";
import {nutrientOf} from "../../lib/pantry/nutrients.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import {type Quantity, quantityOf} from "../../lib/pantry/quantities.ts";

type Key = NutrientKey | "fat" | "protein" | "totalSugars";

/**
 * What a label of 100 g prints (Regulation (EU) 1169/2011, Article 30 and Annex XV), each with the amount that it may print as nothing
 * (European Commission, guidance on tolerances, 2012, table 4; from memory): below it no label tells two foods apart.
 */
const ON_A_LABEL: Readonly<Partial<Record<Key, number>>> = {
  kilojoules: 0,
  kilocalories: 0,
  fat: 0.5,
  saturates: 0.1,
  carbohydrate: 0.5,
  totalSugars: 0.5,
  dietaryFibre: 0.5,
  protein: 0.5,
  saltEquivalent: 0.0125,
};
const LABEL_KEYS = Object.keys(ON_A_LABEL) as readonly Key[];

/** What 100 g of an ingredient have of something, in its unit. */
function figure(name: string, key: Key): number {
  const ingredient = findIngredient(includedPantry(), name);
  if (key === "fat" || key === "protein" || key === "totalSugars")
    return quantityOf(ingredient.composition, key as Quantity);
  const value = nutrientOf(ingredient, key);
  if (value === undefined) throw new Error(`${name}: ${key}`);
  return value;
}

interface Made {
  readonly food: string;
  readonly source: string;
  readonly of: Readonly<Record<string, number>>;
  /** Held besides what a label prints. */
  readonly also?: readonly Key[];
  /** What of the label differs, and why: then it must differ, or the reason is stale. */
  readonly but?: Readonly<Partial<Record<Key, string>>>;
}

/**
 * Finished foods that a published table has and that a kitchen or a dairy makes of others it has: g that 100 g are made of, where milk
 * is boiled down or egg white dried more than 100, less what evaporates. One figure of the table fixes each amount, or the law or
 * practice that is named; everything else is a check.
 */
const MADE: readonly Made[] = [
  {
    // By its fat.
    food: "semi-skimmed milk",
    source: "CoFID 2021, 12-313",
    of: {"whole milk 3.6 %": 46, "skimmed milk 0.3 %": 54},
    also: ["calcium", "potassium"],
  },
  {
    // By its fat.
    food: "reduced-fat milk 2 %",
    source: "USDA SR28, 01079",
    of: {"whole milk": 60, "skimmed milk": 40},
    also: ["calcium", "potassium"],
  },
  {
    // By its fat.
    food: "low-fat milk 1 %",
    source: "USDA SR28, 01082",
    of: {"whole milk": 28.5, "skimmed milk": 71.5},
    also: ["calcium", "potassium"],
  },
  {
    // Milk boiled down by its fat, 2.2 times, and sugar.
    food: "sweetened condensed milk 8 %",
    source: "CoFID 2021, 12-520",
    of: {"whole milk 3.6 %": 222, sugar: 43},
    also: ["calcium", "cholesterol"],
  },
  {
    // Milk boiled down by its fat, 2.7 times, and sugar by its energy.
    food: "sweetened condensed milk",
    source: "USDA SR28, 01095",
    of: {"whole milk": 268, sugar: 42},
    also: ["calcium", "potassium"],
  },
  {
    // Milk dried, by its fat.
    food: "whole milk powder",
    source: "USDA SR28, 01212",
    of: {"whole milk": 822},
    also: ["calcium"],
  },
  {
    // Salt by its sodium.
    food: "salted butter",
    source: "USDA SR28, 01001",
    of: {"unsalted butter": 98.4, salt: 1.6},
    also: ["monounsaturates", "cholesterol"],
  },
  {
    // By its fibre.
    food: "unsweetened apple sauce",
    source: "USDA SR28, 09019",
    of: {apple: 85, water: 15},
  },
  {
    // A quarter of almonds (25 % at least in white marzipan; common practice, no source), salt by its sodium.
    food: "marzipan",
    source: "CoFID 2021, 14-875",
    of: {"blanched almonds": 24.5, sugar: 63.5, water: 8, salt: 0.04},
  },
  {
    // By its protein.
    food: "meringue",
    source: "CIQUAL 2020, 24520",
    of: {"dried egg white": 5.1, sugar: 94},
  },
  {
    // Milk powder by its protein, cocoa butter by its fat.
    food: "white chocolate",
    source: "USDA SR28, 19087",
    of: {"cocoa butter": 26.1, "whole milk powder": 22.3, sugar: 50.5},
    also: ["calcium", "potassium"],
  },
  {
    // Milk powder by its calcium, cocoa mass by its fibre, cocoa butter by its fat.
    food: "milk chocolate",
    source: "USDA SR28, 19120",
    of: {"cocoa mass": 18.5, "cocoa butter": 14.4, "whole milk powder": 20.2, sugar: 46},
  },
  {
    food: "evaporated milk 9 %",
    source: "CoFID 2021, 12-522",
    of: {"whole milk 3.6 %": 255},
    also: ["calcium"],
    but: {saltEquivalent: "its sodium phosphates, which keep it from curdling, are not milk's"},
  },
  {
    // By its fat.
    food: "half-and-half",
    source: "USDA SR28, 01049",
    of: {"whole milk": 78.3, "cream 36 %": 21.7},
    also: ["calcium"],
    but: {saltEquivalent: "61 mg of sodium where milk and cream of the same table have 43 and 27"},
  },
  {
    // By its protein.
    food: "dried whole egg",
    source: "USDA SR28, 01133",
    of: {"pasteurised whole egg": 400},
    but: {
      saturates: "the table's dried egg is of other years",
      carbohydrate: "by difference: a tenth of a per cent in the egg is four in the powder",
    },
  },
  {
    // A large egg: 17 g yolk and 33 g white (SR28 01125, 01124).
    food: "whole egg",
    source: "USDA SR28, 01123",
    of: {"egg yolk": 34, "egg white": 66},
    also: ["cholesterol"],
    but: {
      carbohydrate: "by difference: 3.6 g in the table's yolk where its egg has 0.7",
      saltEquivalent: "142 mg of sodium where the two parts have 126",
    },
  },
  {
    // Cocoa mass by its protein, cocoa butter by its fat.
    food: "sweet dark chocolate 35 %",
    source: "USDA SR28, 19081",
    of: {"cocoa mass": 27.3, "cocoa butter": 19.9, sugar: 51.5},
    but: {
      dietaryFibre: "5.5 g to 3.9 of protein where the table's cocoa mass has 16.6 to 14.3",
      saltEquivalent: "16 mg of sodium: a pinch of salt or of milk",
    },
  },
];

/** Sum of what the parts have. */
const madeOf = ({of}: Made, key: Key) =>
  Object.entries(of).reduce((sum, [name, grams]) => sum + (grams * figure(name, key)) / 100, 0);

/** Difference over what is allowed: a tenth of the table's figure, or what a label may leave out. */
const off = (made: Made, key: Key) =>
  Math.abs(madeOf(made, key) - figure(made.food, key)) /
  Math.max(figure(made.food, key) / 10, ON_A_LABEL[key] ?? 0);

const words = (made: Made, key: Key) => `${madeOf(made, key)} of ${figure(made.food, key)}`;

describe("foods composed of the pantry's rows come within 10 % of their own", () => {
  const whole = MADE.filter(({but}) => !but);

  test("ten and more in each figure that a label prints", () => {
    expect(whole.length).toBeGreaterThanOrEqual(10);
    for (const made of whole)
      for (const key of LABEL_KEYS)
        expect(off(made, key), `${made.food}: ${key}: ${words(made, key)}`).toBeLessThanOrEqual(1);
  });

  test.each(MADE.flatMap((made) => [...LABEL_KEYS, ...(made.also ?? [])].map((key) => ({...made, key}))))(
    "$food: $key ($source)",
    ({key, ...made}) => {
      const reason = made.but?.[key];
      expect(off(made, key) > 1, words(made, key)).toBe(reason !== undefined);
    },
  );

  test("chocolate milk, whole (USDA SR28, 01102, its figures from memory)", () => {
    // Cocoa by its fibre, salt by its sodium.
    const made: Made = {
      food: "",
      source: "",
      of: {"whole milk": 92.5, sugar: 4.9, "cocoa powder 14 %": 2.3, salt: 0.05},
    };
    const printed: Readonly<Partial<Record<Key, number>>> = {
      kilocalories: 83,
      fat: 3.39,
      saturates: 2.1,
      carbohydrate: 9.54,
      totalSugars: 9.54,
      dietaryFibre: 0.8,
      protein: 3.17,
      saltEquivalent: 0.15,
      calcium: 112,
      potassium: 167,
    };
    for (const [key, value] of Object.entries(printed))
      expect(
        Math.abs(madeOf(made, key as Key) - value),
        `${key}: ${madeOf(made, key as Key)}`,
      ).toBeLessThanOrEqual(Math.max(value / 10, ON_A_LABEL[key as Key] ?? 0));
  });
});
