import type {Answer} from "../balance/mix/answer.ts";
import type {Brief} from "../balance/brief/brief.ts";
import {recipeOf} from "../balance/mix/recipe-of.ts";
import type {Substitution} from "../balance/substitute/substitution-types.ts";
import {type NutritionPer100, nutritionPer100} from "../kitchen/product/nutrition.ts";
import {baseComponent, makeProduct} from "../kitchen/product/product.ts";
import {type Recipe, recipeMass} from "../pantry/recipe.ts";

/** The nutrition of 100 g of a recipe as mixed, under its key; nothing of one that weighs nothing. */
export function nutritionOfRecipe(recipe: Recipe): {readonly nutrition?: NutritionPer100} {
  if (recipeMass(recipe) <= 0) return {};
  return {nutrition: nutritionPer100(makeProduct(recipe.name, [baseComponent(recipe)]))};
}

/** An answer with what the options asked for and, where there is a mix, the nutrition of 100 g of it. */
export function answerWithNutrition(answer: Answer, brief: Brief, more: object): object {
  return {
    ...answer,
    ...more,
    ...(answer.status === "optimal" && nutritionOfRecipe(recipeOf(brief, answer.amounts))),
  };
}

/** The ways round an ingredient, each with the nutrition of 100 g of what it makes, beside that of the recipe. */
export function waysWithNutrition(result: Substitution, recipe: Recipe): object {
  return {
    ...result,
    ...nutritionOfRecipe(recipe),
    alternatives: result.alternatives.map((one) => ({...one, ...nutritionOfRecipe(one.recipe)})),
  };
}
