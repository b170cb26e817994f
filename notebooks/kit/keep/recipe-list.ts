import type {KeptRecipe} from "./kept-recipe.ts";

/** A recipe of the storage that cannot be read, and why; it is left as it is. */
export interface BrokenRecipe {
  /** Key of the drawer. */
  readonly key: string;
  readonly name: string;
  readonly why: string;
  /** Content of the entry, whatever it is. */
  readonly value: unknown;
}

/** All that is in the book. */
export interface RecipeList {
  /** The latest changed first. */
  readonly recipes: readonly KeptRecipe[];
  /** The latest deleted first; none longer ago than 30 days. */
  readonly deleted: readonly KeptRecipe[];
  readonly broken: readonly BrokenRecipe[];
}

/** A list in which some recipes have changed, without reading the whole book again. */
export function withChanged(
  {recipes, deleted, broken}: RecipeList,
  changed: readonly KeptRecipe[],
): RecipeList {
  const ids = new Set(changed.map((one) => one.id));
  const others = [...recipes, ...deleted].filter((one) => !ids.has(one.id));
  const all = [...others, ...changed];
  return {
    ...sorted(
      all.filter((one) => one.deleted === undefined),
      all.filter((one) => one.deleted !== undefined),
    ),
    broken,
  };
}

/** Recipes and deleted ones, each the latest first. */
export function sorted(
  recipes: readonly KeptRecipe[],
  deleted: readonly KeptRecipe[],
): Omit<RecipeList, "broken"> {
  return {
    recipes: [...recipes].sort((a, b) => later(a.changed, b.changed)),
    deleted: [...deleted].sort((a, b) => later(a.deleted!, b.deleted!)),
  };
}

function later(a: string, b: string): number {
  return Date.parse(b) - Date.parse(a);
}
