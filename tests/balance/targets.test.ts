import {describe, expect, test} from "vitest";
import {type AxisInput, readAxis} from "../../lib/balance/read/axis.ts";
import {balance} from "../../lib/balance/balance.ts";
import type {BriefInput} from "../../lib/balance/brief/brief-schema.ts";
import {readBrief} from "../../lib/balance/read/read-brief.ts";
import type {SpecialKind} from "../../lib/balance/measure/measures.ts";
import {coefficientOf, isTemperature} from "../../lib/balance/measure/of-subject.ts";
import {hardPhase, heatShock, ice, initialFreezingPoint} from "../../lib/freezing/ice.ts";
import {scoopTemperature} from "../../lib/freezing/scoop.ts";
import {solidFat} from "../../lib/freezing/solid-fat.ts";
import {heatToRemove} from "../../lib/freezing/enthalpy.ts";
import {answerCsv} from "../../lib/io/document/answer-out.ts";
import {mixComposition} from "../../lib/pantry/mix.ts";
import type {Composition} from "../../lib/pantry/parts.ts";
import {pantryOf} from "../../lib/pantry/pantry.ts";
import {within} from "../support/within.ts";

const ingredients = [
  {name: "milk", composition: {water: 87.5, milkFat: 3.5, msnf: 9}, price: 1, properties: {co2: 130}},
  {name: "cream", composition: {water: 54.6, milkFat: 40, msnf: 5.4}, price: 4, properties: {co2: 560}},
  {name: "milk powder", composition: {water: 3, msnf: 97}, price: 6, properties: {co2: 900}},
  {name: "sugar", composition: {sucrose: 100}, price: 1.2, properties: {co2: 80}},
  {name: "dextrose", composition: {water: 9.1, dextrose: 90.9}, price: 2, properties: {co2: 110}},
  {name: "water", composition: {water: 100}, price: 0, properties: {co2: 0}},
];
/** Mixes that may have no ice at all in the freezer. */
const spirits = [
  {name: "water", composition: {water: 100}, price: 0},
  {name: "sugar", composition: {sucrose: 100}, price: 1},
  {name: "spirit", composition: {water: 66, alcohol: 34}, price: 9},
];
const base = {fat: {min: 4}, msnf: {min: 6, max: 11}, sugars: {min: 8}};

function mixFor(more: Partial<BriefInput<string>>) {
  const answer = balance<string>({ingredients, ...more, targets: {...base, ...more.targets}});
  if (answer.status !== "optimal") throw new Error(answer.status);
  return answer;
}

/** The cheapest mix, and the one with most sugar, without the target in question. */
const free = mixFor({});
const sweetFor = (targets: BriefInput<string>["targets"]) =>
  mixFor({targets: {sugars: {min: 8, max: 25}, ...targets}, maximise: "sugars"});
const sweet = sweetFor({});

describe("each kind of target is met exactly where it binds", () => {
  test("ice at a temperature", () => {
    const [most, least] = [ice(free.composition, -18) - 3, ice(sweet.composition, -10) + 3];
    within(ice(mixFor({targets: {ice: [{at: -18, max: most}]}}).composition, -18), most, 1e-6, "most ice");
    within(ice(sweetFor({ice: [{at: -10, min: least}]}).composition, -10), least, 1e-6, "least ice");
  });

  test("hard phase at a temperature", () => {
    const most = hardPhase(free.composition, -18) - 2;
    within(
      hardPhase(mixFor({targets: {hardPhase: [{at: -18, max: most}]}}).composition, -18),
      most,
      1e-6,
      "hard phase",
    );
  });

  test("hard phase where fat alone would pass it: ice that is not there makes up for no fat", () => {
    const [fat, syrup, most] = [100, 60, 12];
    const answer = balance<string>({
      ingredients: [
        {name: "fat", composition: {coconutFat: fat}},
        {name: "syrup", composition: {dextrose: syrup, water: 100 - syrup}},
      ],
      targets: {hardPhase: [{at: -5, max: most}]},
      maximise: "fat",
      doses: "none",
    });
    if (answer.status !== "optimal") throw new Error(answer.status);
    // At -5 °C the syrup has no ice, so the hard phase is the solid part of the fat, and may be all of the limit.
    expect(ice(answer.composition, -5)).toBe(0);
    within(hardPhase(answer.composition, -5), most, 1e-6, "hard phase");
    within(answer.shares.fat, (100 * most) / solidFat({coconutFat: 100}, -5), 1e-6, "fat");
  });

  test("freezing point, from either side and exactly", () => {
    const [cold, warm] = [
      initialFreezingPoint(free.composition)! - 0.4,
      initialFreezingPoint(sweet.composition)! + 0.4,
    ];
    within(
      initialFreezingPoint(mixFor({targets: {freezingPoint: {max: cold}}}).composition),
      cold,
      1e-6,
      "°C",
    );
    within(initialFreezingPoint(mixFor({targets: {freezingPoint: {equal: -3}}}).composition), -3, 1e-6, "°C");
    within(initialFreezingPoint(sweetFor({freezingPoint: {min: warm}}).composition), warm, 1e-6, "°C");
  });

  test("scoop temperature", () => {
    const mix = mixFor({targets: {scoopTemperature: {max: -15}}});
    within(scoopTemperature(mix.composition).temperature, -15, 1e-6, "°C");
    expect(mix.shares.scoopTemperature).toBeCloseTo(-15, 6);
  });

  test("heat shock between two temperatures", () => {
    const most = heatShock(sweet.composition, -14, -18) - 0.2;
    within(
      heatShock(sweetFor({heatShock: [{from: -18, to: -14, max: most}]}).composition, -14, -18),
      most,
      1e-6,
      "ice that melts and refreezes",
    );
  });

  test("heat to take out down to a temperature", () => {
    const heat = (composition: Composition) => heatToRemove(composition, 4, -6);
    const most = heat(free.composition) - 5;
    const made = mixFor({targets: {heatToRemove: [{at: -6, max: most}]}});
    within(heat(made.composition), most, 1e-6, "kJ per kg");
    within(made.shares["heat to remove down to -6 °C"], most, 1e-6, "as the answer says");
  });

  test("heat to take out of what has no ice: none is saved by ice that is not there", () => {
    const heat = (composition: Composition) => heatToRemove(composition, 4, -6);
    const spirited = (brief: Partial<BriefInput<string>>) =>
      balance<string>({ingredients: spirits, doses: "none", maximise: "sugars", ...brief});
    const least = spirited({
      minimise: {heatToRemove: {at: -6}},
      maximise: undefined,
      targets: {sugars: {max: 25}},
    });
    if (least.status !== "optimal") throw new Error(least.status);
    // On a fine grid of water, sugar and spirit, no mix with up to 25 % sugar needs less.
    const [water, sugar, spirit] = spirits.map(({composition}) => composition) as Composition[];
    const heats = Array.from({length: 26}, (_, sweet) =>
      Array.from({length: 101 - sweet}, (_, strong) =>
        heat(
          mixComposition([
            {composition: water!, grams: 100 - sweet - strong},
            {composition: sugar!, grams: sweet},
            {composition: spirit!, grams: strong},
          ]),
        ),
      ),
    ).flat();
    within(heat(least.composition), least.objective!.value, 1e-9, "kJ per kg, as the answer says");
    expect(least.objective!.value).toBeLessThanOrEqual(Math.min(...heats) + 1e-9);
    within(least.objective!.value, Math.min(...heats), 0.2, "kJ per kg, by the grid");
    const most = heat({water: 66, alcohol: 34}) - 1;
    const limited = spirited({
      targets: {heatToRemove: [{at: -6, max: most}]},
      minimise: "sugars",
      maximise: undefined,
    });
    if (limited.status !== "optimal") throw new Error(limited.status);
    within(heat(limited.composition), most, 1e-6, "kJ per kg, no less sugar being enough");
  });

  test("at least so much ice that melts and freezes again needs as much ice in the cold", () => {
    const answer = balance<string>({
      ingredients: spirits,
      targets: {heatShock: [{from: -18, to: -14, min: 10}]},
      minimise: "cost",
      doses: "none",
    });
    if (answer.status !== "optimal") throw new Error(answer.status);
    expect(heatShock(answer.composition, -18, -14)).toBeGreaterThanOrEqual(10 - 1e-6);
    expect(() => balance({ingredients: spirits, maximise: {heatShock: {from: -18, to: -14}}})).toThrow(
      "brief: maximise.heatShock: can only be made small",
    );
  });

  test("sweetness, cost and a property of the cook's own", () => {
    const dear = sweet.shares.cost ?? (sweet.cost! / sweet.batch) * 1000;
    within(mixFor({targets: {sweetness: {min: 15}}}).shares.sweetness, 15, 1e-6, "sweetness");
    within(sweetFor({cost: {max: dear - 0.1}}).shares.cost, dear - 0.1, 1e-6, "cost per kg");
    within(mixFor({targets: {co2: {max: 150}}, maximise: "fat"}).shares.co2, 150, 1e-6, "co2 per 100 g");
  });
});

/** A target of each kind, its name in an answer, and how it is written as an aim or an axis. */
const KINDS = {
  cost: {target: {max: 3}, name: "cost", wish: "cost"},
  freezingPoint: {target: {max: -2}, name: "freezingPoint", wish: "freezingPoint"},
  scoopTemperature: {target: {max: -12}, name: "scoopTemperature", wish: "scoopTemperature"},
  ice: {target: [{at: -18, min: 1}], name: "ice at -18 °C", wish: {ice: {at: -18}}},
  firmness: {target: [{at: -18, min: -10}], name: "firmness at -18 °C", wish: {firmness: {at: -18}}},
  hardPhase: {target: [{at: -18, min: 1}], name: "hard phase at -18 °C", wish: {hardPhase: {at: -18}}},
  heatShock: {
    target: [{from: -18, to: -14, min: 0.1}],
    name: "heat shock from -18 to -14 °C",
    wish: {heatShock: {from: -18, to: -14}},
  },
  heatToRemove: {
    target: [{at: -6, min: 100}],
    name: "heat to remove down to -6 °C",
    wish: {heatToRemove: {at: -6}},
  },
} satisfies Record<SpecialKind, {target: unknown; name: string; wish: AxisInput}>;

/** What becomes of a brief with an aim: its status, or what is said against it. */
function pursued(minimise: BriefInput<string>["minimise"]): string {
  try {
    return mixFor({minimise}).status;
  } catch (error) {
    return (error as Error).message;
  }
}

describe("every kind of target, that a new one be wanting nowhere", () => {
  test.each(Object.entries(KINDS))("%s", (kind, {target, name, wish}) => {
    const mix = mixFor({targets: {[kind]: target} as BriefInput<string>["targets"]});
    expect(Object.keys(mix.shares)).toContain(name);
    // Figures in a table have the unit of what they are; "per 100 g" is for properties of the cook's own.
    expect(answerCsv(mix)).toMatch(
      new RegExp(`${name},[-.\\d]+,(g per 100 g|°C|money per kg|kJ per kg|points)\\s`),
    );
    const {subject} = readAxis(wish, readBrief({ingredients, targets: base}, pantryOf([])).ingredients, "x");
    expect(subject.kind).toBe(kind);
    const weighted = isTemperature(subject) ? /no weighted sum/ : /^optimal$/;
    expect(pursued(wish)).toMatch(weighted);
    expect(pursued(kind)).toMatch(typeof wish === "string" ? weighted : /needs (a|two) temperature/);
  });
});

describe("what is minimised or maximised", () => {
  test.each<[string, Partial<BriefInput<string>>, (mix: typeof free) => number]>([
    [
      "a property",
      {minimise: "co2"},
      (mix) =>
        mix.amounts.reduce((sum, {percent}, j) => sum + (percent * ingredients[j]!.properties.co2) / 100, 0),
    ],
    ["sweetness", {minimise: "sweetness"}, (mix) => mix.shares.sweetness!],
    [
      "hard phase",
      {minimise: {hardPhase: {at: -18}}, targets: {sugars: {max: 25}}},
      (mix) => hardPhase(mix.composition, -18),
    ],
    [
      "heat shock",
      {minimise: {heatShock: {from: -18, to: -14}}, targets: {sugars: {max: 20}}},
      (mix) => heatShock(mix.composition, -14, -18),
    ],
  ])("%s is below that of every other answer", (_what, brief, value) => {
    const best = value(mixFor(brief));
    for (const other of [{}, {maximise: "fat"}, {minimise: "cost"}] as const) {
      expect(best).toBeLessThanOrEqual(value(mixFor({...other, targets: brief.targets})) + 1e-9);
    }
  });

  test("the least hard phase is where the last ice is gone, for ice below none would not pay for fat", () => {
    const fatty = {name: "fatty syrup", composition: {otherFat: 20, dextrose: 80}};
    const answer = balance({
      ingredients: [{name: "water", composition: {water: 100}}, fatty],
      minimise: {hardPhase: {at: -10}},
      doses: "none",
    });
    if (answer.status !== "optimal") throw new Error(answer.status);
    within(initialFreezingPoint(answer.composition), -10, 1e-6, "where ice begins, °C");
  });

  test("the derived quantities can be maximised: most fat with 6 % MSNF and 8 % sugar, by hand", () => {
    // Cream and milk powder fill what the sugar leaves: two equations, c + p = 92 and 5.4 c + 97 p = 600.
    const cream = (92 * 97 - 600) / (97 - 5.4);
    within(mixFor({maximise: "fat"}).shares.fat, 0.4 * cream, 1e-6, "most fat");
  });
});

test("a brief without prices is answered with a mix that meets it, and no cost", () => {
  const answer = balance<string>({
    ingredients: ingredients.map(({name, composition}) => ({name, composition})),
    targets: base,
  });
  if (answer.status !== "optimal") throw new Error(answer.status);
  expect(answer.cost).toBeUndefined();
  expect(answer.shares.fat).toBeGreaterThanOrEqual(4 - 1e-9);
});

test("missing is absent, not 0: stock limits an amount only where it is known", () => {
  const answer = balance<string>({
    batch: 1000,
    ingredients: [{...ingredients[0]!, max: 500}, ingredients[5]!],
    targets: {},
  });
  if (answer.status !== "optimal") throw new Error(answer.status);
  within(answer.amounts[1]!.grams, 1000, 1e-9, "free water fills the batch");
});

describe("heat to take out from 4 °C down to a temperature, by hand", () => {
  const heatAt = (at: number, composition: Composition) =>
    coefficientOf({kind: "heatToRemove", at}, {name: "mix", composition});

  // Heat capacities of water 4.2 and ice 2.1 kJ/(kg K), heat of fusion 333.6 kJ/kg: CRC Handbook of Chemistry and Physics, from memory.
  test("of water: 4 K as water, the heat of fusion, 6 K as ice", () => {
    within(heatAt(-6, {water: 100}), 4 * 4.2 + 333.6 + 6 * 2.1, 2, "kJ per kg");
  });

  test("of a mix, most of it the ice's: 1.6 kJ/(kg K) for sugar, from memory", () => {
    const syrup = {water: 70, sucrose: 30};
    const frozen = ice(syrup, -6) / 100;
    const cooled = 10 * (0.3 * 1.6 + (0.7 - frozen) * 4.2) + frozen * (4 * 4.2 + 6 * 2.1);
    within(heatAt(-6, syrup), frozen * 333.6 + cooled, 4, "kJ per kg");
    expect((frozen * 333.6) / heatAt(-6, syrup)).toBeGreaterThan(0.7);
  });

  test("is a weighted sum, of mixes that have ice", () => {
    const [a, b] = [
      {water: 80, sucrose: 20},
      {water: 60, lactose: 5, sucrose: 35},
    ];
    const half = mixComposition([
      {composition: a, grams: 1},
      {composition: b, grams: 1},
    ]);
    within(heatAt(-8, half), (heatAt(-8, a) + heatAt(-8, b)) / 2, 1e-9, "kJ per kg");
    within(heatAt(-8, half), heatToRemove(half, 4, -8), 1e-9, "kJ per kg");
  });
});
