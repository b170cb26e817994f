import * as fc from "fast-check";
import {balance} from "../../lib/balance/balance.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import {InputError} from "../../lib/core/errors.ts";
import {readMeasure} from "../../lib/core/units.ts";
import {answerCsv, answerHtml, answerMarkdown} from "../../lib/io/document/answer-out.ts";
import {pantryJson, readPantryJson} from "../../lib/io/json/ingredient-json.ts";
import {parseJson} from "../../lib/io/json/json.ts";
import {readPantryCsv} from "../../lib/io/csv/pantry-csv.ts";
import {readPricesCsv} from "../../lib/io/csv/prices-csv.ts";
import {readRecipeCsv, recipeCsv} from "../../lib/io/csv/recipe-csv.ts";
import {readRecipeJson} from "../../lib/io/json/recipe-json.ts";
import {recipeHtml, recipeMarkdown} from "../../lib/io/document/recipe-out.ts";
import {fromLabel, INGREDIENT_CLASSES, type IngredientClass} from "../../lib/pantry/from-label.ts";
import {pantryOf} from "../../lib/pantry/pantry.ts";
import {quantityOf} from "../../lib/pantry/quantities.ts";
import type {Label} from "../../lib/pantry/read-label.ts";
import {stockedPantry} from "../../lib/pantry/stocked.ts";

/** Longest that any input may take, ms of processor: a busy machine makes nothing slower by that. */
export const LONGEST = 2000;

/** Longest that a mistake may be in words, characters. */
const LONGEST_MISTAKE = 1500;

/** A shelf of three. */
export const pantry = pantryOf(
  readPantryCsv(
    "name,aliases,water_g,fat_g,msnf_g,sucrose_g,price_per_kg,unit_g,density_g_per_ml,portions\n" +
      "whole milk,milk,88,3.5,8.5,,1,,1.03,cup=244\nsugar,,,,,100,1.2,,,cup=200\negg,,76,12,12,,4,50,,\n",
  ),
);

/** Texts that have broken readers of some kind. */
export const odd = fc.oneof(
  fc.constantFrom(
    "",
    " ",
    "__proto__",
    "constructor",
    "toString",
    "hasOwnProperty",
    "prototype",
    "valueOf",
    "length",
    "NaN",
    "Infinity",
    "-Infinity",
    "1e999",
    "-0",
    "0x10",
    "1,5",
    "1.250",
    "1_000",
    "١٢",
    "½",
    "1/0",
    "=1+1",
    "+A1",
    "-A1",
    "@SUM(A1)",
    "\t=1",
    "＝1",
    "'=1",
    '"',
    '""',
    "'",
    ";",
    ",",
    "\n",
    "\r\n",
    "\0",

    "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "[a](javascript:alert(1))",
    "| a |",
    "${x}",

    "\uFEFF",
    "\u202Eabc",
    "\u2028",
    "\uD800",
    "e\u0301",
    "ﬁ",
    "İ",
    "ß",
    "𝒳",
    "a".repeat(201),
    "9".repeat(400),
    "2 cups",
    "4 eggs",
    "1 1/2 tbsp",
    "3 km",
    "0 g",
    "-1 g",
    "1/0 cup",
    "milk",
    "Sugar",
    "eggs",
  ),
  fc.string({maxLength: 12, unit: "binary"}),
  fc.stringMatching(/^[,;"'=\n\r 0-9a-c.-]{0,20}$/),
);

const oddNumber = fc.oneof(
  fc.constantFrom(0, -0, -1, 1e-320, 1e-9, 0.1, 1, 12, 50, 99.9, 100, 100.6, 1e6, 1e15, 1e308, -1e308),
  fc.double({noNaN: true, noDefaultInfinity: true}),
);
const oddValue: fc.Arbitrary<unknown> = fc.oneof(
  odd,
  oddNumber,
  fc.constantFrom(null, true, [], {}, [[]]),
  fc.jsonValue({maxDepth: 3}),
);

/** Plain data with some values, keys or entries replaced: most of it still makes sense, so that readers get far into it. */
function spoiled(good: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  const wounds = fc.array(fc.tuple(fc.nat(), fc.nat(5), oddValue, odd), {maxLength: 2});
  return fc.tuple(good, wounds).map(([value, wounds]) => {
    const copy: unknown = structuredClone(value);
    // The same odd value may come twice: put inside itself it would be endless.
    for (const [where, how, put, key] of wounds) wound(copy, where, how, structuredClone(put), key);
    return copy;
  });
}

function wound(value: unknown, where: number, how: number, put: unknown, key: string): void {
  const places: [Record<string, unknown>, string][] = [];
  const visit = (node: unknown) => {
    if (typeof node !== "object" || node === null) return;
    for (const name of Object.keys(node)) {
      places.push([node as Record<string, unknown>, name]);
      visit((node as Record<string, unknown>)[name]);
    }
  };
  visit(value);
  const [holder, name] = places[where % Math.max(1, places.length)] ?? [];
  if (!holder || name === undefined) return;
  if (how === 0) delete holder[name];
  else if (how === 1 && !Array.isArray(holder))
    Object.defineProperty(holder, key, {value: put, enumerable: true, configurable: true, writable: true});
  else holder[name] = put;
}

const amount = fc.oneof(fc.integer({min: 0, max: 100}), fc.double({min: 0, max: 100, noNaN: true}));
const limits = fc.oneof(
  fc.record({min: amount}),
  fc.record({max: amount}),
  fc.record({equal: amount}),
  fc.tuple(amount, amount).map(([a, b]) => ({min: Math.min(a, b), max: Math.max(a, b)})),
);
export const goodBrief = fc.record({
  name: fc.constant("mix"),
  batch: fc.integer({min: 100, max: 10_000}),
  ingredients: fc.constantFrom<unknown[]>(
    ["whole milk", "sugar", "egg"],
    ["whole milk", {name: "sugar", max: 200}, {name: "egg", unit: 50}],
    [
      {name: "cream", composition: {milkFat: 40, msnf: 5.4, water: 54.6}, price: 4},
      {name: "syrup", composition: {water: 20, glucoseSyrupSolids: 80, dextroseEquivalent: 42}, price: 2},
      {name: "water", composition: {water: 100}, price: 0, step: 10, properties: {co2: 1}},
    ],
    [
      "milk",
      "sugar",
      {
        name: "date syrup",
        label: {class: "syrup", fat: 0, carbohydrate: 71, sugars: 70, protein: 1, salt: 0.1},
        price: 3,
      },
    ],
    [
      "milk",
      {name: "sugar", minIfUsed: 5, onlyWith: {ingredient: "milk", min: 10}},
      {name: "egg", ratio: {to: "sugar", grams: 0.2}},
    ],
  ),
  targets: fc.record(
    {
      fat: limits,
      sugars: limits,
      totalSolids: limits,
      sweetness: limits,
      ice: fc.constant([{at: -18, max: 50}]),
      hardPhase: fc.constant([{at: -14, min: 10}]),
      heatShock: fc.constant([{from: -18, to: -12, max: 9}]),
      freezingPoint: fc.constant({max: -2}),
    },
    {requiredKeys: []},
  ),
  minimise: fc.constantFrom<unknown>("cost", "fat", {ice: {at: -18}}),
  spread: fc.constantFrom<unknown>(undefined, {weighing: 1}),
  near: fc.constantFrom<unknown>(undefined, undefined, {sugar: 50}),
});

export const goodRecipe = fc.record({
  name: fc.constant("custard"),
  ingredients: fc.constantFrom<unknown[]>(
    [
      {name: "milk", grams: 500},
      {name: "sugar", measure: "1/2 cup"},
      {name: "egg", measure: "4 eggs"},
    ],
    [
      {
        name: "date syrup",
        label: {class: "syrup", fat: 0, carbohydrate: 71, sugars: 70, protein: 1, salt: 0.1, fibre: 2},
        grams: 30,
      },
    ],
    [
      {
        name: "own",
        composition: {water: 50, sucrose: 50},
        grams: 1,
        portions: {cup: 200},
        allergens: ["milk"],
      },
    ],
  ),
});

const goodLabel = fc.record({
  name: fc.constantFrom("milk", "<b>", "toString"),
  fat: fc.double({min: 0, max: 40, noNaN: true}),
  carbohydrate: fc.double({min: 10, max: 30, noNaN: true}),
  sugars: fc.double({min: 0, max: 10, noNaN: true}),
  protein: fc.double({min: 0, max: 20, noNaN: true}),
  salt: fc.double({min: 0, max: 3, noNaN: true}),
});

/** A table as text: good cells with some odd ones, in either dialect, sometimes with its quoting spoiled. */
function tableText(header: readonly string[], rows: readonly (readonly string[])[]): fc.Arbitrary<string> {
  return fc
    .tuple(
      fc.constantFrom(",", ";"),
      fc.constantFrom("\n", "\r\n"),
      fc.array(fc.tuple(fc.nat(), fc.nat(), odd, fc.boolean()), {maxLength: 2}),
      fc.shuffledSubarray([...rows]),
      fc.constantFrom("", "\uFEFF"),
    )
    .map(([delimiter, newline, wounds, body, mark]) => {
      const cells = [header, ...body].map((row) => [...row]);
      const quoted = (cell: string) => (/[",;\r\n]/.test(cell) ? `"${cell.replace(/"/g, '""')}"` : cell);
      const text = cells.map((row) => row.map(quoted));
      for (const [row, column, put, raw] of wounds) {
        const line = text[row % text.length]!;
        line[column % (line.length + 1)] = raw ? put : quoted(put);
      }
      return mark + text.map((row) => row.join(delimiter)).join(newline);
    });
}

const anyText = fc.oneof(
  fc.stringMatching(/^[,;"'=\n\r\t 0-9a-cg_.\-{}[\]:]{0,60}$/),
  fc.string({maxLength: 60, unit: "binary"}),
);
export const csvOf = (header: readonly string[], ...rows: readonly (readonly string[])[]) =>
  fc.oneof({weight: 9, arbitrary: tableText(header, rows)}, {weight: 1, arbitrary: anyText});
export const jsonOf = (good: fc.Arbitrary<unknown>) =>
  fc.oneof(
    {weight: 18, arbitrary: spoiled(good).map((value) => JSON.stringify(value) ?? "")},
    {weight: 1, arbitrary: fc.json()},
    {weight: 1, arbitrary: anyText},
  );

/** No name may become an element of the page. */
function refuseMarkup(html: string): void {
  if (/<(?:script|img|a)[ >]/i.test(html)) throw new Error("a name became markup");
}

function refuseUnprintable(message: string): void {
  if (/[\p{Cc}\p{Cf}\u2028\u2029]/u.test(message))
    throw new Error(`unprintable characters in ${JSON.stringify(message)}`);
}

/** A mistake in words has a place, a problem and a next step, and fits a page. */
function refuseVague(mistake: string): void {
  refuseUnprintable(mistake);
  if (!/^.*\S.*: \S.*\. \S.*\.$/.test(mistake) || mistake.length > LONGEST_MISTAKE)
    throw new Error(`no place, problem or next step, or endless: ${JSON.stringify(mistake)}`);
}

/** A kind of input from outside: how it comes, and everything that is done with it. */
export interface HostileKind {
  readonly name: string;
  readonly input: fc.Arbitrary<string>;
  /** Throws a refusal, or gives it in words as `{mistake}`. */
  readonly use: (text: string) => unknown;
}

/** Every kind of input that the library takes from a file or a form. */
export const HOSTILE_KINDS: readonly HostileKind[] = [
  {
    name: "brief",
    input: jsonOf(goodBrief),
    use: (text) => {
      const answer = balance(parseJson(text, "brief.json") as BriefInput, {pantry});
      answerCsv(answer);
      answerMarkdown(answer);
      refuseMarkup(answerHtml(answer));
    },
  },
  {
    name: "pantry CSV",
    input: csvOf(
      [
        "name",
        "water_g",
        "fat_g",
        "msnf_g",
        "sucrose_g",
        "glucoseSyrupSolids_g",
        "dextrose_equivalent",
        "price_per_kg",
        "portions",
        "allergens",
        "property_co2",
      ],
      ["milk", "88", "3.5", "8.5", "", "", "", "1", "cup=244", "milk", "3"],
      ["syrup", "20", "", "", "", "80", "42", "2", "", "", ""],
      ["sugar", "", "", "", "100", "", "", "1.2", "cup=200; tablespoon=12", "", "1"],
    ),
    use: (text) => {
      const ingredients = readPantryCsv(text, "pantry.csv");
      for (const {composition} of ingredients) quantityOf(composition, "sweetness");
      return pantryOf(ingredients);
    },
  },
  {
    name: "prices CSV",
    input: csvOf(
      ["name", "price_per_kg", "stock_g"],
      ["milk", "1", "500"],
      ["sugar", "1.2", ""],
      ["egg", "", "9"],
    ),
    use: (text) => stockedPantry(pantry, readPricesCsv(text, "prices.csv")),
  },
  {
    name: "recipe CSV",
    input: csvOf(
      ["ingredient", "g", "measure"],
      ["milk", "500", ""],
      ["sugar", "", "2 cups"],
      ["egg", "", "4"],
    ),
    use: async (text) => {
      const recipe = await readRecipeCsv(text, pantry, "recipe.csv");
      recipeCsv(recipe);
      recipeMarkdown(recipe);
      refuseMarkup(recipeHtml(recipe));
    },
  },
  {
    name: "recipe JSON",
    input: jsonOf(goodRecipe),
    use: (text) => readRecipeJson(text, pantry, "recipe.json"),
  },
  {
    name: "pantry JSON",
    input: jsonOf(fc.constant(pantry.ingredients)),
    use: (text) => pantryJson(readPantryJson(text, "pantry.json")),
  },
  {
    name: "label",
    input: fc
      .tuple(
        spoiled(goodLabel),
        fc.oneof(
          {weight: 9, arbitrary: fc.constantFrom<string>(...INGREDIENT_CLASSES)},
          {weight: 1, arbitrary: odd},
        ),
      )
      .map((both) => JSON.stringify(both)),
    use: (text) => {
      const [label, ingredientClass] = JSON.parse(text) as [Label, IngredientClass];
      return fromLabel(label, ingredientClass);
    },
  },
];

/** Loads what the library itself loads on first use (units), so that its loading is not taken for a hang. */
export async function warmUp(): Promise<void> {
  await readMeasure("1 cup", "warm-up");
}

/** What nothing from outside may change. */
const prototypes = [Object.prototype, Array.prototype, Function.prototype, String.prototype, Map.prototype];
const untouched = prototypes.map((prototype) => Reflect.ownKeys(prototype).length);

/**
 * Uses an input.
 *
 * @returns `read` or `refused`
 * @throws Error for anything but an answer or a refusal that names its place in one line, in time, with every prototype as
 *   it was
 */
export async function survive(kind: HostileKind, text: string): Promise<"read" | "refused"> {
  const started = process.cpuUsage();
  let result: "read" | "refused" = "read";
  try {
    const outcome = await kind.use(text);
    if (typeof outcome === "object" && outcome && "mistake" in outcome) {
      result = "refused";
      refuseVague(String(outcome.mistake));
    }
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    result = "refused";
    if (!error.place.trim() || !error.advice)
      throw new Error(`no place or advice: ${error.message}`, {cause: error});
    refuseUnprintable(error.message);
  }
  const took = process.cpuUsage(started).user / 1000;
  if (took > LONGEST) throw new Error(`took ${took.toFixed(0)} ms`);
  if (prototypes.some((prototype, i) => Reflect.ownKeys(prototype).length !== untouched[i]))
    throw new Error("a prototype was changed");
  return result;
}
