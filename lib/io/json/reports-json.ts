import * as z from "zod/mini";
import {parse} from "../../core/schema.ts";
import {FOUND, type FirmnessReport} from "../../freezing/calibrate.ts";
import {temperatureAfter} from "../../freezing/tub.ts";
import {type Recipe, recipeComposition} from "../../pantry/recipe.ts";

/** The tub for which minutes on the counter count: a litre, cm, in still air of 20 °C. */
const LITRE = {shape: "box", length: 16, width: 10.5, height: 6} as const;
const ROOM = 20;

/** Most reports of a file. */
const MOST_REPORTS = 1000;

const reportSchema = z.strictObject({
  recipe: z.string().check(z.minLength(1)),
  freezer: z.number().check(z.gte(-40), z.lt(0)),
  minutes: z.optional(z.number().check(z.gte(0), z.lte(600))),
  overrun: z.optional(z.number().check(z.gte(0), z.lte(200))),
  found: z.enum(FOUND),
});

/** Schema of a cook's reports on batches, in a list. */
export const reportsSchema = z.array(reportSchema).check(z.minLength(1), z.maxLength(MOST_REPORTS));

/** A cook's reports on batches as they are written. */
export type ReportsInput = z.input<typeof reportsSchema>;

/**
 * Reports of a cook on batches, for `calibrate`: for each the file of its recipe, the `freezer` that it came from, °C, the `minutes`
 * that a litre tub of it stood at 20 °C, its overrun where that is not the recipe's, and whether it was `too soft`, `right` or `too hard`.
 *
 * @param input `[{"recipe": "mix.csv", "freezer": -18, "found": "too hard"}]`
 * @param recipeIn the recipe that a file holds
 * @param place name of the file, for errors
 * @throws InputError naming the report, its key and value, for anything not understood
 */
export async function readReports(
  input: unknown,
  recipeIn: (file: string) => Promise<Recipe>,
  place = "reports",
): Promise<FirmnessReport[]> {
  const written = parse(reportsSchema, input, place, Object.keys(reportSchema.shape));
  const reports: FirmnessReport[] = [];
  for (const {recipe: file, freezer, minutes = 0, overrun: said, found} of written) {
    const recipe = await recipeIn(file);
    const composition = recipeComposition(recipe);
    const overrun = said ?? recipe.overrun;
    const air = {airTemperature: ROOM, ...(overrun !== undefined && {overrun})};
    const temperature =
      minutes > 0 ? Math.min(0, temperatureAfter(composition, LITRE, {freezer, minutes, ...air})) : freezer;
    reports.push({composition, temperature, found, ...(overrun !== undefined && {overrun})});
  }
  return reports;
}
