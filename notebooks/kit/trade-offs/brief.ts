import type {BriefInput, IngredientInput} from "../../../lib/balance/brief/brief-schema.ts";
import {isFlavour} from "../../../lib/pantry/flavour-groups.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {parseJson} from "../../../lib/io/json/json.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import {type Quantity, quantityOf} from "../../../lib/pantry/quantities.ts";
import {type Recipe, recipeComposition, recipeMass} from "../../../lib/pantry/recipe.ts";
import {eachOnce, isCsv, loadRecipe, type Source} from "../words/load-recipe.ts";
import {type Attempt, attempt} from "../words/mistakes.ts";

/** The brief in a file: one as such, or a recipe, whose own numbers then become the wish. */
export async function loadBrief(source: Source, pantry: Pantry): Promise<Attempt<BriefInput>> {
  if (isCsv(source)) return briefFrom(await loadRecipe(source, pantry), pantry, source.file);
  const parsed = attempt(() => parseJson(source.text, source.file));
  if ("mistake" in parsed) return parsed;
  if (isRecipe(parsed.value)) return briefFrom(await loadRecipe(source, pantry), pantry, source.file);
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

function briefFrom(recipe: Attempt<Recipe>, pantry: Pantry, place: string): Attempt<BriefInput> {
  if ("mistake" in recipe) return recipe;
  return attempt(() => {
    const brief = briefOf(recipe.value);
    readBrief(brief, pantry, place);
    return brief;
  });
}

/** Largest differences of a mix made from a recipe from that recipe, g per 100 g. */
const ROOM: readonly (readonly [Quantity, number])[] = [
  ["fat", 2],
  ["msnf", 2],
  ["totalSolids", 3],
  ["sugars", 3],
  ["sweetness", 3],
];

/** A brief that asks for what a recipe is, give or take; its flavours stay as they are. */
function briefOf(recipe: Recipe): BriefInput {
  const composition = recipeComposition(recipe);
  return {
    name: recipe.name,
    batch: recipeMass(recipe),
    ingredients: eachOnce(recipe).map(({ingredient, grams}): IngredientInput => {
      const {name, composition: parts, price, allergens, nutrients, properties} = ingredient;
      const fixed = isFlavour(ingredient) ? {min: grams, max: grams} : {};
      return {
        name,
        composition: parts as NonNullable<IngredientInput["composition"]>,
        ...(price !== undefined && {price}),
        ...(allergens && {allergens: [...allergens]}),
        ...(nutrients && {nutrients}),
        ...(properties && {properties}),
        ...fixed,
      };
    }),
    targets: Object.fromEntries(
      ROOM.map(([quantity, room]) => {
        const value = quantityOf(composition, quantity);
        const tenth = (x: number) => Math.round(10 * x) / 10;
        return [quantity, {min: Math.max(0, tenth(value - room)), max: tenth(value + room)}];
      }),
    ),
  };
}

/** Properties that every ingredient of a brief is given by the brief itself. */
export function propertiesOf({ingredients}: BriefInput): string[] {
  const each = ingredients.map((entry) => Object.keys((typeof entry !== "string" && entry.properties) || {}));
  return (each[0] ?? []).filter((name) => each.every((names) => names.includes(name)));
}
