import type {Nutrients} from "./nutrient-keys.ts";
import type {Composition} from "./parts.ts";

/** Grades of trust in a composition, best first. */
export const GRADES = ["measured", "compiled", "label", "calculated", "estimated", "from memory"] as const;

/** Grade of a composition's source. */
export type Grade = (typeof GRADES)[number];

/** The 14 allergens of Regulation (EU) 1169/2011, Annex II, in plain words. */
export const ALLERGENS = [
  "gluten",
  "crustaceans",
  "eggs",
  "fish",
  "peanuts",
  "soya",
  "milk",
  "nuts",
  "celery",
  "mustard",
  "sesame",
  "sulphites",
  "lupin",
  "molluscs",
] as const;

/** One of the 14 allergens. */
export type Allergen = (typeof ALLERGENS)[number];

/** Something that goes into a mix. */
export interface Ingredient {
  readonly name: string;
  /** Other names that a cook would type. */
  readonly aliases?: readonly string[];
  /** g of each part per 100 g, summing to 100 within 0.5. */
  readonly composition: Composition;
  /** Money per kg; absent when unknown (never 0 by default). */
  readonly price?: number;
  /** Mass there is on the shelf, g; absent when unknown. */
  readonly stock?: number;
  /** Mass of one whole unit (an egg, a sachet), g. */
  readonly unit?: number;
  /** Density near 20 °C, g/ml. */
  readonly density?: number;
  /** Masses of named portions, g, e.g. `{tablespoon: 15}`. */
  readonly portions?: Readonly<Record<string, number>>;
  readonly allergens?: readonly Allergen[];
  /** Nutrients that no composition tells, per 100 g: g, mg or µg as `NUTRIENTS` has it. Absent is unknown, 0 is none. */
  readonly nutrients?: Nutrients;
  /** Any further number per 100 g, e.g. `{co2: 310}`. */
  readonly properties?: Readonly<Record<string, number>>;
  /** Group on the shelf, e.g. `dairy`, `sugar`, `fruit`. */
  readonly group?: string;
  readonly grade?: Grade;
  /** Key into `datasets/sources.csv`. */
  readonly source?: string;
}
