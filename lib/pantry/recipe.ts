import {sum} from "../core/numbers.ts";
import {expectList, expectShape} from "../core/shape.ts";
import type {Ingredient} from "./ingredient.ts";
import {mixComposition} from "./mix.ts";
import {findIngredient, nameKey, type Pantry} from "./pantry.ts";
import type {Composition} from "./parts.ts";

/** One line of a recipe. */
export interface RecipeLine {
  readonly ingredient: Ingredient;
  /** Mass, g. */
  readonly grams: number;
}

/** What goes into a mix, in g. */
export interface Recipe {
  readonly name: string;
  readonly lines: readonly RecipeLine[];
}

/**
 * The full name of an ingredient: the recipe's own, which no pantry need know, or the pantry's.
 *
 * @param place where the name stands, for errors, e.g. `--without`
 * @throws InputError for a name that neither has, or an ambiguous one
 */
export function nameIn({lines}: Recipe, name: string, pantry: Pantry, place: string): string {
  const own = lines.find(({ingredient}) => nameKey(ingredient.name) === nameKey(name));
  return (own?.ingredient ?? findIngredient(pantry, name, place)).name;
}

/** Refuses what is no recipe. */
export function expectRecipe(value: Recipe): void {
  expectShape(
    value,
    {lines: "list"},
    "recipe",
    "give {name, lines: [{ingredient, grams}]}, e.g. from readRecipe",
  );
}

/** Refuses what is no list of recipe lines. */
export function expectLines(value: Recipe["lines"]): void {
  expectList(value, {ingredient: "object", grams: "number"}, "recipe lines", "give a recipe's lines");
}

/** Mass of a recipe, g. */
export function recipeMass(recipe: Recipe): number {
  expectRecipe(recipe);
  return sum(recipe.lines.map((line) => line.grams));
}

/** Composition of a recipe as mixed (nothing boiled off), g per 100 g. */
export function recipeComposition(recipe: Recipe): Composition {
  expectRecipe(recipe);
  return mixComposition(
    recipe.lines.map(({ingredient, grams}) => ({composition: ingredient.composition, mass: grams})),
  );
}
