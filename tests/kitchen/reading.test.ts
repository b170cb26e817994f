import {readFileSync} from "node:fs";
import {csvParse} from "d3-dsv";
import {describe, expect, test} from "vitest";
import {normsAsModule} from "../../datasets/tools/tabulate.ts";
import {initialFreezingPoint} from "../../lib/freezing/ice.ts";
import {scoopTemperature} from "../../lib/freezing.ts";
import {
  findIngredient,
  type Ingredient,
  quantityOf,
  readComposition,
  type Recipe,
  recipeComposition,
} from "../../lib/index.ts";
import {describeRecipe, KINDS} from "../../lib/substitute.ts";
import {NORM_TABLE} from "../../lib/kitchen/reading/norm-table.ts";
import {COOKS} from "../support/changes.ts";
import {dataset, realPantry} from "../support/pantry.ts";

const recipe = (name: string, grams: Readonly<Record<string, number>>): Recipe => ({
  name,
  lines: Object.entries(grams).map(([one, amount]) => ({
    ingredient: findIngredient(realPantry, one),
    grams: amount,
  })),
});

/** A published mix as a recipe of its parts. */
function ofParts(name: string, parts: Readonly<Record<string, number>>, overrun: number): Recipe {
  const {dextroseEquivalent = 0, ...masses} = parts;
  const solids = Object.values(masses).reduce((a, b) => a + b, 0);
  const lines = Object.entries({...masses, water: 100 - solids}).map(([part, grams]) => {
    const syrup = part === "glucoseSyrupSolids" ? {dextroseEquivalent} : {};
    const ingredient: Ingredient = {name: part, composition: readComposition({[part]: 100, ...syrup}, part)};
    return {ingredient, grams};
  });
  return {name, lines: lines.filter(({grams}) => grams > 0), overrun};
}

// University of Guelph, ice cream technology e-book: suggested mixes for hard ice cream.
const HARD = csvParse(dataset("hard_mixes.csv")).map((row) =>
  ofParts(
    row.mix!,
    {
      milkFat: Number(row.milk_fat_percent),
      msnf: Number(row.msnf_percent),
      sucrose: Number(row.sucrose_percent),
      glucoseSyrupSolids: Number(row.glucose_syrup_solids_percent),
      dextroseEquivalent: 42,
      stabiliser: Number(row.stabiliser_percent),
      emulsifier: Number(row.emulsifier_percent),
    },
    100,
  ),
);

// The same e-book: suggested low-fat and light mixes.
const LIGHT = csvParse(dataset("firmness_anchors.csv"))
  .filter((row) => row.class === "light ice cream")
  .map((row) =>
    ofParts(
      row.mix!,
      Object.fromEntries(
        [
          "milkFat",
          "msnf",
          "sucrose",
          "glucoseSyrupSolids",
          "dextroseEquivalent",
          "stabiliser",
          "emulsifier",
        ].map((part) => [part, Number(row[part] || 0)]),
      ),
      85,
    ),
  );

describe.each([
  ["ice cream", HARD],
  ["light ice cream", LIGHT],
] as const)("published mixes of %s (University of Guelph, ice cream technology e-book)", (kind, mixes) => {
  test.each(mixes.map((mix) => [mix.name, mix] as const))(
    "%s is read as that, within its norms",
    (_, mix) => {
      const read = describeRecipe(mix);
      expect(read.kind.name).toBe(kind);
      const published = read.norms.filter(({property}) => property !== "scoopTemperature");
      expect(published.length).toBeGreaterThan(4);
      expect(published.filter(({lies}) => lies !== "within")).toEqual([]);
    },
  );

  test("the norms that are worked out from them are what they come to", () => {
    const compositions = mixes.map(recipeComposition);
    const ends = (values: number[], digits: number) =>
      [Math.min(...values), Math.max(...values)].map((value) => Number(value.toFixed(digits)));
    const norm = (property: string) => {
      const row = NORM_TABLE.find((one) => one.kind === kind && one.property === property)!;
      expect(row.read).toBe("worked out from its mixes");
      return [row.min, row.max];
    };
    expect(norm("sweetness")).toEqual(
      ends(
        compositions.map((one) => quantityOf(one, "sweetness")),
        1,
      ),
    );
    const points = ends(
      compositions.map((one) => initialFreezingPoint(one)!),
      2,
    );
    const [cold, warm] = norm("freezingPoint");
    expect(Math.abs(cold! - points[0]!)).toBeLessThan(0.06);
    expect(Math.abs(warm! - points[1]!)).toBeLessThan(0.06);
  });
});

describe("kinds", () => {
  test.each([
    ["egg custard ice cream", COOKS.custard],
    ["sorbet of sour fruit", COOKS.lemon],
    ["sorbet", COOKS.strawberry],
    ["chocolate ice cream", COOKS.chocolate],
    ["dairy-free ice cream", COOKS.oat],
    ["granita", COOKS.granita],
    ["ice cream", COOKS.shop],
    ["rich ice cream", recipe("rich", {"whole milk": 400, "cream 40 %": 450, sucrose: 150})],
    [
      "gelato",
      recipe("gelato", {"whole milk": 700, "cream 36 %": 90, "skimmed milk powder": 30, sucrose: 180}),
    ],
    ["milk ice", recipe("milk ice", {"whole milk": 830, sucrose: 170})],
    ["frozen yoghurt", recipe("yoghurt", {"whole-milk yoghurt": 800, sucrose: 200})],
    ["nut ice cream", recipe("nut", {"whole milk": 720, "hazelnut paste": 100, sucrose: 180})],
    [
      "fruit ice cream",
      recipe("fruit", {"whole milk": 300, "cream 36 %": 250, strawberry: 300, sucrose: 150}),
    ],
    ["sherbet", recipe("sherbet", {"whole milk": 350, "orange juice": 350, sucrose: 300})],
    ["water ice", recipe("water ice", {water: 700, sucrose: 290, "lemon juice": 10})],
    ["chocolate sorbet", recipe("sorbet", {water: 600, "dark chocolate 70-85 %": 180, sucrose: 180})],
    [
      "vegetable-fat ice cream",
      recipe("vegetable", {water: 580, "coconut oil": 100, "skimmed milk powder": 120, sucrose: 200}),
    ],
  ])("%s", (kind, made) => {
    const read = describeRecipe(made);
    expect([read.kind.name, read.kind.because]).toEqual([kind, expect.stringMatching(/^\p{Lu}?.+\.$/u)]);
    expect(read.norms.every((norm) => norm.kind === kind)).toBe(true);
  });

  // Regulation (EU) 1169/2011, article 7: what is said of a food must not mislead, least of all beside "contains milk".
  test.each([
    [
      "ice cream with little milk",
      recipe("banana", {banana: 472, "whole milk": 103, "peanut butter": 32, sucrose: 55}),
      /^It has fat or body, and little milk \(1\.8 % milk solids\)\.$/,
    ],
    [
      "sherbet",
      recipe("peach", {buttermilk: 155, peach: 400, sucrose: 120}),
      /^It has little milk \(1\.9 % milk solids\), 59\.3 % fruit and /,
    ],
    [
      "granita",
      recipe("peach", {buttermilk: 110, peach: 500, sucrose: 60}),
      /^It has little milk \(1\.4 % milk solids\), /,
    ],
    ["sherbet", recipe("tea", {water: 600, "whole milk": 60, sucrose: 240}), /^It has little milk \(0\.8 %/],
    [
      "chocolate sorbet",
      recipe("dark", {water: 600, "dark chocolate 70-85 %": 180, sucrose: 180}),
      /^It is chocolate with only the milk that dark chocolate 70-85 % declares\.$/,
    ],
    [
      "chocolate sorbet",
      recipe("milky", {water: 600, "milk chocolate": 60, sucrose: 180}),
      /^It is chocolate with little milk \(1\.6 % milk solids\)\.$/,
    ],
    [
      "ice cream with little milk",
      recipe("oat", {"oat drink": 700, "coconut oil": 80, "dark chocolate 70-85 %": 60, sucrose: 160}),
      /^It has fat or body, and only the milk that dark chocolate 70-85 % declares\.$/,
    ],
    [
      "sorbet",
      recipe("cherry", {"sweet cherry": 600, "dark chocolate 70-85 %": 20, sucrose: 180, water: 100}),
      /^It has only the milk that dark chocolate 70-85 % declares, 66\.7 % fruit/,
    ],
  ] as const)("%s never says that it has no milk while an ingredient declares it", (kind, made, because) => {
    const read = describeRecipe(made);
    expect(read.cautions.join("\n")).toMatch(/Contains [^.]*milk/);
    expect([read.kind.name, read.kind.because]).toEqual([kind, expect.stringMatching(because)]);
    expect(read.norms.length).toBeGreaterThan(0);
  });

  test("what is served warmer than -10 °C is soft serve", () => {
    expect(describeRecipe(COOKS.shop, {freezer: -7}).kind.name).toBe("soft serve");
  });

  test("each has norms, and each norm a kind", () => {
    expect([...new Set(NORM_TABLE.map(({kind}) => kind))].sort()).toEqual([...KINDS].sort());
    for (const {min, max, source, read} of NORM_TABLE) {
      expect(min ?? max).toBeDefined();
      expect(min ?? -Infinity).toBeLessThan(max ?? Infinity);
      expect(source === "common practice, no source").toBe(read === undefined);
    }
  });
});

test("a sherbet by US law has 1 to 2 % milk fat and 2 to 5 % milk solids (21 CFR 135.140)", () => {
  const norms = describeRecipe(
    recipe("sherbet", {"whole milk": 350, "orange juice": 350, sucrose: 300}),
  ).norms;
  expect(norms.filter(({source}) => source === "US law, 21 CFR 135.140")).toMatchObject([
    {property: "milkFat", min: 1, max: 2, lies: "within"},
    {property: "milkSolids", min: 2, max: 5, lies: "within"},
  ]);
});

test("the table of norms is as the tools make it of datasets/composition_norms.csv", async () => {
  const module = readFileSync(new URL("../../lib/kitchen/reading/norm-table.ts", import.meta.url), "utf8");
  expect(await normsAsModule()).toBe(module);
});

describe("the first sentence", () => {
  test.each([
    ["hard", COOKS.shop, -18, /^Hard at −18 °C: give it \d+ minutes on the counter, or change it\.$/],
    [
      // 69 minutes at 20 °C: longer than a tub should stand (common practice, no source).
      "hard for long",
      recipe("banana", {banana: 472, "whole milk": 515, "cream 36 %": 200, sucrose: 120}),
      -18,
      /^Hard at −18 °C: an hour on the counter, as long as a tub should stand, does not soften it; change it\.$/,
    ],
    ["firm", COOKS.shop, -13.5, /^Firm at −13\.5 °C: give it \d+ minutes? on the counter, or change it\.$/],
    ["scoops", COOKS.shop, -11, /^Scoops straight from the freezer at −11 °C\.$/],
    ["soft", COOKS.tooSoft, -12, /^Soft in a freezer at −12 °C: it may not hold its shape; keep it at/],
    [
      "never hardens",
      recipe("liquor", {"spirit 40 % vol": 900, sucrose: 100}),
      -18,
      /^Never hardens: it never gets as hard as ice cream is when dipped/,
    ],
    ["granita", COOKS.granita, -18, /^Hard at −18 °C, as a granita is: scrape it/],
  ] as const)("%s", (_what, made, freezer, says) => {
    expect(describeRecipe(made, {freezer}).sentence).toMatch(says);
  });
});

test("where a mix scoops is said not to be known where it is unlike any that was measured", () => {
  const rich = recipe("rich", {"cream 48 %": 589, "sweetened condensed milk": 397, "vanilla extract": 13});
  const {sentence, scoop, norms} = describeRecipe(rich);
  expect(scoop.unsure).toBe("unlike any");
  expect(sentence).toBe(
    "Where it scoops is not known: it is too unlike any ice cream whose hardness was measured.",
  );
  expect(norms.map(({property}) => property)).toContain("fat");
  expect(norms.map(({property}) => property)).not.toContain("scoopTemperature");
  // That ice is hard in a freezer is known all the same.
  const ice = describeRecipe(recipe("ice", {water: 970, sucrose: 30}));
  expect(ice.scoop.unsure).toBe("unlike any");
  expect(ice.sentence).toMatch(/^Hard at −18 °C: .*change it\.$/);
});

test("minutes on the counter are given up to an hour", () => {
  const milk = (sucrose: number) =>
    describeRecipe(recipe("milk ice", {"whole milk": 1000 - sucrose, sucrose})).minutes;
  expect(milk(200)).toBeGreaterThan(30);
  expect(milk(200)).toBeLessThanOrEqual(60);
  // Minutes beyond are nobody's advice: 83 at 100 g.
  expect(milk(100)).toBeUndefined();
});

test("figures are those of the library's own functions", () => {
  const {composition, scoop, shares, cost, batch, norms} = describeRecipe(COOKS.custard, {overrun: 60});
  for (const [part, share] of Object.entries(recipeComposition(COOKS.custard)))
    expect(composition[part as "water"]).toBeCloseTo(share, 9);
  expect(scoop.temperature).toBe(scoopTemperature(composition, {overrun: 60}).temperature);
  expect(norms.find(({property}) => property === "scoopTemperature")!.value).toBe(scoop.temperature);
  expect(shares.fat).toBeCloseTo(quantityOf(composition, "fat"), 9);
  expect(batch).toBe(1073);
  const money = COOKS.custard.lines.map(({ingredient, grams}) => (ingredient.price! * grams) / 1000);
  expect(cost).toBeCloseTo(
    money.reduce((a, b) => a + b, 0),
    9,
  );
});

test("cautions: raw yolk, salt beyond custom, the law last", () => {
  const {cautions} = describeRecipe({
    ...COOKS.custard,
    lines: [...COOKS.custard.lines, {ingredient: findIngredient(realPantry, "salt"), grams: 12}],
  });
  const all = cautions.join("\n");
  for (const says of [/salmonella/, /Tastes salty/, /goes beyond custom/, /Contains eggs, milk/])
    expect(all).toMatch(says);
  expect(cautions.at(-1)).toMatch(/^Follow your local code/);
});

test("salt as salted caramel has it is tasted, and not beyond custom (common practice, no source)", () => {
  const salted = (salt: number) =>
    describeRecipe(
      recipe("salted caramel", {"whole milk": 560, "cream 36 %": 250, sucrose: 190 - salt, salt}),
    );
  const {cautions, beyondDoses} = salted(4.7);
  expect(cautions.join("\n")).toContain("Tastes salty");
  expect(cautions.join("\n")).not.toContain("goes beyond custom");
  expect(beyondDoses).toBeUndefined();
  expect(salted(6).beyondDoses).toMatchObject([{dose: "salt", limit: 0.5}]);
  expect(salted(6).cautions.join("\n")).toContain("goes beyond custom");
});
