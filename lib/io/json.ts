import {InputError} from "../core/errors.ts";
import {readable} from "./limits.ts";

/**
 * The value of a JSON text.
 *
 * @param place what the text is called in errors, e.g. its file name
 * @throws InputError with line and column for text that is no JSON, or longer than 5 million characters
 */
export function parseJson(text: string, place: string): unknown {
  const json = readable(text, place);
  try {
    return JSON.parse(json);
  } catch (error) {
    const {line, column} = positionOf(json, (error as Error).message);
    throw new InputError(
      `${place}, line ${line}, column ${column}`,
      "not valid JSON",
      json.split("\n")[line - 1]?.trim() || undefined,
      "mend the JSON there: look for a missing comma, quote or bracket",
    );
  }
}

/** Engines say where they stopped as a position or not at all (when the text ends too early). */
function positionOf(text: string, message: string): {line: number; column: number} {
  const position = Number(/position (\d+)/.exec(message)?.[1] ?? text.length);
  const before = text.slice(0, position).split("\n");
  return {line: before.length, column: before.at(-1)!.length + 1};
}
