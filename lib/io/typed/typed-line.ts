import type {Pack} from "../../kitchen/product/cost.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";

/** A line of a recipe that counts: its ingredient and its mass. */
export interface CountedLine {
  readonly ingredient: Ingredient;
  /** Mass, g. */
  readonly grams: number;
  /** Name in the cook's words. */
  readonly called: string;
  /** So many whole ones, where the line counts them and the shelf knows the mass of one. */
  readonly whole?: number;
  /** Percent of the recipe, where the line says that and no mass. */
  readonly percent?: number;
  /** Money per kg that the line says. */
  readonly price?: number;
  /** Pack that the line says it is bought in. */
  readonly pack?: Pack;
}

/** Reading of one line of a recipe: nothing is guessed in silence, and nothing is dropped without a word. */
export type TypedLine = {
  /** Line of the text, from 1. */
  readonly line: number;
  /** As it was typed. */
  readonly text: string;
} & (
  | ({readonly status: "understood"} & CountedLine)
  /** Counts, with assumptions. */
  | ({readonly status: "taken"; readonly taken: readonly string[]} & CountedLine)
  /** Could be several things: left out until one is chosen. */
  | {
      readonly status: "which";
      readonly name: string;
      readonly choices: readonly string[];
      readonly question: string;
    }
  /** No such thing on the shelf: left out until it is named otherwise, or added. */
  | {
      readonly status: "unknown";
      readonly name: string;
      readonly near: readonly string[];
      readonly question: string;
    }
  /** Known, but the mass of that amount is not. */
  | {readonly status: "how much"; readonly ingredient: Ingredient; readonly question: string}
  /** No ingredient: a heading, a step of the method, a total. */
  | {readonly status: "skipped"; readonly why: "heading" | "method" | "total" | "note"}
);
