import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";

/** The thing that a name is of, without what kind it is: `cream` of `cream 36 %`, `milk` of `whole milk`. */
function thing(name: string): string {
  const words = name
    .toLowerCase()
    .replace(/\s*\(.*\)|\s*\d.*$/g, "")
    .trim()
    .split(/\s+/);
  return words.at(-1) ?? "";
}

/** What of recipe and shelf is the same thing as an ingredient that is out, and of its group: cream of another fat for cream. */
export function alikeOf(
  without: readonly string[],
  {lines}: Pick<Recipe, "lines">,
  shelf: readonly Ingredient[],
): string[] {
  const out = lines.flatMap(({ingredient}) => (without.includes(ingredient.name) ? [ingredient] : []));
  const alike = [...lines.map(({ingredient}) => ingredient), ...shelf].filter(({name, group}) =>
    out.some((one) => one.group === group && thing(one.name) === thing(name)),
  );
  return [...new Set(alike.map(({name}) => name))].filter((name) => !without.includes(name));
}
