import {InputError} from "../core/errors.ts";
import {finite} from "../core/numbers.ts";
import {expectOptions, expectShape, oneOf} from "../core/shape.ts";
import {expectSomething} from "../pantry/expect.ts";
import type {Composition} from "../pantry/parts.ts";
import {type Body, letHeatFlow, type Progress} from "./conduction.ts";
import type {Material} from "./enthalpy-table.ts";
import {enthalpyFunction} from "./enthalpy.ts";
import {USUAL_OVERRUN} from "./firmness.ts";
import {COLDEST} from "./held-water.ts";
import {iceFunction, initialFreezingPoint} from "./ice.ts";
import type {Learned} from "./learned.ts";
import {scooping} from "./scoop.ts";
import {componentsWith, conductivity, density, dryComponents, withAir} from "./thermal-properties.ts";

/** A tub by its inner size in cm, full of ice cream. */
export type Tub =
  | {readonly shape: "box"; readonly length: number; readonly width: number; readonly height: number}
  | {readonly shape: "cylinder"; readonly diameter: number; readonly height: number};

/** Place and contents of a tub. */
export interface TubConditions {
  /** °C. */
  readonly airTemperature: number;
  /** m/s, 0 to 5; 0 (still air) by default. */
  readonly airSpeed?: number;
  /** Air beaten in, % of the mix's volume, 0 to 200; 30 by default. */
  readonly overrun?: number;
  /** Lesson of a kitchen's own reports on when its tubs scoop (see `calibrate`). */
  readonly learned?: Learned;
}

/** A tub that comes out of a freezer. */
export interface TemperingOptions extends TubConditions {
  /** Temperature of the tub at the start, °C, -40 or above. */
  readonly freezer: number;
}

/** A tub that stands on the counter for a while. */
export interface StandingOptions extends TemperingOptions {
  /** 0 to 600. */
  readonly minutes: number;
}

/** A tub that goes into a freezer. */
export interface HardeningOptions extends TubConditions {
  /** Temperature of the mix at the start, as drawn from the machine, °C. */
  readonly draw: number;
  /** Temperature that the core shall reach, °C, -40 or above. */
  readonly core: number;
}

/** Time that it takes, and the tub's temperatures then. */
export interface TubTime {
  readonly minutes: number;
  /** °C. */
  readonly core: number;
  /** °C, just under the surface. */
  readonly surface: number;
  /** Heat taken up (warming) or given off (cooling, negative), kJ per kg. */
  readonly heat: number;
}

/**
 * Time on the counter until a tub that is firm or hard in its freezer scoops: until its heat, once spread, would bring it to its
 * scoop temperature. One that scoops there, or is soft, needs none.
 *
 * An estimate: the tub's wall is left out and all its sides meet the air.
 *
 * @returns `undefined` when the mix never hardens, or is firm and the air no warmer than its scoop temperature; 0 minutes
 *   just where its verdict in the freezer is `scoops` or `soft` (see `verdictAt`)
 * @throws InputError for a size, speed, overrun or temperature out of range
 *
 * @example
 * ```ts
 * const tub = {shape: "box", length: 16, width: 11, height: 6} as const;
 * // A sorbet of little sugar is hard at -18 °C: it wants to stand.
 * const time = temperingTime({water: 80, sucrose: 20}, tub, {freezer: -18, airTemperature: 20, overrun: 30});
 * time!.minutes > 5; // => true
 * ```
 */
export function temperingTime(
  composition: Composition,
  tub: Tub,
  options: TemperingOptions,
): TubTime | undefined {
  expectOptions(options, ["freezer", ...CONDITIONS]);
  const {freezer, ...conditions} = options;
  expectSetting(tub, freezer, conditions, "freezer");
  const {overrun = USUAL_OVERRUN, learned} = conditions;
  const {temperature, verdict} = scooping(composition, freezer, {overrun, ...(learned && {learned})});
  if (temperature === undefined) return undefined;
  const ready = verdict === "scoops" || verdict === "soft";
  if (!ready && conditions.airTemperature <= temperature) return undefined;
  return timeUntil(
    composition,
    tub,
    freezer,
    conditions,
    (progress) => ready || progress.mean >= temperature,
  );
}

/**
 * Temperature that a tub comes to after some minutes on the counter, once its heat has spread, °C.
 *
 * @throws InputError for a composition of nothing, and for a size, speed, overrun, temperature or time out of range
 *
 * @example
 * ```ts
 * const mix = {water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17};
 * const tub = {shape: "box", length: 16, width: 10.5, height: 6} as const;
 * temperatureAfter(mix, tub, {freezer: -18, minutes: 0, airTemperature: 20}); // => -18
 * ```
 */
export function temperatureAfter(composition: Composition, tub: Tub, options: StandingOptions): number {
  expectSomething(composition);
  expectOptions(options, ["freezer", "minutes", ...CONDITIONS]);
  const {freezer, minutes, ...conditions} = options;
  expectSetting(tub, freezer, conditions, "freezer");
  const seconds = 60 * finite(minutes, "minutes", {min: 0, max: 600});
  let mean = freezer;
  timeUntil(composition, tub, freezer, conditions, (progress) => {
    if (progress.time >= seconds) mean = progress.mean;
    return progress.time >= seconds;
  });
  return mean;
}

/**
 * Time in a freezer until the core of a tub is cold enough.
 *
 * @returns `undefined` when the air is no colder than that
 * @throws InputError for a composition of nothing, a size, speed, overrun or temperature out of range, and a core warmer than
 *   the drawn mix
 *
 * @example
 * ```ts
 * const tub = {shape: "box", length: 16, width: 11, height: 6} as const;
 * const mix = {water: 62, milkFat: 10, milkProtein: 4, lactose: 6, sucrose: 18};
 * const freezer = {airTemperature: -25, airSpeed: 2};
 * hardeningTime(mix, tub, {draw: -6, core: -15, overrun: 30, ...freezer})?.minutes; // => 90
 * ```
 */
export function hardeningTime(
  composition: Composition,
  tub: Tub,
  options: HardeningOptions,
): TubTime | undefined {
  expectSomething(composition);
  expectOptions(options, ["draw", "core", ...CONDITIONS]);
  const {draw, core, ...conditions} = options;
  expectSetting(tub, draw, conditions, "draw");
  finite(core, "core", {min: COLDEST, max: 60}, "°C");
  if (core > draw)
    throw new InputError(
      "core",
      `warmer than the mix as it is drawn, which is at ${draw} °C`,
      core,
      "give the colder temperature that the core is to reach",
      {code: "out of range"},
    );
  if (conditions.airTemperature >= core && draw > core) return undefined;
  return timeUntil(composition, tub, draw, conditions, (progress) => progress.core <= core);
}

const CONDITIONS = ["airTemperature", "airSpeed", "overrun", "learned"] satisfies (keyof TubConditions)[];

/** Refuses a mistaken tub, start or surroundings, even where the answer does not depend on them. */
function expectSetting(tub: Tub, start: number, conditions: TubConditions, place: string): void {
  bodyOf(tub);
  finite(start, place, {min: COLDEST, max: 60}, "°C");
  const {airTemperature, airSpeed = 0, overrun = USUAL_OVERRUN} = conditions;
  finite(airTemperature, "airTemperature", {min: COLDEST, max: 60}, "°C");
  surfaceCoefficient(airSpeed);
  finite(overrun, "overrun", {min: 0, max: 200}, "%");
}

function timeUntil(
  composition: Composition,
  tub: Tub,
  start: number,
  {airTemperature, airSpeed = 0, overrun = USUAL_OVERRUN}: TubConditions,
  done: (progress: Progress) => boolean,
): TubTime | undefined {
  const density = aeratedDensity(composition, overrun);
  const air = {temperature: airTemperature, coefficient: surfaceCoefficient(airSpeed)};
  const end = letHeatFlow(materialOf(composition, overrun), bodyOf(tub), air, start, done);
  return end && {minutes: end.time / 60, core: end.core, surface: end.surface, heat: end.heatIn / density};
}

/**
 * Heat transfer between a smooth surface and air, W/(m² K): 5.7 + 3.8 × speed, after W. H. McAdams, Heat Transmission
 * (1954), from memory. Radiation and free convection in still air are in the constant.
 *
 * @param airSpeed m/s, 0 to 5
 * @throws InputError out of that range
 */
export function surfaceCoefficient(airSpeed: number): number {
  return 5.7 + 3.8 * finite(airSpeed, "airSpeed", {min: 0, max: 5}, "m/s");
}

/** Sides of each shape; a round one has its diameter in two directions. */
const SIDES = {
  box: ["length", "width", "height"],
  cylinder: ["diameter", "diameter", "height"],
} as const satisfies Record<Tub["shape"], readonly string[]>;

/**
 * A tub as a body that heat enters from all sides.
 *
 * @throws InputError for an unknown shape or key, and a size out of range
 */
export function bodyOf(tub: Tub): Body {
  const advice = "give {shape, height}, and length and width of a box or the diameter of a cylinder";
  expectShape(tub, {shape: "text"}, "tub", advice);
  const sides = SIDES[oneOf(tub.shape, ["box", "cylinder"], "tub.shape", "shape")];
  expectOptions(tub, ["shape", ...new Set(sides)], "tub");
  const sizes: Readonly<Record<string, unknown>> = tub;
  return bodyFrom(sides.map((side) => finite(sizes[side], `tub.${side}`, {min: 0.1, max: 200}, "cm") / 100));
}

/** Surface over volume is 2 / side for each pair of sides, and 4 / diameter for a round one: the same sum. */
function bodyFrom(sides: readonly number[]): Body {
  const depth = Math.min(...sides) / 2;
  return {depth, dimension: sides.reduce((sum, side) => sum + (2 * depth) / side, 0)};
}

/** kg of ice cream per m³; taken to stay as it is at the freezing point, though ice swells by a few per cent. */
function aeratedDensity(composition: Composition, overrun: number): number {
  const components = componentsWith(composition, 0);
  return density(components, initialFreezingPoint(composition) ?? 0) / (1 + overrun / 100);
}

function materialOf(composition: Composition, overrun: number): Material {
  const mass = aeratedDensity(composition, overrun);
  const dry = dryComponents(composition);
  const [heatAt, iceAt] = [enthalpyFunction(composition), iceFunction(composition)];
  return {
    enthalpy: (t) => mass * heatAt(t),
    conductivity: (t) => withAir(conductivity(componentsWith(composition, iceAt(t), dry), t), overrun),
  };
}
