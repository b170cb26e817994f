import {describe, expect, test} from "vitest";
import {balance} from "../../lib/balance/balance.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import {within} from "../support/within.ts";

// Source: H. D. Goff, Ice Cream Technology (University of Guelph e-book), mix calculations, problems 1, 3, 4 and 5:
// targets, ingredient compositions and printed answers, kg per 100 kg of mix. `exact` is the solution of the same
// equations by hand; a printed answer is off by its own rounding. MSNF of creams and milks by the book's skim-portion rule.
interface Line {
  readonly name: string;
  readonly composition: Record<string, number>;
  readonly exact: number;
  readonly printed?: number;
}

const stabiliser = {name: "stabiliser", composition: {stabiliser: 100}};
const sugar = {name: "sugar", composition: {sucrose: 100}};
const skimPowder = {name: "skim milk powder 97 %", composition: {msnf: 97, water: 3}};
const dairy = (fat: number, msnf: number) => ({milkFat: fat, msnf, water: 100 - fat - msnf});

const problems: Record<string, {targets: BriefInput["targets"]; lines: Line[]}> = {
  "problem 1: butter, skim milk powder and water": {
    targets: {fat: {equal: 14}, msnf: {equal: 10}, sucrose: {equal: 15}, stabiliser: {equal: 0.4}},
    lines: [
      {name: "butter 80 %", composition: dairy(80, 1.8), exact: 17.5, printed: 17.5},
      {...skimPowder, exact: 9.9845, printed: 9.98},
      {name: "water", composition: {water: 100}, exact: 57.1155, printed: 57.12},
      {...sugar, exact: 15, printed: 15},
      {...stabiliser, exact: 0.4, printed: 0.4},
    ],
  },
  "problem 3: cream, milk, skim milk powder and egg yolk": {
    targets: {
      fat: {equal: 18},
      msnf: {equal: 9.5},
      sucrose: {equal: 15},
      stabiliser: {equal: 0.4},
      otherSolids: {equal: 1},
    },
    lines: [
      {name: "cream 30 %", composition: dairy(30, 6.3), exact: 57.4227},
      {name: "milk 3.5 %", composition: dairy(3.5, 8.685), exact: 22.0909},
      {...skimPowder, exact: 4.0864, printed: 4.08},
      {...sugar, exact: 15, printed: 15},
      {...stabiliser, exact: 0.4, printed: 0.4},
      // The problem counts the yolk as an amount of its own, whatever is in it.
      {name: "egg yolk", composition: {otherSolids: 100}, exact: 1, printed: 1},
    ],
  },
  "problem 4: cream, milk and sweetened condensed skim milk": {
    targets: {fat: {equal: 14}, msnf: {equal: 10}, sucrose: {equal: 15}, stabiliser: {equal: 0.5}},
    lines: [
      {name: "cream 32 %", composition: dairy(32, 6.12), exact: 39.9373, printed: 39.93},
      {name: "milk 3.5 %", composition: dairy(3.5, 8.685), exact: 34.8592, printed: 34.87},
      {
        name: "sweetened condensed skim milk",
        composition: {msnf: 28, sucrose: 40, water: 32},
        exact: 16.1726,
        printed: 16.17,
      },
      {...sugar, exact: 8.531, printed: 8.53},
      {...stabiliser, exact: 0.5, printed: 0.5},
    ],
  },
  "problem 5: cream, milk and sweetened condensed whole milk": {
    targets: {fat: {equal: 14}, msnf: {equal: 10}, sucrose: {equal: 15}, stabiliser: {equal: 0.5}},
    lines: [
      {name: "cream 30 %", composition: dairy(30, 6.3), exact: 35.6947, printed: 35.69},
      {name: "milk 4 %", composition: dairy(4, 8.64), exact: 35.1285, printed: 35.13},
      {
        name: "sweetened condensed whole milk",
        composition: {milkFat: 8, msnf: 20, sucrose: 42, water: 30},
        exact: 23.5806,
        printed: 23.58,
      },
      {...sugar, exact: 5.0961, printed: 5.1},
      {...stabiliser, exact: 0.5, printed: 0.5},
    ],
  },
};

/** The hand solution carries four decimals; a printed answer may be off by a unit or so of its last digit. */
const EXACT = 0.0001;
const PRINTED = 0.0125;

describe.each(Object.entries(problems))("Guelph e-book, %s", (_name, {targets, lines}) => {
  const ingredients = lines.map(({name, composition}, j) => ({name, composition, price: 1 + j}));
  const answer = balance({batch: 100_000, ingredients, targets});

  test("has the exact solution as its only mix", () => {
    expect(answer.status).toBe("optimal");
    if (answer.status !== "optimal") return;
    for (const [j, {name, exact}] of lines.entries()) {
      within(answer.amounts[j]!.percent, exact, Math.max(EXACT, exact * 1e-4), name);
    }
  });

  test("agrees with the printed answer to its rounding", () => {
    if (answer.status !== "optimal") throw new Error("no mix");
    for (const [j, {name, printed}] of lines.entries()) {
      if (printed !== undefined) within(answer.amounts[j]!.grams / 1000, printed, PRINTED, `${name}, kg`);
    }
  });
});
