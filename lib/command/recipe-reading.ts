import {type Change, TOWARDS} from "../balance/change/change-types.ts";
import {staplesIn} from "../balance/explain/staples.ts";
import {suggestChanges} from "../balance/change/suggest-changes.ts";
import {InputError} from "../core/errors.ts";
import type {Learned} from "../freezing/learned.ts";
import {descriptionText} from "../io/report/report-description.ts";
import {describeRecipe} from "../kitchen/reading/describe-recipe.ts";
import type {Pantry} from "../pantry/pantry.ts";
import {nameIn, type Recipe} from "../pantry/recipe.ts";
import {numberOf, type Options, timeOf} from "./arguments.ts";
import {nutritionOfRecipe} from "./with-nutrition.ts";

/** Result of the command `read`. */
export interface RecipeReading {
  /** Text for the screen. */
  readonly screen: string;
  /** The change that `--take` names; absent where there is none. */
  readonly taken?: Change;
}

/**
 * Description of a recipe and the changes that the options ask for. New ingredients come from the
 * price list or, without one, from what nearly every kitchen has.
 *
 * @param known what the kitchen's own reports have taught, and the lines of the text that were left out
 * @throws InputError for `--freezer` that is no number from -40 to -0.01, `--overrun` none from 0 to 200, a `--lock` that is not in the
 *   recipe, an unknown `--take`, and `--take` or `--recipe` without the other
 */
export function recipeReading(
  recipe: Recipe,
  pantry: Pantry,
  options: Options,
  {leftOut = [], ...learned}: {readonly learned?: Learned; readonly leftOut?: readonly string[]} = {},
): RecipeReading {
  const {take, lock = []} = options;
  const towards = take === undefined ? undefined : towardsOf(take);
  if ((take === undefined) !== (options.recipe === undefined))
    throw take === undefined
      ? new InputError("--take", "missing", undefined, `say which change to write, ${TAKES}`)
      : new InputError("--recipe", "missing", undefined, "name the file that the changed recipe goes to");
  const tub = {
    freezer: numberOf("--freezer", options.freezer ?? "-18", -40, -0.01),
    ...(options.overrun !== undefined && {overrun: numberOf("--overrun", options.overrun, 0, 200)}),
    ...learned,
  };
  const locked = lock.map((name) => nameIn(recipe, name, "--lock"));
  const shelf =
    options.prices === undefined
      ? staplesIn(pantry)
      : pantry.ingredients.filter(({price}) => price !== undefined);
  const description = describeRecipe(recipe, tub);
  const changes = suggestChanges(recipe, {...tub, from: shelf, locked, deadline: timeOf(options)});
  const taken = changes.changes.find((change) => change.towards === towards);
  const {before: _, ...found} = changes;
  return {
    screen: options.json
      ? JSON.stringify({...description, leftOut, ...found, ...nutritionOfRecipe(recipe)})
      : descriptionText(description, changes, {...learned, leftOut}).trimEnd(),
    ...(taken && {taken}),
  };
}

const TAKES = TOWARDS.map((one) => (one.includes(" ") ? `"${one}"` : one)).join(", ");

function towardsOf(take: string): Change["towards"] {
  const known = TOWARDS.find((one) => one === take.trim().toLowerCase());
  if (known) return known;
  throw new InputError("--take", "unknown change", take, `use ${TAKES}`);
}
