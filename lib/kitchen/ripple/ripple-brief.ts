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
  /** Most to use, such as the amount on hand, g; no limit by default. */
  readonly max?: number;
  /** Whether it counts as the fruit of `fruit`. */
  readonly fruit?: boolean;
  /** Share lost in the sieve (stones, seeds, skins), g per 100 g. */
  readonly sievedPercent?: number;
  /** Composition of that loss, g per 100 g; the ingredient's own by default. */
  readonly sieved?: Composition;
}

/** Limits of a quantity at a temperature, g per 100 g of the cooked ripple. */
export interface AtTemperature extends Limits {
  /** °C, from -40 to below 0. */
  readonly at: number;
}

/** Brief of a ripple: its ingredients and targets. */
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
   * Points beyond a tub without air that scoops: 0 scoops best, 7 is twice as hard, -7 half as hard. A ripple with about the
   * firmness of the ice cream in the same freezer is spooned with it; with far more it is as hard as stone.
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
