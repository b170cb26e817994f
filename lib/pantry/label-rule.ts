import type {Part} from "./parts.ts";

/** An estimate, and how far the truth may be from it. */
export type Estimate = readonly [value: number, spread: number];

/** Shares of a label's figure by part, g per g; the values sum to 1. */
export type Split = Readonly<Partial<Record<Part, Estimate>>>;

/** Something that no label gives, g per g of the protein, or of protein, carbohydrate and fibre together (`solids`). */
export interface Guess {
  readonly of: "protein" | "solids";
  readonly share: Estimate;
}

/** Rule of a class of labels: the parts that printed figures become, and values for those that no label gives. */
export interface LabelRule {
  readonly fat: Split;
  readonly protein: Split;
  readonly sugars: Split;
  /** Lactose, g per g of milk protein, taken first from the sugars. None by default. */
  readonly lactose?: Estimate;
  /** Of the carbohydrate that is neither sugars, polyols nor organic acids. */
  readonly rest: Split;
  /** Minerals besides salt, by part. */
  readonly minerals: Readonly<Partial<Record<Part, Guess>>>;
  /** Salt that comes with the minerals and is counted there, g per g of protein. */
  readonly ownSalt: number;
  /** Organic acids, g per 100 g, as far as the carbohydrate that is no sugar goes. None by default. */
  readonly acids?: Estimate;
  /** Fibre where the label leaves it out. None by default. */
  readonly fibre?: Guess;
}
