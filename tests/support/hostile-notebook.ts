import {InputError} from "../../lib/core/errors.ts";
import * as fc from "fast-check";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {substituteSteps} from "../../lib/balance/substitute/substitute.ts";
import {tradeOffSteps} from "../../lib/balance/trade-off/trade-off.ts";
import {type Recipe, recipeMass} from "../../lib/pantry/recipe.ts";
import {likelyName, nameTargets} from "../../notebooks/kit/replace/legal-names.ts";
import {loadRecipe, type Source} from "../../notebooks/kit/words/load-recipe.ts";
import {attempt} from "../../notebooks/kit/words/mistakes.ts";
import {readRecipeText} from "../../notebooks/kit/words/recipe-text.ts";
import {loadBrief, propertiesOf} from "../../notebooks/kit/trade-offs/brief.ts";
import {
  markFrom,
  numberFrom,
  pickedFrom,
  sharesFrom,
  sourceFrom,
  windowFrom,
} from "../../notebooks/kit/words/address-format.ts";
import {csvOf, goodBrief, goodRecipe, type HostileKind, jsonOf, odd, pantry} from "./hostile.ts";

/** Names of files, most of them of the kind that their text is. */
function fileName(kind: "csv" | "json"): fc.Arbitrary<string> {
  return fc.oneof(
    {
      weight: 9,
      arbitrary: fc.constantFrom(
        `mine.${kind}`,
        `mine.${kind.toUpperCase()}`,
        "mine",
        "<img src=x onerror=alert(1)>",
      ),
    },
    {
      weight: 3,
      arbitrary: fc
        .constantFrom(
          "__proto__",
          "constructor",
          "\u202Efdp",
          "a\nb",
          "",
          "a".repeat(250),
          "</script>",
          "..\\..\\a",
        )
        .map((name) => `${name}.${kind}`),
    },
    {weight: 1, arbitrary: fc.constantFrom("mine.csv", "mine.json")},
    {
      weight: 1,
      arbitrary: fc
        .string({minLength: 1, maxLength: 20, unit: "grapheme"})
        .filter((name) => name.trim() !== ""),
    },
  );
}

/** Deeply nested, or with a mistake far down. */
const deep = fc
  .tuple(fc.constantFrom("[", '{"a":', '{"__proto__":', '{"ingredients":['), fc.nat(60))
  .map(([open, depth]) => open.repeat(depth));

/** A file of the cook's own: a mark in front, mixed line endings, signs that no editor shows. */
function fileOf(kind: "csv" | "json", text: fc.Arbitrary<string>): fc.Arbitrary<Source> {
  const mark = fc.oneof(
    {weight: 12, arbitrary: fc.constantFrom("", "\uFEFF")},
    {weight: 1, arbitrary: fc.constantFrom("\0", "\uFFFD", "\uFEFF\uFEFF", " ")},
  );
  return fc
    .tuple(fileName(kind), mark, text, fc.constantFrom("\n", "\n", "\r\n", "\n\r\n", "\r"))
    .map(([file, before, body, newline]) => {
      let line = 0;
      return {file, text: before + body.replace(/\n/g, (found) => (line++ % 2 ? newline : found))};
    });
}

const recipeCsv = csvOf(
  ["ingredient", "g", "measure", "percent"],
  ["milk", "500", "", "50"],
  ["sugar", "", "2 cups", ""],
  ["egg", "", "4", ""],
  ["milk", "1e3", "", "1"],
);
/** Hostile files as *replace an ingredient* takes them. */
export const recipeSource: fc.Arbitrary<Source> = fc.oneof(
  {weight: 6, arbitrary: fileOf("csv", recipeCsv)},
  {weight: 6, arbitrary: fileOf("json", jsonOf(goodRecipe))},
  {weight: 1, arbitrary: fileOf("json", deep)},
);

/** Hostile files as *explore trade-offs* takes them. */
export const briefSource: fc.Arbitrary<Source> = fc.oneof(
  {weight: 9, arbitrary: fileOf("json", jsonOf(goodBrief))},
  {weight: 2, arbitrary: fileOf("json", jsonOf(goodRecipe))},
  {weight: 2, arbitrary: fileOf("csv", recipeCsv)},
  {weight: 1, arbitrary: fileOf("json", deep)},
);

const inJson = (source: fc.Arbitrary<unknown>) => source.map((value) => JSON.stringify(value));

/** What *replace an ingredient* does with a file before it searches. */
async function askReplace(source: Source): Promise<unknown> {
  const read = await loadRecipe(source, pantry);
  if ("mistake" in read) return read;
  const recipe: Recipe = read.value;
  if (!recipe.lines.every(({grams}) => Number.isFinite(grams) && grams >= 0))
    throw new Error("a weight that is none");
  return attempt(() => {
    const name = likelyName(recipe, 30);
    substituteSteps(recipe, {
      without: recipe.lines.find(({grams}) => grams > 0)?.ingredient.name ?? "",
      from: pantry.ingredients,
      freezer: -18,
      ...(name && {legalName: nameTargets(name, recipe)}),
    }).next();
    return recipeMass(recipe);
  });
}

/** What *explore trade-offs* does with a file before it searches. */
async function askTradeOff(source: Source): Promise<unknown> {
  const read = await loadBrief(source, {pantry, foods: pantry, priced: new Set()});
  if ("mistake" in read) return read;
  return attempt(() => {
    const brief = readBrief({...read.value, freezer: -18}, pantry, read.value.name ?? "brief");
    for (const property of ["cost", "sweetness", ...propertiesOf(read.value)])
      tradeOffSteps(brief, {x: {minimise: "fat"}, y: {minimise: property}}).next();
    return brief;
  });
}

const KEYS = [
  "recipe",
  "recipeFile",
  "x",
  "fat",
  "at",
  "kept",
  "use",
  "freezer",
  "sweepRange",
  "__proto__",
  "toString",
];

/** A piece of an address: well formed, or broken in some way. */
const piece = fc.oneof(
  odd.map((text) => new URLSearchParams({"": text}).toString().slice(1)),
  fc.constantFrom(
    "8..10",
    "-5..",
    "10..8",
    "1e400..",
    "..",
    "3,4",
    "3",
    "999999",
    "50,50",
    "50,30,20",
    "Infinity,-Infinity",
    "100..200@3 milk",
    "..@ %F0%9F",
    "%",
    "%E0%A4%A",
    "%00",
    "%FF%FE",
    "+",
    "&&==",
    "#",
  ),
  fc
    .tuple(
      fc.constantFrom(".", "1", "1,", "%", "1.", "0..", "-", "%C3%A9"),
      fc.integer({min: 1, max: 30_000}),
    )
    .map(([sign, count]) => sign.repeat(count)),
  fc.string({maxLength: 20, unit: "binary"}),
);
const KEPT_FILE = "recipeFile";
const pairs = fc
  .array(fc.tuple(fc.oneof(fc.constantFrom(...KEYS), piece), piece), {maxLength: 8})
  .map((all) => all.map(([key, value]) => `${key}=${value}`));

/** Addresses that a page may be opened with: pieces of a state, and in some of them a file of the cook's own. */
export const hostileAddress: fc.Arbitrary<string> = fc
  .tuple(pairs, fc.option(recipeSource))
  .map(([all, own]) => {
    if (!own) return all.join("&");
    const kept = [own.file, own.text].map((text) => new URLSearchParams({[KEPT_FILE]: text}).toString());
    return [...kept, "recipe=own", ...all].join("&");
  });

/** Every reader of an address on everything that it holds. */
async function readAddress(hash: string): Promise<unknown> {
  const state = new URLSearchParams(hash);
  for (const [, text] of state) {
    const number = numberFrom(text, -28, -8);
    if (number !== undefined && !(number >= -28 && number <= -8)) throw new Error(`number ${number}`);
    const {min = -Infinity, max = Infinity} = windowFrom(text) ?? {};
    if (!(min <= max)) throw new Error(`window ${min}..${max}`);
    const mark = markFrom(text);
    if (mark.at === "map" && !(mark.row < 1000 && mark.column < 1000)) throw new Error("a mark off the map");
    const shares = sharesFrom(text) ?? [1];
    if (!(Math.abs(shares.reduce((total, share) => total + share, 0) - 1) < 1e-9))
      throw new Error("shares not of a whole");
    const picked = pickedFrom(text);
    const numbers = [picked?.min, picked?.max, picked?.price];
    if (
      !numbers.every(
        (value) => value === undefined || (typeof value === "number" && Number.isFinite(value) && value >= 0),
      )
    )
      throw new Error("a limit that is none");
  }
  const own = sourceFrom(state.getAll(KEPT_FILE));
  return own && loadRecipe(own, pantry);
}

const typedLine = fc.oneof(
  fc.constantFrom(
    "500 g milk",
    "2 cups sugar @ 1.2",
    "4 egg @ 3 for 600 g",
    "1 g milk @ 1.2.3",
    "1 g milk @ 2/0kg",
    "1 g milk @ 9e9",
  ),
  fc.tuple(fc.constantFrom("1", "1 g milk", "½", "1/0", ""), odd).map((parts) => parts.join(" ")),
  fc
    .tuple(
      fc.constantFrom("1", "1 g milk", "1 x @"),
      fc.constantFrom(" ", "\t", "1", ".", ",", "@", "@ 1", "\u00A0", "/"),
      fc.nat(3000),
      fc.constantFrom("", "x", "\u2028y", "@", "@1", "\r1 g milk"),
    )
    .map(([start, sign, count, end]) => start + sign.repeat(count) + end),
);

/** A recipe as typed into a page, or as an address brings it. */
async function readTyped(text: string): Promise<void> {
  const {lines, packs, asked} = await readRecipeText(text, pantry);
  const [question] = asked.filter(({leftOut}) => leftOut);
  for (const {ingredient, grams} of lines) {
    if (!(grams > 0 && grams < Infinity)) throw new Error(`${grams} g`);
    const {price} = ingredient;
    if (price !== undefined && !(price >= 0 && price < Infinity)) throw new Error(`price ${price}`);
  }
  for (const {price, grams} of Object.values(packs))
    if (!(price >= 0 && price < Infinity && grams > 0 && grams < Infinity))
      throw new Error(`a pack of ${grams} g at ${price}`);
  // A line that is asked about and left out is what a refusal is elsewhere: short, and with a word to the cook.
  for (const {text: said} of asked)
    if (!said.trim() || said.length > 1000) throw new Error(`a question of ${said.length} characters`);
  if (question) throw new InputError("recipe", question.text, undefined, "answer it");
}

const fromJson = (use: (source: Source) => Promise<unknown>) => (text: string) =>
  use(JSON.parse(text) as Source);

/** Every kind of input that the notebooks take: files, addresses and typed recipes. */
export const NOTEBOOK_KINDS: readonly HostileKind[] = [
  {name: "recipe file on a page", input: inJson(recipeSource), use: fromJson(askReplace)},
  {name: "brief file on a page", input: inJson(briefSource), use: fromJson(askTradeOff)},
  {name: "address of a page", input: hostileAddress, use: readAddress},
  {
    name: "recipe typed on a page",
    input: fc.array(typedLine, {maxLength: 4}).map((lines) => lines.join("\n")),
    use: readTyped,
  },
];

/** Files of 5 MB: one short piece over and over, after a beginning that makes sense. */
export const HOSTILE_LARGE: HostileKind = {
  name: "file of 5 MB on a page",
  input: fc
    .tuple(
      fc.constantFrom("mine.csv", "mine.json"),
      fc.constantFrom("", "ingredient,g\n", '{"name":"a","ingredients":[', '{"name":"', "[", "\uFEFF"),
      fc.constantFrom(
        "milk,1\n",
        '"',
        ",",
        ";",
        "[",
        "{}",
        '{"name":"milk","grams":1},',
        "\0",
        "\r",
        "\\",
        "é",
        " ",
        "1",
        '""\n',
        "::",
      ),
      fc.constantFrom(4_900_000, 5_000_001),
    )
    .map((parts) => JSON.stringify(parts)),
  use: async (text) => {
    const [file, start, again, size] = JSON.parse(text) as [string, string, string, number];
    const source = {file, text: (start + again.repeat(size / again.length)).slice(0, size)};
    return loadBrief(source, {pantry, foods: pantry, priced: new Set()});
  },
};
