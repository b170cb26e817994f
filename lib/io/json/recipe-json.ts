import {expectRecipe} from "../../pantry/recipe.ts";
import * as z from "zod/mini";
import {InputError} from "../../core/errors.ts";
import {parse} from "../../core/schema.ts";
import {gramsOf} from "../../kitchen/size/measures.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {ingredientSchema} from "../../pantry/ingredient-schema.ts";
import {findIngredient, type Pantry} from "../../pantry/pantry.ts";
import type {Recipe} from "../../pantry/recipe.ts";
import {checked, INGREDIENT_KEYS} from "./ingredient-json.ts";
import {parseJson} from "./json.ts";
import {LONGEST_NAME} from "../text/limits.ts";

const text = () => z.string().check(z.minLength(1), z.maxLength(LONGEST_NAME));

/** Most lines of a recipe. */
const MOST_LINES = 2000;

const lineSchema = z.strictObject({
  ...ingredientSchema.shape,
  grams: z.optional(z.number().check(z.gte(0), z.lte(1e9))),
  measure: z.optional(text()),
});

/** A recipe as JSON: the one source of its type, its reader and its JSON Schema. */
export const recipeSchema = z.strictObject({
  $schema: z.optional(z.string()),
  name: text(),
  overrun: z.optional(z.number().check(z.gte(0), z.lte(200))),
  ingredients: z.array(lineSchema).check(z.minLength(1), z.maxLength(MOST_LINES)),
});

/**
 * A recipe as a cook writes it: each line names an ingredient of the pantry, or one with a `composition` or `label` of its own, and
 * says how much of it in `grams`, or in a kitchen `measure` such as `"2 tablespoons"`. `overrun` is the air beaten in, % of the
 * mix's volume.
 */
export type RecipeInput = z.input<typeof recipeSchema>;

/**
 * A recipe from a JSON text of the shape of {@link RecipeInput}.
 *
 * @param text at most 5 million characters and 2000 lines
 * @param pantry where ingredients without a composition are looked up
 * @param place name of the file, for errors
 * @throws InputError naming the line, its key and value, for anything not understood, unknown or missing
 *
 * @example
 * ```ts
 * const text = '{"name": "syrup", "ingredients": [{"name": "sugar", "grams": 90}]}';
 * (await readRecipeJson(text, includedPantry())).lines[0]?.grams; // => 90
 * ```
 */
export async function readRecipeJson(text: string, pantry: Pantry, place = "recipe"): Promise<Recipe> {
  return readRecipe(parseJson(text, place), pantry, place);
}

/**
 * A recipe from plain data of the shape of {@link RecipeInput}.
 *
 * @throws InputError as {@link readRecipeJson}
 *
 * @example
 * ```ts
 * const written = {
 *   name: "milk ice",
 *   ingredients: [
 *     {name: "milk", measure: "2 cups"},
 *     {name: "sugar", grams: 90},
 *   ],
 * };
 * const recipe = await readRecipe(written, includedPantry());
 * recipe.lines.map(({ingredient, grams}) => `${grams} g ${ingredient.name}`); // => ["488 g whole milk", "90 g sucrose"]
 * ```
 */
export async function readRecipe(input: unknown, pantry: Pantry, place = "recipe"): Promise<Recipe> {
  const {name, overrun, ingredients} = parse(recipeSchema, input, place, [
    ...INGREDIENT_KEYS,
    ...Object.keys(recipeSchema.shape),
    "grams",
    "measure",
  ]);
  const lines: {ingredient: Ingredient; grams: number}[] = [];
  for (const [i, {grams, measure, ...entry}] of ingredients.entries()) {
    const at = `${place}.ingredients[${i}]`;
    const ingredient = ingredientOf(entry, pantry, at);
    lines.push({ingredient, grams: await amountOf(ingredient, grams, measure, at)});
  }
  return {name, lines, ...(overrun !== undefined && {overrun})};
}

/** The ingredient of a line: its own if it gives a composition or a label, otherwise the pantry's with the line's further data. */
function ingredientOf(
  {composition, label, ...rest}: Omit<z.output<typeof lineSchema>, "grams" | "measure">,
  pantry: Pantry,
  at: string,
): Ingredient {
  if (composition !== undefined || label !== undefined) return checked({...rest, composition, label}, at);
  const known = findIngredient(pantry, rest.name, at);
  return {...known, ...(rest as Partial<Ingredient>), name: known.name};
}

/**
 * A recipe as the JSON text that {@link readRecipeJson} reads back to the same, with or without a pantry.
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "sucrose"), grams: 90}];
 * JSON.parse(recipeJson({name: "syrup", lines})).name; // => "syrup"
 * ```
 */
export function recipeJson(recipe: Recipe): string {
  expectRecipe(recipe);
  const ingredients = recipe.lines.map(({ingredient, grams}) => ({...ingredient, grams}));
  const {name, overrun} = recipe;
  return `${JSON.stringify({name, ...(overrun !== undefined && {overrun}), ingredients}, undefined, 2)}\n`;
}

async function amountOf(
  ingredient: Ingredient,
  grams: number | undefined,
  measure: string | undefined,
  at: string,
): Promise<number> {
  if (grams !== undefined && measure !== undefined)
    throw new InputError(`${at}.measure`, "given beside grams", measure, "give either grams or measure");
  if (grams !== undefined) return grams;
  if (measure === undefined)
    throw new InputError(
      `${at} "${ingredient.name}"`,
      "no amount",
      undefined,
      'give "grams", or a "measure" such as "2 tablespoons"',
    );
  return measuredGrams(ingredient, measure, `${at}.measure`);
}

/** Mass of a kitchen measure, g; errors name the place of the measure. */
export async function measuredGrams(ingredient: Ingredient, measure: string, place: string): Promise<number> {
  try {
    return await gramsOf(ingredient, measure);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(place, error.problem, measure, error.advice);
  }
}
