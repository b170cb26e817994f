import type {Limits} from "../../core/numbers.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Composition} from "../../pantry/parts.ts";
import type {Recipe} from "../../pantry/recipe.ts";
import type {Cooked} from "../cooking/cook.ts";

/** Something that may go into a ripple. */
export interface RippleIngredient {
  /** With a price per kg; fruit on hand that costs nothing more has the price 0, said so. */
  readonly ingredient: Ingredient;
  /** Least to use, g; 0 by default. */
  readonly min?: number;
  /** Most to use, what is on hand, g; no limit by default. */
  readonly max?: number;
  /** Whether it counts as the fruit of `fruit`. */
  readonly fruit?: boolean;
  /** Stones, seeds and skins that stay in the sieve, g per 100 g. */
  readonly sievedPercent?: number;
  /** Composition of what stays in the sieve, g per 100 g; the ingredient's own by default. */
  readonly sieved?: Composition;
}

/** Limits of a quantity at a temperature, g per 100 g of the cooked ripple. */
export interface AtTemperature extends Limits {
  /** °C, from -40 to below 0. */
  readonly at: number;
}

/** Brief of a ripple: what it is to be. */
export interface RippleBrief {
  readonly name: string;
  readonly ingredients: readonly RippleIngredient[];
  /** °Brix after cooking: one value, or limits. */
  readonly brix: number | Limits;
  /** g of the cooked ripple. Without it, the `min` of the ingredients say how much there will be. */
  readonly cookedGrams?: number;
  /** Ice and solid fat. */
  readonly hardPhase?: AtTemperature;
  readonly ice?: AtTemperature;
  /**
   * Points beyond a tub without air that scoops: 0 scoops best, 7 is twice as hard, -7 half as hard. About what the ice cream
   * has in the same freezer, a ripple is spooned with it; far more makes a stone of it.
   */
  readonly firmness?: AtTemperature;
  /** g of fruit as used per 100 g of the cooked ripple. */
  readonly fruit?: Limits;
  /** Sucrose = 100. */
  readonly sweetness?: Limits;
  /** % of the mass in the pot that is boiled off. */
  readonly reductionPercent?: Limits;
  /** Share of the sucrose that splits in cooking, 0 (default) to 1. */
  readonly inversion?: number;
}

/** A ripple that can be made. */
export interface RippleMade {
  /** Ingredients that go into the pot, g. */
  readonly recipe: Recipe;
  readonly cooked: Cooked;
  /** Money for the ingredients. */
  readonly cost: number;
}

/** A target that the nearest ripple misses. */
export interface RippleMiss {
  readonly target: string;
  readonly found: number;
  readonly min?: number;
  readonly max?: number;
  readonly unit: string;
}

/** Outcome of planning a ripple. */
export type RipplePlan =
  | ({readonly status: "optimal"} & RippleMade)
  /** The nearest ripple misses its targets by the least sum of g per 100 g; absent when not even the amounts fit together. */
  | {readonly status: "infeasible"; readonly nearest?: RippleMade; readonly misses: readonly RippleMiss[]}
  | {readonly status: "undecided"; readonly reason: string};
