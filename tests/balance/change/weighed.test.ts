import {describe, expect, test} from "vitest";
import {type Made, weighed} from "../../../lib/balance/change/weighed.ts";
import {findIngredient} from "../../../lib/pantry/pantry.ts";
import {realPantry} from "../../support/pantry.ts";

/** A line that was `before` g and is to be `grams`, between limits. */
function line(name: string, before: number, grams: number, min = 0, max = 2000): Made {
  return {candidate: {ingredient: findIngredient(realPantry, name), before, min, max}, grams};
}

/** 1,000 g, of which the cream hardly moves. */
function made(milk: readonly [min?: number, max?: number] = [], dextrose = 2000, sucrose = 0): Made[] {
  return [
    line("whole milk", 600, 620.07, ...milk),
    line("sucrose", 130, 120.43, sucrose),
    line("dextrose", 0, 9.876, 0, dextrose),
    line("cream 40 %", 249.6, 249.624),
  ];
}
const gramsOf = (lines: readonly Made[] | undefined) => lines?.map(({grams}) => grams);

// By hand: what moves to 1 g, below 10 g to 0.1 g; the milk, as the largest that moves, is what is left of 1,000 g.
describe("amounts as a cook weighs them", () => {
  test("in whole grams and tenths, all of the mass there, and what hardly moves as it was", () => {
    expect(gramsOf(weighed(made(), 1000, 1))).toEqual([620.5, 120, 9.9, 249.6]);
  });

  test("a tenth of each step", () => {
    expect(gramsOf(weighed(made(), 1000, 0.1))).toEqual([620.12, 120.4, 9.88, 249.6]);
  });

  test("within limits: rounded down to the most, up to the least", () => {
    expect(gramsOf(weighed(made([], 9.85, 120.4), 1000, 1))).toEqual([619.6, 121, 9.8, 249.6]);
    // A limit that is a whole step but for rounding is met there.
    expect(gramsOf(weighed(made([], 9.8 - 1e-9, 120 + 1e-7), 1000, 1))).toEqual([620.6, 120, 9.8, 249.6]);
  });

  test("none where what is left is beyond the limits of the largest", () => {
    expect(weighed(made([0, 620.4]), 1000, 1)).toBeUndefined();
    expect(weighed(made([620.6, 2000]), 1000, 1)).toBeUndefined();
    expect(weighed(made([620.5, 620.5]), 1000, 1)).toBeDefined();
  });

  test("from 500 g on to 5 g: of two that move, the smaller", () => {
    const lines = [line("whole milk", 600, 698.8), line("cream 40 %", 400, 501.2)];
    expect(gramsOf(weighed(lines, 1200, 1))).toEqual([700, 500]);
  });

  test("half a step is a move, and a least is met in tenths where tenths are weighed", () => {
    const lines = [
      line("whole milk", 400, 398.4),
      line("sucrose", 130, 130.6),
      line("dextrose", 0, 9.91, 9.93),
    ];
    expect(gramsOf(weighed(lines, 538.91, 1))).toEqual([397.91, 131, 10]);
  });

  test("as they were where nothing moves", () => {
    const still = [line("whole milk", 600.3, 600.31), line("sucrose", 130, 130)];
    expect(gramsOf(weighed(still, 730.3, 1))).toEqual([600.3, 130]);
  });
});
