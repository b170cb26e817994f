import {mkdtempSync, readFileSync, rmSync, writeFileSync} from "node:fs";
import {tmpdir} from "node:os";
import {join} from "node:path";
import {fileURLToPath} from "node:url";
import {afterAll, describe, expect, test} from "vitest";
import {main} from "../../lib/command/main.ts";
import {BY_HAND} from "../support/labels-by-hand.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "mixwright-label-"));
afterAll(() => rmSync(folder, {recursive: true, force: true}));

async function mixwright(...args: readonly string[]) {
  let [stdout, stderr] = ["", ""];
  const code = await main(args, {
    read: (path) => readFileSync(path),
    write: (path, text) => writeFileSync(path, text),
    say: (text) => (stdout += text),
    note: (text) => (stderr += text),
    pantry: join(root, "datasets/ingredients.csv"),
    package: join(root, "package.json"),
  });
  return {code, stdout, stderr};
}

const pear = join(root, "datasets/demo/recipe-pear-and-ginger.json");
const KEYS = [
  "energyKj",
  "energyKcal",
  "fat",
  "saturates",
  "carbohydrate",
  "sugars",
  "fibre",
  "protein",
  "salt",
];

describe("sheet --sticker", () => {
  const tub = [
    "sheet",
    pear,
    "--sticker",
    "90x60",
    "--net",
    "500ml",
    "--made",
    "2026-07-01",
    "--until",
    "2027-01-31",
  ];
  test("prints the words, allergens in capitals, and says what a prepacked tub still needs", async () => {
    const {code, stdout} = await mixwright(...tub, "--promise", "pear", "--lot", "7");
    expect(code).toBe(0);
    expect(stdout).toBe(`Pear and ginger (invented demo), 500 ml
Ingredients: whole MILK, pear 20 %, cream (MILK), dried glucose syrup, sugar, dextrose, skimmed MILK powder, EGG yolk, fresh ginger, stabiliser (locust bean gum).
Keep frozen at −18 °C or below.
Best before 31 January 2027
Made 1 July 2026 · L7

Not on it, though a prepacked tub needs it: name and address of the maker or seller.

Check with your authority; this is no legal advice.
`);
  });
  test("writes a page of its size and a picture, with the cook's own names", async () => {
    const [page, picture] = [join(folder, "tub.html"), join(folder, "tub.svg")];
    const {code, stdout, stderr} = await mixwright(
      ...tub,
      "--print",
      "fresh ginger=stem ginger (ginger, sugar)",
      "--maker",
      "Orchard & Co",
      "--html",
      page,
      "--svg",
      picture,
    );
    expect([code, stdout]).toEqual([0, ""]);
    expect(stderr).toBe(`wrote ${page}\nwrote ${picture}\n`);
    expect(readFileSync(page, "utf8")).toContain("@page {size: 90mm 60mm; margin: 0}");
    for (const text of [readFileSync(page, "utf8"), readFileSync(picture, "utf8")]) {
      expect(text).toContain('viewBox="0 0 90 60"');
      expect(text).toContain("Orchard &amp; Co");
      expect(text).toMatch(/stem ginger \(gin/);
    }
  });
  test("the panel of each law", async () => {
    const panel = join(folder, "panel.html");
    await mixwright("sheet", pear, "--panel", panel, "--law", "us", "--net", "1l");
    expect(readFileSync(panel, "utf8")).toMatch(
      /Nutrition Facts.*about 6 servings per container.*Calories.*260.*Total Fat.*10g/s,
    );
    await mixwright("sheet", pear, "--panel", panel, "--portion", "80");
    // By hand: fat 7.00 g in 100 g, 5.6 g in 80 g, 8 % of 70 g.
    expect(readFileSync(panel, "utf8")).toMatch(/fat<\/th><td>7\.0 g<\/td><td>5\.6 g<\/td><td>8 %/);
  });
  test.each([
    [["--sticker", "90"], '--sticker: no size (got "90"); give width x height in mm, e.g. 90x60'],
    [["--sticker", "0x60"], '--sticker: out of range (got "0x60"); give 20 to 300 mm each way'],
    [
      ["--sticker", "40x30"],
      'sticker: too small for its words in letters of 1.2 mm (got "40 x 30 mm"); take at least 40 x',
    ],
    [
      ["--sticker", "90x60", "--net", "0 ml"],
      '--net: no amount (got "0 ml"); give it in ml, l, g or kg, e.g. 500ml',
    ],
    [
      ["--sticker", "90x60", "--net", "500 ml", "--portion", "900"],
      "--portion: more than the tub holds (got 900); give at most 433 g",
    ],
    [
      ["--sticker", "90x60", "--made", "2026-07-01", "--until", "2026-06-30"],
      '--until: before the day of making (got "2026-06-30"); give a day from 2026-07-01 on',
    ],
    [
      ["--sticker", "90x60", "--made", "yesterday"],
      '--made: no date (got "yesterday"); write year, month and day',
    ],
    [["--sticker", "90x60", "--law", "fr"], '--law: unknown (got "fr"); use EU, GB, US'],
    [
      ["--sticker", "90x60", "--promise", "peach"],
      '--promise: not in the recipe (got "peach"); did you mean "pear"',
    ],
    [
      ["--sticker", "90x60", "--print", "pear"],
      '--print: no name and what to print (got "pear"); write NAME=PRINTED, e.g. "pear=sugar"',
    ],
    [
      ["--sticker", "90x60", "--csv", "x.csv"],
      "--csv: not for a sticker; leave it out, or leave out --sticker",
    ],
    [["--made", "2026-07-01"], "--made: for a sticker alone; add its size, e.g. --sticker 90x60"],
    [["--svg", "x.svg"], "--svg: for a sticker alone"],
  ])("%j is refused in a line", async (options, words) => {
    const {code, stderr} = await mixwright("sheet", pear, ...options);
    expect(code).toBe(2);
    expect(stderr).toContain(words);
    expect(stderr.trimEnd()).not.toContain("\n");
  });
});

describe("--json has the nutrition of 100 g", () => {
  test("of a sheet and of a sticker, figure by figure", async () => {
    const {fat, saturates, sodium} = BY_HAND["recipe-pear-and-ginger"];
    for (const more of [[], ["--sticker", "90x60"]]) {
      const {nutrition} = JSON.parse((await mixwright("sheet", pear, "--json", ...more)).stdout);
      expect(Object.keys(nutrition)).toEqual(KEYS);
      // Within what better tables may move; the stated foods of the hand's label have it exactly.
      expect(nutrition.fat / fat).toBeCloseTo(1, 1);
      expect(nutrition.saturates / saturates).toBeCloseTo(1, 1);
      expect(nutrition.salt / ((2.5 * sodium) / 1000)).toBeCloseTo(1, 1);
    }
  });
  test("of a balanced mix, without what nobody knows", async () => {
    const path = join(folder, "brief.json");
    const butter = {name: "our fat", price: 1, composition: {otherFat: 90, water: 10}};
    writeFileSync(
      path,
      JSON.stringify({
        ingredients: [butter, {name: "sugar", price: 1}, {name: "water", price: 0}],
        targets: {fat: {equal: 9}, sugars: {equal: 20}},
      }),
    );
    const {nutrition} = JSON.parse((await mixwright("balance", path, "--json")).stdout);
    // 9 g fat and 20 g sugar: 9 x 37 + 20 x 17 = 673 kJ, 9 x 9 + 20 x 4 = 161 kcal.
    expect(nutrition.energyKj).toBeCloseTo(673, 6);
    expect(nutrition.energyKcal).toBeCloseTo(161, 6);
    expect(Object.keys(nutrition)).toEqual(KEYS.filter((key) => key !== "saturates" && key !== "salt"));
  });
  test("of each way round an ingredient", async () => {
    const {stdout} = await mixwright("replace", pear, "--without", "skimmed milk powder", "--json");
    const {nutrition, alternatives} = JSON.parse(stdout);
    expect(Object.keys(nutrition)).toEqual(KEYS);
    expect(alternatives.length).toBeGreaterThan(0);
    for (const one of alternatives) expect(one.nutrition.energyKj).toBeGreaterThan(100);
  });
});
