import type {Limits} from "../../core/numbers.ts";
import type {Learned} from "../../freezing/learned.ts";
import type {Composition} from "../../pantry/parts.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Coordinate} from "./coordinate.ts";
import type {MixRow} from "./mix-row.ts";
import type {Offer} from "./offer.ts";
import type {Unit} from "./units.ts";
import type {Written} from "./written.ts";

/**
 * The part of a brief that measures know: its ingredients, and how the mix is frozen. A checked brief has it all. Anything more that a
 * measure needs of a brief becomes a key here, and the compiler asks for it wherever a mix is measured.
 */
export interface MixContext {
  readonly ingredients: readonly {readonly ingredient: Ingredient}[];
  /** Air beaten in, % of the mix's volume. */
  readonly overrun: number;
  /** Lesson of the kitchen's own reports on when its tubs scoop. */
  readonly learned?: Learned;
}

/** A mix to be measured. */
export interface MeasuredMix {
  readonly brief: MixContext;
  /** Share of the mix of each ingredient, from 0 to 1, summing to 1. */
  readonly shares: readonly number[];
  /** g per 100 g. */
  readonly composition: Composition;
}

/**
 * Everything about one property that a target can limit, an aim make smallest or largest and an axis show. `S` is the plain data that
 * stands for it in a brief, `W` the form in which a cook writes it. Each measure has a file of its own, and `measures.ts` lists them.
 *
 * `rows` states limits as linear rows over the ingredients; a right-hand side may depend on the context.
 */
export interface Measure<S extends {readonly kind: string}, W extends Written = Written> {
  /** Its key in a brief's targets; `quantity`, `nutrient` or `property` for those that are named by another key. */
  readonly kind: S["kind"];
  readonly written: W;
  /** Meaning with unit, for an editor to show. */
  readonly meaning: string;
  /** Its name in every answer: `fat`, `ice at -18 °C`. */
  readonly name: (subject: S) => string;
  /** The subject of a name in an answer; `undefined` for a name of another measure. */
  readonly named: (name: string) => S | undefined;
  readonly unit: (subject: S) => Unit;
  /** Decimals of a value where it is read; 2 by default. */
  readonly digits?: number;
  /** Least and greatest limit that makes sense. */
  readonly range: (subject: S) => readonly [least: number, most: number];
  /** True for an ingredient whose contribution is unknown: a brief that targets the measure refuses it. */
  readonly isUnknownIn?: (subject: S, ingredient: Ingredient) => boolean;
  /** Contribution of 100 g of an ingredient; the value of a mix is the weighted mean, less a constant. A temperature has none. */
  readonly weight: (subject: S, ingredient: Ingredient) => number;
  /** The rows that state limits, narrowest first. */
  readonly rows: (subject: S, limits: Limits, context: MixContext) => MixRow[];
  /** Condition for an upper limit to be met at all, where the rows do not say so: see temperatures. */
  readonly existence?: (subject: S, limits: Limits, context: MixContext) => MixRow | undefined;
  /** The sum that an axis shows. */
  readonly coordinate: (subject: S, context: MixContext) => Coordinate;
  /** True where the sum is right for what is to be small alone: an aim at the largest is refused. */
  readonly isOnlyKeptSmall?: true;
  /** The sum that an aim makes smallest or largest. */
  readonly aim: (subject: S, sense: "minimise" | "maximise", context: MixContext) => Coordinate;
  /** Its value in a mix, in its unit; `undefined` where the mix has none. */
  readonly value: (subject: S, mix: MeasuredMix) => number | undefined;
  /** Change of a row's limit per unit of the target's, which stands at `limit`: for prices, by the envelope theorem. 1 by default. */
  readonly slope?: (subject: S, limit: number, composition: Composition) => number;
  /** Lowest upper limit for which these same rows are enough; without a lower end by default. */
  readonly lowest?: (subject: S, limit: number, context: MixContext) => number;
  /** Further data of a measure that is a temperature. */
  readonly temperature?: Temperature;
  /** Its controls on the pages. */
  readonly offers: readonly Offer<S>[];
}

/** A measure that is a temperature: no weighted sum, though each of its limits is a linear row at that temperature. */
export interface Temperature {
  /** A sum that is at most `level` in just the mixes in which the temperature is at most `at`, °C. */
  readonly rowAt: (
    at: number,
    context: MixContext,
  ) => {readonly coordinate: Coordinate; readonly level: number};
  /** Weighted sum at a temperature that rises and falls with it. */
  readonly twin: (at: number) => {readonly kind: string; readonly at: number};
  /** Value in a usual mix, °C. */
  readonly usual: number;
  /** Words for a mix that has none: `does not freeze`. */
  readonly without: string;
}
