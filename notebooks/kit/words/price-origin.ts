import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";

/**
 * Ingredients whose price is the demonstration's, not the cook's: those that have a price which nobody typed. Each is named once.
 *
 * @param used what the sum of money is made of
 * @param own names whose price the cook gave, per kg or for a pack
 */
export function inventedPrices(
  used: readonly Pick<Ingredient, "name" | "price">[],
  own: {readonly has: (name: string) => boolean},
): string[] {
  const invented = used.filter(({name, price}) => price !== undefined && !own.has(name));
  return [...new Set(invented.map(({name}) => name))];
}

/** So many names are told; more are counted. */
const NAMED = 3;

/**
 * Words for the same sentence as a sum that rests on such prices, to follow a comma or stand in brackets: `at invented prices of
 * sugar and milk`. Empty where every price is the cook's own.
 *
 * @param of how many ingredients there are in all
 */
export function inventedWords(invented: readonly string[], of: number): string {
  if (!invented.length) return "";
  if (invented.length >= of) return "at invented prices, none of them yours";
  const named = invented.length > NAMED ? [`${invented.length} of ${of} ingredients`] : invented;
  const [last, ...others] = named.toReversed();
  return `at invented prices of ${others.length ? `${others.toReversed().join(", ")} and ` : ""}${last}`;
}

/** A recipe to be saved or taken to another page, with those prices alone that are the cook's own. */
export function withOwnPrices(recipe: Recipe, own: {readonly has: (name: string) => boolean}): Recipe {
  return {
    ...recipe,
    lines: recipe.lines.map((line) => {
      const {price: _, ...rest} = line.ingredient;
      return own.has(rest.name) ? line : {...line, ingredient: rest};
    }),
  };
}
