import type {Amount} from "../../../lib/balance/mix/answer.ts";
import type {Brief} from "../../../lib/balance/brief/brief.ts";
import {openBrief} from "../../../lib/balance/brief/checked.ts";
import {mixOf, reportOf} from "../../../lib/balance/mix/mix-report.ts";
import {USUAL_OVERRUN} from "../../../lib/freezing/firmness.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {type Recipe, recipeMass} from "../../../lib/pantry/recipe.ts";
import type {WeighedMix} from "../page/mixes.ts";

/** Recipes as the charts and tables show mixes: each with the ingredients of all, in the order of first use. */
export function weighedRecipes(recipes: readonly Recipe[], freezer: number): WeighedMix[] {
  const ingredients = [
    ...new Map(
      recipes.flatMap(({lines}) => lines.map(({ingredient}) => [ingredient.name, ingredient])),
    ).values(),
  ];
  return recipes.map((recipe) => {
    const {name, overrun = USUAL_OVERRUN} = recipe;
    const batch = recipeMass(recipe);
    const shares = ingredients.map(
      ({name}) =>
        recipeMass({...recipe, lines: recipe.lines.filter((line) => line.ingredient.name === name)}) / batch,
    );
    return weighedShares(openBrief(ingredients, {name, batch, freezer, overrun}), shares);
  });
}

/** A mix of a brief's ingredients, from the share of the batch of each. */
export function weighedShares(brief: Brief, shares: readonly number[]): WeighedMix {
  return {batch: brief.batch, ...reportOf(mixOf(brief, shares))};
}

/** Recipe of a mix. */
export function recipeOf(
  name: string,
  amounts: readonly Amount[],
  ingredients: readonly Ingredient[],
): Recipe {
  const known = new Map(ingredients.map((ingredient) => [ingredient.name, ingredient]));
  return {
    name,
    lines: amounts.flatMap(({ingredient, grams, percent}) =>
      percent > 1e-4 ? [{ingredient: known.get(ingredient)!, grams}] : [],
    ),
  };
}
