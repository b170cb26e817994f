import {InputError, show} from "../../lib/core/errors.ts";
import {kitchenUnit} from "../../lib/core/units.ts";
import type {Pack} from "../../lib/kitchen/cost.ts";
import {gramsOf} from "../../lib/kitchen/measures.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import {findIngredient, type Pantry} from "../../lib/pantry/pantry.ts";
import type {RecipeLine} from "../../lib/pantry/recipe.ts";

/** A recipe as a cook types it: its lines, and the packs that some are bought in. */
export interface TypedRecipe {
  readonly lines: readonly RecipeLine[];
  readonly packs: Readonly<Record<string, Pack>>;
}

/** Longest line that is read, characters: a name and what stands around it. */
const LONGEST_LINE = 300;

/** `3 tablespoons of sugar @ 1.20`: amount, words, and what is asked for a kg or for a pack. */
const LINE = /^([\d.,/½⅓⅔¼¾\s]+)(\D.*?)(?:\s*@\s*([\d.]+)(?:\s*(?:\/|for)\s*([\d.]+)\s*(k?g))?)?$/u;

/**
 * Reads a recipe, one ingredient a line: an amount in grams or a kitchen measure, the name, and if wanted a price per kg
 * or for a pack: `3125 g whole milk`, `9 egg yolk`, `2 tablespoons honey @ 9.80`, `600 g cream 40 % @ 6.20 for 1000 g`.
 *
 * @param adapt changes an ingredient before it is weighed, e.g. the mass of one egg
 * @throws InputError naming the line that cannot be read
 */
export async function readRecipeText(
  text: string,
  pantry: Pantry,
  adapt: (ingredient: Ingredient) => Ingredient = (ingredient) => ingredient,
): Promise<TypedRecipe> {
  const lines: RecipeLine[] = [];
  const packs: Record<string, Pack> = {};
  // One blank for any run of them: there is then one way only to match a line, however it is spaced.
  for (const typed of text.split(/[\n\r\u2028\u2029]/).map((line) => line.trim().replace(/\s+/g, " "))) {
    if (!typed) continue;
    if (typed.length > LONGEST_LINE) {
      throw new InputError(
        `${typed.slice(0, 40)}…`,
        `longer than ${LONGEST_LINE} characters`,
        undefined,
        "write one ingredient a line",
      );
    }
    const found = LINE.exec(typed);
    if (!found) {
      throw new InputError(
        typed,
        "not an amount and an ingredient",
        undefined,
        "write it as “500 g whole milk” or “2 egg yolk”",
      );
    }
    const [, amount, words, price, packed, unit] = found as unknown as [string, string, string, ...string[]];
    const [measure, name] = measureFirst(words);
    const shelved = adapt(findIngredient(pantry, name, typed));
    const ingredient = price && !packed ? {...shelved, price: numberOf(price, typed)} : shelved;
    if (price && packed) {
      const grams = numberOf(packed, typed) * (unit === "kg" ? 1000 : 1);
      if (grams === 0) throw new InputError(typed, "a pack of nothing", undefined, "say what one pack holds");
      packs[ingredient.name] = {price: numberOf(price, typed), grams};
    }
    lines.push({ingredient, grams: await gramsOf(ingredient, `${amount.trim()} ${measure}`.trim())});
  }
  return {lines, packs};
}

/** A price, or what a pack holds; `1.2.3` and what no pocket holds are none. */
function numberOf(digits: string, line: string): number {
  const number = Number(digits);
  if (number < 1e9) return number;
  throw new InputError(line, `${show(digits)} is no price or pack`, undefined, "write a number such as 9.80");
}

/** `tablespoons of honey` is a measure and a name; `egg yolk` a name alone. */
function measureFirst(words: string): [measure: string, name: string] {
  const parts = words.trim().split(/\s+/);
  for (const count of [2, 1]) {
    const measure = parts.slice(0, count).join(" ");
    if (parts.length > count && kitchenUnit(measure) !== undefined)
      return [measure, parts.slice(parts[count] === "of" ? count + 1 : count).join(" ")];
  }
  return ["", parts.join(" ")];
}

/** A recipe as text that {@link readRecipeText} reads: whole grams from 100 g, a tenth below. */
export function recipeText(
  amounts: readonly {readonly ingredient: string; readonly grams: number; readonly price?: number}[],
): string {
  return amounts
    .filter(({grams}) => grams >= 0.05)
    .map(
      ({ingredient, grams, price}) =>
        `${Number(grams.toFixed(grams >= 100 ? 0 : 1))} g ${ingredient}${price === undefined ? "" : ` @ ${price}`}`,
    )
    .join("\n");
}
