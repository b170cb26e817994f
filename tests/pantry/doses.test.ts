import {readFileSync} from "node:fs";
import {describe, expect, test} from "vitest";
import {dosesAsModule} from "../../datasets/tools/tabulate.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import {balance} from "../../lib/balance/balance.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {solveBrief} from "../../lib/balance/mix/solve-brief.ts";
import {textReport} from "../../lib/io/report/report.ts";
import {DOSES, dosesIn, dosesOver} from "../../lib/pantry/doses.ts";
import {findIngredient, pantryOf} from "../../lib/pantry/pantry.ts";
import {readTable} from "../../datasets/tools/read-table.ts";
import {realPantry} from "../support/pantry.ts";
import {randomBrief} from "../support/random-brief.ts";
import {within} from "../support/within.ts";

/** The brief of README.md, with more on the shelf. */
function readme(more: BriefInput["ingredients"], rest: Partial<BriefInput> = {}): BriefInput {
  return {
    name: "vanilla",
    batch: 2000,
    freezer: -14,
    ingredients: [
      {name: "whole milk", price: 1.05},
      {name: "cream 40 %", price: 4.9},
      {name: "skimmed milk powder", price: 5.8},
      {name: "egg yolk", price: 9.5, min: 100},
      {name: "sugar", price: 1.1},
      {name: "glucose syrup 42 DE", price: 1.8},
      ...more,
    ],
    targets: {
      fat: {min: 9, max: 11},
      totalSolids: {min: 38, max: 42},
      sugars: {min: 15, max: 24},
      glucose: {min: 3, max: 14},
      sweetness: {max: 18},
      freezingPoint: {max: -2.4},
      scoopTemperature: {max: -13},
    },
    ...rest,
  };
}

function balanced(brief: BriefInput) {
  const answer = balance(brief, {pantry: realPantry});
  if (answer.status !== "optimal") throw new Error(answer.status);
  return answer;
}

const shelf = (name: string) => findIngredient(realPantry, name, "test");

describe("the table", () => {
  test("is what the data file says, and every source is known", async () => {
    const module = readFileSync(new URL("../../lib/pantry/dose-table.ts", import.meta.url), "utf8");
    expect(await dosesAsModule()).toBe(module);
    const sources = new Set(readTable("sources.csv").map(({key}) => key));
    for (const {source} of readTable("doses.csv")) expect(sources).toContain(source);
  });

  // 21 CFR 172.840(c)(1): polysorbate 80, alone or with polysorbate 65, 0.1 % of the finished frozen dessert.
  // 21 CFR 184.1339, 184.1343: guar and locust bean gum 0.5 % of all other foods; 184.1349: karaya 0.3 % of frozen desserts.
  // Regulation (EU) 1169/2011, annex III, 2.4: a laxative statement above 10 % of added polyols.
  test.each([
    ["polysorbate", 0.1, "21 CFR 172.840(c)(1)"],
    ["guar", 0.5, "21 CFR 184.1339"],
    ["locustBean", 0.5, "21 CFR 184.1343"],
    ["karaya", 0.3, "21 CFR 184.1349"],
    ["polyols", 10, "Regulation (EU) 1169/2011, annex III, 2.4"],
    ["salt", 0.2, "common practice, no source"],
  ])("%s at most %d %% (%s)", (key, limit, source) => {
    expect(DOSES.find((dose) => dose.key === key)).toMatchObject({limit, source});
  });

  test("counts what is added as such, not what fruit, milk, oats and chocolate have of their own", () => {
    const counted = (name: string) =>
      DOSES.flatMap(({key}, d) => (dosesIn(shelf(name))[d]! > 0 ? [key] : []));
    for (const name of ["salted butter", "raspberry", "lemon juice", "oat drink", "peanut butter", "honey"])
      expect(counted(name), name).toEqual([]);
    for (const name of ["dark chocolate 60-69 %", "cream cheese", "medjool dates", "plum", "whole milk"])
      expect(counted(name), name).toEqual([]);
    expect(counted("guar gum")).toEqual(["stabilisers", "guar"]);
    expect(counted("dried egg yolk")).toEqual(["egg", "eggSolids", "driedEgg"]);
    expect(counted("erythritol")).toEqual(["erythritol", "polyols"]);
    expect(counted("red wine")).toEqual(["alcohol"]);
  });

  test("has all of the shelf that is taken by the pinch or the spoon: every flavour, gum, emulsifier and fibre but what is drunk", () => {
    const drunk = /brewed|^espresso$/;
    const unheld = realPantry.ingredients
      .filter(({group = ""}) => ["flavour", "stabiliser", "emulsifier", "fibre"].includes(group))
      .filter(
        (ingredient) => !drunk.test(ingredient.name) && dosesIn(ingredient).every((grams) => grams === 0),
      )
      .map(({name}) => name);
    expect(unheld).toEqual([]);
  });

  // Common practice, no source, g in 1,000 g of mix: gellan sets from half a gram on, psyllium and citrus fibre bind many times
  // their weight of water, strong spices go by the pinch.
  test.each([
    ["gellan gum", 1],
    ["konjac glucomannan", 2],
    ["psyllium husk", 5],
    ["citrus fibre", 10],
    ["oat fibre", 20],
    ["cayenne pepper", 1],
    ["saffron", 1],
    ["turmeric", 3],
    ["black pepper", 3],
    ["cloves", 3],
    ["cinnamon", 10],
    ["matcha", 25],
    ["instant tea", 15],
    ["instant decaffeinated coffee", 30],
    ["polyglycerol polyricinoleate", 1],
  ])("%s at most %d g to a kilogram", (name, most) => {
    const over = (grams: number) =>
      dosesOver([
        {ingredient: shelf(name), grams},
        {ingredient: shelf("water"), grams: 1000 - grams},
      ]);
    expect(over(most)).toEqual([]);
    expect(over(1.01 * most).length).toBeGreaterThan(0);
  });

  test("a shelf with psyllium, gellan and cayenne on it gives a mix with a spoon of them at most", () => {
    const names = ["psyllium husk", "citrus fibre", "gellan gum", "cayenne pepper", "instant tea", "matcha"];
    const {amounts} = balanced(readme(names.map((name) => ({name, price: 0.1}))));
    const most = [5, 10, 1, 1, 15, 25];
    for (const [i, name] of names.entries())
      expect(amounts.find(({ingredient}) => ingredient === name)?.percent ?? 0, name).toBeLessThanOrEqual(
        most[i]! / 10 + 1e-6,
      );
  });

  test("tells an own ingredient by its name where it has no group", () => {
    const composition = {water: 76, eggFat: 10, otherProtein: 14};
    expect(dosesOver([{ingredient: {name: "Eggs", composition}, grams: 1}]).map(({dose}) => dose)).toEqual([
      "egg",
      "eggSolids",
    ]);
    expect(dosesOver([{ingredient: {name: "eggplant", composition}, grams: 1}])).toEqual([]);
  });
});

describe("README's brief stays an ice cream", () => {
  test.each([
    [[{name: "salt", price: 0.6}]],
    [[{name: "guar gum", price: 0.1}]],
    [
      [
        {name: "salt", price: 0.1},
        {name: "guar gum", price: 0.1},
        {name: "polysorbate 80", price: 0.1},
      ],
    ],
    [
      [
        {name: "glycerol", price: 0.1},
        {name: "erythritol", price: 0.1},
        {name: "citric acid", price: 0.1},
      ],
    ],
  ])("with %j on the shelf", (more) => {
    const mix = balanced(readme(more));
    expect(mix.beyondDoses).toBeUndefined();
    const {composition} = mix;
    // 0.2 added, and a little of the yolk's own.
    expect(composition.salt ?? 0).toBeLessThan(0.21);
    expect(composition.stabiliser ?? 0).toBeLessThan(0.6);
    expect(composition.milkFat).toBeGreaterThan(7);
    // Without the doses the program takes what is cheap, which is no ice cream.
    expect(balanced(readme(more, {doses: "none"})).beyondDoses).not.toBeUndefined();
    expect(readBrief(readme(more, {doses: "none"}), realPantry).doses).toEqual([]);
  });

  test("with glucose syrup nearly for nothing and no target on it", () => {
    const {glucose: _glucose, sugars: _sugars, ...targets} = readme([]).targets!;
    const brief = readme([], {targets});
    const cheap = {
      ...brief,
      ingredients: [...brief.ingredients.slice(0, 5), {name: "glucose syrup 42 DE", price: 0.01}],
    };
    const {composition, binding} = balanced(cheap);
    within(composition.glucoseSyrupSolids, 15, 1e-6, "glucose syrup solids");
    expect(binding).toContainEqual(expect.objectContaining({of: "dose", path: "doses.syrup", limit: 15}));
  });
});

describe("what the cook asks for outright", () => {
  const over = (brief: BriefInput) => balanced(brief).beyondDoses?.map(({dose}) => dose) ?? [];

  test("a least amount is kept and cautioned", () => {
    const brief = readme([{name: "salt", price: 0.6, min: 30}]);
    expect(over(brief)).toEqual(["salt"]);
    const answer = balanced(brief);
    within(answer.amounts.at(-1)?.grams, 30, 1e-6, "salt");
    expect(textReport(answer, readBrief(brief, realPantry))).toContain(
      "Caution: salt 1.50 %, customary at most 0.2 % (common practice, no source).",
    );
  });

  test("so is a ratio, and the least of a target, by whichever gum", () => {
    expect(over(readme([{name: "salt", price: 0.6, ratio: {to: "sugar", grams: 0.1}}]))).toContain("salt");
    const gums = [
      {name: "guar gum", price: 1},
      {name: "xanthan gum", price: 2},
    ];
    const thick = readme(gums);
    expect(over({...thick, targets: {...thick.targets, stabiliser: {min: 1.2}}})).toContain("stabilisers");
    expect(over({...thick, targets: {...thick.targets, stabiliser: {min: 0.5}}})).toEqual([]);
  });

  // By hand, for 12 g of acid in 1,000 g. Lemon juice, whose acid is its own, brings 5 % of its mass; acid added as such, of which 5 g
  // are customary, brings the rest. With 100 g of juice: 12 - 5 = 7 g. With 900 g of water, j + a = 100 and 0.05 j + a = 12.
  test.each([
    ["there is no more juice than 100 g", {max: 100}, {}, 0.7],
    ["water takes 900 g", {}, {min: 900}, 0.7 / 0.95],
  ])("a dose rises by what the least of a target takes beside the rest: %s", (_why, juice, water, limit) => {
    const brief: BriefInput = {
      batch: 1000,
      ingredients: [
        {name: "spring water", composition: {water: 100}, price: 0, ...water},
        {name: "acid of ours", composition: {organicAcids: 100}, price: 2},
        {name: "lemon juice of ours", composition: {water: 95, organicAcids: 5}, price: 1, ...juice},
      ],
      targets: {organicAcids: {min: 1.2}},
    };
    const acids = readBrief(brief, realPantry).doses!.find(({index}) => DOSES[index]!.key === "acids")!;
    within(acids.limit, limit, 1e-7, "g of acid in 100 g");
    expect(acids.raised).toBe(true);
    expect(over(brief)).toEqual(["acids"]);
  });

  test("a dose rises for a target that counts it, and not for one that it could only help to meet", () => {
    const brief = readBrief(
      {
        ingredients: [
          {name: "spring water", composition: {water: 100}},
          "glucose syrup 42 DE",
          {name: "acid of ours", composition: {organicAcids: 100}},
        ],
        targets: {organicAcids: {min: 1.2}, totalSolids: {min: 40}},
      },
      realPantry,
    );
    const raised = brief.doses!.filter((dose) => dose.raised);
    expect(raised.map(({index}) => DOSES[index]!.key)).toEqual(["acids"]);
    within(raised[0]?.limit, 1.2, 1e-7, "g of acid in 100 g");
    // Nor for a batch that nothing else fills.
    const little = ["water", "salt"].map((name) => ({name, ...(name === "water" ? {max: 900} : {min: 1})}));
    const filled = readBrief({batch: 1000, ingredients: little, minimise: "water"}, realPantry);
    expect(filled.doses!.filter((dose) => dose.raised)).toEqual([]);
    const answer = balance(
      {ingredients: ["salt", {name: "salt of ours", composition: {salt: 100}}], minimise: "water"},
      {pantry: realPantry, openersFrom: pantryOf([])},
    );
    expect(answer.status === "infeasible" && answer.conflict.targets.map(({path}) => path)).toEqual([
      "doses.salt",
    ]);
  });

  // By hand: at least 7 g of salt in steps of 5 g are 10 g, and 10 g in 1,000 g are 1 g in 100 g; at least 15 g are three steps.
  test.each([
    [2, 1, 0.2],
    [5, 5, 0.5],
    [7, 5, 1],
    [15, 5, 1.5],
  ])("a least amount of %d g in steps of %d g has the dose at %d g in 100 g", (min, step, limit) => {
    const brief: BriefInput = {
      batch: 1000,
      ingredients: ["whole milk", "sugar", {name: "salt", min, step}],
      targets: {sugars: {min: 10}},
      minimise: "salt",
    };
    const salt = readBrief(brief, realPantry).doses!.find(({index}) => DOSES[index]!.key === "salt")!;
    within(salt.limit, limit, 1e-12, "g of salt in 100 g");
    // 0.2 g in 100 g are customary.
    expect(salt.raised).toBe(limit > 0.2 ? true : undefined);
    within(balanced(brief).amounts.at(-1)?.grams, 10 * limit, 1e-6, "salt");
  });

  test("a limit of the cook's own holds, the others stay customary", () => {
    const more = [
      {name: "salt", price: 0.1},
      {name: "guar gum", price: 0.1},
    ];
    const {binding, beyondDoses} = balanced(readme(more, {doses: {salt: 1}}));
    expect(binding).toContainEqual(expect.objectContaining({path: "doses.salt", limit: 1, own: true}));
    expect(binding).toContainEqual(expect.objectContaining({path: "doses.guar", limit: 0.5}));
    expect(beyondDoses).toBeUndefined();
  });

  test("what comes at a ratio is asked for by that, so that nothing else may come for it", () => {
    const acid = {composition: {organicAcids: 100}};
    const brief: BriefInput = {
      batch: 1000,
      ingredients: [
        "sugar",
        {name: "spring water", composition: {water: 100}},
        {name: "acid at a ratio", ...acid, ratio: {to: "sugar", grams: 0.05}},
        {name: "acid of ours", ...acid},
      ],
      targets: {organicAcids: {min: 0.8}},
      minimise: "sugars",
    };
    const acids = readBrief(brief, realPantry).doses!.find(({index}) => DOSES[index]!.key === "acids")!;
    expect([acids.limit, acids.raised]).toEqual([0.5, undefined]);
    // 8 g of acid in all, of which 5 g may be added freely: 3 g come with 60 g of sugar.
    within(balanced(brief).amounts[0]?.grams, 60, 1e-6, "sugar");
  });

  test("a limit of the cook's own does not rise, and is named where a least amount is beyond it", () => {
    const brief: BriefInput = {
      batch: 1000,
      ingredients: ["whole milk", "sugar", {name: "salt", min: 3}],
      targets: {sugars: {min: 10}},
      minimise: "sugars",
      doses: {salt: 0.2},
    };
    const salt = readBrief(brief, realPantry).doses!.find(({index}) => DOSES[index]!.key === "salt")!;
    expect(salt).toEqual(expect.objectContaining({limit: 0.2, own: true}));
    const answer = balance(brief, {pantry: realPantry});
    expect(answer.status === "infeasible" && answer.conflict.targets.map(({path}) => path)).toContain(
      "doses.salt",
    );
  });

  test("a dose that there is not is named, with the nearest", () => {
    expect(() => readBrief(readme([], {doses: {sallt: 1}}), realPantry)).toThrow(
      /brief: doses\.sallt: unknown dose \(got 1\); did you mean salt/,
    );
    expect(() => readBrief(readme([], {doses: {salt: 200}}), realPantry)).toThrow(/brief: doses\.salt/);
  });
});

test("the report says which dose binds and what it costs, and a conflict how to raise it", () => {
  const brief = readme([{name: "salt", price: 0.6}]);
  expect(textReport(balanced(brief), readBrief(brief, realPantry))).toMatch(
    /customary: salt at most 0\.2 % +0\.1 % more: −0\.\d+ per kg/,
  );
  const impossible: BriefInput = {
    ingredients: ["water", "salt"],
    targets: {scoopTemperature: {max: -14}},
  };
  expect(textReport(balance(impossible, {pantry: realPantry}), readBrief(impossible, realPantry))).toContain(
    'customary: salt at most 0.2 %; raise it with "doses"',
  );
});

test("random briefs with random prices never break a dose", () => {
  let met = 0;
  for (let seed = 1; seed <= 150; seed++) {
    const solution = solveBrief(readBrief(randomBrief(seed), realPantry));
    if (solution.status !== "optimal") continue;
    met++;
    expect(solution.beyondDoses, `seed ${seed}`).toBeUndefined();
  }
  expect(met).toBeGreaterThan(50);
});

describe("sweeteners and fibres that dissolve", () => {
  // As the pantry has them (from memory): 87 and 90 g of soluble fibre in 100 g.
  test("inulin and polydextrose count as fibre, in targets and doses alike", () => {
    const doseOf = (name: string) =>
      dosesIn(findIngredient(realPantry, name))[DOSES.findIndex(({key}) => key === "fibre")]!;
    expect([doseOf("inulin"), doseOf("polydextrose"), doseOf("sugar")]).toEqual([87, 90, 0]);
    const brief: BriefInput = {
      ingredients: [
        {name: "oat drink", price: 1.2},
        {name: "coconut oil", price: 4},
        {name: "sugar", price: 3},
        {name: "inulin", price: 0.5},
      ],
      targets: {totalSolids: {min: 40}, fat: {max: 10}},
    };
    const answer = balance(brief, {pantry: realPantry});
    if (answer.status !== "optimal") throw new Error(answer.status);
    // 8 %: common practice, no source.
    expect(answer.binding).toContainEqual(expect.objectContaining({of: "dose", limit: 8}));
    const asked = balance(
      {...brief, targets: {...brief.targets, fibre: {min: 6, max: 6.5}}},
      {pantry: realPantry},
    );
    if (asked.status !== "optimal") throw new Error(asked.status);
    expect(asked.shares.fibre).toBeGreaterThan(6 - 1e-6);
    expect(asked.shares.fibre).toBeLessThan(6.5 + 1e-6);
  });

  test("each of the newer sugars has a dose, and sugar alcohols have theirs together", () => {
    for (const name of [
      "trehalose",
      "allulose",
      "isomaltulose",
      "tagatose",
      "maltitol",
      "isomalt",
      "lactitol",
      "mannitol",
    ])
      expect(
        dosesIn(findIngredient(realPantry, name)).some((grams) => grams > 0),
        name,
      ).toBe(true);
  });
});
