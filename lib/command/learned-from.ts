import {dirname, resolve} from "node:path";
import {calibrate} from "../freezing/calibrate.ts";
import type {Learned} from "../freezing/learned.ts";
import {readRecipeCsv} from "../io/csv/recipe-csv.ts";
import {parseJson} from "../io/json/json.ts";
import {readRecipe} from "../io/json/recipe-json.ts";
import {readReports} from "../io/json/reports-json.ts";
import type {Pantry} from "../pantry/pantry.ts";
import type {Options} from "./arguments.ts";

/**
 * Calibration by the kitchen's own reports, where `--learned` names their file. Their recipes are looked for beside it.
 *
 * @param read the text of a file
 * @throws InputError for a file that cannot be read, and for reports or recipes that are not understood
 */
export async function learnedFrom(
  {learned: file}: Options,
  pantry: Pantry,
  read: (path: string) => string,
): Promise<{readonly learned?: Learned}> {
  if (file === undefined) return {};
  const recipeIn = async (name: string) => {
    const text = read(resolve(dirname(file), name));
    return /^\s*[{[]/.test(text)
      ? readRecipe(parseJson(text, name), pantry, name)
      : readRecipeCsv(text, pantry, name);
  };
  return {learned: calibrate(await readReports(parseJson(read(file), file), recipeIn, file))};
}

/** A brief as it is written, its own `learned` replaced by that of the reports. */
export function withLearned(input: unknown, learned: {readonly learned?: Learned}): unknown {
  return typeof input === "object" && input !== null && !Array.isArray(input)
    ? {...input, ...learned}
    : input;
}
