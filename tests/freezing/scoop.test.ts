import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import {glassTransition} from "../../lib/freezing/glass-transition.ts";
import {hardness} from "../../lib/freezing/firmness.ts";
import {hardPhase, ice} from "../../lib/freezing/ice.ts";
import {
  DIPPING_TEMPERATURE,
  PUBLISHED_HARD_MIXES,
  scooping,
  scoopTemperature,
  verdictAt,
} from "../../lib/freezing/scoop.ts";
import {FATS, solidFat, solidShare} from "../../lib/freezing/solid-fat.ts";
import {sandiness, saturations, solubility} from "../../lib/freezing/solubility.ts";
import {
  equivalenceMix,
  sucroseEquivalenceCurve,
  temperatureBySucroseEquivalence,
} from "../../lib/freezing/sucrose-equivalence.ts";
import type {Composition} from "../../lib/pantry/parts.ts";
import {within} from "../support/within.ts";

const [standard] = PUBLISHED_HARD_MIXES.map(({composition}) => composition) as [Composition];

describe("scoop temperature", () => {
  // Guelph e-book, suggested mixes; the overrun by class of brand is common practice, no source.
  const AIR = [100, 100, 100, 75, 75, 75, 40];

  test("of each published mix lies from -15 to -11 °C with its air (common practice, no source), and it scoops when dipped", () => {
    expect(PUBLISHED_HARD_MIXES).toHaveLength(7);
    for (const [i, {name, composition}] of PUBLISHED_HARD_MIXES.entries()) {
      const overrun = AIR[i]!;
      within(scoopTemperature(composition, {overrun}).temperature, -13, 2, `scoop temperature of ${name}`);
      expect(verdictAt(composition, DIPPING_TEMPERATURE, {overrun})).toBe("scoops");
    }
  });

  test("is where the firmness is the reference, and it scoops while as hard as scooped ice cream: 2.5 to 8 kPa by vane, to a tenth of a degree (Briggs, Steffe and Ustunol 1996)", () => {
    const {temperature, low, high} = scoopTemperature(standard);
    within(hardness(standard, temperature!), 1, 1e-6, "at the scoop temperature");
    // A twentieth of a degree is at most 4 % of hardness.
    const half = Math.sqrt(8 / 2.5);
    within(hardness(standard, low!) / half, 1, 0.04, "at the cold end");
    within(hardness(standard, high!) * half, 1, 0.04, "at the warm end");
    for (const end of [low!, high!]) expect(Number(end.toFixed(1))).toBe(end);
  });

  test("has a band of just the temperatures at which the verdict is that it scoops", () => {
    for (const {composition} of PUBLISHED_HARD_MIXES) {
      const {low, high} = scoopTemperature(composition);
      for (let tenths = -400; tenths < 0; tenths++) {
        const scoops = verdictAt(composition, tenths / 10) === "scoops";
        expect(scoops, `${tenths / 10}`).toBe(tenths / 10 >= low! && tenths / 10 <= high!);
      }
    }
  });

  test("decides on what is printed: two temperatures that read alike have one verdict", () => {
    const {low, high} = scoopTemperature(standard);
    for (const off of [-0.04, 0, 0.04]) {
      expect(verdictAt(standard, low! + off)).toBe("scoops");
      expect(verdictAt(standard, high! + off)).toBe("scoops");
      expect(verdictAt(standard, low! - 0.1 + off)).toBe("firm");
      expect(verdictAt(standard, high! + 0.1 + off)).toBe("soft");
    }
  });

  test("is said of a freezer together with the verdict there", () => {
    expect(scooping(standard, -18)).toStrictEqual({
      ...scoopTemperature(standard),
      freezer: -18,
      overrun: 30,
      verdict: verdictAt(standard, -18),
    });
    expect(scooping({water: 30, sucrose: 70}, -18)).toStrictEqual({
      freezer: -18,
      overrun: 30,
      verdict: "never hardens",
      softenedBy: "sugars",
    });
    expect(() => verdictAt(standard, -41)).toThrow(/temperature/);
  });

  test("falls when sugar replaces water", () => {
    const sweeter = {...standard, water: standard.water! - 3, dextrose: 3};
    expect(scoopTemperature(sweeter).temperature).toBeLessThan(scoopTemperature(standard).temperature!);
  });

  test("is not there for a mix that never gets so hard, and near 0 °C for water", () => {
    expect(scoopTemperature({water: 30, sucrose: 70})).toEqual({});
    expect(scoopTemperature({water: 60, alcohol: 40})).toEqual({});
    within(scoopTemperature({water: 100}).temperature, 0, 1e-6, "water");
  });

  test("has a verdict that only hardens on cooling", () => {
    const order = ["soft", "scoops", "firm", "hard"];
    const verdicts = Array.from({length: 40}, (_, i) => order.indexOf(verdictAt(standard, -i)));
    expect(verdicts).toEqual(verdicts.toSorted((a, b) => a - b));
    expect(new Set(verdicts).size).toBe(4);
  });
});

describe("solid fat", () => {
  test.each(FATS)("%s is solid in the cold, liquid in the warm, never more solid on warming", (fat) => {
    expect(solidShare(fat, -40)).toBeGreaterThan(75);
    expect(solidShare(fat, 40)).toBe(0);
    for (let t = -40; t < 40; t++) expect(solidShare(fat, t + 1)).toBeLessThanOrEqual(solidShare(fat, t));
  });

  test("adds up by mass", () => {
    const both = {milkFat: 8, cocoaButter: 4};
    within(solidFat(both, 5), solidFat({milkFat: 8}, 5) + solidFat({cocoaButter: 4}, 5), 1e-12, "two fats");
  });

  test("makes the hard phase with the ice", () => {
    within(hardPhase(standard, -13), ice(standard, -13) + solidFat(standard, -13), 1e-12, "hard phase");
    within(hardPhase(standard, 5), solidFat(standard, 5), 1e-12, "hard phase of the melted mix");
  });
});

describe("second method", () => {
  test("leaves as much water liquid as the first within 5 % and 0.3 g, for the published mixes to -12 °C", () => {
    // Beyond, its table ends at 180 g sucrose per 100 g water and -13.68 °C, though ice and sucrose meet at 165.7 g and
    // -13.95 °C (F. E. Young and F. T. Jones 1949, from memory).
    for (const {name, composition: whole} of PUBLISHED_HARD_MIXES) {
      // It knows no bound water: proteins and gums are set aside.
      const {milkProtein: _protein, stabiliser: _gums, ...composition} = whole;
      for (const {frozen, temperature} of sucroseEquivalenceCurve(equivalenceMix(composition))) {
        if (temperature < -12) break;
        const liquid = composition.water! * (1 - frozen / 100);
        within(
          composition.water! - ice(composition, temperature),
          liquid,
          0.05 * liquid + 0.3,
          `${name}, ${frozen} %`,
        );
      }
    }
  });

  test("says what it leaves out, and where its table ends", () => {
    expect(equivalenceMix({...standard, alcohol: 2, salt: 0.2}).leftOut).toEqual(["alcohol", "salt"]);
    expect(equivalenceMix(standard).leftOut).toEqual([]);
    const mix = {sucroseEquivalent: 20, milkSolids: 10, water: 60};
    expect(temperatureBySucroseEquivalence(mix, 90)).toBeUndefined();
    expect(
      sucroseEquivalenceCurve(mix).every((d, i, all) => i === 0 || d.temperature < all[i - 1]!.temperature),
    ).toBe(true);
  });
});

describe("crystals and glass", () => {
  test("lactose is far supersaturated in a freezer, sucrose is not at -13.95 °C when saturated with ice", () => {
    const [first] = saturations(standard, -18);
    expect(first?.part).toBe("lactose");
    expect(first?.ratio).toBeGreaterThan(3);
    within(
      first?.concentration,
      (100 * standard.lactose!) / (standard.water! - ice(standard, -18)),
      1e-9,
      "lactose",
    );
    // Young and Jones 1949: ice, sucrose and a solution of 62.37 % meet at -13.95 °C (from memory).
    const eutectic = saturations({water: 60, sucrose: 40}, -13.95)[0];
    within(eutectic?.ratio, 1, 0.07, "saturation at the eutectic");
  });

  test("nothing dissolves in no water", () => {
    expect(saturations({milkFat: 100}, -18)).toEqual([]);
    expect(solubility("lactose", 25)).toBeCloseTo(21.6, 10);
  });

  test("MSNF above 15 % of the serum sells soon, above 18.5 % turns sandy (Arbuckle, from memory)", () => {
    const withMsnf = (msnf: number): Composition => ({
      water: 64,
      milkProtein: 0.38 * msnf,
      lactose: 0.54 * msnf,
      milkSalts: 0.08 * msnf,
    });
    expect(sandiness(withMsnf(10)).caution).toBe("none");
    expect(sandiness(withMsnf(13)).caution).toBe("sell soon");
    expect(sandiness(withMsnf(16)).caution).toBe("likely");
  });

  test("it is the lactose that turns sandy, whatever else is in the milk solids", () => {
    const with100 = (milk: Composition): string => sandiness({water: 64, sucrose: 16, ...milk}).caution;
    // Whey permeate is next to all lactose; protein isolate and lactose-free milk solids have next to none.
    expect(with100({lactose: 8.5, milkProtein: 0.3, milkSalts: 0.8})).toBe("likely");
    expect(with100({lactose: 0.2, milkProtein: 18, milkSalts: 0.6})).toBe("none");
    expect(with100({dextrose: 3.5, galactose: 3.5, milkProtein: 6, milkSalts: 1.2})).toBe("none");
    // 54 % of MSNF is lactose (University of Guelph, ice cream technology e-book): 15 % MSNF in 85 % water is 8.1 in 85.
    within(sandiness({water: 85, lactose: 8.1}).longStorage, 8.1, 1e-9, "g");
  });

  test("the glass of a sugar solution is that sugar's, and of a mix between its sugars'", () => {
    expect(glassTransition({water: 80, sucrose: 20})).toBe(-32);
    expect(glassTransition({water: 100})).toBeUndefined();
    fc.assert(
      fc.property(fc.double({min: 0.1, max: 20, noNaN: true}), (dextrose) => {
        const glass = glassTransition({water: 60, sucrose: 10, dextrose})!;
        expect(glass).toBeLessThan(-32);
        expect(glass).toBeGreaterThan(-43);
      }),
    );
  });
});
