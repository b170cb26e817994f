import {describeRecipe, type RecipeDescription} from "../../../lib/kitchen/reading/describe-recipe.ts";
import type {Change, Changes} from "../../../lib/balance/change/change-types.ts";
import {staplesIn} from "../../../lib/balance/explain/staples.ts";
import {readTypedRecipe, type TypedRecipe} from "../../../lib/io/typed/read-typed.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import {type ShownMix, styleOf, type WeighedMix} from "../page/mixes.ts";
import {recipeText} from "../words/recipe-text.ts";
import {titled} from "../words/titled.ts";
import {type Attempt, attempt, Mistake, mistakeOf} from "../words/mistakes.ts";
import {weighedRecipes} from "../views/weighed.ts";
import type {ChangeSearch} from "./changes.ts";

/** The cook's choices on the page. */
export interface ReadingWish {
  /** °C. */
  readonly freezer: number;
  /** % */
  readonly overrun: number;
  readonly from: "staples" | "nothing";
  readonly locked: readonly string[];
  readonly search: ChangeSearch;
}

/** Content of the page for a recipe. */
export interface ReadingScene {
  readonly description: RecipeDescription;
  readonly changes: Changes | undefined;
  /** The recipe and each change of it. */
  readonly mixes: readonly ShownMix<WeighedMix>[];
}

/** The typed recipe, or what is amiss with the text as a whole. */
export async function readTyped(text: string, pantry: Pantry): Promise<Attempt<TypedRecipe>> {
  return readTypedRecipe(text, pantry, {name: "My recipe"}).then(
    (value) => ({value}),
    (error: unknown) => ({mistake: mistakeOf(error)}),
  );
}

/** Description and possible changes of the recipe; a mistake where there is nothing to read. */
export function readingScene(
  typed: Attempt<TypedRecipe>,
  {freezer, overrun, from, locked, search}: ReadingWish,
  pantry: Pantry,
): Attempt<ReadingScene> {
  if ("mistake" in typed) return typed;
  const {recipe} = typed.value;
  return attempt(() => {
    if (!recipe.lines.length)
      throw new Mistake("Nothing to read yet: write one ingredient a line, as in “500 g whole milk”.");
    const options = {freezer, overrun};
    const description = describeRecipe(recipe, options);
    const own = new Set(description.recipe.lines.map(({ingredient}) => ingredient.name));
    const asked = {
      ...options,
      from: shelf(from, pantry),
      locked: locked.filter((name) => own.has(name)),
      deadline: LONGEST,
    };
    const key = JSON.stringify([
      description.recipe.lines.map(({ingredient, grams}) => [ingredient.name, ingredient.price, grams]),
      options,
      from,
      locked,
    ]);
    const changes = search.ask(key, recipe, asked);
    const all = [
      {label: "Yours", recipe: description.recipe},
      ...(changes?.changes ?? []).map((change) => ({label: LABELS[change.towards], recipe: change.recipe})),
    ];
    const weighed = weighedRecipes(
      all.map((one) => ({...one.recipe, overrun})),
      freezer,
    );
    const mixes = weighed.map((mix, i) => ({mix, label: all[i]!.label, style: styleOf(i)}));
    return {description, changes, mixes};
  });
}

/** Longest that changes are looked for, ms. */
const LONGEST = 20_000;

const LABELS: Readonly<Record<Change["towards"], string>> = {
  softer: "Softer",
  firmer: "Firmer",
  cheaper: "Cheaper",
  "less sweet": "Less sweet",
};

function shelf(from: ReadingWish["from"], pantry: Pantry): readonly Ingredient[] {
  return from === "nothing" ? [] : staplesIn(pantry);
}

/** The text of a recipe after a change: in grams, with the prices that were written. */
export function changedText({recipe}: Change, typed: TypedRecipe, pantry: Pantry): string {
  const priced = new Set(
    typed.lines.flatMap((line) =>
      "price" in line && line.price !== undefined ? [line.ingredient.name] : [],
    ),
  );
  const lines = recipe.lines.map(({ingredient: {name, price}, grams}) => ({
    ingredient: name,
    grams,
    ...(priced.has(name) && price !== undefined && {price}),
  }));
  return titled(recipe.name, recipeText(lines), pantry);
}
