import type {Learned} from "../../freezing/learned.ts";
import type {Scooping} from "../../freezing/scoop.ts";
import type {TimeOptions} from "../../lp/program/deadline.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Pantry} from "../../pantry/pantry.ts";
import type {Recipe} from "../../pantry/recipe.ts";
import type {Weights} from "../substitute/similarity-traits.ts";
import type {AmountChange, NoticedChange} from "../substitute/substitution-types.ts";

/** Ways in which a recipe can be changed: `firmer` takes the place of `softer` where the tub is too soft. */
export const TOWARDS = ["softer", "firmer", "cheaper", "less sweet"] as const;

/** One way in which a recipe can be changed. */
export type Towards = (typeof TOWARDS)[number];

/** How a recipe is frozen, and what may be done to it. */
export interface ChangeOptions extends TimeOptions {
  /** Temperature that it is served from, °C, -40 to below 0; -18 by default. */
  readonly freezer?: number;
  /** Air beaten in, % of the mix's volume, 0 to 200; what the recipe says by default, or else 30. */
  readonly overrun?: number;
  /** What the kitchen's own reports have taught of when its tubs scoop (see `calibrate`). */
  readonly learned?: Learned;
  /**
   * What may come in beside the recipe's own ingredients: a shelf, e.g. `staplesIn(pantry)`. Nothing by default. Its stocks limit what
   * can be taken; an ingredient without stock is taken as plenty.
   */
  readonly from?: Pantry | readonly Ingredient[];
  /** Names of ingredients of the recipe that stay as they are, beside those that always do. */
  readonly locked?: readonly string[];
  /** Weights that differ from the usual ones (see `SUBSTITUTION_WEIGHTS`), each at least 0. */
  readonly weights?: Partial<Weights>;
}

/** A value of the recipe as it is, and as it is when changed. */
export interface BeforeAfter<T = number> {
  readonly before: T;
  readonly after: T;
}

/** A change of a recipe, the least noticed of its kind. */
export interface Change {
  readonly towards: Towards;
  /** What it is to reach, in words: `scoops at −18 °C`, `costs 10 % less`. */
  readonly wanted: string;
  /** Whether it reaches that; where not, it goes as near as it can. */
  readonly reached: boolean;
  /** What to do, as the rest of a sentence: `add 30 g dextrose, take away 35 g sucrose`. */
  readonly words: string;
  /** Every ingredient, g, those of the recipe first. */
  readonly amounts: readonly AmountChange[];
  /** Ingredients that the recipe did not have, at most two. */
  readonly newcomers: readonly string[];
  readonly scoop: BeforeAfter<Scooping>;
  /** Sucrose = 100. */
  readonly sweetness: BeforeAfter;
  /** Money for the batch; absent where a price is not known. */
  readonly cost?: BeforeAfter;
  /** What an eater or the till may notice, with what each counts. */
  readonly changes: readonly NoticedChange[];
  /** Sum of what all that counts, what is sought left out, with something for each line that is weighed anew: the smaller the better. */
  readonly score: number;
  /** The recipe with the change taken. */
  readonly recipe: Recipe;
}

/** The changes of a recipe: softer (or firmer), cheaper where the prices are known, less sweet. */
export interface Changes {
  /** The recipe as it was, one line for each ingredient. */
  readonly before: Recipe;
  readonly changes: readonly Change[];
  /** Ingredients of the recipe without a price, for want of which nothing cheaper is sought. */
  readonly unpriced: readonly string[];
  /** Whether the deadline came before every way was tried: a better one may exist, or a change may be missing. */
  readonly cutShort?: true;
}
