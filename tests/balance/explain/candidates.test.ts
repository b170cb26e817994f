import {describe, expect, test} from "vitest";
import {balance} from "../../../lib/balance/balance.ts";
import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import {candidatesOf, type CandidateOptions} from "../../../lib/balance/explain/candidates.ts";
import {within} from "../../support/within.ts";

const water = {name: "water", composition: {water: 100}, price: 0};

/** The other mixes of a brief by name, each with the g of its ingredients. */
function others(brief: BriefInput, options: CandidateOptions = {}) {
  const best = balance(brief);
  if (best.status !== "optimal") throw new Error(best.status);
  const found = candidatesOf(best, best, options);
  return new Map(
    found.map(({name, amounts}) => [name, amounts.map(({grams}) => Math.round(grams * 1e6) / 1e6)]),
  );
}

describe("a mix with fewer ingredients, by hand", () => {
  // 40 g of fat: 300 g of the cheap one, of which there is no more, and 100 g of the dear one cost 0.405; the dear one alone 0.42.
  // The cheap one is the softer and the less sweet, so that no other candidate comes near.
  // What the cheapest does not use stays out: 10 g of the spare in place of the dear one would cost 0.42 as well.
  const cheap = {name: "cheap", composition: {water: 85, otherFat: 10, lactose: 5}, price: 1, max: 300};
  const dear = {name: "dear", composition: {water: 89, otherFat: 10, sucrose: 1}, price: 1.05};
  const spare = {name: "spare", composition: {otherFat: 100}, price: 11.9};
  const brief: BriefInput = {ingredients: [cheap, dear, water, spare], targets: {fat: {equal: 4}}};
  const fewer = (options?: CandidateOptions, ingredients = brief.ingredients) =>
    others({...brief, ingredients}, options).get("fewer ingredients");

  test("leaves out the smallest that the rest can do without", () => {
    expect(fewer()).toEqual([0, 400, 600, 0]);
  });

  test("is shown up to the loss that is asked for", () => {
    expect(fewer({margin: 0.038})).toBeDefined();
    expect(fewer({margin: 0.036})).toBeUndefined();
  });

  test("is shown where it differs by so much: 30 g of 100 are exchanged", () => {
    expect(fewer({apart: 29.9})).toBeDefined();
    expect(fewer({apart: 30.1})).toBeUndefined();
  });

  test("leaves out the smaller of two of which either alone would do", () => {
    const fatty = {name: "fatty", composition: {water: 74, otherFat: 20, fibre: 5, sucrose: 1}, price: 1};
    const fibrous = {name: "fibrous", composition: {water: 75, otherFat: 5, fibre: 20}, price: 1};
    // 20 a + 5 b = 4 and 5 a + 20 b = 2.5: 180 and 80 g. Without the second, 500 g of the first bring the fibre.
    const two = {ingredients: [fatty, fibrous, water], targets: {fat: {min: 4}, fibre: {min: 2.5}}};
    expect(others(two, {margin: 2.5}).get("fewer ingredients")).toEqual([500, 0, 500]);
  });

  test("keeps what must be in", () => {
    expect(fewer({}, [{...cheap, min: 10}, dear, water, spare])).toBeUndefined();
  });

  test.each<[CandidateOptions, RegExp]>([
    [{margin: -0.1}, /^margin: .*got -0.1/],
    [{apart: -1}, /^apart: .*got -1/],
  ])("%j is refused", (options, says) => {
    expect(() => others(brief, options)).toThrow(says);
  });
});

test("where something is made largest, a candidate falls short of it by no more than 15 %", () => {
  const sweet = {name: "sweet", composition: {sucrose: 30, water: 70}, price: 1};
  const plain = {name: "plain", composition: {otherSolids: 30, water: 70}, price: 1};
  // Sweetness of sucrose is 100: 30 at most, and 0.85 x 30 at least.
  const least = others({ingredients: [sweet, plain], targets: {}, maximise: "sweetness"}).get("least sweet");
  within(least?.[0], 850, 1e-4, "sweet, g");
});

test("where packs are paid in full, no candidate opens one that makes it dearer than is asked for", () => {
  const pack = (name: string, composition: object, price: number, grams: number) => ({
    name,
    composition,
    price,
    pack: grams,
  });
  // 200 g of sugar are in a pack for 1; dextrose is as cheap by weight, but comes in packs of 5.
  const brief: BriefInput = {
    ingredients: [pack("sugar", {sucrose: 100}, 1, 1000), pack("dextrose", {dextrose: 100}, 1, 5000), water],
    targets: {sugars: {equal: 20}},
    wholePacks: true,
  };
  expect(others(brief).size).toBe(0);
  expect(others(brief, {margin: 4.9}).get("softest at -18 °C")).toBeUndefined();
  expect(others(brief, {margin: 5.1}).get("softest at -18 °C")).toBeDefined();
});
