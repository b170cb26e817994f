import type {Learned} from "../../freezing/learned.ts";
import type {TimeOptions} from "../../lp/program/deadline.ts";
import type {Allergen, Ingredient} from "../../pantry/ingredient.ts";
import type {Pantry} from "../../pantry/pantry.ts";
import type {Recipe} from "../../pantry/recipe.ts";
import type {TargetsInput} from "../brief/brief-schema.ts";
import type {SimilarityTrait, Weights} from "./similarity-traits.ts";

/** Options of a substitution: the ingredients that are out, the shelf, and what must stay. */
export interface SubstituteOptions extends TimeOptions {
  /**
   * Name of the ingredient that is out, or of several: at least one of them is in the recipe. The others are not offered as a
   * replacement, such as cream of another fat where there is no cream at all.
   */
  readonly without: string | readonly string[];
  /** Rest of it, g; none by default. Only where one ingredient is out. */
  readonly left?: number;
  /** The shelf. Its stocks limit what can be taken; an ingredient without stock is taken as plenty. */
  readonly from: Pantry | readonly Ingredient[];
  /**
   * Ingredients of the recipe that stay as they are; by default its fruit, juice, nuts, coconut, cocoa, coffee, spices,
   * alcohol and inclusions.
   */
  readonly keep?: readonly string[];
  /** Weights that differ from the usual ones (see `SUBSTITUTION_WEIGHTS`), each at least 0. */
  readonly weights?: Partial<Weights>;
  /** Temperature at which the mix must be as firm as before, °C; -18 by default. */
  readonly freezer?: number;
  /** Calibration by the kitchen's own reports on when its tubs scoop (see `calibrate`). */
  readonly learned?: Learned;
  /** Mass to make, g; that of the recipe by default. */
  readonly batch?: number;
  /**
   * The name under which it is sold, as the targets that the name demands of the whole mix, e.g. `{milkFat: {min: 10}}`.
   * They are kept wherever that is possible, and each alternative says whether it does.
   */
  readonly legalName?: {readonly name: string; readonly targets: TargetsInput};
}

/** Change of one amount, g per batch. */
export interface AmountChange {
  readonly ingredient: string;
  readonly before: number;
  readonly after: number;
  readonly change: number;
}

/** Change of something that the eater or the till notices. */
export interface NoticedChange {
  readonly what: SimilarityTrait;
  readonly unit: string;
  readonly before: number;
  readonly after: number;
  readonly change: number;
  /** Part of the change in the score. */
  readonly counts: number;
}

/** A demand of a legal name that a mix does not meet. */
export interface Broken {
  readonly target: string;
  readonly bound: "min" | "max" | "equal";
  readonly limit: number;
  /** Absent where the mix has none. */
  readonly value?: number;
}

/** A way to make the recipe without the missing ingredients. */
export interface Alternative {
  /**
   * `left out`: nothing comes in but more of the recipe's own water or milk; `one for one` and `two for one`: one or two
   * ingredients, and water or milk to make up the mass; `re-balanced`: anything on the shelf, and the recipe's other
   * amounts move too.
   */
  readonly kind: "left out" | "one for one" | "two for one" | "re-balanced";
  /** Ingredients that come in, or come in more than before, the most first; water and milk that make up the mass apart. */
  readonly by: readonly string[];
  readonly recipe: Recipe;
  readonly amounts: readonly AmountChange[];
  readonly changes: readonly NoticedChange[];
  readonly newAllergens: readonly Allergen[];
  readonly goneAllergens: readonly Allergen[];
  /** Ingredients that gave a flavour that nothing left tastes of, or too little does, and those that bring one that nothing tasted of before. */
  readonly flavours: {readonly lost: readonly string[]; readonly gained: readonly string[]};
  /** Sum of the scores of all changes: the smaller, the less is noticed. */
  readonly score: number;
  /** Present where a legal name was asked for. */
  readonly legalName?: {readonly name: string; readonly kept: boolean; readonly broken: readonly Broken[]};
}

/** Ways round an ingredient that is out. */
export interface Substitution {
  /** The recipe as it was, scaled to the batch. */
  readonly before: Recipe;
  /** The missing ingredients in words: `cream 36 %`, `cream 36 % and egg yolk`. */
  readonly without: string;
  /** Their names, in the order of the recipe. */
  readonly out: readonly string[];
  /** Best first; those that keep the legal name before those that do not. */
  readonly alternatives: readonly Alternative[];
  /** Traits that could not be compared: the cost, where a price is missing; the freezing point of a mix that has none. */
  readonly notCompared: readonly SimilarityTrait[];
  /** Whether the deadline came before every way was tried: a better one may exist. */
  readonly cutShort?: true;
}
