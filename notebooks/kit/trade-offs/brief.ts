import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import {readBrief} from "../../../lib/balance/read/read-brief.ts";
import {parseJson} from "../../../lib/io/json/json.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {briefOf} from "../views/recipe-brief.ts";
import {isCsv, loadRecipe, type Source} from "../words/load-recipe.ts";
import {type Attempt, attempt} from "../words/mistakes.ts";

/** The brief in a file: one as such, or a recipe, whose own numbers then become the wish. */
export async function loadBrief(
  source: Source,
  pantry: Pantry,
  leftOut: (lines: number) => void = () => undefined,
): Promise<Attempt<BriefInput>> {
  leftOut(0);
  if (source.typed || isCsv(source))
    return briefFrom(await loadRecipe(source, pantry, leftOut), pantry, source.file);
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

/** Properties that every ingredient of a brief is given by the brief itself. */
export function propertiesOf({ingredients}: BriefInput): string[] {
  const each = ingredients.map((entry) => Object.keys((typeof entry !== "string" && entry.properties) || {}));
  return (each[0] ?? []).filter((name) => each.every((names) => names.includes(name)));
}
