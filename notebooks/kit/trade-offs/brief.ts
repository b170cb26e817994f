import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {parseJson} from "../../../lib/io/json/json.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {nameKey, type Pantry} from "../../../lib/pantry/pantry.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {briefOf} from "../views/recipe-brief.ts";
import {isCsv, loadRecipe, type Source} from "../words/load-recipe.ts";
import {type Attempt, attempt} from "../words/mistakes.ts";

/** Prices that a kitchen knows. */
interface Prices {
  /** At the prices of the page, and at the cook's where there are. */
  readonly pantry: Pantry;
  readonly foods: Pantry;
  /** Names whose price the cook has set. */
  readonly priced: ReadonlySet<string>;
}

/**
 * The brief in a file: one as such, or a recipe, whose own numbers then become the wish. A recipe has the prices that it says and those
 * of the cook's shelf; where one is missing it has none at all, for an invented one would be taken for the cook's.
 */
export async function loadBrief(
  source: Source,
  kitchen: Prices,
  leftOut: (lines: number) => void = () => undefined,
): Promise<Attempt<BriefInput>> {
  const {pantry, foods} = kitchen;
  leftOut(0);
  if (source.typed || isCsv(source))
    return briefFrom(await loadRecipe(source, foods, leftOut), kitchen, source.file);
  const parsed = attempt(() => parseJson(source.text, source.file));
  if ("mistake" in parsed) return parsed;
  if (isRecipe(parsed.value)) return briefFrom(await loadRecipe(source, foods), kitchen, source.file);
  return attempt(() => {
    readBrief(parsed.value, pantry, source.file);
    // The page has its own shelf.
    const {pantry: _pantry, prices: _prices, $schema: _schema, ...brief} = parsed.value as BriefInput;
    return brief;
  });
}

/** Whether plain data look like a recipe: lines that say how much. */
function isRecipe(data: unknown): boolean {
  const {ingredients} = (data ?? {}) as {ingredients?: unknown};
  return (
    Array.isArray(ingredients) &&
    ingredients.some(
      (line) => typeof line === "object" && line !== null && ("grams" in line || "measure" in line),
    )
  );
}

function briefFrom(recipe: Attempt<Recipe>, kitchen: Prices, place: string): Attempt<BriefInput> {
  if ("mistake" in recipe) return recipe;
  return attempt(() => {
    const brief = briefOf(ownPriced(recipe.value, kitchen));
    readBrief(brief, kitchen.pantry, place);
    return brief;
  });
}

/** A recipe at the cook's own prices: all of them, or none. */
function ownPriced(recipe: Recipe, {pantry, priced}: Prices): Recipe {
  const priceOf = ({name, price}: Ingredient) =>
    price ?? (priced.has(name) ? pantry.byName.get(nameKey(name))?.price : undefined);
  const all = recipe.lines.every(({ingredient}) => priceOf(ingredient) !== undefined);
  return {
    ...recipe,
    lines: recipe.lines.map(({ingredient, grams}) => {
      const {price: _, ...unpriced} = ingredient;
      return {ingredient: all ? {...unpriced, price: priceOf(ingredient)!} : unpriced, grams};
    }),
  };
}

/** Properties that every ingredient of a brief is given by the brief itself. */
export function propertiesOf({ingredients}: BriefInput): string[] {
  const each = ingredients.map((entry) => Object.keys((typeof entry !== "string" && entry.properties) || {}));
  return (each[0] ?? []).filter((name) => each.every((names) => names.includes(name)));
}
