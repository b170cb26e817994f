import {compareRecipes, type Comparison} from "../../../lib/kitchen/reading/compare-recipes.ts";
import {readTypedRecipe} from "../../../lib/io/typed/read-typed.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {type ShownMix, styleOf, type WeighedMix} from "../page/mixes.ts";
import {weighedRecipes} from "../views/weighed.ts";
import {type Attempt, attempt, Mistake, mistakeOf} from "../words/mistakes.ts";
import type {ToCompare} from "./choice.ts";

/** A recipe as it was read, and how many of its lines ask something. */
export interface ReadForComparison {
  readonly recipe: Recipe;
  readonly gaps: number;
}

/** Content of the page: recipes side by side. */
export interface CompareScene {
  readonly comparison: Comparison;
  readonly mixes: readonly ShownMix<WeighedMix>[];
  /** Names of those in which lines are left out. */
  readonly gaps: readonly string[];
}

/** Longest name of a recipe beside a chart, characters. */
const LONGEST = 20;

/** The recipes as they are typed; a mistake where a text cannot be read at all. */
export async function readAll(
  chosen: readonly ToCompare[],
  pantry: Pantry,
): Promise<Attempt<readonly ReadForComparison[]>> {
  try {
    const value = await Promise.all(
      chosen.map(async ({name, text, overrun}, i) => {
        const {recipe, lines} = await readTypedRecipe(text, pantry, {name: name ?? `Recipe ${i + 1}`});
        return {
          recipe: {...recipe, ...(name !== undefined && {name}), ...(overrun !== undefined && {overrun})},
          gaps: lines.filter((line) => "question" in line).length,
        };
      }),
    );
    return {value};
  } catch (error) {
    return {mistake: mistakeOf(error)};
  }
}

/** Differences of the recipes; a mistake where there are not two to compare. */
export function compareScene(
  read: Attempt<readonly ReadForComparison[]>,
  {freezer, overrun}: {readonly freezer: number; readonly overrun: number},
): Attempt<CompareScene> {
  if ("mistake" in read) return read;
  return attempt(() => {
    const filled = read.value.filter(({recipe}) => recipe.lines.some(({grams}) => grams > 0));
    if (filled.length < 2)
      throw new Mistake("There is nothing to compare yet: choose two recipes of the book, or paste two.");
    const comparison = compareRecipes(
      filled.map(({recipe}) => recipe),
      {freezer, overrun},
    );
    const {recipes} = comparison;
    const weighed = weighedRecipes(
      recipes.map(({recipe, scoop, name}) => ({...recipe, name, overrun: scoop.overrun})),
      freezer,
    );
    return {
      comparison,
      mixes: weighed.map((mix, i) => ({mix, label: short(recipes[i]!.name), style: styleOf(i)})),
      gaps: filled.flatMap(({gaps}, i) => (gaps ? [recipes[i]!.name] : [])),
    };
  });
}

function short(name: string): string {
  return name.length > LONGEST ? `${name.slice(0, LONGEST - 1).trimEnd()}…` : name;
}
