import type {BriefInput, IngredientInput} from "../../../lib/balance/brief/brief-schema.ts";
import {isFlavour} from "../../../lib/pantry/flavour-groups.ts";
import {type Quantity, quantityOf} from "../../../lib/pantry/quantities.ts";
import {type Recipe, recipeComposition, recipeMass} from "../../../lib/pantry/recipe.ts";
import {eachOnce} from "../words/load-recipe.ts";

/** Largest differences of a mix made from a recipe from that recipe, g per 100 g. */
const ROOM: readonly (readonly [Quantity, number])[] = [
  ["fat", 2],
  ["msnf", 2],
  ["totalSolids", 3],
  ["sugars", 3],
  ["sweetness", 3],
];

/** A brief that asks for what a recipe is, give or take; its flavours stay as they are. */
export function briefOf(recipe: Recipe): BriefInput {
  const composition = recipeComposition(recipe);
  return {
    name: recipe.name,
    batch: recipeMass(recipe),
    ingredients: eachOnce(recipe).map(({ingredient, grams}): IngredientInput => {
      const {name, composition: parts, price, allergens, nutrients, properties} = ingredient;
      const fixed = isFlavour(ingredient) ? {min: grams, max: grams} : {};
      return {
        name,
        composition: parts as NonNullable<IngredientInput["composition"]>,
        ...(price !== undefined && {price}),
        ...(allergens && {allergens: [...allergens]}),
        ...(nutrients && {nutrients}),
        ...(properties && {properties}),
        ...fixed,
      };
    }),
    targets: Object.fromEntries(
      ROOM.map(([quantity, room]) => {
        const value = quantityOf(composition, quantity);
        const tenth = (x: number) => Math.round(10 * x) / 10;
        return [quantity, {min: Math.max(0, tenth(value - room)), max: tenth(value + room)}];
      }),
    ),
  };
}
