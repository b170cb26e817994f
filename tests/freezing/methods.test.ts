import {describe, expect, test} from "vitest";
import {freezingCurve} from "../../lib/freezing/curve.ts";
import {enthalpy} from "../../lib/freezing/enthalpy.ts";
import {glassTransition} from "../../lib/freezing/glass-transition.ts";
import {heldBy, heldWater} from "../../lib/freezing/held-water.ts";
import {ice, iceFunction, unclippedHardPhase, unclippedIce} from "../../lib/freezing/ice.ts";
import {scoopTemperature, verdictBands} from "../../lib/freezing/scoop.ts";
import {solidFat} from "../../lib/freezing/solid-fat.ts";
import {saturations, solubility} from "../../lib/freezing/solubility.ts";
import {SOLUTE_TABLE} from "../../lib/freezing/solute-table.ts";
import {
  coldestBySucroseEquivalence,
  equivalenceMix,
  liquidBySucroseEquivalence,
  sucroseEquivalenceCurve,
  temperatureBySucroseEquivalence,
} from "../../lib/freezing/sucrose-equivalence.ts";
import {withAir} from "../../lib/freezing/thermal-properties.ts";
import {extrapolations, iceError, methodDifference} from "../../lib/freezing/validity.ts";
import {iceWaterActivity} from "../../lib/freezing/water-activity.ts";
import type {Composition} from "../../lib/pantry/parts.ts";
import {within} from "../support/within.ts";

const mix: Composition = {water: 62, sucrose: 14, dextrose: 3, lactose: 5.4, milkSalts: 0.8, milkFat: 10};

describe("the method of sucrose equivalents, by hand", () => {
  // Table 6.1 of Goff & Hartel, Ice Cream, 7th ed. (2013), as the project has it: other tests hold that to the book.
  const table = (strength: number) =>
    temperatureBySucroseEquivalence({sucroseEquivalent: strength, milkSolids: 0, water: 100}, 0)!;

  test("counts 1 g of sucrose as 1, of dextrose as 1.9, of 42 DE syrup solids as 0.8 (table 6.2), and no syrup as none", () => {
    const {sucroseEquivalent, milkSolids, water} = equivalenceMix({
      water: 60,
      sucrose: 10,
      dextrose: 2,
      glucoseSyrupSolids: 5,
      dextroseEquivalent: 42,
      milkSalts: 0.8,
    });
    within(sucroseEquivalent, 10 + 2 * 1.9 + 5 * 0.8, 1e-12, "sucrose equivalents");
    within(milkSolids, 10, 1e-12, "milk solids of 8 % ash");
    expect(water).toBe(60);
    expect(equivalenceMix({sucrose: 100})).toMatchObject({sucroseEquivalent: 100, water: 0});
  });

  test("adds the milk salts' 2.37 °C g/g to the table's depression, both in the water that is left", () => {
    within(table(3), -0.18, 1e-12, "first row of the table");
    within(table(180), -13.68, 1e-12, "last row of the table");
    const half = {sucroseEquivalent: 15, milkSolids: 10, water: 60};
    // 15 g in 50 g of water is 30 g in 100 g; in 25 g it is 60.
    within(
      temperatureBySucroseEquivalence({...half, water: 50}, 0),
      table(30) - 2.37 * (10 / 50),
      1e-12,
      "none frozen",
    );
    within(
      temperatureBySucroseEquivalence({...half, water: 50}, 50),
      table(60) - 2.37 * (10 / 25),
      1e-12,
      "half frozen",
    );
  });

  test("ends with its table, at 180 g to 100 g of water, and where no water is left", () => {
    const edge = {sucroseEquivalent: 18, milkSolids: 0, water: 20};
    expect(temperatureBySucroseEquivalence(edge, 50)).toBe(-13.68);
    expect(temperatureBySucroseEquivalence(edge, 50.1)).toBeUndefined();
    expect(temperatureBySucroseEquivalence(edge, 100)).toBeUndefined();
    expect(temperatureBySucroseEquivalence({...edge, sucroseEquivalent: 0}, 100)).toBeUndefined();
    within(coldestBySucroseEquivalence({...edge, milkSolids: 5}), -13.68 - 2.37 * (5 / 10), 1e-12, "the end");
    expect(coldestBySucroseEquivalence({...edge, sucroseEquivalent: 0})).toBe(0);
  });

  test("gives a curve in steps of the share frozen, from none to the end of the table", () => {
    const curve = sucroseEquivalenceCurve({sucroseEquivalent: 18, milkSolids: 0, water: 40}, 25);
    expect(curve.map(({frozen}) => frozen)).toEqual([0, 25, 50, 75]);
    expect(curve.map(({temperature}) => temperature)).toEqual([45, 60, 90, 180].map(table));
    expect(sucroseEquivalenceCurve({sucroseEquivalent: 0, milkSolids: 5, water: 40}, 50)).toHaveLength(2);
    expect(sucroseEquivalenceCurve(equivalenceMix(mix))).toHaveLength(16);
  });

  test("finds the water left at a temperature as the inverse of that", () => {
    const asked = equivalenceMix(mix);
    for (const frozen of [0, 30, 60]) {
      const temperature = temperatureBySucroseEquivalence(asked, frozen)!;
      within(
        liquidBySucroseEquivalence(asked, temperature),
        asked.water * (1 - frozen / 100),
        1e-4,
        `${frozen} %`,
      );
    }
    expect(liquidBySucroseEquivalence(asked, coldestBySucroseEquivalence(asked) - 0.1)).toBeUndefined();
    expect(liquidBySucroseEquivalence({...asked, sucroseEquivalent: 0}, -5)).toBeUndefined();
  });
});

describe("how far the ice may be off", () => {
  test("is the difference of the methods where the table ends, in proportion to the held water below", () => {
    const end = coldestBySucroseEquivalence(equivalenceMix(mix));
    const liquid = liquidBySucroseEquivalence(equivalenceMix(mix), end)!;
    within(methodDifference(mix, end), liquid - heldWater(mix, end), 1e-9, "at the end of the table");
    within(
      methodDifference(mix, -8),
      liquidBySucroseEquivalence(equivalenceMix(mix), -8)! - heldWater(mix, -8),
      1e-9,
      "before it",
    );
    within(
      methodDifference(mix, -35) / heldWater(mix, -35),
      methodDifference(mix, end) / heldWater(mix, end),
      1e-9,
      "past it, relative",
    );
    expect(methodDifference({water: 90, alcohol: 10}, -5)).toBe(0);
  });

  test("of one solute within its data is the rms of its fit by the slope of its curve, and half the methods' difference", () => {
    // Erythritol's equivalent is by a rule of thumb; glycerol is not known to the second method.
    const glycerol: Composition = {water: 80, glycerol: 20};
    const slope = (20 * (heldBy("glycerol", -5 + 1e-3) - heldBy("glycerol", -5 - 1e-3))) / 2e-3;
    within(iceError(glycerol, -5), SOLUTE_TABLE.glycerol.rms * slope, 1e-4, "glycerol, 20 g");
    const sucrose: Composition = {water: 80, sucrose: 20};
    const steep = (20 * (heldBy("sucrose", -10 + 1e-3) - heldBy("sucrose", -10 - 1e-3))) / 2e-3;
    within(
      iceError(sucrose, -10),
      Math.hypot(SOLUTE_TABLE.sucrose.rms * steep, methodDifference(sucrose, -10) / 2),
      1e-4,
      "sucrose, 20 g",
    );
  });

  test("of syrup solids grows with their dextrose equivalent, as what they hold does", () => {
    const syrup = (dextroseEquivalent: number): Composition => ({
      water: 80,
      glucoseSyrupSolids: 20,
      dextroseEquivalent,
    });
    // Glucose-syrup solids of 100 DE are dextrose to both methods.
    within(iceError(syrup(100), -10), iceError({water: 80, dextrose: 20}, -10), 1e-9, "100 DE");
    const own = (dextroseEquivalent: number) =>
      Math.sqrt(
        iceError(syrup(dextroseEquivalent), -10) ** 2 -
          (methodDifference(syrup(dextroseEquivalent), -10) / 2) ** 2 -
          // Half of the water that its chains bind, 0.15 g per g of what is no dextrose, is not known.
          (20 * 0.15 * (1 - dextroseEquivalent / 100) * 0.5) ** 2,
      );
    within(own(50) / own(100), 0.5, 1e-9, "half of the molecules, half of the error");
  });

  test("names the solutes used past their data, what holds most water first, and none at the end of its data", () => {
    const both: Composition = {water: 60, dextrose: 2, lactose: 8};
    const past = extrapolations(both, -10);
    expect(past.map(({part}) => part)).toEqual(["lactose", "dextrose"]);
    within(past[0]?.held, 8 * heldBy("lactose", -10), 1e-12, "held by lactose");
    expect(past[0]?.coldest).toBe(SOLUTE_TABLE.lactose.coldest);
    expect(extrapolations({water: 90, lactose: 10}, SOLUTE_TABLE.lactose.coldest)).toEqual([]);
  });

  test("past its data is more by half of what the bound water has fallen since", () => {
    const {rms, coldest, coefficients} = SOLUTE_TABLE.organicAcids;
    // Held water less that of an ideal solution, ideal a/u with u = 1 - a.
    const bound = (t: number) =>
      heldBy("organicAcids", t) - (coefficients[0] * iceWaterActivity(t)) / (1 - iceWaterActivity(t));
    const slope = (heldBy("organicAcids", -30 + 1e-3) - heldBy("organicAcids", -30 - 1e-3)) / 2e-3;
    expect(coldest).toBeGreaterThan(-30);
    within(
      iceError({water: 80, organicAcids: 20}, -30),
      20 * Math.hypot(rms * slope, (bound(-30) - bound(coldest)) / 2),
      1e-4,
      "20 g of citric acid",
    );
    const edge = iceError({water: 80, organicAcids: 20}, coldest);
    within(
      iceError({water: 80, organicAcids: 20}, coldest - 1e-6),
      edge,
      1e-4,
      "no jump at the end of the data",
    );
  });
});

describe("a freezing curve", () => {
  test("says what share of the water is ice", () => {
    const curve = freezingCurve(mix);
    expect(curve.length).toBeGreaterThan(50);
    for (const {temperature, ice: grams, frozen} of curve) {
      within(frozen, (100 * grams) / 62, 1e-9, `${temperature} °C`);
      within(grams, ice(mix, temperature), 1e-7, `ice at ${temperature} °C`);
    }
    // Fat freezes nothing: there is no water to have a share of.
    expect(freezingCurve({milkFat: 100}, {from: 0, to: -1, step: 1})).toEqual([
      {temperature: 0, ice: 0, frozen: 0},
      {temperature: -1, ice: 0, frozen: 0},
    ]);
  });

  test("begins at its own freezing point, or where it is told to, and ends on the multiple of the step that was asked for", () => {
    expect(freezingCurve(mix)[0]).toMatchObject({ice: 0, frozen: 0});
    expect(freezingCurve(mix, {from: -5, to: -5}).map(({temperature}) => temperature)).toEqual([-5]);
    expect(freezingCurve(mix, {from: -4, to: -6, step: 1}).map(({temperature}) => temperature)).toEqual([
      -4, -5, -6,
    ]);
    expect(freezingCurve(mix, {to: -1})).toEqual([]);
    expect(() => freezingCurve(mix, {to: -41})).toThrow("to: out of range");
  });
});

describe("ice and fat", () => {
  test("are told for any temperature: none above 0 °C, and below it water less what is held", () => {
    const at = iceFunction(mix);
    expect([at(0), at(4), ice(mix, 0)]).toEqual([0, 0, 0]);
    within(at(-18), ice(mix, -18), 1e-9, "at -18 °C");
    within(unclippedHardPhase(mix, -18), unclippedIce(mix, -18) + solidFat(mix, -18), 1e-12, "hard phase");
  });

  test("a dextrose equivalent counts for syrup solids alone", () => {
    expect(heldBy("sucrose", -10, 42)).toBe(heldBy("sucrose", -10));
    // 0.42 of the dextrose molecules, and what the chains of the rest bind: 0.15 g per g.
    within(
      heldBy("glucoseSyrupSolids", -10, 42),
      0.42 * heldBy("dextrose", -10) + 0.58 * 0.15,
      1e-12,
      "42 DE",
    );
  });

  test("ice and water are in balance at 0 °C: an activity of 1", () => {
    expect(iceWaterActivity(0)).toBe(1);
  });

  test("a mix that never gets so hard has no scoop temperature, not an undefined one", () => {
    expect(scoopTemperature({water: 20, sucrose: 60, milkFat: 5})).toStrictEqual({});
    expect(verdictBands()[0]?.from).toBe(-Infinity);
    expect(verdictBands().at(-1)?.to).toBe(Infinity);
  });
});

describe("crystals, glass and heat", () => {
  test("solubility follows ln s against 1/T between its two points and below them (van 't Hoff)", () => {
    // Lactose, 11.9 g at 0 °C and 21.6 g at 25 °C: worked by hand for -10 °C.
    const slope = Math.log(21.6 / 11.9) / (1 / 298.15 - 1 / 273.15);
    within(solubility("lactose", -10), 11.9 * Math.exp(slope * (1 / 263.15 - 1 / 273.15)), 1e-9, "lactose");
  });

  test("what is most supersaturated comes first, and only what is there", () => {
    const rows = saturations({water: 60, lactose: 6, sucrose: 14, erythritol: 3}, -18);
    expect(rows.map(({part}) => part)).toEqual(
      [...rows].sort((a, b) => b.ratio - a.ratio).map(({part}) => part),
    );
    expect(rows.map(({part}) => part).sort()).toEqual(["erythritol", "lactose", "sucrose"]);
    expect(rows[0]?.part).toBe("lactose");
    expect(saturations({water: 60, lactose: 1e-9}, -18).length).toBeLessThan(2);
    expect(saturations({lactose: 50, milkFat: 50}, -18)).toEqual([]);
  });

  test("the glass of syrup solids lies between starch's and dextrose's by their DE, that of a blend at the mean by mass", () => {
    // -5 °C at 0 DE and -43 °C at 100 DE, from memory.
    within(glassTransition({water: 60, glucoseSyrupSolids: 20, dextroseEquivalent: 50}), -24, 1e-12, "50 DE");
    within(
      glassTransition({water: 60, glucoseSyrupSolids: 10, dextroseEquivalent: 50, sucrose: 30}),
      (10 * -24 + 30 * -32) / 40,
      1e-12,
      "with sucrose",
    );
  });

  test("dry sugar takes up the integral of its heat capacity (Choi & Okos 1986, carbohydrate)", () => {
    // cp = 1.5488 + 1.9625e-3 T - 5.9399e-6 T² kJ/(kg K), as in ASHRAE Refrigeration (2006), chapter 9, table 1.
    const integral = (t: number) => 1.5488 * t + (1.9625e-3 * t ** 2) / 2 - (5.9399e-6 * t ** 3) / 3;
    const sugar: Composition = {sucrose: 100};
    within(enthalpy(sugar, 80) - enthalpy(sugar, 20), integral(80) - integral(20), 1e-9, "from 20 to 80 °C");
    within(enthalpy(sugar, 20) - enthalpy(sugar, -40), integral(20) - integral(-40), 1e-9, "from -40 °C");
  });

  test("air insulates: none leaves the mix as it is, and half of it by volume a little over a third (Maxwell 1873)", () => {
    expect(withAir(0.5, 0)).toBeCloseTo(0.5, 12);
    // k (2k + a - 2 f (k - a)) / (2k + a + f (k - a)) with k = 0.5, a = 0.0236, f = 0.5, by hand.
    within(withAir(0.5, 100), (0.5 * (1.0236 - 0.4764)) / (1.0236 + 0.2382), 1e-12, "100 % overrun");
  });
});
