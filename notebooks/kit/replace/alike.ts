import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";

/** Names that do not say what they are, with the thing that a cook takes them for: soured cream says it, crème fraîche does not. */
const SAYS_OTHERWISE: readonly (readonly [RegExp, string])[] = [
  [/\bcr[eè]me\b|\bhalf-and-half\b|\bsmetana\b/, "cream"],
  [/\bghee\b|\bbutter oil\b/, "butter"],
  [/\byogh?urt\b/, "yoghurt"],
];

/** The thing that a name is of, without what kind it is: `cream` of `cream 36 %` and `crème fraîche`, `milk` of `whole milk`. */
function thing(name: string): string {
  const words = name
    .normalize("NFC")
    .toLowerCase()
    .replace(/\s*\(.*\)|\s*\d.*$/g, "")
    .trim();
  return SAYS_OTHERWISE.find(([says]) => says.test(words))?.[1] ?? words.split(/\s+/).at(-1) ?? "";
}

/** Ingredients of recipe and shelf that are the same thing as one that is out, and of its group: cream of another fat for cream. */
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
