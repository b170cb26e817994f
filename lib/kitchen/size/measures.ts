import {expectText} from "../../core/shape.ts";
import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {inUnit, kitchenUnit, type Measure, readMeasure} from "../../core/units.ts";
import {expectIngredient} from "../../pantry/expect.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";

/** An amount in a kitchen measure. */
export interface KitchenMeasure {
  readonly amount: number;
  /** A unit of volume or mass, a named portion of the ingredient, or `whole` for whole units such as eggs. */
  readonly unit: string;
}

/** Units of volume offered besides grams; spoons are metric, cup and fluid ounce those of the United States. */
const VOLUMES = ["ml", "teaspoon", "tablespoon", "cup", "fluid ounce"] as const;

/** Possible masses of a whole egg or yolk, g: from a quail's yolk to a goose's egg. */
const EGG = {min: 3, max: 250};

/**
 * Mass of a kitchen measure of an ingredient, g: `"2 tablespoons"`, `"1 1/2 cups"`, `"250 ml"`, `"3 oz"`, `"4 eggs"`, `"4"`.
 *
 * A portion that the ingredient itself names (`{cup: 125}`) comes before its density, because a cup of flour or berries
 * is mostly gaps. Spoons of 5 and 15 ml, the cup and fluid ounce of the United States: see {@link readMeasure}.
 *
 * @param ingredient with `density` (g/ml), `portions` (g) or `unit` (g), as the measure needs
 * @param text number and unit, or number of whole units
 * @throws InputError for a text that is no measure, a volume of an ingredient without a density, a unit without a mass, or
 *   an egg of an impossible mass
 *
 * @example
 * ```ts
 * await gramsOf(findIngredient(includedPantry(), "whole milk"), "2 cups"); // => 488
 * ```
 */
export async function gramsOf(ingredient: Ingredient, text: string): Promise<number> {
  expectIngredient(ingredient);
  const place = `${ingredient.name}: ${expectText(text, "text", 'give a kitchen measure, e.g. "2 tablespoons"')}`;
  const measure = await readMeasure(text, place);
  if (measure.kind === "mass") return measure.grams;
  const portion = ingredient.portions?.[portionNamed(ingredient, measure.of) ?? ""];
  if (portion !== undefined) {
    return (
      measure.count *
      finite(portion, `${ingredient.name}: portions.${measure.of}`, {min: 0.01, max: 1e5}, "g")
    );
  }
  if (measure.kind === "volume") return measure.millilitres * (await densityOf(ingredient, measure));
  return measure.count * wholeUnit(ingredient, measure.of);
}

/**
 * So many grams of an ingredient in every kitchen measure that is known for it: whole units, its own portions, volumes.
 *
 * @param ingredient as for {@link gramsOf}
 * @param grams mass, g; at least 0
 * @returns an empty list when the ingredient has neither unit, portions nor density
 * @throws InputError for negative grams or an impossible unit mass
 *
 * @example
 * ```ts
 * await measuresOf({name: "syrup", composition: {water: 40, sucrose: 60}, density: 1.29}, 100); // => [{amount: 77.5, unit: "ml"}, {amount: 15.5, unit: "teaspoon"}, {amount: 5.2, unit: "tablespoon"}, {amount: 0.3, unit: "cup"}, {amount: 2.6, unit: "fluid ounce"}]
 * ```
 */
export async function measuresOf(ingredient: Ingredient, grams: number): Promise<KitchenMeasure[]> {
  expectIngredient(ingredient);
  finite(grams, `${ingredient.name}: grams`, {min: 0}, "g");
  const found: KitchenMeasure[] = [];
  if (ingredient.unit !== undefined) found.push({amount: grams / wholeUnit(ingredient, ""), unit: "whole"});
  for (const [unit, mass] of Object.entries(ingredient.portions ?? {}))
    found.push({amount: grams / mass, unit});
  if (ingredient.density !== undefined) {
    for (const unit of VOLUMES) {
      if (portionNamed(ingredient, unit) !== undefined) continue;
      found.push({amount: await inUnit({millilitres: grams / ingredient.density}, unit), unit});
    }
  }
  return found;
}

async function densityOf(ingredient: Ingredient, measure: Measure): Promise<number> {
  if (ingredient.density !== undefined) {
    return finite(ingredient.density, `${ingredient.name}: density`, {min: 0.05, max: 3}, "g/ml");
  }
  for (const [name, grams] of Object.entries(ingredient.portions ?? {})) {
    const portion = await readMeasure(`1 ${name}`, `${ingredient.name}: portions.${name}`);
    if (portion.kind === "volume") return grams / portion.millilitres;
  }
  const known = Object.keys(ingredient.portions ?? {});
  throw new InputError(
    `${ingredient.name}: ${measure.count} ${measure.of}`,
    "density unknown",
    undefined,
    `${known.length ? `use ${known.join(", ")}, or ` : ""}give its density in g/ml, or the mass of one ${measure.of} as a portion, or weigh it`,
  );
}

function wholeUnit(ingredient: Ingredient, of: string): number {
  const named = of === "" || ingredient.name.toLowerCase().includes(singular(of)) || singular(of) === "whole";
  if (ingredient.unit === undefined || !named) {
    const known = Object.keys(ingredient.portions ?? {});
    if (ingredient.unit !== undefined) known.unshift(`a number alone for whole ones of ${ingredient.unit} g`);
    throw new InputError(
      `${ingredient.name}: ${of || "whole units"}`,
      "mass unknown",
      undefined,
      known.length
        ? `use ${known.join(", ")}, or grams`
        : "give the mass of one as the ingredient's unit, or use grams",
    );
  }
  const egg = ingredient.group === "egg" || /\begg/i.test(ingredient.name);
  return finite(ingredient.unit, `${ingredient.name}: unit`, egg ? EGG : {min: 0.01, max: 1e5}, "g");
}

/** The ingredient's own name for a portion, in any case and number: `large` for "large eggs", `tbsp` for "tablespoons". */
function portionNamed(ingredient: Ingredient, word: string): string | undefined {
  const wanted = plain(word);
  return Object.keys(ingredient.portions ?? {}).find(
    (name) => plain(name) === wanted || wanted.startsWith(`${plain(name)} `),
  );
}

function plain(word: string): string {
  return kitchenUnit(word) ?? singular(word);
}

function singular(word: string): string {
  return word.toLowerCase().trim().replace(/s$/, "");
}
