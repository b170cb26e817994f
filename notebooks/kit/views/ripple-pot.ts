import type {Limits} from "../../../lib/core/numbers.ts";
import type {RippleBrief} from "../../../lib/kitchen/ripple/ripple-brief.ts";
import {findIngredient, type Pantry} from "../../../lib/pantry/pantry.ts";
import type {BriefInput, IngredientInput} from "../../../lib/balance/brief/brief-schema.ts";
import {isFruit} from "../page/tub-product.ts";
import type {Window} from "../words/address-format.ts";

/** The demonstration's ripple, as its file has it. */
export interface DemoRipple {
  readonly name: string;
  readonly ingredients: BriefInput["ingredients"];
  readonly sievedPercent: number;
  readonly brix: Window;
  readonly hardPhase: Window;
  readonly fruit: Window;
  readonly sweetness: Window;
  /** g per 100 g of the tub. */
  readonly share: number;
}

/** Wish of the page for a ripple. */
export interface RippleWish {
  /** With limits in g: a ripple has no batch to take percent of. */
  readonly ingredients: readonly IngredientInput[];
  readonly sievedPercent: number;
  readonly splitPercent: number;
  /** Way to say how far it is cooked, besides the °Brix. */
  readonly cook: "brix" | "mass" | "reduction";
  /** g of the cooked sauce, for `mass`. */
  readonly cookedGrams: number;
  /** % of what is in the pot, for `reduction`. */
  readonly reduction: number;
  readonly brix: Window;
  readonly hardPhase: Window;
  /** Points beyond a tub without air that scoops. */
  readonly firmness?: Window;
  readonly fruit: Window;
  readonly sweetness: Window;
  /** °C. */
  readonly freezer: number;
}

/** The wish as a brief for the library: what is picked from the shelf, with limits and prices, and the targets that are set. */
export function rippleBrief(name: string, wish: RippleWish, pantry: Pantry): RippleBrief {
  const {cook, freezer, splitPercent} = wish;
  return {
    name,
    ingredients: wish.ingredients.map(({name: picked, price, ...limits}) => {
      const [min, max] = [gramsOf(limits.min), gramsOf(limits.max)];
      const shelved = findIngredient(pantry, picked, picked);
      const fruit = isFruit(shelved);
      return {
        ingredient: price === undefined ? shelved : {...shelved, price},
        ...(min !== undefined && {min}),
        ...(max !== undefined && {max}),
        fruit,
        ...(fruit && wish.sievedPercent > 0 && {sievedPercent: wish.sievedPercent}),
      };
    }),
    brix: wish.brix,
    ...(cook === "mass" && {cookedGrams: wish.cookedGrams}),
    ...(cook === "reduction" && {reductionPercent: {min: wish.reduction, max: wish.reduction}}),
    ...asked("hardPhase", wish.hardPhase, freezer),
    ...asked("firmness", wish.firmness, freezer),
    ...(isSet(wish.fruit) && {fruit: wish.fruit}),
    ...(isSet(wish.sweetness) && {sweetness: wish.sweetness}),
    ...(splitPercent > 0 && {inversion: splitPercent / 100}),
  };
}

/** A limit in g. */
export function gramsOf(limit: IngredientInput["min"]): number | undefined {
  return typeof limit === "number" ? limit : undefined;
}

function asked(key: "hardPhase" | "firmness", window: Limits | undefined, at: number) {
  return window && isSet(window) ? {[key]: {at, ...window}} : {};
}

function isSet({min, max}: Limits): boolean {
  return min !== undefined || max !== undefined;
}
