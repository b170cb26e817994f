import {expectText} from "../../core/shape.ts";
import {InputError} from "../../core/errors.ts";

/** Longest text that is read, characters. */
export const LONGEST_TEXT = 5_000_000;

/** Most rows of a CSV text, its header included. */
export const MOST_ROWS = 5000;

/** Most columns of a CSV text. */
export const MOST_COLUMNS = 300;

/** Longest cell of a CSV text, characters. */
export const LONGEST_CELL = 10_000;

/** Longest name of an ingredient or a recipe, characters. */
export const LONGEST_NAME = 200;

/** Most entries of a cell with a list: aliases, allergens, portions. */
export const MOST_WORDS = 20;

/**
 * The text itself, if it is not too long to be read.
 *
 * @throws InputError for anything but a text of at most {@link LONGEST_TEXT} characters
 */
export function readable(text: unknown, place: string): string {
  expectText(place, "place", "say what the text is called");
  if (typeof text !== "string") throw new InputError(place, "not a text", text, "give the text of the file");
  if (text.length > LONGEST_TEXT) {
    throw new InputError(
      place,
      `longer than ${LONGEST_TEXT} characters`,
      text.length,
      "split it into smaller files",
    );
  }
  return text.replace(/^\uFEFF/, "");
}
