import {baseProcess} from "../kitchen/base-process.ts";
import {type BatchSheet, batchSheet} from "../kitchen/batch-sheet.ts";
import {furtherSteps, usualAfter} from "../kitchen/further-steps.ts";
import {baseComponent, makeProduct} from "../kitchen/product.ts";
import {type Recipe, recipeMass} from "../pantry/recipe.ts";
import {numberOf, type Options, wayOf} from "./arguments.ts";

/**
 * The batch sheet of a recipe that is all base, as the options want it, from the first step to the freezer. It says the cost where a
 * price list was given or every price is known.
 *
 * @throws InputError for `--grams` that is no number from 1 to 10 000 000, `--overrun` none from 0 to 200 and an unknown `--way`
 */
export function recipeSheet(recipe: Recipe, options: Options): BatchSheet {
  const grams = options.grams === undefined ? recipeMass(recipe) : numberOf("--grams", options.grams, 1, 1e7);
  const base = baseComponent(recipe);
  const product = makeProduct(recipe.name, [base]);
  return batchSheet(
    product,
    {grams},
    {
      ...(options.overrun !== undefined && {overrun: numberOf("--overrun", options.overrun, 0, 200)}),
      cost:
        options.prices !== undefined || recipe.lines.every(({ingredient}) => ingredient.price !== undefined),
      process: baseProcess(recipe.lines, {way: wayOf(options.way)}),
      furtherSteps: furtherSteps(product, usualAfter(base.composition)),
    },
  );
}
