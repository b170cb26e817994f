import * as fc from "fast-check";
import {describe, expect, test} from "vitest";
import {CRYSTALLISING, crystalTerms} from "../../lib/freezing/crystals.ts";
import {firmness, unclippedFirmness} from "../../lib/freezing/firmness.ts";
import {rootBetween} from "../../lib/core/roots.ts";
import {heldBy, heldWater} from "../../lib/freezing/held-water.ts";
import {unclippedIce} from "../../lib/freezing/ice.ts";
import {type Piece, piecesOf} from "../../lib/freezing/pieces.ts";
import {saturations, solubility} from "../../lib/freezing/solubility.ts";
import {frozenState, heldByRest} from "../../lib/freezing/state.ts";
import type {LinearProgram} from "../../lib/lp/program/program.ts";
import {solve} from "../../lib/lp/solve/solve.ts";
import {readComposition} from "../../lib/pantry/composition.ts";
import {mixComposition} from "../../lib/pantry/mix.ts";
import type {Composition} from "../../lib/pantry/parts.ts";
import {within} from "../support/within.ts";

const grams = (max: number) => fc.double({min: 0, max, noNaN: true});
/** Mixes with any of the crystallising sweeteners, g per 100 g. */
const sweets: fc.Arbitrary<Composition> = fc
  .tuple(
    grams(25),
    grams(25),
    grams(20),
    grams(20),
    grams(20),
    grams(15),
    grams(20),
    fc.double({min: 40, max: 80, noNaN: true}),
  )
  .map(([erythritol, trehalose, mannitol, isomalt, lactose, sucrose, isomaltulose, water]) => {
    const parts = {
      erythritol,
      trehalose,
      mannitol,
      isomalt,
      isomaltulose,
      lactose,
      sucrose: sucrose + 1,
      milkSalts: 0.5,
      water,
    };
    const total = Object.values(parts).reduce((a, b) => a + b);
    return Object.fromEntries(Object.entries(parts).map(([part, value]) => [part, (100 * value) / total]));
  });
const cold = fc.double({min: -30, max: -0.5, noNaN: true});

const ice = (composition: Composition, temperature: number) => frozenState(composition, temperature).ice;

/** Least ice by the rows that the state's documentation writes down, as a program over d and L in g per g of mix. */
function leastIce(composition: Composition, temperature: number): number {
  const there = CRYSTALLISING.filter((part) => composition[part]);
  const terms = there.map((part) => crystalTerms(part, temperature));
  const masses = there.map((part) => composition[part]! / 100);
  const water = composition.water! / 100;
  const bound = terms.reduce((sum, {water: k}, j) => sum + k * masses[j]!, 0);
  const program: LinearProgram = {
    sense: "maximise",
    // Ice is W - Σ k (m - d) - L: the largest L less the water that crystals would free makes it smallest.
    variables: [
      ...terms.map(({part, water: k}, j) => ({name: part, cost: -k, upper: masses[j]!})),
      {name: "liquid", cost: 1},
    ],
    rows: [
      ...terms.map(({part, perLiquid, perWater}, j) => ({
        name: part,
        coefficients: [...terms.map((_, i) => (i === j ? 1 : 0)), -perLiquid],
        upper: perWater * water,
      })),
      {
        name: "held",
        coefficients: [...terms.map(({held}) => -held), 1],
        upper: heldByRest(composition, temperature) / 100,
      },
      {name: "water", coefficients: [...terms.map(({water: k}) => -k), 1], upper: water - bound},
    ],
  };
  const outcome = solve(program);
  if (outcome.status !== "optimal") throw new Error(outcome.status);
  return 100 * (water - bound - outcome.objective);
}

describe("what crystallises in the cold", () => {
  test("is what a linear program of its rows finds", () => {
    fc.assert(
      fc.property(sweets, cold, (composition, temperature) => {
        within(frozenState(composition, temperature).ice, leastIce(composition, temperature), 1e-6, "ice");
      }),
      {numRuns: 60},
    );
  });

  test("leaves every gram of water as ice, liquid or crystal water, and every sweetener within its limit, saturated where it has crystals", () => {
    fc.assert(
      fc.property(sweets, cold, (composition, temperature) => {
        const state = frozenState(composition, temperature);
        let [bound, solid] = [0, 0];
        const dissolved: Record<string, number> = {...composition};
        for (const part of CRYSTALLISING) {
          const {perLiquid, perWater, water} = crystalTerms(part, temperature);
          const out = state.crystallised[part] ?? 0;
          bound += water * out;
          solid += (1 + water) * out;
          dissolved[part]! -= out;
          const most = perLiquid * state.liquid + perWater * composition.water!;
          expect(dissolved[part]!).toBeLessThanOrEqual(most + 1e-9);
          if (out > 0) within(dissolved[part], most, 1e-9, `${part} dissolved`);
        }
        within(state.ice + state.liquid + bound, composition.water!, 1e-9, "water");
        within(state.crystals, solid, 1e-9, "crystals");
        if (state.ice > 0) within(heldWater(dissolved, temperature), state.liquid, 1e-9, "held water");
      }),
    );
  });

  test("adds ice, and ice is convex in the masses", () => {
    fc.assert(
      fc.property(sweets, sweets, cold, (one, other, temperature) => {
        expect(ice(one, temperature)).toBeGreaterThanOrEqual(unclippedIce(one, temperature) - 1e-9);
        const half = mixComposition([
          {composition: one, grams: 1},
          {composition: other, grams: 1},
        ]);
        const mean = (ice(one, temperature) + ice(other, temperature)) / 2;
        expect(ice(half, temperature)).toBeLessThanOrEqual(mean + 1e-9);
      }),
    );
  });

  test("only grows on cooling", () => {
    fc.assert(
      fc.property(sweets, cold, cold, (composition, a, b) => {
        const [colder, warmer] = [
          frozenState(composition, Math.min(a, b)),
          frozenState(composition, Math.max(a, b)),
        ];
        expect(colder.crystals).toBeGreaterThanOrEqual(warmer.crystals - 1e-9);
        expect(colder.ice).toBeGreaterThanOrEqual(warmer.ice - 1e-9);
      }),
    );
  });
});

describe("pieces for a linear program over ingredients", () => {
  const shelf: readonly Composition[] = [
    {water: 88, milkFat: 3.5, milkProtein: 3.3, lactose: 4.7, milkSalts: 0.5},
    {water: 4, milkProtein: 36, lactose: 52, milkSalts: 8},
    {erythritol: 100},
    {trehalose: 90.5, water: 9.5},
    {sucrose: 100},
    {cocoaButter: 12, otherProtein: 24, fibre: 30, starch: 14, plantSalts: 6, otherSolids: 10, water: 4},
  ];
  const shares = fc
    .tuple(...shelf.map((_, i) => fc.double({min: i === 0 ? 0.5 : 0, max: i === 0 ? 1 : 0.25, noNaN: true})))
    .map((d) => d.map((x) => x / d.reduce((a, b) => a + b)));

  const at = (piece: Piece, mix: readonly number[]) => mix.reduce((sum, x, i) => sum + x * piece[i]!, 0);
  const largest = (pieces: readonly Piece[], mix: readonly number[]) =>
    Math.max(...pieces.map((piece) => at(piece, mix)));

  test("are the ice and the firmness that a mix has: the largest of them, and the first is never above", () => {
    fc.assert(
      fc.property(shares, cold, (mix, temperature) => {
        const composition = mixComposition(mix.map((grams, i) => ({composition: shelf[i]!, grams})));
        const pieces = piecesOf(shelf, temperature);
        const hard = firmness(composition, temperature);
        within(Math.max(0, largest(pieces.ice, mix)), ice(composition, temperature), 1e-9, "ice");
        within(largest([...pieces.firmness, ...pieces.withoutIce], mix), hard, 1e-9, "firmness");
        within(at(pieces.ice[0]!, mix), unclippedIce(composition, temperature), 1e-9, "all dissolved");
        expect(at(pieces.firmness[0]!, mix)).toBeLessThanOrEqual(hard + 1e-9);
      }),
      {numRuns: 300},
    );
  });

  test("are one each where nothing can crystallise: the ingredients' own coefficients", () => {
    const [oil, sugar] = [{otherFat: 100}, {sucrose: 60, water: 40}];
    const {ice: frozen, firmness: hard, withoutIce} = piecesOf([oil, sugar], -18);
    expect([frozen.length, hard.length, withoutIce.length]).toEqual([1, 1, 1]);
    within(frozen[0]![1], unclippedIce(sugar, -18), 1e-12, "ice");
    within(hard[0]![0], unclippedFirmness(oil, -18), 1e-12, "firmness");
  });
});

describe("one sweetener by hand", () => {
  test("trehalose at 10 °C: 73.3 g dissolve in 100 g of water, the rest takes two waters along (Lammert, Schmidt and Day 1998)", () => {
    // 80 g in 100 g of water, x of it crystals: 80 - x = 0.733 (100 - 0.1053 x), so x = 6.7 / (1 - 0.733 x 0.1053).
    const {crystallised, crystals, ice: none} = frozenState({trehalose: 80, water: 100}, 10);
    within(crystallised.trehalose, 6.7 / (1 - 0.733 * 0.1053), 0.01, "crystals, dry");
    within(crystals, (1.1053 * 6.7) / (1 - 0.733 * 0.1053), 0.01, "crystals");
    expect(none).toBe(0);
  });

  test("lactose: what milk solids of 18.5 % of themselves and the water bring stays dissolved (Arbuckle, from memory)", () => {
    const milk = (msnf: number): Composition =>
      readComposition({msnf, sucrose: 12, water: 88 - msnf}, "milk");
    // MSNF x of x + water: 18.5 % is 88 x 0.185 = 16.28.
    expect(frozenState(milk(16.2), -18).crystals).toBe(0);
    expect(frozenState(milk(16.4), -18).crystals).toBeGreaterThan(0);
    within(
      frozenState(milk(20), -18).crystallised.lactose,
      0.54 * (20 - (68 * 0.185) / 0.815),
      1e-9,
      "20 % MSNF",
    );
    expect(frozenState(milk(20), -5).crystals).toBe(frozenState(milk(20), -30).crystals);
  });

  test("erythritol alone is all solid below its eutectic with ice, and begins to freeze where it is saturated", () => {
    const strong = {erythritol: 30, water: 70};
    const state = frozenState(strong, -10);
    within(state.ice, 70, 1e-9, "ice");
    within(state.crystals, 30, 1e-9, "crystals");
    const begins = rootBetween((t) => ice(strong, t) - 1e-9, -30, -1e-9)!;
    // 30 g in 70 g is far beyond what dissolves at 0 °C: what stays dissolved is saturated there.
    within(heldBy("erythritol", begins) * (solubility("erythritol", begins) / 100), 1, 1e-6, "saturated");
  });

  test("is told by its saturation: all but 1 / ratio of what crystallises readily is crystals", () => {
    const composition = {water: 67, erythritol: 16, sucrose: 4, lactose: 5, milkSalts: 0.8, milkFat: 7.2};
    const row = saturations(composition, -18).find(({part}) => part === "erythritol")!;
    within(frozenState(composition, -18).crystallised.erythritol, 16 * (1 - 1 / row.ratio), 1e-9, "crystals");
  });

  test("condensed milk stays soft in the cold though its lactose is crystals (common practice, no source)", () => {
    const milk = {water: 27, milkFat: 8.7, milkProtein: 7.9, lactose: 10.6, milkSalts: 1.8, sucrose: 44};
    const {ice: frozen, crystallised} = frozenState(milk, -18);
    expect(frozen).toBeLessThan(2);
    expect(crystallised.lactose).toBeGreaterThan(5);
  });
});
