import {describe, expect, test} from "vitest";
import {rootBetween} from "../../lib/core/roots.ts";
import {type Body, letHeatFlow} from "../../lib/freezing/conduction.ts";
import type {Material} from "../../lib/freezing/enthalpy-table.ts";
import {enthalpy, enthalpyFunction, HEAT_OF_FUSION, heatToRemove} from "../../lib/freezing/enthalpy.ts";
import {ice, initialFreezingPoint} from "../../lib/freezing/ice.ts";
import {PUBLISHED_HARD_MIXES, scoopTemperature, verdictAt} from "../../lib/freezing/scoop.ts";
import {
  componentsWith,
  conductivity,
  density,
  dryComponents,
  withAir,
} from "../../lib/freezing/thermal-properties.ts";
import {
  bodyOf,
  hardeningTime,
  surfaceCoefficient,
  temperatureAfter,
  temperingTime,
  type Tub,
} from "../../lib/freezing/tub.ts";
import {mixDensityAt} from "../../lib/kitchen/size/density.ts";
import type {Composition} from "../../lib/pantry/parts.ts";
import {within} from "../support/within.ts";

const [standard] = PUBLISHED_HARD_MIXES.map(({composition}) => composition) as [Composition];
const litre: Tub = {shape: "box", length: 16, width: 11, height: 6};

describe("heat flow without melting, against the series solutions of Incropera et al., Fundamentals of Heat and Mass Transfer, chapter 5", () => {
  /** 2000 kJ/(m³ K) and 0.5 W/(m K); 3 cm deep; Biot number 1. */
  const plain: Material = {enthalpy: (t) => 2000 * t, conductivity: () => 0.5};
  const air = {temperature: 20, coefficient: 0.5 / 0.03};
  const fourier = (seconds: number) => (0.5 * seconds) / 2e6 / 0.03 ** 2;
  const after = (dimension: number, seconds: number) =>
    letHeatFlow(plain, {depth: 0.03, dimension}, air, -20, ({time}) => time >= seconds)!;
  const roots = (equation: (z: number) => number) =>
    [0, 1, 2, 3, 4, 5].map((n) => rootBetween(equation, n * Math.PI + 1e-6, (n + 1) * Math.PI - 1e-6)!);
  /** (temperature - air) / (start - air) of a slab by the series, whose terms are weighed by what is looked at. */
  const series = (seconds: number, weight: (z: number) => number) =>
    roots((z) => z * Math.sin(z) - Math.cos(z)).reduce(
      (sum, z) =>
        sum +
        ((4 * Math.sin(z)) / (2 * z + Math.sin(2 * z))) * Math.exp(-z * z * fourier(seconds)) * weight(z),
      0,
    );
  /** Mean. */
  const slab = (seconds: number) => series(seconds, (z) => Math.sin(z) / z);
  /** At a share of the way from the core to the surface. */
  const slabAt = (seconds: number, share: number) => series(seconds, (z) => Math.cos(z * share));
  const sphere = (seconds: number) =>
    [0, 1, 2, 3, 4, 5]
      .map((n) =>
        rootBetween(
          (z) => Math.sin(z) - z * Math.cos(z) - Math.sin(z),
          n * Math.PI + 1e-6,
          (n + 1) * Math.PI - 1e-6,
        )!,
      )
      .reduce((sum, z) => {
        const wave = Math.sin(z) - z * Math.cos(z);
        return (
          sum +
          ((4 * wave) / (2 * z - Math.sin(2 * z))) *
            Math.exp(-z * z * fourier(seconds)) *
            ((3 * wave) / z ** 3)
        );
      }, 0);
  const remaining = (mean: number) => (mean - 20) / -40;

  test.each([300, 900, 3600])("a slab after %i s", (seconds) => {
    const state = after(1, seconds);
    within(remaining(state.mean), slab(state.time), 0.002, "slab");
    // The middles of the innermost and of the outermost of 24 layers.
    within(remaining(state.core), slabAt(state.time, 1 / 48), 0.002, "core");
    within(remaining(state.surface), slabAt(state.time, 47 / 48), 0.002, "surface");
  });

  test("a body is waited for through a week, and no longer", () => {
    const hours = (count: number) =>
      letHeatFlow(plain, {depth: 0.3, dimension: 1}, air, -20, ({time}) => time >= 3600 * count);
    expect(hours(167)).toBeDefined();
    expect(hours(169)).toBeUndefined();
  });

  test.each([300, 900, 3600])("a sphere after %i s", (seconds) => {
    const state = after(3, seconds);
    within(remaining(state.mean), sphere(state.time), 0.002, "sphere");
  });

  test.each([300, 900, 3600])(
    "a cube after %i s: the product of three slabs, which layers of equal depth only estimate",
    (seconds) => {
      const state = after(3, seconds);
      within(remaining(state.mean), slab(state.time) ** 3, 0.03, "cube");
    },
  );
});

describe("freezing at one temperature, against R. Z. Plank's equation (1913; ASHRAE Handbook Refrigeration, chapter 10)", () => {
  const latent = 1e5; // kJ/m³, a hundred times the sensible heat
  const brittle: Material = {
    enthalpy: (t) => 100 * t + latent * Math.min(1, Math.max(0, (t + 0.02) / 0.02)),
    conductivity: () => 1.5,
  };
  const [depth, coefficient, cold] = [0.03, 20, -10];

  test.each([
    ["slab", 1, 1 / 2, 1 / 8],
    ["long cylinder", 2, 1 / 4, 1 / 16],
    ["sphere", 3, 1 / 6, 1 / 24],
  ] as const)("a %s", (_, dimension, p, r) => {
    const body: Body = {depth, dimension};
    const end = letHeatFlow(brittle, body, {temperature: cold, coefficient}, 0, ({core}) => core < -0.02)!;
    const thickness = 2 * depth;
    const plank = ((latent * 1000) / -cold) * ((p * thickness) / coefficient + (r * thickness ** 2) / 1.5);
    within(end.time / plank, 1, 0.03, "time over Plank's");
  });
});

describe("steps of time", () => {
  const stuff: Material = {
    enthalpy: (t) => 1000 * enthalpy(standard, t),
    conductivity: (t) => (t < -3 ? 1.2 : 0.4),
  };
  const warm = {temperature: 20, coefficient: 10};
  const water: Material = {
    enthalpy: (t) => 900 * enthalpy({water: 100}, t),
    conductivity: (t) => (t < 0 ? 2.2 : 0.57),
  };

  test("end alike whether a tub is stopped by its temperature or by its time", () => {
    const byMean = letHeatFlow(stuff, bodyOf(litre), warm, -18, ({mean}) => mean >= -8)!;
    const byTime = letHeatFlow(stuff, bodyOf(litre), warm, -18, ({time}) => time >= byMean.time)!;
    within(byTime.time / byMean.time, 1, 2e-5, "time");
    for (const what of ["core", "surface", "mean"] as const)
      within(byTime[what], byMean[what], 0.002, `${what}, °C`);
    within(byMean.mean, -8, 0.001, "mean as asked for, °C");
  });

  test("keep to the air's temperature where a body has it from the start", () => {
    const end = letHeatFlow(stuff, bodyOf(litre), warm, 20, ({time}) => time >= 600)!;
    for (const what of ["core", "surface", "mean"] as const) within(end[what], 20, 1e-9, what);
    within(end.time, 600, 0.01, "s");
  });

  test("are refused for a material whose properties are no numbers, or that takes up no heat", () => {
    for (const wrong of [
      {...stuff, conductivity: () => NaN},
      {...stuff, enthalpy: () => NaN},
      {...stuff, enthalpy: () => 1},
    ])
      expect(() => letHeatFlow(wrong, bodyOf(litre), warm, -18, () => false)).toThrow(
        /must be numbers above 0/,
      );
  });

  test("never carry the core past the layers around it, even in pure water that all melts at one temperature", () => {
    const cold = {temperature: -35, coefficient: 9};
    let seen = 0;
    // The slab is so thin that it is nearly as cold inside as at its surface: when its core is, all of it is frozen.
    const end = letHeatFlow(water, {depth: 0.0047, dimension: 1}, cold, 20, ({core, surface}) => {
      expect(surface).toBeLessThan(core + 0.05);
      seen++;
      return core <= -5;
    })!;
    expect(seen).toBeGreaterThan(20);
    within(end.heatGained, end.heatIn, 1e-6 * -end.heatIn, "heat");
    within(end.mean, end.core, 0.5, "mean near the core, °C");
  });
});

describe("enthalpy", () => {
  test("rises with temperature, by the heat of fusion of all the water in the end", () => {
    for (let t = -40; t < 30; t++) expect(enthalpy(standard, t + 1)).toBeGreaterThan(enthalpy(standard, t));
    expect(enthalpy(standard, -40)).toBe(0);
    within(
      enthalpy({water: 100}, 0.001) - enthalpy({water: 100}, -0.001),
      HEAT_OF_FUSION,
      0.01,
      "melting of ice",
    );
  });

  test("does not jump at the freezing point", () => {
    const begins = initialFreezingPoint(standard)!;
    within(enthalpy(standard, begins + 1e-6), enthalpy(standard, begins - 1e-6), 1e-3, "enthalpy");
  });

  test("is told from -40 to 200 °C, as is the heat to remove and the density, and no further", () => {
    const at: readonly ((t: number) => number)[] = [
      (t) => enthalpy(standard, t),
      (t) => heatToRemove(standard, t, -18),
      (t) => heatToRemove(standard, 5, t),
      (t) => mixDensityAt(standard, t),
    ];
    for (const figure of at) {
      for (const t of [-40, 150, 200]) expect(figure(t)).toSatisfy(Number.isFinite);
      for (const t of [-40.1, 200.1]) expect(() => figure(t)).toThrow("give a number from -40 to 200 °C");
    }
  });

  test("adds up along the way", () => {
    const way = heatToRemove(standard, 4, -5.5) + heatToRemove(standard, -5.5, -18);
    within(way, heatToRemove(standard, 4, -18), 1e-9, "4 to -18 °C");
    expect(heatToRemove(standard, -18, 4)).toBeLessThan(0);
  });

  test("of a mix summed up once is that of each temperature by itself", () => {
    const syrupy: Composition = {
      ...standard,
      glucoseSyrupSolids: 4,
      dextroseEquivalent: 42,
      fibre: 2,
      alcohol: 1,
    };
    for (const mix of [standard, syrupy, {water: 80, sucrose: 20}, {milkFat: 100}]) {
      const at = enthalpyFunction(mix);
      for (const t of [-40, -18, -3.1, -0.2, 0, 5, 90]) within(at(t), enthalpy(mix, t), 1e-9, `at ${t} °C`);
    }
  });
});

describe("density and conductivity", () => {
  const solution = componentsWith({water: 80, sucrose: 20}, 0);

  test("of a sucrose solution are near the handbook's (CRC Handbook, from memory: 1081 kg/m³ at 20 %, 20 °C; water 0.598, solution 0.54 W/(m K))", () => {
    within(density(solution, 20), 1081, 12, "density");
    within(conductivity(componentsWith({water: 100}, 0), 20), 0.598, 0.01, "conductivity of water");
    within(conductivity(solution, 20), 0.54, 0.02, "conductivity");
  });

  test("are those of ice where all is ice (CRC Handbook: 917 kg/m³ at 0 °C; 2.2 W/(m K) from memory)", () => {
    const frozen = componentsWith({water: 100}, 100);
    within(density(frozen, 0), 917, 1, "density");
    within(conductivity(frozen, 0), 2.2, 0.05, "conductivity");
  });

  test("count every dry part and no water twice", () => {
    expect(dryComponents(standard).reduce((sum, {grams}) => sum + grams, 0)).toBeCloseTo(
      100 - standard.water!,
      9,
    );
    expect(dryComponents({water: 60, sucrose: 40, milkFat: 0})).toHaveLength(1);
  });
});

describe("tubs", () => {
  const counter = {airTemperature: 20, overrun: 40};
  const freezer = {airTemperature: -25, overrun: 40};

  test("take up exactly the heat that they gain", () => {
    const tub = temperingTime(standard, litre, {freezer: -18, ...counter})!;
    const {temperature} = scoopTemperature(standard, {overrun: 40});
    within(tub.heat, -heatToRemove(standard, -18, temperature!), 0.05, "heat to the scoop temperature");
    // A kitchen that scoops firmer tubs waits for less.
    const learned = {reports: 9, shift: 4, narrowing: 0.5, scatter: 0.3};
    const firmer = scoopTemperature(standard, {overrun: 40, learned}).temperature!;
    expect(firmer).toBeLessThan(temperature! - 1);
    const own = temperingTime(standard, litre, {freezer: -18, ...counter, learned})!;
    within(
      own.heat,
      -heatToRemove(standard, -18, firmer),
      0.05,
      "heat to the kitchen's own scoop temperature",
    );
  });

  test("refuse a time on the counter, a composition or an option that is none", () => {
    const standing = {freezer: -18, minutes: 5, ...counter};
    for (const minutes of [-1, 601, NaN])
      expect(() => temperatureAfter(standard, litre, {...standing, minutes}), `${minutes} min`).toThrow(
        /minutes: /,
      );
    const freezer = {draw: -5, core: -18, airTemperature: -25};
    for (const nothing of [{}, {water: 0}]) {
      expect(() => temperatureAfter(nothing, litre, standing)).toThrow(/composition: holds nothing/);
      expect(() => hardeningTime(nothing, litre, freezer)).toThrow(/composition: holds nothing/);
    }
    expect(() => temperatureAfter(standard, litre, {...standing, hours: 1} as never)).toThrow(/hours/);
  });

  test("balance their heat to 1e-6 of it, at every step", () => {
    const material: Material = {
      enthalpy: (t) => 1000 * enthalpy(standard, t),
      conductivity: (t) => (t < -3 ? 1.2 : 0.4),
    };
    let worst = 0;
    letHeatFlow(
      material,
      bodyOf(litre),
      {temperature: 15, coefficient: 9},
      -18,
      ({heatIn, heatGained, mean}) => {
        worst = Math.max(worst, Math.abs(heatIn - heatGained) / Math.max(1, heatIn));
        return mean > 5;
      },
    );
    expect(worst).toBeLessThan(1e-6);
  });

  test("scoop later when larger, colder or in cooler air", () => {
    const minutes = (tub: Tub, from: number, airTemperature: number) =>
      temperingTime(standard, tub, {freezer: from, airTemperature, overrun: 40})!.minutes;
    const usual = minutes(litre, -18, 20);
    expect(minutes({...litre, height: 12}, -18, 20)).toBeGreaterThan(usual);
    expect(minutes(litre, -22, 20)).toBeGreaterThan(usual);
    expect(minutes(litre, -18, 10)).toBeGreaterThan(usual);
    expect(temperingTime(standard, litre, {freezer: -5, ...counter})?.minutes).toBe(0);
  });

  test("want no minutes just where they scoop straight away or are soft", () => {
    const {low} = scoopTemperature(standard, {overrun: 40});
    for (const tenths of [-60, -20, -1, 0, 1, 20, 60]) {
      const freezer = Number((low! + tenths / 10).toFixed(1));
      const {minutes} = temperingTime(standard, litre, {freezer, ...counter})!;
      expect(minutes === 0, `${freezer} °C`).toBe(
        ["scoops", "soft"].includes(verdictAt(standard, freezer, {overrun: 40})),
      );
    }
    // What is ready needs no warm air, scooping or soft.
    for (const freezer of [low!, -5])
      expect(temperingTime(standard, litre, {...counter, freezer, airTemperature: -30})?.minutes).toBe(0);
  });

  test("take the time and end at the temperatures that the heat flow of their own stuff has", () => {
    const overrun = 40;
    const time = hardeningTime(standard, litre, {draw: -5.5, core: -18, ...freezer, airSpeed: 2, overrun})!;
    // Air has no mass: 1.4 times the volume of the mix as it starts to freeze. 5.7 + 3.8 x 2 W/(m2 K) of moving air.
    const mass = density(componentsWith(standard, 0), initialFreezingPoint(standard)!) / 1.4;
    const stuff: Material = {
      enthalpy: (t) => mass * enthalpy(standard, t),
      conductivity: (t) => withAir(conductivity(componentsWith(standard, ice(standard, t)), t), overrun),
    };
    const air = {temperature: -25, coefficient: 13.3};
    const end = letHeatFlow(stuff, bodyOf(litre), air, -5.5, ({core}) => core <= -18)!;
    within(time.minutes, end.time / 60, 1e-6, "minutes");
    within(time.core, end.core, 1e-6, "core, °C");
    within(time.surface, end.surface, 1e-6, "surface, °C");
    within(time.core, -18, 0.01, "core as asked for, °C");
    expect(time.surface).toBeLessThan(time.core - 1);
  });

  test("lose heat to air as W. H. McAdams has it (Heat Transmission, 1954; from memory)", () => {
    within(surfaceCoefficient(0), 5.7, 1e-9, "still air, W/(m2 K)");
    within(surfaceCoefficient(5), 24.7, 1e-9, "air at 5 m/s, W/(m2 K)");
  });

  test("stand in still air and hold the air of a small batch machine, unless it is said", () => {
    const question = {draw: -5.5, core: -18, airTemperature: -25};
    expect(hardeningTime(standard, litre, question)).toEqual(
      hardeningTime(standard, litre, {...question, airSpeed: 0, overrun: 30}),
    );
    expect(() => hardeningTime(standard, litre, {...question, overrun: 201})).toThrow(
      /overrun: out of range/,
    );
  });

  test("harden sooner in moving air", () => {
    const minutes = (airSpeed: number) =>
      hardeningTime(standard, litre, {draw: -5.5, core: -18, ...freezer, airSpeed})!.minutes;
    expect(minutes(3)).toBeLessThan(minutes(0));
  });

  test("never get there when the air is on the wrong side", () => {
    expect(temperingTime(standard, litre, {freezer: -18, airTemperature: -16})).toBeUndefined();
    expect(temperingTime({water: 30, sucrose: 70}, litre, {freezer: -18, ...counter})).toBeUndefined();
    expect(hardeningTime(standard, litre, {draw: -5.5, core: -18, airTemperature: -18})).toBeUndefined();
  });

  test("are there at once when cold enough already, and refuse what no freezer reaches", () => {
    // Temperatures the wrong way round would otherwise look like a tub that is hard at once.
    expect(() => hardeningTime(standard, litre, {draw: -20, core: -18, airTemperature: -10})).toThrow(
      /core: warmer than the mix as it is drawn/,
    );
    expect(() => hardeningTime(standard, litre, {draw: -20, core: -18, airTemperature: -10})).toThrow(
      expect.objectContaining({code: "out of range"}),
    );
    expect(hardeningTime(standard, litre, {draw: -18, core: -18, airTemperature: -10})?.minutes).toBe(0);
    expect(() => hardeningTime(standard, litre, {draw: -5, core: -41, ...freezer})).toThrow(
      /core: out of range \(got -41\)/,
    );
  });

  test("have the surface, volume and depth of their shape", () => {
    expect(bodyOf({shape: "box", length: 10, width: 10, height: 10})).toEqual({depth: 0.05, dimension: 3});
    expect(bodyOf({shape: "cylinder", diameter: 10, height: 10})).toEqual({depth: 0.05, dimension: 3});
    within(bodyOf({shape: "box", length: 200, width: 200, height: 2}).dimension, 1.02, 1e-9, "a flat tray");
  });

  test("refuse sizes and speeds out of range", () => {
    expect(() => bodyOf({...litre, height: 0})).toThrow(/tub.height/);
    expect(() => bodyOf({...litre, length: 200.1})).toThrow(/tub.length/);
    expect(() => bodyOf({shape: "ball", diameter: 5} as never)).toThrow(/tub.shape: unknown shape/);
    const deep: Tub & {readonly depth: number} = {...litre, depth: 6};
    expect(() => bodyOf(deep)).toThrow('tub: unknown key "depth"; use shape, length, width, height');
    expect(() => bodyOf({...deep, shape: "cylinder", diameter: 10} as Tub)).toThrow(
      /tub: unknown key "length"/,
    );
    for (const speed of [-0.1, 5.1]) expect(() => surfaceCoefficient(speed)).toThrow(/airSpeed/);
    for (const overrun of [-1, 201])
      expect(() => temperingTime(standard, litre, {freezer: -18, ...counter, overrun})).toThrow(/overrun/);
    for (const shape of [{...litre, width: Infinity}, undefined])
      expect(() => temperingTime({water: 30, sucrose: 70}, shape as Tub, {freezer: -18, ...counter})).toThrow(
        /tub/,
      );
    expect(() => temperingTime(standard, litre, {freezer: -60, ...counter})).toThrow(/freezer/);
    // 60 °C is the warmest mix and the warmest air that are taken for real.
    const draw = {core: -18, airTemperature: -25};
    expect(hardeningTime(standard, litre, {...draw, draw: 60})!.minutes).toBeGreaterThan(0);
    expect(() => hardeningTime(standard, litre, {...draw, draw: 60.1})).toThrow(/draw: out of range/);
    expect(() => temperingTime(standard, litre, {freezer: -18, airTemperature: 60.1})).toThrow(
      /airTemperature: out of range/,
    );
  });
});
