import {freezingCurve} from "../../freezing/curve.ts";
import type {Composition} from "../../pantry/parts.ts";
import {brix} from "../sugar/brix.ts";
import type {Product} from "../product/product.ts";
import {boilingPoint} from "../sugar/sucrose.ts";

/** Figures for the steps after the base is cold; a step does not mention those left out. */
export interface AfterTheBase {
  /** Temperature to which base and ripple are cooled, °C. */
  readonly cool: number;
  /** Rest of the base there before it is churned, from and to, h. */
  readonly rest?: readonly [from: number, to: number];
  /** Runs of the machine. */
  readonly runs?: number;
  /** Temperature at which it is drawn from the machine, °C. */
  readonly draw?: number | undefined;
  /** °C of the freezer. */
  readonly freezer: number;
  /** The tub's volume, ml, and the mass of its contents when full, g. */
  readonly tub?: {readonly millilitres: number; readonly grams: number};
  /** Temperature of the core at which a tub counts as hard, °C. */
  readonly core?: number;
}

/**
 * Steps after the base, in words: the ripple's pot, rest, churning, filling, hardening.
 *
 * @param product scaled to the batch
 */
export function furtherSteps(
  {components}: Product,
  {cool, rest, runs, draw, freezer, tub, core}: AfterTheBase,
): string[] {
  const ripple = components.find(({churned}) => !churned);
  const strength = ripple && brix(ripple.composition);
  const inRuns = runs === undefined ? "" : runs === 1 ? " in 1 run" : ` in ${runs} equal runs`;
  const fill = tub
    ? `Fill each tub of ${Number(tub.millilitres.toFixed(0))} ml to ${whole(tub.grams)} g, label it`
    : "Fill the tubs, label them";
  return [
    ...(ripple && strength !== undefined
      ? [
          `Ripple: cook ${ripple.recipe.lines.map(({ingredient}) => ingredient.name).join(", ")}, sieve, boil down to ${whole(ripple.grams)} g or ${whole(strength)} °Brix${strength <= 84 ? ` (about ${whole(boilingPoint(strength))} °C)` : ""}, cool to ${cool} °C`,
        ]
      : []),
    ...(rest ? [`Let it rest covered at ${cool} °C for ${rest[0]} to ${rest[1]} hours`] : []),
    `Churn${inRuns}${draw === undefined ? "" : `, draw at about ${draw} °C`}`,
    ...(ripple && tub
      ? [`Layer ${whole((tub.grams * ripple.percent) / 100)} g of ripple into each tub`]
      : []),
    `${fill}, into the freezer at ${freezer} °C at once`,
    ...(core === undefined ? [] : [`Leave it there until the core is at ${core} °C`]),
  ];
}

/** Rest of a cold base, from and to, h: common practice, no source. */
const REST = [4, 12] as const;

/** Share of the water that is ice when a mix is drawn, %: common practice, no source. */
const DRAWN = 50;

/** Degrees that the core of a hard tub may still be warmer than the freezer, °C: common practice, no source. */
const NEARLY = 3;

/**
 * Figures for the usual steps after a base, without knowledge of machine and tub.
 *
 * @param base its composition, g per 100 g
 * @param cool temperature to which it was cooled, °C
 * @param freezer °C, -18 by default
 */
export function usualAfter(base: Composition, cool = 4, freezer = -18): AfterTheBase {
  const half = freezingCurve(base).find(({frozen}) => frozen >= DRAWN);
  return {
    cool,
    rest: REST,
    draw: half && Math.round(half.temperature),
    freezer,
    core: freezer + NEARLY,
  };
}

function whole(value: number): string {
  return value.toFixed(0);
}
