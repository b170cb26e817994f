import type {Learned} from "../../freezing/learned.ts";
import type {Allergen, Grade} from "../../pantry/ingredient.ts";
import type {IngredientClass} from "../../pantry/from-label.ts";
import type {NutrientKey, SaidNutrient} from "../../pantry/nutrient-keys.ts";
import type {Part} from "../../pantry/parts.ts";
import type {Quantity} from "../../pantry/quantities.ts";
import type {KeyWritten} from "../measure/measures.ts";

/**
 * A brief as the cook writes it: plain data, ready for JSON.
 *
 * Aims and targets of a brief are known by name, so that a typing error does not compile. Properties of one's own
 * (`{"co2": 310}` of each ingredient) are named in the type: `BriefInput<"co2">`; `BriefInput<string>` takes any name.
 */
export interface BriefInput<Own extends string = never> {
  /** Path or address of the JSON Schema, for editors; not read. */
  readonly $schema?: string | undefined;
  /** Name of the mix, 1 to 200 characters; `mix` by default. */
  readonly name?: string | undefined;
  /** Mass of the batch, g, above 0; 1000 by default. */
  readonly batch?: number | undefined;
  /** Path of a pantry as CSV beside the brief: read by the command, not by `balance`, which takes a pantry as an option. */
  readonly pantry?: string | undefined;
  /** Path of a price list as CSV beside the brief: read by the command, not by `balance`. */
  readonly prices?: string | undefined;
  /** Temperature of the freezer that the tub is served from, °C, -40 to -0.01; -18 by default. */
  readonly freezer?: number | undefined;
  /** Air beaten in, % of the mix's volume, 0 to 200; 30, a small batch machine, by default. The firmness depends on it. */
  readonly overrun?: number | undefined;
  /** Lesson of the kitchen's own reports on when its tubs scoop, as `calibrate` returns it. */
  readonly learned?: Learned | undefined;
  /** At most so many ingredients are used, a whole number of at least 1. */
  readonly maxIngredients?: number | undefined;
  /** Ingredients that may go in, 1 to 2000: the name of an ingredient of the pantry, or one with more than its name. */
  readonly ingredients: readonly (string | IngredientInput)[];
  /** Limits that the mix must keep, by the name of the quantity. */
  readonly targets?: TargetsInput<Own> | undefined;
  /**
   * Upper limits on salt, gums, emulsifiers, polyols and what else is taken by the pinch or the spoon (see `DOSES`): those
   * that are customary unless it says `"none"`, or some of the cook's own, g per 100 g of mix, e.g. `{salt: 1}`.
   */
  readonly doses?: "customary" | "none" | {readonly [dose: string]: number} | undefined;
  /** Whether a minimal cost pays every opened pack in full; not by default. */
  readonly wholePacks?: boolean | undefined;
  /** Errors of the kitchen's ingredients and scale. */
  readonly spread?: SpreadInput | undefined;
  /** Whether the targets hold for all of the spread; not by default. */
  readonly margin?: boolean | undefined;
  /** A recipe that one of the candidates stays close to: g by ingredient. */
  readonly near?: {readonly [ingredient: string]: number} | undefined;
  /** Quantity to make smallest; the cost where there are prices, unless something else is asked for. */
  readonly minimise?: AimInput<Own> | undefined;
  /** Quantity to make largest; not beside `minimise`. */
  readonly maximise?: AimInput<Own> | undefined;
}

/** An ingredient of a brief with more than its name. */
export interface IngredientInput {
  /** Its name or an alias in the pantry, or a name of its own where `composition` or `label` says what is in it. */
  readonly name: string;
  /** Composition, g per 100 g by part or shorthand, in sum 100. */
  readonly composition?: CompositionInput | undefined;
  /** Figures of its packet, g per 100 g. */
  readonly label?: LabelInput | undefined;
  /** Further names, at most 20. */
  readonly aliases?: readonly string[] | undefined;
  /** Money per kg, at least 0. */
  readonly price?: number | undefined;
  /** Mass there is, g, at least 0: no more is taken. */
  readonly stock?: number | undefined;
  /** Mass of one whole unit such as an egg, g, above 0: it is taken in whole ones. */
  readonly unit?: number | undefined;
  /** Density near 20 °C, g/ml, above 0. */
  readonly density?: number | undefined;
  /** Masses of named portions, g, each above 0, e.g. `{tablespoon: 15}`. */
  readonly portions?: {readonly [name: string]: number} | undefined;
  /** Of the 14 allergens of Regulation (EU) 1169/2011, Annex II. */
  readonly allergens?: readonly Allergen[] | undefined;
  /** Nutrients that no composition tells, per 100 g, in the units of `NUTRIENTS`; what is absent is unknown. */
  readonly nutrients?: {readonly [Key in SaidNutrient]?: number | undefined} | undefined;
  /** Any further number per 100 g, e.g. `{co2: 310}`. */
  readonly properties?: {readonly [name: string]: number} | undefined;
  /** Group on the shelf, e.g. `dairy`, `sugar`, `fruit`. */
  readonly group?: string | undefined;
  /** Trust that the composition deserves. */
  readonly grade?: Grade | undefined;
  /** Source of the composition. */
  readonly source?: string | undefined;
  /** At least so much, g per batch, or a share of the batch as `"20 %"`; 0 by default. */
  readonly min?: number | string | undefined;
  /** At most so much, g per batch, or a share of the batch as `"20 %"`, and no more than the stock. */
  readonly max?: number | string | undefined;
  /** Whole multiples of this only, g, above 0; not beside `unit`. */
  readonly step?: number | undefined;
  /** Mass of a pack as it is bought, g, above 0. */
  readonly pack?: number | undefined;
  /** None, or at least so much, g per batch, above 0, or a share of the batch as `"2 %"`. */
  readonly minIfUsed?: number | string | undefined;
  /** Used only beside at least `min` of another ingredient of the brief: g per batch, or a share of the batch as `"2 %"`. */
  readonly onlyWith?: {readonly ingredient: string; readonly min: number | string} | undefined;
  /** Used at `grams` g per g of another ingredient of the brief. */
  readonly ratio?: {readonly to: string; readonly grams: number} | undefined;
}

/** A composition as it is written: g per 100 g by part or shorthand; `dextroseEquivalent` from 5 to 100. */
export type CompositionInput = {
  readonly [Key in Part | "msnf" | "wheySolids" | "fat" | "dextroseEquivalent"]?: number | undefined;
};

/** A nutrition label as it is written, g per 100 g, with the class to read it by. */
export interface LabelInput {
  /** The class of ingredients that it is read by. */
  readonly class: IngredientClass;
  readonly fat: number;
  readonly saturates?: number | undefined;
  readonly carbohydrate: number;
  readonly sugars: number;
  readonly protein: number;
  readonly salt: number;
  readonly fibre?: number | undefined;
  readonly polyols?: number | undefined;
  readonly alcohol?: number | undefined;
  readonly water?: number | undefined;
  /** kJ per 100 g: only to check the other figures. */
  readonly kilojoules?: number | undefined;
  /** kcal per 100 g, likewise. */
  readonly kilocalories?: number | undefined;
}

/**
 * Targets by the name of what they limit. Quantities: g per 100 g (`sweetness`: sucrose = 100); nutrients and energy:
 * per 100 g in the unit of `NUTRIENTS`, of ingredients that all say how much they have; `cost`: money per kg; temperatures:
 * °C, -40 to -0.01; properties of one's own: per 100 g. What is limited at a temperature has a list, in g per 100 g (`ice`,
 * `hardPhase`), and what is limited between two likewise (`heatShock`).
 */
export type TargetsInput<Own extends string = never> = {
  readonly [Name in Quantity | NutrientKey | KeyWritten<"limits" | "temperature">]?: LimitsInput | undefined;
} & {readonly [Name in KeyWritten<"at">]?: readonly AtInput[] | undefined} & {
  readonly [Name in KeyWritten<"swing">]?: readonly SwingInput[] | undefined;
} & {readonly [Name in Declared<Own>]?: LimitsInput | readonly AtInput[] | readonly SwingInput[] | undefined};

/** Aim of a brief, to be made smallest or largest: a quantity, the cost, a property of one's own, or ice and the like at a temperature in °C. */
export type AimInput<Own extends string = never> =
  | Quantity
  | NutrientKey
  | KeyWritten<"limits">
  | Declared<Own>
  | {[Name in KeyWritten<"at">]: {readonly [Key in Name]: {readonly at: number}}}[KeyWritten<"at">]
  | {
      [Name in KeyWritten<"swing">]: {readonly [Key in Name]: {readonly from: number; readonly to: number}};
    }[KeyWritten<"swing">];

/** Names that a type declares, never ones that are guessed from what is written: those may be typing errors. */
type Declared<Own extends string> = [Own][Own extends string ? 0 : never];

/** Lower and upper limit of a target, or one value to be met. */
export interface LimitsInput {
  /** At least this. */
  readonly min?: number | undefined;
  /** At most this. */
  readonly max?: number | undefined;
  /** Exactly this; not beside `min` and `max`. */
  readonly equal?: number | undefined;
}

/** A target at a temperature. */
export interface AtInput extends LimitsInput {
  /** °C, -40 to -0.01. */
  readonly at: number;
}

/** A target between two temperatures. */
export interface SwingInput extends LimitsInput {
  /** °C, -40 to -0.01. */
  readonly from: number;
  /** °C, -40 to -0.01. */
  readonly to: number;
}

/** Errors of a kitchen, as a brief or a command states them. */
export interface SpreadInput {
  /** By ingredient, how far each part may lie from its stated value either way, g per 100 g. Water takes up the difference. */
  readonly parts?:
    | {readonly [ingredient: string]: {readonly [Name in Part]?: number | undefined}}
    | undefined;
  /** Error of each weighing either way, g, at least 0. */
  readonly weighing?: number | undefined;
}
