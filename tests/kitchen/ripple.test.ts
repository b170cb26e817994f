import {describe, expect, test} from "vitest";
import {brix} from "../../lib/kitchen/sugar/brix.ts";
import {cookDown} from "../../lib/kitchen/cooking/cook.ts";
import {invert} from "../../lib/kitchen/sugar/inversion.ts";
import type {RippleBrief, RippleMade} from "../../lib/kitchen/ripple/ripple-brief.ts";
import {rippleInBase} from "../../lib/kitchen/ripple/ripple-in-base.ts";
import {planRipple} from "../../lib/kitchen/ripple/ripple.ts";
import {
  boilingPoint,
  brixOfRefractiveIndex,
  sucroseDensity,
  sucroseRefractiveIndex,
} from "../../lib/kitchen/sugar/sucrose.ts";
import {firmness, firmnessReference} from "../../lib/freezing/firmness.ts";
import {hardPhase} from "../../lib/freezing/ice.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import {type Composition, PARTS} from "../../lib/pantry/parts.ts";
import {within} from "../support/within.ts";

describe("sucrose solutions at 20 °C", () => {
  // CRC Handbook of Chemistry and Physics, 102nd ed. (2021), "Concentrative properties of aqueous solutions", sucrose: rows
  // that the table of the library leaves out. Mass per cent, density g/ml, refractive index.
  test.each([
    [0.5, 1.0002, 1.3337],
    [1, 1.0021, 1.3344],
    [5, 1.0178, 1.3403],
    [15, 1.0592, 1.3557],
    [18, 1.0722, 1.3606],
    [24, 1.099, 1.3706],
    [28, 1.1175, 1.3776],
    [34, 1.1464, 1.3885],
    [38, 1.1663, 1.396],
    [42, 1.1868, 1.4038],
    [46, 1.2079, 1.4118],
    [48, 1.2186, 1.4159],
    [84, 1.4383, 1.501],
  ])("%d °Brix: %d g/ml, index %d", (strength, density, index) => {
    const tolerance = strength === 84 ? 2.5e-4 : 1.1e-4;
    expect(Math.abs(sucroseDensity(strength) - density)).toBeLessThan(tolerance);
    expect(Math.abs(sucroseRefractiveIndex(strength) - index)).toBeLessThan(tolerance);
    expect(Math.abs(brixOfRefractiveIndex(index) - strength)).toBeLessThan(0.1);
  });
  // National Bureau of Standards, Circular C440 (1942), densities, and ICUMSA SPS-3, refractive indices: both from memory.
  test.each([
    [25, 1.10356, 1.37233],
    [55, 1.25754, 1.43078],
    [65, 1.3166, 1.45348],
    [75, 1.37897, 1.4778],
  ])("%d °Brix against NBS and ICUMSA", (strength, density, index) => {
    expect(Math.abs(sucroseDensity(strength) - density)).toBeLessThan(5e-4);
    expect(Math.abs(sucroseRefractiveIndex(strength) - index)).toBeLessThan(3e-4);
  });
  test("jam of 65 °Brix boils at 104 to 105 °C (common practice, no source)", () => {
    expect(boilingPoint(0)).toBeCloseTo(100, 9);
    expect(boilingPoint(65)).toBeGreaterThan(103.7);
    expect(boilingPoint(65)).toBeLessThan(105);
  });
  test("beyond the table is an error", () => {
    expect(() => sucroseDensity(90)).toThrow("brix: out of range (got 90); give a number from 0 to 84 °Brix");
    expect(() => brixOfRefractiveIndex(1.2)).toThrow("refractive index: out of range");
  });
});

// USDA SR28 NDB 09279 "Plums, raw", 19335 "Sugars, granulated"; prices invented.
const plum: Ingredient = {
  name: "plum",
  price: 2,
  composition: {
    water: 87.23,
    otherProtein: 0.7,
    otherFat: 0.28,
    sucrose: 1.57,
    dextrose: 5.07,
    fructose: 3.07,
    maltose: 0.08,
    galactose: 0.14,
    fibre: 1.4,
    plantSalts: 0.37,
    otherSolids: 0.09,
  },
};
const sugar: Ingredient = {name: "sugar", price: 1.1, composition: {sucrose: 100}};
const syrup: Ingredient = {
  name: "glucose syrup 42 DE",
  price: 2.6,
  composition: {water: 20, glucoseSyrupSolids: 80, dextroseEquivalent: 42},
};
const dextrose: Ingredient = {name: "dextrose", price: 2.2, composition: {dextrose: 90.9, water: 9.1}};
const pot = {
  name: "plum ripple",
  lines: [
    {ingredient: plum, grams: 1000},
    {ingredient: sugar, grams: 400},
  ],
};
const total = (composition: Composition) =>
  PARTS.reduce((grams, part) => grams + (composition[part] ?? 0), 0);

describe("cooking down", () => {
  test("water goes, solids stay", () => {
    for (const to of [{cookedGrams: 900}, {brix: 55}, {reductionPercent: 30}] as const) {
      const cooked = cookDown(pot, to);
      expect(cooked.grams + cooked.waterBoiledOff).toBeCloseTo(1400, 9);
      expect(((cooked.composition.sucrose ?? 0) * cooked.grams) / 100).toBeCloseTo(15.7 + 400, 9);
      expect(((cooked.composition.water ?? 0) * cooked.grams) / 100).toBeCloseTo(
        872.3 - cooked.waterBoiledOff,
        9,
      );
      expect(total(cooked.composition)).toBeCloseTo(100, 6);
    }
    expect(cookDown(pot, {cookedGrams: 900}).grams).toBeCloseTo(900, 9);
    expect(cookDown(pot, {brix: 55}).brix).toBeCloseTo(55, 9);
    expect(cookDown(pot, {reductionPercent: 30}).grams).toBeCloseTo(980, 9);
  });
  test("a syrup of sugar and water has the °Brix of its sugar", () => {
    expect(brix({sucrose: 65, water: 35})).toBeCloseTo(65, 12);
    expect(brix({otherFat: 100})).toBe(0);
  });
  test("what is sieved out is lost once", () => {
    const sieved = [{ingredient: "plum", percent: 8, composition: {fibre: 10, water: 90}}];
    const cooked = cookDown(pot, {brix: 55}, {sieved});
    expect(cooked.sievedOut).toBeCloseTo(80, 9);
    expect(cooked.grams + cooked.waterBoiledOff + cooked.sievedOut).toBeCloseTo(1400, 9);
    expect(((cooked.composition.fibre ?? 0) * cooked.grams) / 100).toBeCloseTo(14 - 8, 9);
  });
  test("inverting 342.3 g of sucrose takes 18.015 g of water", () => {
    const half = invert({sucrose: 60, water: 40}, 0.5);
    expect(half.sucrose).toBeCloseTo(30, 12);
    expect(half.water).toBeCloseTo(40 - (30 * 18.015) / 342.3, 9);
    expect(half.dextrose).toBeCloseTo(half.fructose!, 12);
    expect(total(half)).toBeCloseTo(100, 9);
    // 100 g of sucrose take 100 x 18.015 / 342.3 = 5.26 g.
    expect(() => invert({sucrose: 100}, 1)).toThrow(
      "inversion: too little water to split so much: 0.0 g per 100 g, and it takes 5.3 g (got 1); add water",
    );
    expect(invert({sucrose: 100 / 1.05263, water: 5 / 1.05263}, 0.95).water).toBeGreaterThanOrEqual(0);
    const candy = {name: "candy", lines: [{ingredient: sugar, grams: 1000}]};
    expect(() => cookDown(candy, {cookedGrams: 1000}, {inversion: 0.5})).toThrow(
      "inversion: too little water",
    );
  });
  test("what cannot be says why", () => {
    expect(() => cookDown(pot, {cookedGrams: 1500})).toThrow("further down than that before it boils");
    expect(() => cookDown(pot, {cookedGrams: 300})).toThrow("the pot holds only 872.3 g of water");
    expect(() => cookDown(pot, {brix: 20})).toThrow("add water or fruit");
    expect(() =>
      cookDown(
        {name: "water", lines: [{ingredient: {name: "water", composition: {water: 100}}, grams: 9}]},
        {brix: 50},
      ),
    ).toThrow("nothing in the pot dissolves");
    expect(() => cookDown({name: "none", lines: []}, {brix: 50})).toThrow("the pot is empty");
    expect(() => cookDown(pot, {brix: 50}, {sieved: [{ingredient: "plums", percent: 5}]})).toThrow(
      "did you mean plum",
    );
    expect(() =>
      cookDown(pot, {brix: 50}, {sieved: [{ingredient: "plum", percent: 50, composition: {fibre: 100}}]}),
    ).toThrow("loses more fibre");
    const rum = {ingredient: {name: "rum", composition: {alcohol: 40, water: 60}}, grams: 50};
    expect(() => cookDown({...pot, lines: [...pot.lines, rum]}, {brix: 50})).toThrow("alcohol boils off");
  });
});

describe("planning a ripple", () => {
  const brief: RippleBrief = {
    name: "plum ripple",
    ingredients: [
      {ingredient: plum, max: 2000, fruit: true, sievedPercent: 5},
      {ingredient: sugar},
      {ingredient: syrup},
      {ingredient: dextrose},
    ],
    brix: 55,
    cookedGrams: 1000,
    hardPhase: {at: -18, max: 30},
    fruit: {min: 80},
  };
  const madeBy = (wanted: RippleBrief): RippleMade => {
    const plan = planRipple(wanted);
    if (plan.status !== "optimal") throw new Error(`expected an optimum, got ${JSON.stringify(plan)}`);
    return plan;
  };
  const gramsIn = ({recipe}: RippleMade, name: string) =>
    recipe.lines.find((line) => line.ingredient.name === name)?.grams ?? 0;

  test("meets every target, checked by cooking it", () => {
    const plan = madeBy(brief);
    expect(plan.cooked.brix).toBeCloseTo(55, 6);
    expect(plan.cooked.grams).toBeCloseTo(1000, 6);
    expect(hardPhase(plan.cooked.composition, -18)).toBeLessThanOrEqual(30 + 1e-6);
    expect(gramsIn(plan, "plum")).toBeGreaterThanOrEqual(800 - 1e-6);
    expect(total(plan.cooked.composition)).toBeCloseTo(100, 6);
  });
  test("no cheaper ripple is found among random ones that meet the targets", () => {
    const plan = madeBy({
      ...brief,
      ingredients: brief.ingredients.filter(({ingredient}) => ingredient !== dextrose),
    });
    let tried = 0;
    for (let fruit = 800; fruit <= 2000; fruit += 25) {
      for (let sweet = 0; sweet <= 700; sweet += 10) {
        const soluble = (fruit * 0.95 * (plum.composition.sucrose! + 5.07 + 3.07 + 0.08 + 0.14 + 0.37)) / 100;
        const insoluble = (fruit * 0.95 * (0.7 + 0.28 + 1.4 + 0.09)) / 100;
        const syrupSolids = (1000 - insoluble) * 0.55 - soluble - sweet;
        if (syrupSolids < 0) continue;
        const lines = [
          {ingredient: plum, grams: fruit},
          {ingredient: sugar, grams: sweet},
          {ingredient: syrup, grams: syrupSolids / 0.8},
        ];
        const inPot = fruit * 0.95 + sweet + syrupSolids / 0.8;
        if (inPot < 1000) continue;
        const cooked = cookDown(
          {name: "x", lines},
          {cookedGrams: 1000},
          {sieved: [{ingredient: "plum", percent: 5}]},
        );
        expect(cooked.brix).toBeCloseTo(55, 6);
        if (hardPhase(cooked.composition, -18) > 30) continue;
        tried++;
        const cost = lines.reduce((sum, line) => sum + (line.grams * line.ingredient.price!) / 1000, 0);
        expect(cost).toBeGreaterThanOrEqual(plan.cost - 1e-6);
      }
    }
    expect(tried).toBeGreaterThan(20);
  });
  test("fruit that must be used up is stretched with sugar as far as the targets let it, not boiled to nothing", () => {
    const {cookedGrams: _, ...open} = brief;
    const used = {ingredient: plum, min: 1500, max: 1500, fruit: true};
    const plan = madeBy({
      ...open,
      ingredients: [used, ...brief.ingredients.slice(1)],
      reductionPercent: {min: 20},
    });
    expect(gramsIn(plan, "plum")).toBeCloseTo(1500, 6);
    expect(plan.cooked.brix).toBeCloseTo(55, 6);
    // The same mass asked for outright comes to the same cost.
    const asked = madeBy({
      ...brief,
      ingredients: [used, ...brief.ingredients.slice(1)],
      cookedGrams: plan.cooked.grams,
    });
    expect(asked.cost).toBeLessThanOrEqual(plan.cost + 1e-6);
    const inPot = plan.cooked.grams + plan.cooked.waterBoiledOff;
    expect((100 * plan.cooked.waterBoiledOff) / inPot).toBeGreaterThanOrEqual(20 - 1e-6);
    expect(plan.cooked.grams).toBeGreaterThan(1200);
    const water = {ingredient: {name: "water", price: 0, composition: {water: 100}}};
    const {fruit: __, ...endless} = open;
    expect(() =>
      planRipple({...endless, ingredients: [{ingredient: plum, min: 10}, {ingredient: sugar}, water]}),
    ).toThrow("nothing limits how much to make");
  });
  test("softer costs dextrose, and inversion makes the same ripple softer", () => {
    const softness = hardPhase(madeBy({...brief, hardPhase: {at: -18, max: 100}}).cooked.composition, -18);
    const softer = madeBy({...brief, hardPhase: {at: -18, max: softness - 4}});
    expect(gramsIn(softer, "dextrose")).toBeGreaterThan(0);
    const plain = cookDown(pot, {brix: 55});
    const inverted = cookDown(pot, {brix: 55}, {inversion: 0.3});
    expect(hardPhase(inverted.composition, -18)).toBeLessThan(hardPhase(plain.composition, -18));
  });
  test("a limit on firmness holds of what is cooked, without air, whether ice decides or what is no ice", () => {
    const {hardPhase: _, ...open} = brief;
    const beyond = ({cooked}: RippleMade) => firmness(cooked.composition, -18) - firmnessReference(0);
    const free = beyond(madeBy(open));
    const plan = madeBy({...open, firmness: {at: -18, max: free - 3}});
    within(beyond(plan), free - 3, 1e-6, "of the cooked ripple");
    expect(gramsIn(plan, "dextrose")).toBeGreaterThan(0);
    // Where dextrose is next to nothing the cheapest ripple is softer than is asked for.
    const cheap = [...brief.ingredients.slice(0, 3), {ingredient: {...dextrose, price: 0.01}}];
    const stiff = madeBy({...open, ingredients: cheap, firmness: {at: -18, min: free - 2}});
    within(beyond(stiff), free - 2, 1e-6, "at least");
    // 30 g of insoluble solids are 32.7 points before any ice: 9.3 for the cold more and 42.1 for what scoops less, -0.1.
    const dry = {name: "dry", price: 3, composition: {fibre: 50, otherProtein: 50}};
    const paste = (max: number) =>
      planRipple({
        name: "paste",
        ingredients: [{ingredient: dry, min: 300}, {ingredient: syrup}, {ingredient: dextrose}],
        brix: {min: 85},
        cookedGrams: 1000,
        firmness: {at: -18, max},
      });
    expect([paste(0.3).status, paste(-0.5).status]).toEqual(["optimal", "infeasible"]);
  });
  test("what cannot be made is answered with the nearest", () => {
    const plan = planRipple({...brief, hardPhase: {at: -18, max: 1}, brix: 30});
    expect(plan.status).toBe("infeasible");
    if (plan.status !== "infeasible") return;
    expect(plan.misses.length).toBeGreaterThan(0);
    expect(plan.nearest?.cooked.grams).toBeCloseTo(1000, 6);
    const none = planRipple({...brief, ingredients: [{ingredient: plum, max: 100, fruit: true}]});
    expect(none).toEqual({status: "infeasible", misses: []});
  });
  test("bad input says where and what", () => {
    const {price: _, ...unpriced} = plum;
    expect(() => planRipple({...brief, ingredients: [{ingredient: unpriced}]})).toThrow(
      "plum ripple: plum: no price",
    );
    const {cookedGrams: __, ...open} = brief;
    expect(() => planRipple(open)).toThrow("nothing says how much to make");
    expect(() => planRipple({...brief, ingredients: []})).toThrow(
      "ingredients: none named; give at least one",
    );
    const [first, ...others] = brief.ingredients;
    const mistyped = {...first!, minimum: 500};
    expect(() => planRipple({...brief, ingredients: [mistyped, ...others]})).toThrow(
      'ingredients[0]: unknown key "minimum"; use ingredient, min, max',
    );
    const loose: object = {at: -18, maximum: 20};
    for (const key of ["hardPhase", "fruit", "brix"])
      expect(() => planRipple({...brief, [key]: loose})).toThrow(`ripple.${key}: unknown key`);
    expect(() => planRipple({...brief, cookedGrams: 0})).toThrow("cookedGrams: out of range");
    expect(() => planRipple({...brief, brix: 120})).toThrow("brix: out of range (got 120)");
    expect(() => planRipple({...brief, hardPhase: {at: 4, max: 20}})).toThrow("hardPhase.at: out of range");
    expect(() => planRipple({...brief, firmness: {at: -18, max: 300}})).toThrow("firmness.max: out of range");
  });
});

describe("a ripple in its base", () => {
  const base: Composition = {
    milkFat: 9,
    milkProtein: 3.6,
    lactose: 5.2,
    milkSalts: 0.7,
    sucrose: 14,
    dextrose: 3,
    water: 64.5,
  };
  test("a stiff jam draws water and bleeds; thin fruit freezes hard", () => {
    const jam = rippleInBase(base, {sucrose: 40, dextrose: 20, fructose: 20, water: 20}, -18);
    expect(jam).toMatchObject({waterMoves: "into the ripple", bleeds: true, hard: false});
    expect(jam.thirst).toBeGreaterThan(0);
    expect(jam.runsWhenScooped).toBe(true);
    const thin = rippleInBase(base, plum.composition, -18);
    expect(thin).toMatchObject({waterMoves: "into the base", bleeds: false, hard: true, thirst: 0});
  });
  test("a ripple of the base itself moves no water", () => {
    const same = rippleInBase(base, base, -18);
    expect(same.waterMoves).toBe("neither way");
    // A ripple holds no air, and is harder for it.
    const {hardness, ...still} = same.ripple;
    expect({...still, hardness: same.base.hardness}).toEqual(same.base);
    expect(hardness).toBeGreaterThan(same.base.hardness);
    expect(same.ripple.ice + same.ripple.liquidWater).toBeCloseTo(64.5, 9);
  });
  test("refuses what is not frozen", () => {
    expect(() => rippleInBase({water: 10, sucrose: 90}, base, -18)).toThrow("holds no ice at -18 °C");
    expect(() => rippleInBase(base, base, 4)).toThrow("freezer: out of range");
  });
});
