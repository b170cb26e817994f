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

/** Options of a change: the freezer and the tub, the shelf, and what must stay. */
export interface ChangeOptions extends TimeOptions {
  /** Temperature that it is served from, °C, -40 to below 0; -18 by default. */
  readonly freezer?: number;
  /** Air beaten in, % of the mix's volume, 0 to 200; what the recipe says by default, or else 30. */
  readonly overrun?: number;
  /** Calibration by the kitchen's own reports on when its tubs scoop (see `calibrate`). */
  readonly learned?: Learned;
  /**
   * Shelf of ingredients that may come in, e.g. `staplesIn(pantry)`; empty by default. Its stocks limit what can be taken; an
   * ingredient without a stock counts as plenty.
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
  /** Its goal in words: `scoops at −18 °C`, `costs 10 % less`. */
  readonly wanted: string;
  /** Whether it reaches its goal; where not, it comes as near as it can. */
  readonly reached: boolean;
  /** Instruction, as the rest of a sentence: `add 30 g dextrose, take away 35 g sucrose`. */
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
  /** Changes that an eater or the till may notice, each with its part of the score. */
  readonly changes: readonly NoticedChange[];
  /** Sum of what these changes count (the goal's own left out) and of something for each line that is weighed anew: the smaller the better. */
  readonly score: number;
  /** The recipe with the change taken. */
  readonly recipe: Recipe;
}

/** A goal to which no change of a recipe gets. */
export interface NoChange extends Pick<Change, "towards" | "wanted"> {
  /** What there is to say of it, as the rest of a sentence: `nothing gets it to where it …`. */
  readonly words: string;
}

/** The changes of a recipe: softer (or firmer), cheaper where the prices are known, less sweet. */
export interface Changes {
  /** The recipe as it was, one line for each ingredient. */
  readonly before: Recipe;
  /** Each changes an amount at least. */
  readonly changes: readonly Change[];
  /** Goals that were sought and to which nothing gets. */
  readonly nothingFor: readonly NoChange[];
  /** Ingredients of the recipe without a price; where there are any, nothing cheaper is sought. */
  readonly unpriced: readonly string[];
  /** Whether the deadline came before every way was tried: a better one may exist, or a change may be missing. */
  readonly cutShort?: true;
}
