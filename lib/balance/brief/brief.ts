import type {Learned} from "../../freezing/learned.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {Part} from "../../pantry/parts.ts";
import type {Subject} from "../measure/measures.ts";

/** The mark of a brief that was checked. */
export const CHECKED: unique symbol = Symbol("checked brief");

/** A checked brief: every name resolved, every number in range. */
export interface Brief {
  readonly [CHECKED]: true;
  readonly name: string;
  /** Mass of the batch, g. */
  readonly batch: number;
  /** Temperature of the freezer that the tub is served from, °C. */
  readonly freezer: number;
  /** Air beaten in, % of the mix's volume. */
  readonly overrun: number;
  /** Lesson of the kitchen's own reports on when its tubs scoop. */
  readonly learned?: Learned;
  readonly ingredients: readonly Choice[];
  readonly targets: readonly Target[];
  /** Upper limits on what is taken by the pinch or the spoon; none by default. */
  readonly doses?: readonly DoseLimit[];
  /** At most so many ingredients are used. */
  readonly maxIngredients?: number;
  /** Whether a minimal cost pays opened packs in full. */
  readonly wholePacks?: boolean;
  /** Errors of the kitchen's ingredients and scale. */
  readonly spread?: Spread;
  /** Whether the targets have to hold for all of the spread. */
  readonly margin?: boolean;
  /** A recipe to stay close to: share of the batch of each ingredient, in the order of `ingredients`. */
  readonly near?: readonly number[];
  /** Aim, to be made smallest or largest; absent when there are no prices and nothing else is asked for. */
  readonly aim?: Aim;
}

/** An ingredient that may be used, within limits in g per batch. */
export interface Choice {
  /** Those of its limits that the cook gave in per cent of the batch, in per cent. */
  readonly percents?: {
    readonly min?: number;
    readonly max?: number;
    readonly minIfUsed?: number;
    readonly onlyWith?: number;
  };
  readonly ingredient: Ingredient;
  readonly min: number;
  /** `Infinity` where the cook sets none. */
  readonly max: number;
  /** Amounts come in whole multiples of this, g. */
  readonly step?: number;
  /** Mass of a pack as it is bought, g. */
  readonly pack?: number;
  /** None, or at least so much, g per batch. */
  readonly minIfUsed?: number;
  /** Used only beside at least `min` g per batch of the ingredient with this index. */
  readonly onlyWith?: {readonly index: number; readonly min: number};
  /** Used at `grams` g per g of the ingredient with this index. */
  readonly ratio?: {readonly index: number; readonly grams: number};
}

/** A limit on a property of the mix, in the unit of its subject. Equal limits mean one value. */
export interface Target {
  readonly subject: Subject;
  readonly min?: number;
  readonly max?: number;
}

/** An upper limit on a dose. */
export interface DoseLimit {
  /** Position in `DOSES`. */
  readonly index: number;
  /** g per 100 g of mix: what is customary, or more where the cook asks for more outright. */
  readonly limit: number;
  /** Whether the cook set it. */
  readonly own?: true;
  /** Whether it rose, since the cook asks for more outright. */
  readonly raised?: true;
}

/** Aim of a brief: the property that the answer should be best at. */
export interface Aim {
  readonly sense: "minimise" | "maximise";
  readonly subject: Subject;
}

/** Errors of a kitchen: in what is in the pack, and in what the scale shows. */
export interface Spread {
  /**
   * By ingredient, how far each part may lie from its stated value either way, g per 100 g: `{"cream 40 %": {milkFat: 1}}`.
   * Water takes up the difference.
   */
  readonly parts: ReadonlyMap<string, Readonly<Partial<Record<Part, number>>>>;
  /** Error of each weighing either way, g. */
  readonly weighing: number;
}
