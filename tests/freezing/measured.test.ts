import {describe, expect, test} from "vitest";
import {heldBy} from "../../lib/freezing/held-water.ts";
import {initialFreezingPoint} from "../../lib/freezing/ice.ts";
import {solidShare} from "../../lib/freezing/solid-fat.ts";
import {readComposition} from "../../lib/pantry/composition.ts";
import {findIngredient} from "../../lib/pantry/pantry.ts";
import type {Part} from "../../lib/pantry/parts.ts";
import {realPantry} from "../support/pantry.ts";
import {within} from "../support/within.ts";

const freezingPoint = (name: string) =>
  initialFreezingPoint(findIngredient(realPantry, name, "test").composition)!;

describe("freezing points of foods", () => {
  // Standard deviations there are 0.1 to 0.4 °C, and the fruit is not that of the food tables.
  const fruits = [
    ["strawberry", -0.9],
    ["apple", -1.5],
    ["pear", -1.5],
    ["plum", -1.1],
    ["peach", -0.8],
    ["grapes", -1.6],
  ] as const;
  test.each(fruits)(
    "%s: %f °C (Korean Journal of Food Preservation 23, 2016, table 2), two deviations",
    (name, measured) => {
      within(freezingPoint(name), measured, 0.8, name);
    },
  );

  test("six of these fruits are right on average, within 0.2 °C", () => {
    const off = fruits.map(([name, measured]) => freezingPoint(name) - measured);
    within(off.reduce((a, b) => a + b) / off.length, 0, 0.2, "mean difference");
  });

  test("egg white and yolk come nearer to theirs, -0.45 and -0.58 °C (from memory), with the salts of their potassium", () => {
    within(freezingPoint("egg white"), -0.45, 0.1, "egg white");
    within(freezingPoint("egg yolk"), -0.58, 0.3, "egg yolk");
  });
});

describe("sweeteners beside those that they are like (Nippon Shokuhin Kagaku Kogaku Kaishi 44, 1997: calorimetry)", () => {
  test.each<[Part, Part]>([
    ["maltitol", "maltose"],
    ["lactitol", "lactose"],
  ])("%s freezes nearly as %s", (polyol, sugar) => {
    for (const t of [-2, -5, -10]) within(heldBy(polyol, t) / heldBy(sugar, t), 1, 0.02, `${t} °C`);
  });

  test("sorbitol freezes slightly warmer than dextrose", () => {
    for (const t of [-2, -5, -10]) {
      const ratio = heldBy("sorbitol", t) / heldBy("dextrose", t);
      expect(ratio).toBeLessThan(1);
      expect(ratio).toBeGreaterThan(0.9);
    }
  });

  test("inulin for 42 DE syrup solids makes a lean mix freeze warmer, by about 0.35 °C (Schaller-Povolny and Smith 2001: -2.05 and -1.70 °C; abstract, mix not given)", () => {
    const base = {milkFat: 5, msnf: 11, sucrose: 10.5, stabiliser: 0.3, water: 67.2};
    const syrup = readComposition({...base, glucoseSyrupSolids: 6, dextroseEquivalent: 42}, "syrup");
    const inulin = readComposition({...base, inulin: 6}, "inulin");
    within(initialFreezingPoint(inulin)! - initialFreezingPoint(syrup)!, 0.35, 0.1, "difference");
  });
});

describe("solid fat of milk (Dairy Sci. Technol. 90, 2010, table I; melts at 35.4 °C)", () => {
  test.each([
    [-18, 83.5],
    [3.8, 39],
    [8.1, 36.8],
    [36, 0],
  ])("at %f °C %f %%", (temperature, solid) => {
    within(solidShare("milkFat", temperature), solid, 0.05, "solid");
  });
});
