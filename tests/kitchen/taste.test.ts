import {expect, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {answerHtml, answerMarkdown} from "../../lib/io/document/answer-out.ts";
import {textReport} from "../../lib/io/report/report.ts";
import {tasteCautions} from "../../lib/kitchen/product/taste.ts";
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
