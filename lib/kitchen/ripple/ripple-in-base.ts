import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {type FirmnessOptions, hardness} from "../../freezing/firmness.ts";
import {heldWater} from "../../freezing/held-water.ts";
import {hardPhase, ice, initialFreezingPoint} from "../../freezing/ice.ts";
import {DIPPING_TEMPERATURE, verdictAt, type Verdict} from "../../freezing/scoop.ts";
import {iceWaterActivity} from "../../freezing/water-activity.ts";
import type {Composition} from "../../pantry/parts.ts";
import {brix} from "../sugar/brix.ts";

/** Figures that decide how a base or a ripple behaves in the freezer. */
export interface FrozenSide {
  /** Temperature at which its first ice forms, °C; absent when it does not freeze above -40 °C. */
  readonly freezingPoint?: number;
  /** Water activity of the unfrozen mix: that of ice at its freezing point. Absent with the freezing point. */
  readonly waterActivity?: number;
  readonly brix: number;
  /** g per 100 g in the freezer. */
  readonly ice: number;
  /** Water that is not ice in the freezer, g per 100 g. */
  readonly liquidWater: number;
  /** Ice and solid fat in the freezer, g per 100 g. */
  readonly hardPhase: number;
  /** Hardness in the freezer over that of a tub that scoops: 1 where it scoops, 2 where it is twice as hard. */
  readonly hardness: number;
  readonly verdict: Verdict;
}

/** A ripple in its base. */
export interface RippleInBase {
  readonly base: FrozenSide;
  readonly ripple: FrozenSide;
  /** Direction in which water moves until both sides are in balance with ice. */
  readonly waterMoves: "into the ripple" | "into the base" | "neither way";
  /** Water that the ripple can still take up in the freezer, g per 100 g of ripple; 0 as soon as it holds ice itself. */
  readonly thirst: number;
  /** Whether the ripple holds no ice in the freezer: it stays liquid, thins as it draws water, and runs. */
  readonly bleeds: boolean;
  /** Whether it holds no ice where ice cream is dipped, -13 °C: it then runs from the scoop. */
  readonly runsWhenScooped: boolean;
  /** Whether the ripple is too hard in the freezer to be scooped. */
  readonly hard: boolean;
  /** The same in plain words. */
  readonly sentences: readonly string[];
}

/** Freezing points closer than this are called the same, °C: the uncertainty of the model. */
const SAME = 0.3;

/**
 * Compares a ripple with its base: the direction in which water moves, whether the ripple bleeds, whether it freezes hard.
 *
 * Two frozen mixes at one temperature have the same water activity, that of ice, so what drives water is what happens
 * before: the side with the lower freezing point (the lower water activity) draws water while it is still liquid. A ripple that
 * holds no ice even in the freezer goes on drawing it from the base's ice, as much as its solutes can hold. The speed is not
 * calculated: pectin, starch and gums slow it down. A ripple holds no air; the base holds the air beaten in.
 *
 * @param base g per 100 g
 * @param ripple as cooked, g per 100 g
 * @param freezer °C of the freezer, from -40 to -5
 * @param tub how the base was frozen
 * @throws InputError for a freezer outside that range, or a base that is not frozen there
 *
 * @example
 * ```ts
 * const base = {water: 62, milkFat: 10, milkProtein: 4, lactose: 6, milkSalts: 1, sucrose: 17};
 * rippleInBase(base, {water: 38, sucrose: 30, dextrose: 32}, -18).ripple.ice; // => 1.2
 * ```
 */
export function rippleInBase(
  base: Composition,
  ripple: Composition,
  freezer: number,
  tub: FirmnessOptions = {},
): RippleInBase {
  finite(freezer, "freezer", {min: -40, max: -5}, "°C");
  const sides = {base: sideOf(base, freezer, tub), ripple: sideOf(ripple, freezer, {...tub, overrun: 0})};
  if (sides.base.ice === 0) {
    throw new InputError(
      "base",
      `holds no ice at ${freezer} °C`,
      undefined,
      "compare with a base that freezes",
    );
  }
  const difference = (sides.ripple.freezingPoint ?? -40) - sides.base.freezingPoint!;
  const waterMoves =
    Math.abs(difference) < SAME ? "neither way" : difference < 0 ? "into the ripple" : "into the base";
  const thirst = Math.max(0, heldWater(ripple, freezer) - (ripple.water ?? 0));
  const found = {
    ...sides,
    waterMoves,
    thirst,
    bleeds: sides.ripple.ice === 0,
    runsWhenScooped: ice(ripple, DIPPING_TEMPERATURE) === 0,
    hard: sides.ripple.verdict === "firm" || sides.ripple.verdict === "hard",
  } as const;
  return {...found, sentences: sentences(found, freezer)};
}

function sideOf(composition: Composition, freezer: number, tub: FirmnessOptions): FrozenSide {
  const freezingPoint = initialFreezingPoint(composition);
  const frozen = ice(composition, freezer);
  return {
    ...(freezingPoint !== undefined && {
      freezingPoint,
      waterActivity: freezingPoint === 0 ? 1 : iceWaterActivity(freezingPoint),
    }),
    brix: brix(composition),
    ice: frozen,
    liquidWater: (composition.water ?? 0) - frozen,
    hardPhase: hardPhase(composition, freezer),
    hardness: hardness(composition, freezer, tub),
    verdict: verdictAt(composition, freezer, tub),
  };
}

function sentences(found: Omit<RippleInBase, "sentences">, freezer: number): string[] {
  const {base, ripple, waterMoves, thirst, bleeds, runsWhenScooped, hard} = found;
  const point = (side: FrozenSide) =>
    side.freezingPoint === undefined ? "below -40 °C" : `at ${side.freezingPoint.toFixed(1)} °C`;
  return [
    `The base starts to freeze ${point(base)}, the ripple ${point(ripple)}.`,
    {
      "neither way": "Neither draws water from the other.",
      "into the ripple": bleeds
        ? "Water moves from the base into the ripple."
        : "Until it freezes, the ripple draws water from the base; once both hold ice they are in balance.",
      "into the base":
        "Until it freezes, the base draws water from the ripple, whose rim turns thicker; once both hold ice they are in balance.",
    }[waterMoves],
    bleeds
      ? `At ${freezer} °C the ripple holds no ice: it stays liquid and can draw up to ${thirst.toFixed(0)} g of water per 100 g from the base's ice, so it thins and bleeds. Use less sugar or syrup, or bind it with pectin or starch.`
      : `At ${freezer} °C the ripple holds ${ripple.ice.toFixed(0)} % ice and draws no more water.${runsWhenScooped ? ` At ${DIPPING_TEMPERATURE} °C, where it is scooped, it holds none and runs unless pectin or starch binds it.` : " It does not bleed."}`,
    hard
      ? `It freezes ${ripple.verdict}: ${times(ripple)} as hard as what scoops, the base ${times(base)}. More sugar, or dextrose or glucose syrup in place of sugar, makes it softer.`
      : `It does not freeze hard: ${times(ripple)} as hard as what scoops, the base ${times(base)}.`,
  ];
}

/** Hardness as a multiple of that of a tub that scoops, in words. */
function times({hardness: ratio}: FrozenSide): string {
  return `${ratio.toFixed(ratio < 9.5 ? 1 : 0)} times`;
}
