import {InputError} from "../core/errors.ts";
import {finite} from "../core/numbers.ts";
import {expectOptions} from "../core/shape.ts";
import {expectComposition} from "../pantry/expect.ts";
import type {Composition} from "../pantry/parts.ts";
import {activityOfIce, COLDEST} from "./held-water.ts";
import {initialFreezingPoint} from "./ice.ts";
import {balanceAt, mixtureOf} from "./state.ts";

/** One point of a freezing curve. */
export interface CurvePoint {
  /** °C. */
  readonly temperature: number;
  /** Ice, g per 100 g of mix. */
  readonly ice: number;
  /** Share of the water that is ice, %. */
  readonly frozen: number;
}

/** Range of a freezing curve. */
export interface CurveRange {
  /** Warm end, °C; the initial freezing point by default. */
  readonly from?: number;
  /** Cold end, °C, not below -40; -30 by default. */
  readonly to?: number;
  /** Distance of the points, °C; 0.5 by default. They lie on its multiples. */
  readonly step?: number;
}

/**
 * Freezing curve: ice against temperature, from warm to cold.
 *
 * @returns points at `from` and at every multiple of `step` below it down to `to`; none for a mix that has no water
 *   or freezes below `to`
 * @throws InputError for limits that are out of order or outside -40 to 0 °C, or a step below 0.001 °C
 *
 * @example
 * ```ts
 * freezingCurve({water: 70, sucrose: 30}, {from: -5, to: -15, step: 5}); // => [{temperature: -5, ice: 29.2, frozen: 41.7}, {temperature: -10, ice: 46.5, frozen: 66.5}, {temperature: -15, ice: 52.9, frozen: 75.6}]
 * ```
 */
export function freezingCurve(composition: Composition, range: CurveRange = {}): CurvePoint[] {
  expectComposition(composition);
  expectOptions(range, ["from", "to", "step"], "range");
  const to = finite(range.to ?? -30, "to", {min: COLDEST, max: 0}, "°C");
  const step = finite(range.step ?? 0.5, "step", {min: 0.001, max: 40}, "°C");
  const from =
    range.from === undefined
      ? initialFreezingPoint(composition)
      : finite(range.from, "from", {min: COLDEST, max: 200}, "°C");
  if (from === undefined) return [];
  if (range.from !== undefined && from < to) {
    throw new InputError("from", "colder than the cold end of the curve", from, `give at least ${to} °C`);
  }
  const water = composition.water ?? 0;
  const mixture = mixtureOf(composition);
  const at = (temperature: number): CurvePoint => {
    const ice =
      temperature < 0 ? Math.max(0, balanceAt(mixture, temperature, activityOfIce(temperature)).ice) : 0;
    return {temperature, ice, frozen: water > 0 ? (100 * ice) / water : 0};
  };
  const points: CurvePoint[] =
    from >= to ? [range.from === undefined ? {temperature: from, ice: 0, frozen: 0} : at(from)] : [];
  for (let i = Math.floor(-from / step) + 1; -i * step >= to - 1e-9; i++) points.push(at(onGrid(-i * step)));
  return points;
}

/** A temperature without the rounding of its multiplication, so that it is found again among those kept. */
function onGrid(temperature: number): number {
  return Math.round(temperature * 1e6) / 1e6;
}
