import {InputError} from "../../core/errors.ts";
import {decimalCommaAt, mistakeIn} from "./json-mistake.ts";
import {readable} from "../text/limits.ts";

/** Deepest nesting of lists and objects. */
const DEEPEST = 32;

/** Most values: enough for 5000 ingredients of 80 figures each. */
const MOST_VALUES = 400_000;

/**
 * The value of a JSON text.
 *
 * @param place name of the text in errors, e.g. its file name
 * @throws InputError with line and column for text that is no JSON, longer than 5 million characters, nested more than 32
 *   levels deep, or of more than 400 000 values
 */
export function parseJson(text: string, place: string): unknown {
  const json = readable(text, place);
  refuseHuge(json, place);
  try {
    return JSON.parse(json);
  } catch {
    const at = mistakeIn(json);
    const {line, column} = positionAt(json, at);
    const decimal = decimalCommaAt(json, at);
    throw new InputError(
      `${place}, line ${line}, column ${column}`,
      "not valid JSON",
      excerpt(json.split("\n")[line - 1] ?? "", column - 1) || undefined,
      decimal === undefined
        ? "mend the JSON there: look for a missing comma, quote or bracket"
        : `write a decimal point: ${decimal}`,
    );
  }
}

/** Characters of a line that are shown on either side of a mistake. */
const AROUND = 20;

/** Text around a place in a line. */
function excerpt(line: string, at: number): string {
  const [from, to] = [at - AROUND, at + AROUND];
  const shown = line.slice(Math.max(0, from), to).trim();
  return shown && `${from > 0 ? "…" : ""}${shown}${to < line.trimEnd().length ? "…" : ""}`;
}

function positionAt(text: string, position: number): {line: number; column: number} {
  const before = text.slice(0, position).split("\n");
  return {line: before.length, column: before.at(-1)!.length + 1};
}

/** Refuses a text that would take much memory, before it is parsed: a megabyte of brackets becomes a hundred megabytes of lists. */
function refuseHuge(json: string, place: string): void {
  let [depth, values, inText] = [0, 1, false];
  for (let i = 0; i < json.length; i++) {
    const sign = json[i];
    if (inText) {
      if (sign === "\\") i++;
      else if (sign === '"') inText = false;
    } else if (sign === '"') inText = true;
    else if (sign === "[" || sign === "{") depth++;
    else if (sign === "]" || sign === "}") depth--;
    else if (sign === ",") values++;
    if (depth <= DEEPEST && values <= MOST_VALUES) continue;
    const {line, column} = positionAt(json, i);
    throw new InputError(
      `${place}, line ${line}, column ${column}`,
      depth > DEEPEST ? `nested more than ${DEEPEST} levels deep` : `more than ${MOST_VALUES} values`,
      undefined,
      depth > DEEPEST ? "give plain data" : "split it into smaller files",
    );
  }
}
