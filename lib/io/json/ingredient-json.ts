import type * as z from "zod/mini";
import {InputError} from "../../core/errors.ts";
import {parse} from "../../core/schema.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {expectIngredients} from "../../pantry/expect.ts";
import {compositionSchema, ingredientSchema, labelSchema} from "../../pantry/ingredient-schema.ts";
import type {Nutrients} from "../../pantry/nutrient-keys.ts";
import {ownIngredient, refuseLooseEquivalent} from "../../pantry/own-ingredient.ts";
import {pantryOf} from "../../pantry/pantry.ts";
import {parseJson} from "./json.ts";
import {MOST_ROWS} from "../text/limits.ts";

/** Every key of an ingredient, for suggestions. */
export const INGREDIENT_KEYS: readonly string[] = [
  ...Object.keys(ingredientSchema.shape),
  ...Object.keys(compositionSchema.shape),
  ...Object.keys(labelSchema.shape),
];

/**
 * An ingredient from plain data of the shape of {@link Ingredient}; shorthands of a composition are accepted.
 *
 * @param input anything, typically from JSON
 * @param place its name in errors
 * @throws InputError naming the key, the value and what was expected
 *
 * @example
 * ```ts
 * readIngredient({name: "our cream", composition: {water: 54, milkFat: 40, msnf: 6}}).composition.milkFat; // => 40
 * ```
 */
export function readIngredient(input: unknown, place = "ingredient"): Ingredient {
  refuseLooseEquivalent(input, place);
  return checked(parse(ingredientSchema, input, place, INGREDIENT_KEYS), place);
}

/**
 * Ingredients from a JSON text: a list of objects of the shape of {@link Ingredient}.
 *
 * @param text at most 5 million characters and 5000 ingredients
 * @param place name of the file, for errors
 * @throws InputError naming the entry, its key and value, and two entries of one name
 *
 * @example
 * ```ts
 * readPantryJson('[{"name": "sugar", "composition": {"sucrose": 100}}]')[0]?.name; // => "sugar"
 * ```
 */
export function readPantryJson(text: string, place = "pantry"): Ingredient[] {
  const input = parseJson(text, place);
  if (!Array.isArray(input))
    throw new InputError(place, "not a list", input, 'give a list of ingredients: [{"name": …}, …]');
  if (input.length > MOST_ROWS)
    throw new InputError(place, `more than ${MOST_ROWS} ingredients`, input.length, "split the file");
  const ingredients = input.map((entry, i) => readIngredient(entry, `${place}[${i}]`));
  pantryOf(ingredients);
  return ingredients;
}

/**
 * Ingredients as the JSON text that {@link readPantryJson} reads back to the same.
 *
 * @throws InputError for an ingredient that it would not read back, as `pantryOf`
 *
 * @example
 * ```ts
 * JSON.parse(pantryJson([{name: "sugar", composition: {sucrose: 100}}])); // => [{name: "sugar", composition: {sucrose: 100}}]
 * ```
 */
export function pantryJson(ingredients: readonly Ingredient[]): string {
  expectIngredients(ingredients, "ingredients", "give a pantry's ingredients");
  return `${JSON.stringify(ingredients, undefined, 2)}\n`;
}

/** An ingredient whose JSON has the right shape, with its composition expanded and its sum checked. */
export function checked({label, ...input}: z.output<typeof ingredientSchema>, place: string): Ingredient {
  const own = ownIngredient({...input, label}, place)!;
  const nutrients = {...own.nutrients, ...input.nutrients} as Nutrients;
  return {
    ...(input as Ingredient),
    ...own,
    ...(Object.keys(nutrients).length > 0 && {nutrients}),
    ...(input.grade && {grade: input.grade}),
  };
}
