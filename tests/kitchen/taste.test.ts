import {expect, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {answerCsv, answerHtml, answerMarkdown} from "../../lib/io/document/answer-out.ts";
import {textReport} from "../../lib/io/report/report.ts";
import {batchSheet} from "../../lib/kitchen/day/batch-sheet.ts";
import {baseComponent, makeProduct} from "../../lib/kitchen/product/product.ts";
import {tasteCautions} from "../../lib/kitchen/product/taste.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import {recipeComposition} from "../../lib/pantry/recipe.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import {realPantry} from "../support/pantry.ts";

// Invented: a sorbet whose cheapest solids are salt, so that the answer takes as much of it as the dose allows.
const sorbet: BriefInput = {
  name: "raspberry sorbet",
  ingredients: [
    {name: "raspberry", price: 6, min: "40 %"},
    {name: "sugar", price: 1.1},
    {name: "dextrose", price: 1.9},
    {name: "salt", price: 0.6},
    {name: "water", price: 0},
  ],
  targets: {totalSolids: {min: 30}, sweetness: {max: 24}},
};

test("salt that nobody asked for stops where nobody tastes it; what is asked for and tasted is told wherever the mix is", () => {
  const plain = balance(sorbet, {pantry: realPantry});
  if (plain.status !== "optimal") throw new Error(plain.status);
  // 0.2 %: the customary dose, common practice, no source.
  expect(plain.amounts.find(({ingredient}) => ingredient === "salt")!.percent).toBeCloseTo(0.2, 3);
  const quiet = textReport(plain, readBrief(sorbet, realPantry));
  expect(quiet).not.toContain("salty");
  expect(quiet).not.toContain("Caution: salt");
  const salted: BriefInput = {...sorbet, doses: {salt: 0.5}};
  const answer = balance(salted, {pantry: realPantry});
  if (answer.status !== "optimal") throw new Error(answer.status);
  expect(answer.amounts.find(({ingredient}) => ingredient === "salt")!.percent).toBeCloseTo(0.5, 3);
  const text = textReport(answer, readBrief(salted, realPantry));
  for (const told of [text, answerHtml(answer), answerMarkdown(answer)])
    expect(told.replaceAll(/\s+/g, " ")).toContain("Tastes salty: 0.50 % salt");
});

test("an answer or an example that no one would churn is told as such", () => {
  // Invented: nothing caps the fat, and fat is what is left to take.
  const brief: BriefInput = {
    name: "oat and erythritol",
    freezer: -18,
    ingredients: [
      {name: "oat drink", price: 1.2},
      {name: "erythritol", price: 7},
      {name: "coconut oil", price: 4},
      {name: "inulin", price: 9},
      {name: "sugar", price: 1.1},
    ],
    targets: {
      fat: {min: 8},
      totalSugars: {max: 6},
      sweetness: {min: 14},
      scoopTemperature: {max: -12},
    },
  };
  const answer = balance(brief, {pantry: realPantry});
  expect(answer.status).toBe("infeasible");
  for (const told of [textReport(answer), answerHtml(answer), answerMarkdown(answer)])
    expect(told.replaceAll(/\s+/g, " ")).toMatch(/Fat, not ice cream: \d+ % fat/);
  const capped = balance(
    {...brief, targets: {...brief.targets, fat: {min: 8, max: 12}}},
    {pantry: realPantry},
  );
  expect(capped.status).toBe("infeasible");
  expect(textReport(capped)).not.toContain("not ice cream");
});

test("a paste is no ice cream, and neither is butter; the richest that is churned is", () => {
  expect(tasteCautions({water: 35, sucrose: 65})).toEqual([
    "A paste, not ice cream: 65 % total solids, where mixes have 30 to 45. Ask for at most so much of them.",
  ]);
  expect(tasteCautions({water: 20, milkFat: 80})[0]).toContain("80 % fat");
  // Hard ice cream mix 7, University of Guelph, ice cream technology e-book: 16 % fat, 40.75 % total solids.
  expect(
    tasteCautions({water: 59.25, milkFat: 16, milkProtein: 3.6, lactose: 5.1, milkSalts: 0.8, sucrose: 15}),
  ).toEqual([]);
});

test("the line is between seasoning and salted caramel", () => {
  expect(tasteCautions({water: 65, sucrose: 35})).toEqual([]);
  expect(tasteCautions({water: 65, sucrose: 34.8, salt: 0.2})).toEqual([]);
  expect(tasteCautions({water: 65, sucrose: 34.5, salt: 0.5})).toHaveLength(1);
});

test("as sweet as a syrup is said: a creamy mix from a fifth on, a sorbet from a third on", () => {
  const creamy = (sucrose: number) =>
    tasteCautions({water: 80 - sucrose, milkFat: 8, milkProtein: 12, sucrose});
  // Gelato goes to 20 (common practice, no source).
  expect(creamy(20)).toEqual([]);
  expect(creamy(25)).toEqual([
    "Very sweet: as sweet as 25 % sugar, where ice cream is like 13 to 16 % and gelato up to 20 %. Ask for at most so much sweetness.",
  ]);
  expect(tasteCautions({water: 70, sucrose: 30})).toEqual([]);
  expect(tasteCautions({water: 60, sucrose: 40})[0]).toContain(
    "as sweet as 40 % sugar, where a sorbet is like 22",
  );
  // Dextrose is less sweet than sucrose, gram for gram.
  expect(tasteCautions({water: 55, milkFat: 8, milkProtein: 12, dextrose: 25})).toEqual([]);
});

test("ice and drinks are no dessert, and are told as such; a granita is one", () => {
  expect(tasteCautions({water: 100})).toEqual([
    "Ice, not a dessert: 0 % total solids, where even a granita has 12 and mixes have 30 to 45. Ask for at least so much of them.",
  ]);
  // Whole milk: USDA SR28 NDB 01077.
  expect(
    tasteCautions({water: 88.13, milkFat: 3.25, milkProtein: 3.15, lactose: 4.8, milkSalts: 0.67}),
  ).toEqual([
    "Ice, not a dessert: as sweet as 1 % sugar, where even a granita is like 10 %. Ask for at least so much sweetness.",
  ]);
  expect(tasteCautions({water: 60, alcohol: 35, sucrose: 5})[0]).toContain("A drink, not a dessert");
  // 12 % sugar: the least of a granita (common practice, no source).
  expect(tasteCautions({water: 88, sucrose: 12})).toEqual([]);
});

test("only milk makes a mix one that is judged as ice cream: a sorbet with plant fat may be as sweet as a sorbet", () => {
  const withFat = {water: 62, otherFat: 4, otherProtein: 4, sucrose: 30};
  expect(tasteCautions(withFat)).toEqual([]);
  expect(tasteCautions({...withFat, water: 52, sucrose: 40})[0]).toContain("where a sorbet is like 22 to 30");
});

test("acid beyond what a sorbet of lemon has is told", () => {
  // Lemon juice has 4.8 % acid (Ciqual 2020): 825 g in a kilogram make 4, 250 g make 1.2.
  const lemon = (organicAcids: number) =>
    tasteCautions({water: 70 - organicAcids, sucrose: 30, organicAcids});
  expect(lemon(4)).toEqual([
    "Very sour: 4.0 % acid, where a sorbet has up to about 1 % and one of lemon 1.5. Ask for at most so much of what is sour.",
  ]);
  expect(lemon(1.2)).toEqual([]);
  // Unsweetened it is ice, and sour all the same.
  expect(tasteCautions({water: 92, sucrose: 4, organicAcids: 4})).toEqual([
    expect.stringContaining("Ice, not a dessert"),
    expect.stringContaining("Very sour"),
  ]);
});

test("fat without anything to hold it separates; cream, yolk, coconut milk and an emulsifier hold theirs", () => {
  const oil = {water: 63, otherFat: 15, sucrose: 22};
  expect(tasteCautions(oil)).toEqual([
    "The fat separates: 15 % fat, and only 0.0 % protein to hold it in the water. Put in milk protein, yolk, lecithin, mono- and diglycerides or another emulsifier.",
  ]);
  expect(tasteCautions({...oil, water: 62.7, emulsifier: 0.3})).toEqual([]);
  expect(tasteCautions({...oil, water: 61, milkProtein: 2})).toEqual([]);
  expect(tasteCautions({water: 73, eggFat: 5, sucrose: 22})).toEqual([]);
  const emulsions = realPantry.ingredients.filter(({name}) =>
    /^(cream|whipping cream|coconut milk|coconut cream|oat cream|double cream)\b/.test(name),
  );
  expect(emulsions.length).toBeGreaterThan(8);
  for (const {name, composition} of emulsions) {
    // Half of it and half of a syrup of 40 %.
    const half = Object.fromEntries(Object.entries(composition).map(([part, grams]) => [part, grams / 2]));
    const mix = {...half, water: (composition.water ?? 0) / 2 + 30, sucrose: 20};
    expect(
      tasteCautions(mix).filter((caution) => caution.startsWith("The fat separates")),
      name,
    ).toEqual([]);
  }
});

test("lactose in storage: two cautions of different force", () => {
  const milk = (lactose: number) =>
    tasteCautions({water: 64, lactose, milkProtein: 5, milkFat: 8, sucrose: 14});
  expect(milk(5)).toEqual([]);
  expect(milk(7)).toEqual([
    "May turn sandy in storage: 7.0 % lactose, where its water keeps at most 6.1 dissolved for months. Sell it within weeks, or take less of what brings it: milk powder, whey, condensed milk.",
  ]);
  expect(milk(9)).toEqual([
    "Likely to turn sandy: 9.0 % lactose, where its water keeps at most 7.8 dissolved even for weeks. Take less of what brings it: milk powder, whey, condensed milk.",
  ]);
});

test("alcohol is told wherever a mix is proposed, in the example of a conflict too", () => {
  const brief: BriefInput = {
    ingredients: ["water", {name: "vodka", min: "18 %"}, "sucrose"],
    targets: {sugars: {equal: 20}},
  };
  const answer = balance(brief, {pantry: realPantry});
  if (answer.status !== "optimal") throw new Error(answer.status);
  const conflict = balance({...brief, targets: {...brief.targets, fat: {min: 1}}}, {pantry: realPantry});
  expect(conflict.status).toBe("infeasible");
  for (const one of [answer, conflict])
    for (const told of [textReport(one), answerHtml(one), answerMarkdown(one)])
      expect(told.replaceAll(/\s+/g, " ")).toMatch(
        /Holds \d\.\d % alcohol by weight, .* keep it from children/,
      );
});

/** Report of an answer in one line, and what stands in it before the amounts. */
function told(brief: BriefInput): {readonly all: string; readonly first: string} {
  const answer = balance(brief, {pantry: realPantry});
  if (answer.status !== "optimal") throw new Error(answer.status);
  const all = textReport(answer).replaceAll(/\s+/g, " ");
  const first = all.slice(0, all.indexOf(" in all "));
  return {all, first};
}

test("what is no dessert, or too hard for the freezer, is told before the amounts", () => {
  const water = told({ingredients: ["water"], targets: {}});
  expect(water.first).toContain("Ice, not a dessert: 0 % total solids");
  expect(water.first).toContain("Too hard for a freezer at −18 °C: serve it warmer");
  expect(water.all).not.toContain("also:");
  // Once is enough.
  expect(water.all.split("Ice, not a dessert")).toHaveLength(2);
  const granita = told({ingredients: ["water", "sucrose"], targets: {sugars: {equal: 12}}});
  expect(granita.first).toContain("Too hard for a freezer at −18 °C: it scoops at −3.1 °C; serve it warmer");
  const example = balance({ingredients: ["water"], targets: {fat: {min: 1}}}, {pantry: realPantry});
  expect(textReport(example)).toMatch(/for example:\n  water.*\n.*\n  Too hard|Ice, not a dessert/);
});

test("a mix without ice has no scoop temperature, and one unlike any that was measured has none to trust", () => {
  for (const name of ["cocoa mass", "sunflower oil", "almond butter"]) {
    const {first, all} = told({ingredients: [name], targets: {}});
    expect(first, name).toMatch(/(A paste|Fat), not ice cream/);
    expect(all, name).not.toMatch(/Scoops at about|give or take|too hard|never hardens/i);
  }
  // Four fifths fat, a sixth water: butter has ice, and no tub of it was ever scooped.
  const butter = told({ingredients: ["unsalted butter"], targets: {}});
  const answer = balance({ingredients: ["unsalted butter"]}, {pantry: realPantry});
  expect(answerCsv(answer)).toContain("scoop,temperature,,°C");
  expect(butter.all).toContain("Where it scoops is not known");
  expect(butter.all).not.toMatch(/Scoops at about|give or take/);
});

test("a mix that is too soft is told what softens it: salt, alcohol or sugars", () => {
  const soft = (name: string, grams: number) =>
    told({
      batch: 1000,
      ingredients: [{name, min: grams, max: grams}, {name: "sucrose", min: 20, max: 20}, "whole milk"],
      targets: {},
    }).all;
  expect(soft("salt", 213)).toMatch(/take out (some of the )?salt/);
  expect(soft("vodka", 600)).toMatch(/take out (some of the )?alcohol/);
  expect(soft("dextrose", 400)).toMatch(/take out (some of the )?sugars/);
  expect(soft("erythritol", 60)).not.toContain("take out");
});

test("a batch sheet says of its mix what is said where the recipe is read", () => {
  const lines = Object.entries({water: 630, "sunflower oil": 150, sucrose: 120, dextrose: 100}).map(
    ([name, grams]) => ({ingredient: findIngredient(realPantry, name), grams}),
  );
  const recipe = {name: "oil ice", lines};
  const said = tasteCautions(recipeComposition(recipe));
  expect(said).toContainEqual(expect.stringMatching(/^The fat separates/));
  const {cautions} = batchSheet(makeProduct("oil ice", [baseComponent(recipe)]), {grams: 4000});
  expect(cautions.filter(({topic}) => topic === "mix").map(({text}) => text)).toEqual(said);
});
