import {describe, expect, test} from "vitest";
import {cookDown} from "../../lib/kitchen/cooking/cook.ts";
import {furtherSteps, usualAfter} from "../../lib/kitchen/day/further-steps.ts";
import {baseComponent, makeProduct, rippleComponent} from "../../lib/kitchen/product/product.ts";
import {milk, sugar} from "../support/custard.ts";

const base = baseComponent({
  name: "base",
  lines: [
    {ingredient: milk, grams: 850},
    {ingredient: sugar, grams: 150},
  ],
});

describe("what follows the base", () => {
  test("with a ripple, a machine and tubs", () => {
    const plums = {name: "plums", composition: {water: 100}};
    const sauce = {
      name: "plum ripple",
      lines: [
        {ingredient: plums, grams: 500},
        {ingredient: sugar, grams: 500},
      ],
    };
    const ripple = rippleComponent(sauce, 20, cookDown(sauce, {brix: 62.5}));
    const product = makeProduct("plum ripple ice cream", [{...base, percent: 80}, ripple]);
    const steps = furtherSteps(product, {
      cool: 4,
      runs: 2,
      draw: -6,
      freezer: -20,
      tub: {millilitres: 500, grams: 400},
    });
    // 500 g of sugar at 62.5 °Brix weigh 800 g; ripple is a fifth of 400 g.
    expect(steps).toEqual([
      expect.stringMatching(
        /^Ripple: cook plums, sugar, sieve, boil down to 800 g or 6[23] °Brix \(about 10\d °C\), cool to 4 °C$/,
      ),
      "Churn in 2 equal runs, draw at about -6 °C",
      "Layer 80 g of ripple into each tub",
      "Fill each tub of 500 ml to 400 g, label it, into the freezer at -20 °C at once",
    ]);
  });

  test("where neither machine nor tub is known", () => {
    const product = makeProduct("plain", [base]);
    expect(furtherSteps(product, {...usualAfter(base.composition, 3, -22), draw: -5})).toEqual([
      "Let it rest covered at 3 °C for 4 to 12 hours",
      "Churn, draw at about -5 °C",
      "Fill the tubs, label them, into the freezer at -22 °C at once",
      "Leave it there until the core is at -19 °C",
    ]);
  });

  test("a mix is drawn where half of its water is ice, and nowhere where that never is", () => {
    // Sucrose 10 g, water 90 g: half frozen, 10 g are left in 45 g of water, 0.65 mol/kg, which freezes at about -1.3 °C
    // (freezing-point depression of sucrose solutions, CRC Handbook of Chemistry and Physics: 1.3 °C at 18 %).
    expect(usualAfter({water: 90, sucrose: 10}).draw).toBe(-1);
    expect(usualAfter({water: 30, sucrose: 70}).draw).toBeUndefined();
  });
});
