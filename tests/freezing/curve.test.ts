import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import {InputError} from "../../lib/core/errors.ts";
import {freezingCurve} from "../../lib/freezing/curve.ts";
import {heldBy, heldWater, SOLUTES} from "../../lib/freezing/held-water.ts";
import {
  frozenShare,
  heatShock,
  ice,
  initialFreezingPoint,
  unclippedHardPhase,
  unclippedIce,
} from "../../lib/freezing/ice.ts";
import {frozenState} from "../../lib/freezing/state.ts";
import {readComposition} from "../../lib/pantry/composition.ts";
import {mixComposition, type Portion} from "../../lib/pantry/mix.ts";
import {type Composition, PARTS} from "../../lib/pantry/parts.ts";
import {within} from "../support/within.ts";

/** Any composition: some of the parts, in g per 100 g. */
const compositions: fc.Arbitrary<Composition> = fc
  .tuple(
    fc.uniqueArray(fc.tuple(fc.constantFrom(...PARTS), fc.double({min: 0.01, max: 30, noNaN: true})), {
      selector: ([part]) => part,
      maxLength: 10,
    }),
    fc.double({min: 20, max: 90, noNaN: true}),
    fc.double({min: 5, max: 97, noNaN: true}),
  )
  .map(([parts, water, dextroseEquivalent]) => {
    const grams: Record<string, number> = {...Object.fromEntries(parts), water};
    const total = Object.values(grams).reduce((a, b) => a + b);
    for (const part in grams) grams[part]! *= 100 / total;
    return grams.glucoseSyrupSolids ? {...grams, dextroseEquivalent} : grams;
  });
const temperatures = fc.double({min: -40, max: -0.01, noNaN: true});
const masses = fc.double({min: 0.1, max: 5000, noNaN: true});
const portions: fc.Arbitrary<Portion[]> = fc.array(fc.record({composition: compositions, grams: masses}), {
  minLength: 1,
  maxLength: 6,
});

const mix = readComposition(
  {
    milkFat: 10,
    msnf: 11,
    sucrose: 12,
    glucoseSyrupSolids: 4,
    dextroseEquivalent: 42,
    stabiliser: 0.5,
    water: 62.5,
  },
  "mix",
);

describe("ice, whatever the mix", () => {
  test("never grows on warming", () => {
    fc.assert(
      fc.property(compositions, temperatures, temperatures, (composition, a, b) => {
        expect(ice(composition, Math.max(a, b))).toBeLessThanOrEqual(ice(composition, Math.min(a, b)) + 1e-9);
      }),
    );
  });

  test("never grows when a solute is added", () => {
    const anySolute = fc.constantFrom(...SOLUTES);
    fc.assert(
      fc.property(compositions, anySolute, masses, temperatures, (composition, part, mass, temperature) => {
        const alone = {[part]: 100, ...(part === "glucoseSyrupSolids" && {dextroseEquivalent: 40})};
        const sweeter = mixComposition([
          {composition, grams: 1000},
          {composition: alone, grams: mass},
        ]);
        const before = (ice(composition, temperature) / 100) * 1000;
        expect((ice(sweeter, temperature) / 100) * (1000 + mass)).toBeLessThanOrEqual(before + 1e-7);
      }),
    );
  });

  test("does not depend on the size of the batch", () => {
    fc.assert(
      fc.property(
        portions,
        fc.double({min: 0.01, max: 100, noNaN: true}),
        temperatures,
        (parts, times, temperature) => {
          const larger = parts.map(({composition, grams}) => ({composition, grams: grams * times}));
          within(
            ice(mixComposition(larger), temperature),
            ice(mixComposition(parts), temperature),
            1e-9,
            "ice",
          );
        },
      ),
    );
  });

  test("leaves a solution that would itself begin to freeze at that temperature", () => {
    fc.assert(
      fc.property(compositions, fc.double({min: -30, max: -0.5, noNaN: true}), (composition, temperature) => {
        const frozen = ice(composition, temperature);
        const liquid = composition.water! - frozen;
        fc.pre(frozen > 0.01 && liquid > 0.01);
        // What crystallises is no longer in the solution, and the trade's limit for lactose is a share of the water of the mix as made.
        fc.pre(frozenState({...composition, water: liquid}, temperature).crystals === 0);
        // What only binds water has no freezing point of its own: the solutes must hold some.
        const {dextroseEquivalent} = composition;
        const solutes = Object.fromEntries(SOLUTES.map((part) => [part, composition[part] ?? 0]));
        fc.pre(heldWater({...solutes, ...(dextroseEquivalent && {dextroseEquivalent})}, temperature) > 0.01);
        within(
          initialFreezingPoint({...composition, water: liquid}),
          temperature,
          1e-6,
          "freezing point of the rest",
        );
        within(
          frozenShare(composition, temperature),
          100 - (100 * liquid) / composition.water!,
          1e-9,
          "frozen share",
        );
      }),
    );
  });

  test("is linear in the masses, blends of syrups included, to 1e-12", () => {
    fc.assert(
      fc.property(portions, temperatures, (parts, temperature) => {
        const total = parts.reduce((sum, {grams}) => sum + grams, 0);
        for (const quantity of [unclippedIce, unclippedHardPhase, heldWater]) {
          const values = parts.map(({composition}) => quantity(composition, temperature));
          const mean = parts.reduce((sum, {grams}, i) => sum + (grams / total) * values[i]!, 0);
          const scale = Math.max(1, ...values.map(Math.abs), heldWater(mixComposition(parts), temperature));
          within(quantity(mixComposition(parts), temperature) / scale, mean / scale, 1e-12, quantity.name);
        }
      }),
    );
  });
});

describe("freezing point", () => {
  test("is 0 °C for water, whatever insoluble it carries", () => {
    expect(initialFreezingPoint({water: 100})).toBe(0);
    expect(initialFreezingPoint({water: 60, milkFat: 30, fibre: 10})).toBe(0);
  });

  test("is not there without water, nor above -40 °C in strong spirit", () => {
    expect(initialFreezingPoint({milkFat: 100})).toBeUndefined();
    expect(initialFreezingPoint({sucrose: 100})).toBeUndefined();
    expect(initialFreezingPoint({alcohol: 60, water: 40})).toBeUndefined();
  });

  test("of invert sugar and honey lies between those of their sugars", () => {
    const of = (solutes: Composition) => initialFreezingPoint({...solutes, water: 80})!;
    const [dextrose, fructose] = [of({dextrose: 20}), of({fructose: 20})];
    const invert = of({dextrose: 10, fructose: 10});
    expect(invert).toBeGreaterThanOrEqual(Math.min(dextrose, fructose));
    expect(invert).toBeLessThanOrEqual(Math.max(dextrose, fructose));
    // Sugars of honey, USDA SR28 NDB 19296: fructose 40.94, glucose 35.75, maltose 1.44, sucrose 0.89 g per 100 g.
    const honey = of({fructose: 10.37, dextrose: 9.05, maltose: 0.36, sucrose: 0.22});
    expect(honey).toBeGreaterThan(Math.min(dextrose, fructose));
    expect(honey).toBeLessThan(of({sucrose: 20}));
  });
});

describe("glucose-syrup solids", () => {
  /** Published sucrose equivalents by DE: Goff and Hartel, Ice Cream, 7th ed. (2013), chapter 6. */
  const published = [
    [10, 0.2],
    [36, 0.6],
    [42, 0.8],
    [62, 1.2],
  ] as const;

  test("counted by molecules of dextrose meet the published equivalents better than by bound water through maltose", () => {
    const at = -2.5;
    const byMolecules = (de: number) => heldBy("glucoseSyrupSolids", at, de);
    // The other way: a line in DE through maltose (180.16 / 342.3, i.e. 52.6 DE) and dextrose.
    const maltose = heldBy("maltose", at);
    const byMaltose = (de: number) => maltose + ((heldBy("dextrose", at) - maltose) * (de - 52.6)) / 47.4;
    const misfit = (held: (de: number) => number) =>
      published.reduce(
        (sum, [de, equivalent]) => sum + (held(de) / heldBy("sucrose", at) - equivalent) ** 2,
        0,
      );
    expect(misfit(byMolecules)).toBeLessThan(misfit(byMaltose));
  });

  test("hold water in proportion to their dextrose equivalent, from 5 to 97, and bind 0.15 g per g of what is no dextrose", () => {
    const held = (de: number) => heldBy("glucoseSyrupSolids", -18, de) - 0.15 * (1 - de / 100);
    for (const de of [20, 42, 62, 97]) within(held(de) / de, held(5) / 5, 1e-12, `${de} DE`);
    within(heldBy("glucoseSyrupSolids", -18, 100), heldBy("dextrose", -18), 1e-12, "100 DE");
  });
});

describe("freezing curve", () => {
  test("runs from the freezing point to -30 °C on multiples of the step", () => {
    const curve = freezingCurve(mix);
    within(curve[0]?.temperature, initialFreezingPoint(mix)!, 1e-12, "warm end");
    expect(curve[0]?.ice).toBe(0);
    expect(curve.at(-1)?.temperature).toBe(-30);
    expect(curve.slice(1).every(({temperature}) => Number.isInteger(temperature * 2))).toBe(true);
    expect(curve.every((point, i) => i === 0 || point.ice > curve[i - 1]!.ice)).toBe(true);
    within(curve.at(-1)?.ice, ice(mix, -30), 1e-12, "cold end");
  });

  test("takes a range: 61 temperatures from 0 to -30 °C", () => {
    const curve = freezingCurve(mix, {from: 0, to: -30, step: 0.5});
    expect(curve).toHaveLength(61);
    expect(curve[0]).toEqual({temperature: 0, ice: 0, frozen: 0});
    expect(freezingCurve(mix, {from: -17.95, to: -18.25, step: 0.1}).map((d) => d.temperature)).toEqual([
      -17.95, -18, -18.1, -18.2,
    ]);
  });

  test("is empty without water and where nothing freezes", () => {
    expect(freezingCurve({milkFat: 100})).toEqual([]);
    expect(freezingCurve({alcohol: 70, water: 30})).toEqual([]);
  });

  test("refuses ranges that are out of order or outside the model", () => {
    expect(() => freezingCurve(mix, {to: -50})).toThrow(InputError);
    expect(() => freezingCurve(mix, {step: 0})).toThrow(InputError);
    expect(() => freezingCurve(mix, {from: -35})).toThrow(/colder than the cold end/);
    expect(() => ice(mix, -41)).toThrow(/temperature: out of range/);
    expect(() => unclippedIce(mix, 0)).toThrow(InputError);
    expect(() => ice(mix, NaN)).toThrow(InputError);
  });
});

describe("heat shock", () => {
  test("is the ice that melts between the ends of a swing, either way round", () => {
    within(heatShock(mix, -14, -18), ice(mix, -18) - ice(mix, -14), 1e-12, "swing");
    expect(heatShock(mix, -18, -14)).toBe(heatShock(mix, -14, -18));
    expect(heatShock(mix, -18, -18)).toBe(0);
  });
});
