import {readFileSync} from "node:fs";
import {describe, expect, test} from "vitest";
import {ingredientsCsv} from "../../datasets/tools/make-ingredients.ts";
import {includedAsModule} from "../../datasets/tools/tabulate.ts";
import {InputError} from "../../lib/core/errors.ts";
import {readCsv} from "../../lib/io/csv/csv.ts";
import {readPantryCsv} from "../../lib/io/csv/pantry-csv.ts";
import {readPricesCsv} from "../../lib/io/csv/prices-csv.ts";
import {type Allergen, ALLERGENS, GRADES, type Ingredient} from "../../lib/pantry/ingredient.ts";
import {includedPantry} from "../../lib/pantry/included.ts";
import {findIngredient, nameKey, pantryOf} from "../../lib/pantry/pantry.ts";
import {PARTS, type Part} from "../../lib/pantry/parts.ts";
import {quantityOf} from "../../lib/pantry/quantities.ts";
import {within} from "../support/within.ts";

const data = (name: string) => readFileSync(new URL(`../../datasets/${name}`, import.meta.url), "utf8");
const text = data("ingredients.csv");
const ingredients = readPantryCsv(text, "ingredients.csv");
const rows = readCsv(text, "ingredients.csv").rows;
const pantry = pantryOf(ingredients);
const find = (name: string) => findIngredient(pantry, name, "test");
const foods = new Map(
  readCsv(data("tools/food-tables.csv")).rows.map(({cells}) => [cells.get("food"), cells]),
);

/** Sum of some parts of an ingredient, g per 100 g. */
const grams = (ingredient: Ingredient, ...parts: Part[]) =>
  parts.reduce((total, part) => total + (ingredient.composition[part] ?? 0), 0);

/** Names of the ingredients of which that is true. */
const namesWhere = (holds: (ingredient: Ingredient) => boolean) =>
  ingredients.filter(holds).map(({name}) => name);

/** Ingredients whose parts come from one published food, with that food. */
const fromTables = ingredients.flatMap((ingredient, i) => {
  const cells = rows[i]!.cells;
  const food = foods.get(`${cells.get("source")} ${cells.get("source_id")?.split(";")[0]}`);
  return food ? [{name: ingredient.name, ingredient, food, rule: cells.get("rule") ?? ""}] : [];
});

describe("the included pantry", () => {
  test("is ingredients.csv, read", async () => {
    expect(includedPantry()).toEqual(pantry);
    const module = readFileSync(new URL("../../lib/pantry/included-table.ts", import.meta.url), "utf8");
    expect(await includedAsModule()).toBe(module);
  });
});

describe("ingredients.csv", () => {
  test("is what the published tables and the named rules give", () => {
    expect(ingredientsCsv()).toBe(text);
  });

  test("holds at least 130 ingredients, most of them from published tables", () => {
    expect(ingredients.length).toBeGreaterThanOrEqual(130);
    expect(fromTables.length).toBeGreaterThanOrEqual(130);
  });

  test("has in every row parts that are not negative and sum to 100 g", () => {
    for (const ingredient of ingredients) within(grams(ingredient, ...PARTS), 100, 0.01, ingredient.name);
    expect(namesWhere((ingredient) => PARTS.some((part) => grams(ingredient, part) < 0))).toEqual([]);
  });

  test("has in every row a group, a known source and grade, known allergens, and a dextrose equivalent for syrup solids", () => {
    const sources = new Set(readCsv(data("sources.csv")).rows.map(({cells}) => cells.get("key")));
    expect(namesWhere(({source}) => !sources.has(source))).toEqual([]);
    expect(namesWhere(({grade}) => !GRADES.includes(grade!))).toEqual([]);
    expect(namesWhere(({allergens = []}) => allergens.some((word) => !ALLERGENS.includes(word)))).toEqual([]);
    expect(namesWhere(({group}) => !/^[a-z ]+$/.test(group ?? ""))).toEqual([]);
    const withSyrup = namesWhere((ingredient) => grams(ingredient, "glucoseSyrupSolids") > 0);
    expect(namesWhere(({composition}) => composition.dextroseEquivalent !== undefined)).toEqual(withSyrup);
  });

  test("says milk, eggs, nuts, peanuts and soya wherever they are (Regulation (EU) 1169/2011, Annex II)", () => {
    const isOf: Partial<Record<Allergen, (ingredient: Ingredient) => boolean>> = {
      milk: (ingredient) => grams(ingredient, "milkFat", "milkProtein", "lactose") > 0.1,
      eggs: ({name, ...ingredient}) => /\begg/.test(name) || (ingredient.composition.eggFat ?? 0) > 0,
      nuts: ({name}) => /almond(?! liqueur)|hazelnut|walnut|pistachio|pecan|macadamia|cashew/.test(name),
      peanuts: ({name}) => name.includes("peanut"),
      soya: ({name}) => name.includes("soya"),
      gluten: ({name}) => /\boat|(?<!gluten-free .*)biscuit|cracker/.test(name),
    };
    for (const [allergen, holds] of Object.entries(isOf)) {
      const unmarked = namesWhere((it) => holds(it) && !it.allergens?.includes(allergen as Allergen));
      expect(unmarked, allergen).toEqual([]);
      expect(namesWhere(holds)).not.toEqual([]);
    }
  });

  test("takes up every food of the tables: figures without a row on the shelf reach nobody", () => {
    const shelf = readCsv(data("tools/shelf.csv")).rows;
    const used = new Set(shelf.flatMap(({cells}) => [cells.get("food"), cells.get("sugars_from")]));
    expect([...foods.keys()].filter((food) => !used.has(food))).toEqual([]);
  });

  test("attributes the tables whose licences ask for it", () => {
    const sources = new Map(readCsv(data("sources.csv")).rows.map(({cells}) => [cells.get("key"), cells]));
    expect(sources.get("cofid-2021")?.get("attribution")).toContain("Open Government Licence v3.0");
    expect(sources.get("ciqual-2020")?.get("attribution")).toContain("Anses");
    expect(fromTables.filter(({food}) => !sources.get(food.get("source"))?.has("licence"))).toEqual([]);
  });
});

describe("the label's proximates, from the table that each row cites", () => {
  test.each(fromTables)("$name", ({name, ingredient, food, rule}) => {
    const printed = (column: string) => Number(food.get(column) ?? 0);
    const byDifference = food.get("carbohydrate_basis") === "by difference";
    const fats = grams(
      ingredient,
      "milkFat",
      "eggFat",
      "cocoaButter",
      "coconutFat",
      "otherFat",
      "emulsifier",
    );
    within(fats, printed("fat_g"), name === "coconut oil" ? 0.9 : 0.001, `${name}: fat`);
    within(grams(ingredient, "milkProtein", "otherProtein", "gelatine"), printed("protein_g"), 0.001, name);
    // Stated in place of the table's, with its source, in the rule.
    const stated = /([\w, ]+) of [\w-]+ /.exec(rule)?.[1] ?? "";
    if (!rule.includes("alcohol"))
      within(grams(ingredient, "alcohol"), printed("alcohol_g"), 0.001, `${name}: alcohol`);
    const acids = grams(ingredient, "organicAcids");
    if (!stated.includes("fibre")) {
      // Fibre gives way to acids where the table's figures exceed 100 g with them.
      const giving = rule.includes("gives way") ? Math.min(acids, printed("fibre_g") / 2) : 0;
      within(
        grams(ingredient, "fibre"),
        printed("fibre_g") - giving / 2,
        giving / 2 + 0.001,
        `${name}: fibre`,
      );
    }
    // CoFID, CIQUAL and Fineli do not sum to 100 g: the difference is in the water (in syrups, in the other solids).
    const sum = [
      "water",
      "protein",
      "fat",
      "carbohydrate",
      "ash",
      "alcohol",
      ...(byDifference ? [] : ["fibre"]),
    ]
      .map((column) => printed(`${column}_g`))
      .reduce((total, value) => total + value, 0);
    const gap = Math.abs(100 - sum);
    const alcohol = Math.abs(printed("alcohol_g") - grams(ingredient, "alcohol"));
    const withoutAsh = food.has("ash_g") ? 0 : 0.25 * printed("protein_g") + 0.0025 * printed("sodium_mg");
    const printedAcids = food.has("organic_acids_g") || stated.includes("organicAcids") ? acids : 0;
    const loose = gap + withoutAsh + printedAcids;
    if (food.has("water_g"))
      within(grams(ingredient, "water"), printed("water_g"), 0.4 + loose + alcohol, `${name}: water`);
    // Carbohydrate and ash are what is left: by difference includes fibre and acids, available does not.
    const others = PARTS.filter(
      (part) => !/Fat$|Butter$|Protein$|^(water|alcohol|emulsifier|gelatine)$/.test(part),
    );
    const rest = grams(ingredient, ...others);
    const printedRest =
      printed("carbohydrate_g") + printed("ash_g") + (byDifference ? 0 : printed("fibre_g") + printedAcids);
    within(rest, printedRest, 0.4 + loose, `${name}: carbohydrate and ash`);
  });

  test("has the measured sugars, where they do not exceed the carbohydrate by difference", () => {
    // Left out: milk and eggs, whose sugars follow a rule; foods whose sugars had to be scaled down to the carbohydrate;
    // jam, whose sugars are those of another table, of a jam with more sugar; and milk jam, whose lactose follows from its protein.
    const held = fromTables.filter(
      ({name, food, rule}) =>
        food.get("sugars_basis") === "measured" &&
        !/^(dairy|egg)|scaled/.test(rule) &&
        !["jam", "dulce de leche"].includes(name),
    );
    expect(held.length).toBeGreaterThan(60);
    for (const {name, ingredient, food} of held) {
      const sugars = Number(food.get("sugars_g"));
      within(
        quantityOf(ingredient.composition, "totalSugars"),
        sugars,
        0.05 * sugars + 0.3,
        `${name}: sugars`,
      );
    }
  });
});

describe("the pantry against published figures", () => {
  test("has hydrates by their formula (IUPAC standard atomic weights)", () => {
    const [H, C, O] = [1.008, 12.011, 15.999];
    const water = 2 * H + O;
    const dextrose = 6 * C + 12 * H + 6 * O;
    const lactose = 12 * C + 22 * H + 11 * O;
    within(
      grams(find("dextrose"), "water"),
      (100 * water) / (dextrose + water),
      0.001,
      "dextrose monohydrate",
    );
    within(
      grams(find("milk sugar"), "water"),
      (100 * water) / (lactose + water),
      0.001,
      "lactose monohydrate",
    );
    const citric = 6 * C + 8 * H + 7 * O;
    within(
      grams(find("citric acid monohydrate"), "water"),
      (100 * water) / (citric + water),
      0.001,
      "citric acid monohydrate",
    );
  });

  test("has milk within the range of solids-not-fat (H. D. Goff, Ice Cream Technology: 7.9 to 10.0, mean 8.8)", () => {
    for (const name of ["whole milk", "semi-skimmed milk", "2 % milk", "skimmed milk"])
      within(quantityOf(find(name).composition, "msnf"), (7.9 + 10) / 2, (10 - 7.9) / 2, `${name}: MSNF`);
    within(quantityOf(find("whole milk").composition, "msnf"), 8.8, 0.25, "whole milk: MSNF");
  });

  test("has the cream of the mix problems (H. D. Goff: 40 % fat, 5.4 % MSNF)", () => {
    const cream = find("cream 40 %").composition;
    within(quantityOf(cream, "fat"), 40, 1e-9, "fat");
    within(quantityOf(cream, "msnf"), 5.4, 1e-3, "MSNF");
  });

  test("has creams of the table near the skim-portion rule (H. D. Goff: MSNF = 0.09 x (100 - fat))", () => {
    for (const name of ["half and half", "cream 36 %", "cream 31 %", "clotted cream"]) {
      const {composition} = find(name);
      const fat = quantityOf(composition, "fat");
      within(quantityOf(composition, "msnf"), 0.09 * (100 - fat), 0.9, name);
    }
  });

  test("has spirits of their strength (ethanol 0.7893 g/ml at 20 °C, CRC Handbook)", () => {
    for (const [name, strength] of [
      ["vodka", 40],
      ["whisky", 43],
      ["spirit 50 % vol", 50],
    ] as const) {
      const {composition, density} = find(name);
      within(((composition.alcohol ?? 0) * (density ?? NaN)) / 0.7893, strength, 0.8, name);
    }
  });

  test("has densities that a kitchen would find (1 l of oil 0.91 to 0.93 kg, of honey 1.40 to 1.45 kg; common practice, no source)", () => {
    expect(namesWhere(({density}) => density !== undefined && !(density > 0.9 && density < 1.5))).toEqual([]);
    within(find("olive oil").density ?? NaN, 0.92, 0.01, "olive oil");
    within(find("honey").density ?? NaN, 1.425, 0.025, "honey");
    within(find("milk").density ?? NaN, 1.03, 0.003, "milk");
  });

  test("has an egg that is its white and its yolk (USDA SR28, NDB 01123 to 01125, large)", () => {
    const [egg, yolk, white] = [find("egg"), find("yolk"), find("egg white")];
    expect([egg.unit, yolk.unit, white.unit]).toEqual([50, 17, 33]);
    const together = (17 * grams(yolk, "eggFat") + 33 * grams(white, "eggFat")) / 50;
    within(together, grams(egg, "eggFat"), 0.5, "fat of an egg");
  });
});

describe("findIngredient", () => {
  test.each([
    ["WHOLE   milk", "whole milk"],
    ["milk, whole", "whole milk"],
    ["Creme-Fraiche", "crème fraîche"],
    ["cream 40%", "cream 40 %"],
    ["40 % cream", "cream 40 %"],
    ["Heavy Cream", "cream 36 %"],
    ["double cream", "cream 48 %"],
    ["smp", "skimmed milk powder"],
    ["nonfat dry milk", "skimmed milk powder"],
    ["caster sugar", "sucrose"],
    ["corn syrup", "glucose syrup 42 DE"],
    ["glucose syrup de60", "glucose syrup 62 DE"],
    ["pears", "pear"],
    ["oat milk", "oat drink"],
    ["hazelnut paste", "roasted hazelnuts"],
    ["lbg", "locust bean gum"],
    ["E 410", "locust bean gum"],
  ])("finds %j", (typed, name) => {
    expect(find(typed).name).toBe(name);
  });

  test("finds every ingredient by its name, and no alias repeats a name", () => {
    for (const ingredient of ingredients) {
      expect(find(ingredient.name)).toBe(ingredient);
    }
    const repeats = ({aliases = []}: Ingredient) =>
      aliases.some((alias) => pantry.byName.has(nameKey(alias)));
    expect(namesWhere(repeats)).toEqual([]);
  });

  test("suggests the nearest names", () => {
    expect(() => find("hazlenuts")).toThrow(/did you mean "hazelnuts"/);
    expect(() => find("skimed milk powdr")).toThrow(/"skimmed milk powder"/);
    expect(() => find("zzzzqqqq")).toThrow(/add it to the pantry/);
    expect(() => find("")).toThrow(InputError);
  });

  test("asks which of several is meant", () => {
    expect(() => find("cream")).toThrow(
      /say which: "cream 18 %" or "cream 36 %" or "cream 40 %" or "cream 48 %"/,
    );
    expect(() => find("glucose")).toThrow(/say which: "dextrose monohydrate" or "glucose syrup 42 DE"/);
  });

  test("refuses two ingredients of one name", () => {
    const {composition} = find("water");
    expect(() =>
      pantryOf([
        {name: "Milk powder", composition},
        {name: "powder, milk", composition},
      ]),
    ).toThrow(/two ingredients are called "Milk powder"/);
  });

  test("keeps odd names apart from the language's own", () => {
    const {composition} = find("water");
    const odd = ["__proto__", "result", "constructor", "<img src=x>", "???"].map((name) => ({
      name,
      composition,
    }));
    for (const ingredient of odd)
      expect(findIngredient(pantryOf(odd), ingredient.name, "x")).toBe(ingredient);
    expect(() => find("__proto__")).toThrow(/unknown ingredient/);
  });
});

describe("the demo's prices", () => {
  test("name ingredients of the pantry, and say that they are invented", () => {
    const entries = readPricesCsv(data("demo/prices.csv"), "prices.csv");
    expect(entries.length).toBeGreaterThanOrEqual(50);
    for (const {name, place} of entries) expect(findIngredient(pantry, name, place).name).toBe(name);
    expect(entries.filter(({price, stock}) => !(price! > 0 && stock! > 0))).toEqual([]);
    expect(data("demo/about.txt")).toContain("invented");
  });
});
