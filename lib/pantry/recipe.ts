import {InputError} from "../core/errors.ts";
import {nearestNames} from "../core/nearest.ts";
import {finite, sum} from "../core/numbers.ts";
import {expectList, expectShape} from "../core/shape.ts";
import {expectIngredient} from "./expect.ts";
import type {Ingredient} from "./ingredient.ts";
import {blend} from "./mix.ts";
import {findIngredient, nameKey, pantryOf} from "./pantry.ts";
import type {Composition} from "./parts.ts";

/** One line of a recipe. */
export interface RecipeLine {
  readonly ingredient: Ingredient;
  /** Mass, g. */
  readonly grams: number;
}

/** Ingredients of a mix, in g. */
export interface Recipe {
  readonly name: string;
  readonly lines: readonly RecipeLine[];
  /** Air beaten into the mix, % of its volume, 0 to 200; 30, a small batch machine, where it is not said. */
  readonly overrun?: number;
}

/**
 * The full name of an ingredient of a recipe, from its name or an alias.
 *
 * @param place where the name stands, for errors, e.g. `--without`
 * @throws InputError for a name that the recipe does not have, with the nearest of its own, and for an ambiguous one
 */
export function nameIn({lines}: Recipe, name: string, place: string): string {
  const own = pantryOf([...new Map(lines.map(({ingredient}) => [ingredient.name, ingredient])).values()]);
  const key = nameKey(name);
  if (own.byName.has(key) || own.byAlias.has(key)) return findIngredient(own, name, place).name;
  // "cream" is the cream that is there, whatever its fat.
  const names = own.ingredients.map((ingredient) => ingredient.name);
  const words = names.filter((known) => nameKey(known).split(" ").includes(key));
  if (words.length === 1) return words[0]!;
  const near = words.length ? words : nearestNames(name, names);
  throw new InputError(
    place,
    "not in the recipe",
    name,
    near.length
      ? `did you mean ${near.map((known) => JSON.stringify(known)).join(" or ")}`
      : `it has ${names.slice(0, 12).join(", ")}`,
  );
}

/** Refuses anything but a recipe: no name, or lines of another shape. */
export function expectRecipe(value: Recipe): void {
  expectShape(
    value,
    {name: "text", lines: "list"},
    "recipe",
    "give {name, lines: [{ingredient, grams}]}, e.g. from readRecipe",
  );
  expectLines(value.lines);
  if (value.overrun !== undefined) finite(value.overrun, "recipe.overrun", {min: 0, max: 200}, "%");
}

/** Refuses anything but a list of recipe lines, each with an ingredient and g from 0. */
export function expectLines(value: Recipe["lines"]): void {
  expectList(value, {ingredient: "object", grams: "number"}, "recipe lines", "give a recipe's lines");
  for (const {ingredient, grams} of value) {
    expectIngredient(ingredient);
    finite(grams, `${ingredient.name}: grams`, {min: 0}, "g");
  }
}

/**
 * Mass of a recipe, g.
 *
 * @example
 * ```ts
 * const sugar = findIngredient(includedPantry(), "sucrose");
 * recipeMass({name: "syrup", lines: [{ingredient: sugar, grams: 300}]}); // => 300
 * ```
 */
export function recipeMass(recipe: Recipe): number {
  expectRecipe(recipe);
  return sum(recipe.lines.map((line) => line.grams));
}

/**
 * Composition of a recipe as mixed (nothing boiled off), g per 100 g.
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = [
 *   {ingredient: findIngredient(pantry, "water"), grams: 700},
 *   {ingredient: findIngredient(pantry, "sucrose"), grams: 300},
 * ];
 * recipeComposition({name: "syrup", lines}); // => {water: 70, sucrose: 30}
 * ```
 */
export function recipeComposition(recipe: Recipe): Composition {
  expectRecipe(recipe);
  return blend(
    recipe.lines.map(({ingredient, grams}) => ({composition: ingredient.composition, mass: grams})),
  );
}
