import {InputError} from "../core/errors.ts";
import {folded, nearestNames} from "../core/nearest.ts";
import {expectShape, expectText} from "../core/shape.ts";
import {expectIngredients} from "./expect.ts";
import {ingredientFromNumber} from "./from-number.ts";
import type {Ingredient} from "./ingredient.ts";

/** Ingredients on the shelf, ready to be looked up by name. */
export interface Pantry {
  readonly ingredients: readonly Ingredient[];
  /** Ingredient by the key of its name (see `nameKey`). */
  readonly byName: ReadonlyMap<string, Ingredient>;
  /** Ingredients by the key of an alias; more than one makes the alias ambiguous. */
  readonly byAlias: ReadonlyMap<string, readonly Ingredient[]>;
}

/**
 * The form in which names are compared: case, spacing, accents, punctuation and word order do not count, nor whether a
 * letter and a digit are apart.
 */
export function nameKey(name: string): string {
  const spaced = folded(name).replace(/(\p{L})(?=\p{N})|(\p{N})(?=\p{L})/gu, "$1$2 ");
  return spaced.split(" ").sort().join(" ") || name.trim();
}

/**
 * A pantry of ingredients.
 *
 * @throws InputError when two ingredients have the same name but for what `nameKey` forgives, and for one with an unknown part,
 *   nutrient or allergen, with a figure that is no number from 0, or whose parts are not 100 g together, within 0.5 g
 *
 * @example
 * ```ts
 * const pantry = pantryOf([
 *   {name: "our pear purée", composition: {water: 84, fructose: 7, dextrose: 3, sucrose: 2, fibre: 4}},
 * ]);
 * findIngredient(pantry, "our pear puree").composition.water; // => 84
 * ```
 */
export function pantryOf(ingredients: readonly Ingredient[]): Pantry {
  expectIngredients(ingredients, "ingredients", "give a list, e.g. from readPantryCsv");
  const byName = new Map<string, Ingredient>();
  const byAlias = new Map<string, Ingredient[]>();
  for (const ingredient of ingredients) {
    const key = nameKey(ingredient.name);
    const other = byName.get(key);
    if (other) {
      throw new InputError(
        "pantry",
        `two ingredients are called ${JSON.stringify(other.name)}`,
        ingredient.name,
        "give each ingredient a name of its own",
      );
    }
    byName.set(key, ingredient);
    for (const alias of new Set((ingredient.aliases ?? []).map(nameKey))) {
      byAlias.set(alias, [...(byAlias.get(alias) ?? []), ingredient]);
    }
  }
  return {ingredients, byName, byAlias};
}

/** Stands for the pantry where none is given. */
export const NO_PANTRY: Pantry = {ingredients: [], byName: new Map(), byAlias: new Map()};

/**
 * The ingredient of that name or alias, whatever its case, spacing, accents, punctuation and word order. A name goes
 * before an alias. A name that neither has is understood by its number, `cream 45 %` or `dark chocolate 64 %`, where
 * `ingredientFromNumber` has a rule for it and the pantry what that takes; its grade is then `estimated`.
 *
 * @param place where the name stands, for errors, e.g. `ingredients[2]`; `name` by default
 * @throws InputError with the nearest names for an unknown name, with the choice for an ambiguous one
 *
 * @example
 * ```ts
 * findIngredient(includedPantry(), "MILK, whole").name; // => "whole milk"
 * ```
 */
export function findIngredient(pantry: Pantry, name: string, place = "name"): Ingredient {
  expectPantry(pantry);
  expectText(place, "place");
  expectText(name, place, "give the name of an ingredient");
  const [first, ...more] = ingredientsNamed(pantry, name);
  if (!first) throw unknownIngredient(pantry, name, place);
  if (more.length === 0) return first;
  throw new InputError(
    place,
    "ambiguous ingredient",
    name,
    `say which: ${alternatives([first, ...more].map((ingredient) => ingredient.name))}`,
  );
}

/** All that a name means to {@link findIngredient}: one, those that share an alias, or none. */
export function ingredientsNamed(pantry: Pantry, name: string): readonly Ingredient[] {
  const key = nameKey(name);
  const named = pantry.byName.get(key);
  if (named) return [named];
  const shared = pantry.byAlias.get(key);
  if (shared) return shared;
  const made = numbered(pantry, name);
  return made ? [made] : [];
}

/** Ingredient that a name describes by its number, made of the pantry's own: see `ingredientFromNumber`. */
function numbered(pantry: Pantry, name: string): Ingredient | undefined {
  const lookUp = (known: string) => {
    const key = nameKey(known);
    const [alias, another] = pantry.byAlias.get(key) ?? [];
    return pantry.byName.get(key) ?? (another ? undefined : alias);
  };
  const made = ingredientFromNumber(name, lookUp);
  return made && (pantry.byName.get(nameKey(made.ingredient.name)) ?? made.ingredient);
}

/** True where an ingredient goes by a name, its own or another one that a cook would type, compared as {@link nameKey} does. */
export function goesBy({name, aliases = []}: Ingredient, wanted: string): boolean {
  const key = nameKey(wanted);
  return [name, ...aliases].some((known) => nameKey(known) === key);
}

function unknownIngredient(pantry: Pantry, name: string, place: string): InputError {
  const owners = new Map<string, string>();
  for (const ingredient of pantry.ingredients) {
    for (const known of [...(ingredient.aliases ?? []), ingredient.name]) owners.set(known, ingredient.name);
  }
  const near = nearestNames(name, owners.keys(), 8).map((known) => owners.get(known) ?? known);
  const names = [...new Set(near)].slice(0, 3);
  return new InputError(
    place,
    "unknown ingredient",
    name,
    pantry === NO_PANTRY
      ? "no pantry is given to find it in: give {pantry: includedPantry()} as options, or the brief as readBrief(brief, includedPantry()) reads it, or its composition or label beside its name"
      : `${names.length ? `did you mean ${alternatives(names)}? If not, ` : ""}add it to the pantry, or give its composition or label beside its name in a JSON file`,
    {code: "unknown name"},
  );
}

function alternatives(names: readonly string[]): string {
  return names.map((name) => JSON.stringify(name)).join(" or ");
}

/** Refuses anything but a pantry. */
export function expectPantry(value: Pantry): void {
  expectShape(
    value,
    {ingredients: "list", byName: "map", byAlias: "map"},
    "pantry",
    "make it with pantryOf(ingredients)",
  );
}
