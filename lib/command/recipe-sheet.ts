import type {BatchSheet} from "../kitchen/day/batch-sheet.ts";
import {madeSheet} from "../kitchen/day/made-sheet.ts";
import {baseComponent, makeProduct} from "../kitchen/product/product.ts";
import type {Learned} from "../freezing/learned.ts";
import {InputError} from "../core/errors.ts";
import {nearestNames} from "../core/nearest.ts";
import {goesBy} from "../pantry/pantry.ts";
import {type Recipe, recipeMass} from "../pantry/recipe.ts";
import {numberOf, type Options, wayOf} from "./arguments.ts";

/**
 * The batch sheet of a recipe that is all base, as the options want it, from the first step to the freezer. It says the cost where a
 * price list was given or every price is known.
 *
 * @param learned what the kitchen's own reports have taught
 * @throws InputError for `--grams` that is no number from 1 to 10 000 000, `--overrun` none from 0 to 200, an unknown `--way`, and
 *   a name of `--heated` or `--late` that is not in the recipe
 */
export function recipeSheet(
  recipe: Recipe,
  options: Options,
  learned: {readonly learned?: Learned} = {},
): BatchSheet {
  const grams = options.grams === undefined ? recipeMass(recipe) : numberOf("--grams", options.grams, 1, 1e7);
  return madeSheet(
    makeProduct(recipe.name, [baseComponent(recipe)]),
    {grams},
    {
      ...learned,
      ...(options.overrun !== undefined && {overrun: numberOf("--overrun", options.overrun, 0, 200)}),
      cost:
        options.prices !== undefined || recipe.lines.every(({ingredient}) => ingredient.price !== undefined),
      making: {
        way: wayOf(options.way),
        heated: namesIn(recipe, "--heated", options.heated),
        late: namesIn(recipe, "--late", options.late),
      },
    },
  );
}

/** Names that an option gives, each of which must be an ingredient's. */
function namesIn({lines}: Recipe, option: string, names: readonly string[] = []): readonly string[] {
  for (const name of names) {
    if (lines.some(({ingredient}) => goesBy(ingredient, name))) continue;
    const known = lines.map(({ingredient}) => ingredient.name);
    const near = nearestNames(name, known);
    throw new InputError(
      option,
      "not in the recipe",
      name,
      near.length ? `did you mean ${near.join(" or ")}` : `use ${known.join(", ")}`,
    );
  }
  return names;
}
