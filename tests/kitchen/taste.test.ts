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

test("salt that nobody seasoned with is told wherever the mix is, and not where there is none of it", () => {
  const answer = balance(sorbet, {pantry: realPantry});
  if (answer.status !== "optimal") throw new Error(answer.status);
  // 0.5 %: the customary dose, common practice, no source.
  expect(answer.amounts.find(({ingredient}) => ingredient === "salt")!.percent).toBeCloseTo(0.5, 3);
  const text = textReport(answer, readBrief(sorbet, realPantry));
  for (const told of [text, answerHtml(answer), answerMarkdown(answer)])
    expect(told.replaceAll(/\s+/g, " ")).toContain("Tastes salty: 0.50 % salt");
  const plain = balance({...sorbet, doses: {salt: 0.2}}, {pantry: realPantry});
  if (plain.status !== "optimal") throw new Error(plain.status);
  expect(textReport(plain, readBrief(sorbet, realPantry))).not.toContain("salty");
});

test("the line is between seasoning and salted caramel", () => {
  expect(tasteCautions({water: 60})).toEqual([]);
  expect(tasteCautions({salt: 0.2})).toEqual([]);
  expect(tasteCautions({salt: 0.5})).toHaveLength(1);
});
