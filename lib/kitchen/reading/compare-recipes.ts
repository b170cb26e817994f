import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {expectOptions} from "../../core/shape.ts";
import type {Allergen} from "../../pantry/ingredient.ts";
import {expectRecipe, type Recipe, type RecipeLine} from "../../pantry/recipe.ts";
import {productAllergens} from "../product/product-allergens.ts";
import {baseComponent, makeProduct} from "../product/product.ts";
import {COMPARED, type ComparedTrait, difference} from "./compared-traits.ts";
import {type DescribeOptions, describeRecipe, type RecipeDescription} from "./describe-recipe.ts";

/** Amounts of an ingredient in each of the compared recipes. */
export interface ComparedAmount {
  readonly ingredient: string;
  /** g in a kilogram of each recipe, in their order; 0 where it has none. */
  readonly perKilogram: readonly number[];
}

/** Differences of recipes. */
export interface Comparison {
  /** Each recipe by itself, under the name that the sentences use. */
  readonly recipes: readonly (RecipeDescription & {readonly name: string})[];
  /** The differences, a sentence each, the most noticed first; empty where there is none that one would notice. */
  readonly differences: readonly string[];
  /** Sentence on the traits that are as good as the same in all; absent where none is. */
  readonly alike?: string;
  /** Ingredients whose amounts differ, the most first. */
  readonly amounts: readonly ComparedAmount[];
  /** Ingredients of which all have the same amount. */
  readonly same: readonly string[];
}

/** Score below which a difference is not noticed, and not mentioned. */
const NOTICED = 0.5;

/** Difference below which amounts count as the same, g per kg. */
const SAME = 0.5;

/** Largest number of recipes that may be compared. */
const MOST = 4;

/**
 * The differences between two to four recipes: in firmness, sweetness, body and cost, in the kind of dessert, in allergens and in
 * ingredients, per kilogram. The most noticed comes first, by the weights of `substitute`. Costs are compared where every price is known.
 *
 * @param options with `freezer`, °C, for all of them, -18 by default, and `overrun`, %, for recipes without their own
 * @throws InputError for fewer than two or more than four recipes, and as `describeRecipe`
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const make = (name: string, sugar: number) => ({
 *   name,
 *   lines: [
 *     {ingredient: findIngredient(pantry, "whole milk"), grams: 850 - sugar},
 *     {ingredient: findIngredient(pantry, "cream 36 %"), grams: 150},
 *     {ingredient: findIngredient(pantry, "sucrose"), grams: sugar},
 *   ],
 * });
 * compareRecipes([make("old", 120), make("new", 160)]).differences[0]; // => "old is firmer: scoops at −7.1 °C, new scoops at −8.9 °C."
 * ```
 */
export function compareRecipes(recipes: readonly Recipe[], options: DescribeOptions = {}): Comparison {
  expectOptions(options, ["freezer", "overrun", "learned"]);
  if (!Array.isArray(recipes))
    throw new InputError("recipes", "not a list", recipes, "give two to four recipes", {code: "wrong type"});
  finite(recipes.length, "recipes.length", {min: 2, max: MOST}, "recipes");
  for (const [i, recipe] of recipes.entries()) {
    expectRecipe(recipe);
    if (!recipe.lines.some((line: RecipeLine) => line.grams > 0))
      throw new InputError(`recipes[${i}]`, "has no ingredients", recipe.name, "give its lines");
  }
  const names = apart(recipes.map(({name}) => name));
  const {overrun, ...rest} = options;
  const described = recipes.map((recipe, i) => ({
    ...describeRecipe(recipe, {
      ...rest,
      ...(recipe.overrun === undefined && overrun !== undefined && {overrun}),
    }),
    name: names[i]!,
  }));
  const traits = COMPARED.map((trait) => ({trait, counts: difference(trait, described)}));
  const told = traits
    .filter(({counts}) => counts !== undefined && counts >= NOTICED)
    .sort((a, b) => b.counts! - a.counts!);
  const alike = traits.filter(
    ({trait, counts}) =>
      counts !== undefined && counts < NOTICED && described.some((one) => trait.value(one)! >= 0.05),
  );
  const amounts = amountsOf(described);
  const differ = ({perKilogram}: ComparedAmount) => Math.max(...perKilogram) - Math.min(...perKilogram);
  return {
    recipes: described,
    differences: [
      ...kinds(described),
      ...told.map(({trait}) => sentence(trait, described)),
      ...allergens(described),
    ],
    ...(alike.length && {alike: `Alike in ${listed(alike.map(({trait}) => trait.name))}.`}),
    amounts: amounts.filter((one) => differ(one) >= SAME).sort((a, b) => differ(b) - differ(a)),
    same: amounts.filter((one) => differ(one) < SAME).map(({ingredient}) => ingredient),
  };
}

type Named = RecipeDescription & {readonly name: string};

/** The same names, with a mark where two are alike. */
function apart(names: readonly string[]): string[] {
  return names.map((name, i) => {
    const before = names.slice(0, i).filter((other) => other === name).length;
    return before ? `${name} (${before + 1})` : name;
  });
}

/** A difference: `A is firmer: …, B ….`, or of more than two from most to least. */
function sentence({value, said, more, most}: ComparedTrait, all: readonly Named[]): string {
  const [first, ...others] = [...all].sort((a, b) => value(b)! - value(a)!);
  const word = others.length > 1 ? `the ${most}` : more;
  return `${first!.name} is ${word}: ${said(first!)}, ${listed(others.map((one) => `${one.name} ${said(one)}`))}.`;
}

function kinds(all: readonly Named[]): string[] {
  if (new Set(all.map(({kind}) => kind.name)).size < 2) return [];
  return [`${listed(all.map(({name, kind}) => `${name} is ${a(kind.name)}`))}.`];
}

/** Sentences on allergens that some of the recipes hold and others do not. */
function allergens(all: readonly Named[]): string[] {
  const held = all.map(({name, recipe}) => ({
    name,
    has: new Set(productAllergens(makeProduct(name, [baseComponent(recipe)]))),
  }));
  const every = [...new Set(held.flatMap(({has}) => [...has]))];
  return every.flatMap((one: Allergen) => {
    const [having, lacking] = [held.filter(({has}) => has.has(one)), held.filter(({has}) => !has.has(one))];
    if (!lacking.length) return [];
    return [
      `${capital(one)}: in ${listed(having.map(({name}) => name))}, not in ${listed(lacking.map(({name}) => name))}.`,
    ];
  });
}

function amountsOf(all: readonly Named[]): ComparedAmount[] {
  const names = [...new Set(all.flatMap(({recipe}) => recipe.lines.map(({ingredient}) => ingredient.name)))];
  return names.map((ingredient) => ({
    ingredient,
    perKilogram: all.map(({recipe, batch}) => {
      const line = recipe.lines.find((one) => one.ingredient.name === ingredient);
      return line ? (1000 * line.grams) / batch : 0;
    }),
  }));
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

function a(noun: string): string {
  return `${/^[aeiou]/.test(noun) ? "an" : "a"} ${noun}`;
}

function capital(word: string): string {
  return `${word[0]!.toUpperCase()}${word.slice(1)}`;
}
