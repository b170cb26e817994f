import {describe, expect, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import {calibrate} from "../../lib/freezing/calibrate.ts";
import {firmness, firmnessReference} from "../../lib/freezing/firmness.ts";
import {scoopTemperature} from "../../lib/freezing/scoop.ts";
import {frozenState} from "../../lib/freezing/state.ts";
import {textReport} from "../../lib/io/report/report.ts";
import {realPantry} from "../support/pantry.ts";
import {within} from "../support/within.ts";

function solved(input: Partial<BriefInput>) {
  const brief: BriefInput = {
    ingredients: ["whole milk", "cream 40 %", "skimmed milk powder", "sucrose", "dextrose"],
    minimise: "sugars",
    ...input,
  };
  const answer = balance(brief, {pantry: realPantry});
  if (answer.status !== "optimal") throw new Error(answer.status);
  return {answer, brief};
}
const base = {fat: {equal: 8}, msnf: {equal: 10}, sweetness: {min: 14}} as const;

describe("a limit on firmness", () => {
  test("is met exactly where it binds, whatever the overrun", () => {
    for (const overrun of [0, 30, 100]) {
      const {composition} = solved({overrun, targets: {...base, firmness: [{at: -15, max: 4}]}}).answer;
      within(firmness(composition, -15) - firmnessReference(overrun), 4, 1e-6, `${overrun} %`);
    }
  });

  test("is met exactly where a sweetener crystallises, and erythritol then does not soften", () => {
    const {composition, shares} = solved({
      ingredients: ["whole milk", "cream 40 %", {name: "erythritol", min: 30, max: 160}, "sucrose"],
      doses: "none",
      targets: {fat: {min: 6}, sweetness: {min: 13}, firmness: [{at: -14, max: 25}]},
    }).answer;
    expect(frozenState(composition, -14).crystallised.erythritol).toBeGreaterThan(5);
    within(firmness(composition, -14) - firmnessReference(30), 25, 1e-6, "firmness");
    within(shares["firmness at -14 °C"], 25, 1e-6, "as reported");
  });

  test("on ice is exact there too", () => {
    const {composition} = solved({
      ingredients: ["whole milk", {name: "erythritol", min: 100, max: 160}, "sucrose"],
      doses: "none",
      targets: {ice: [{at: -10, max: 55}]},
    }).answer;
    const state = frozenState(composition, -10);
    expect(state.crystals).toBeGreaterThan(1);
    within(state.ice, 55, 1e-6, "ice");
  });

  test("can be made as small as it gets: no crystals pay for it", () => {
    const {answer} = solved({
      ingredients: ["whole milk", "cream 40 %", {name: "erythritol", min: 80, max: 160}, "sucrose"],
      doses: "none",
      targets: {fat: {min: 6}, sugars: {max: 22}},
      minimise: {firmness: {at: -14}},
    });
    const value = firmness(answer.composition, -14) - firmnessReference(30);
    within(answer.objective!.value, value, 1e-6, "as the objective has it");
  });

  test("is smallest where crystals begin: none of many mixes, tried one by one, is softer", () => {
    const {answer} = solved({
      ingredients: ["water", "sucrose", "erythritol"],
      doses: "none",
      targets: {sucrose: {equal: 15}},
      minimise: {firmness: {at: -5}},
    });
    const softest = Array.from({length: 161}, (_, k) =>
      firmness({water: 85 - k / 4, sucrose: 15, erythritol: k / 4}, -5),
    );
    const found = firmness(answer.composition, -5);
    expect(found).toBeLessThanOrEqual(Math.min(...softest));
    within(found, Math.min(...softest), 1, "a quarter of a per cent from the next");
  });
});

describe("overrun", () => {
  test("is 30 % unless it is said, stands in the report, and more of it lets less sugar do", () => {
    const targets = {...base, scoopTemperature: {max: -12}};
    const [usual, airy] = [solved({targets}), solved({targets, overrun: 80})];
    expect(usual.answer.scoop.overrun).toBe(30);
    expect(airy.answer.shares.sugars!).toBeLessThan(usual.answer.shares.sugars! - 1);
    for (const [{answer, brief}, overrun] of [
      [usual, 30],
      [airy, 80],
    ] as const) {
      within(scoopTemperature(answer.composition, {overrun}).temperature, -12, 1e-6, `${overrun} %`);
      expect(textReport(answer, readBrief(brief, realPantry))).toContain(`${overrun} % overrun`);
    }
  });

  test("is refused out of range", () => {
    expect(() => solved({overrun: 300})).toThrow(/overrun/);
  });
});

describe("what a kitchen has learned", () => {
  test("shifts the limit: one that finds tubs right at -18 °C needs less sugar for it", () => {
    const targets = {...base, scoopTemperature: {max: -13}};
    const {answer: book} = solved({targets});
    const learned = calibrate(
      [1, 2, 3].map(() => ({composition: book.composition, temperature: -18, found: "right" as const})),
    );
    const {answer: own, brief} = solved({targets, learned});
    expect(own.shares.sugars!).toBeLessThan(book.shares.sugars! - 1);
    within(scoopTemperature(own.composition, {learned}).temperature, -13, 1e-6, "its own reference");
    expect(textReport(own, readBrief(brief, realPantry))).toContain("with 3 reports of your own");
  });
});
