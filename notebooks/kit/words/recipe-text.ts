import {InputError, show} from "../../../lib/core/errors.ts";
import {decimal, grams} from "../../../lib/core/format.ts";
import {kitchenUnit} from "../../../lib/core/units.ts";
import type {Pack} from "../../../lib/kitchen/product/cost.ts";
import {mixDensity} from "../../../lib/kitchen/size/density.ts";
import type {LabelName} from "../../../lib/kitchen/label/label-names.ts";
import {gramsOf} from "../../../lib/kitchen/size/measures.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import {findIngredient, type Pantry} from "../../../lib/pantry/pantry.ts";
import type {RecipeLine} from "../../../lib/pantry/recipe.ts";
import {mistakeOf} from "./mistakes.ts";

/** Something that the page must ask about a line; the rest of the recipe goes on without waiting for it. */
export interface Asked {
  /** The question, with what to type. */
  readonly text: string;
  /** Whether the line is left out until it is answered; otherwise it counts as `text` says. */
  readonly leftOut: boolean;
  /** Ingredient of the line, where that is known: its allergens count even while its weight does not. */
  readonly ingredient?: Ingredient;
}

/** A recipe as a cook types it. */
export interface TypedRecipe {
  readonly lines: readonly RecipeLine[];
  /** Packs that some are bought in. */
  readonly packs: Readonly<Record<string, Pack>>;
  /** Ingredients whose price the cook has typed. */
  readonly own: ReadonlySet<string>;
  readonly asked: readonly Asked[];
  /** Ingredients of which a number alone was typed: each has the mass of one. */
  readonly counted: readonly Ingredient[];
  /** Names that the cook has for ingredients, where the shelf calls them otherwise. */
  readonly called: Readonly<Record<string, LabelName>>;
}

/** Longest line that is read, characters: a name and what stands around it. */
const LONGEST_LINE = 300;

/** `3 tablespoons of sugar @ 1.20`: amount, words, and what is asked for a kg or for a pack. */
const LINE = /^([\d.,/½⅓⅔¼¾\s]+)(\D.*?)(?:\s*@\s*([\d.]+)(?:\s*(?:\/|for)\s*([\d.]+)\s*(k?g))?)?$/u;

/** One line read. */
interface ReadLine extends RecipeLine {
  readonly price?: number;
  readonly pack?: Pack;
  readonly asked?: string;
  readonly counted: boolean;
  readonly name: string;
}

/**
 * Reads a recipe, one ingredient a line: an amount in grams or a kitchen measure, the name, and if wanted a price per kg
 * or for a pack: `3125 g whole milk`, `9 egg yolk`, `2 tablespoons honey @ 9.80`, `600 g cream 40 % @ 6.20 for 1000 g`.
 * A line that cannot be read is asked about, and stops no other.
 *
 * @param adapt changes an ingredient before it is weighed, e.g. the mass of one egg
 */
export async function readRecipeText(
  text: string,
  pantry: Pantry,
  adapt: (ingredient: Ingredient) => Ingredient = (ingredient) => ingredient,
): Promise<TypedRecipe> {
  const lines: RecipeLine[] = [];
  const packs: Record<string, Pack> = {};
  const own = new Set<string>();
  const asked: Asked[] = [];
  const counted = new Map<string, Ingredient>();
  const called: Record<string, LabelName> = {};
  // One blank for any run of them: there is then one way only to match a line, however it is spaced.
  for (const typed of text.split(/[\n\r\u2028\u2029]/).map((line) => line.trim().replace(/\s+/g, " "))) {
    if (!typed) continue;
    const found: {ingredient?: Ingredient} = {};
    try {
      const read = await readLine(typed, pantry, (shelved) => (found.ingredient = adapt(shelved)));
      const {ingredient, grams: weight, price, pack} = read;
      lines.push({ingredient, grams: weight});
      if (pack) packs[ingredient.name] = pack;
      if (pack || price !== undefined) own.add(ingredient.name);
      if (read.counted) counted.set(ingredient.name, ingredient);
      if (read.name !== ingredient.name) called[ingredient.name] = {name: read.name};
      if (read.asked) asked.push({text: read.asked, leftOut: false, ingredient});
    } catch (error) {
      asked.push({text: onPage(mistakeOf(error)), leftOut: true, ...found});
      if (found.ingredient?.unit !== undefined) counted.set(found.ingredient.name, found.ingredient);
    }
  }
  return {lines, packs, own, asked, counted: [...counted.values()], called};
}

async function readLine(
  typed: string,
  pantry: Pantry,
  adapt: (ingredient: Ingredient) => Ingredient,
): Promise<ReadLine> {
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
  const asked = price === undefined ? undefined : numberOf(price, typed);
  const pack = packed === undefined ? undefined : packOf(asked!, numberOf(packed, typed), unit, typed);
  const ingredient = asked !== undefined && !pack ? {...shelved, price: asked} : shelved;
  const text = `${amount.trim()} ${measure}`.trim();
  const poured = guessedDensity(ingredient, measure);
  // An impossible mass of one is a mistake however the line is weighed.
  if (ingredient.unit !== undefined) await gramsOf(ingredient, "1");
  const weight = await gramsOf(poured ? {...ingredient, density: poured} : ingredient, text);
  return {
    ingredient,
    grams: weight,
    name,
    counted: measure === "" && ingredient.unit !== undefined,
    ...(asked !== undefined && {price: asked}),
    ...(pack && {pack}),
    ...(poured && {
      asked: `${typed}: nobody has said what a litre of it weighs. Taken as ${grams(weight)} g, ${decimal(poured, 2)} g a ml by its fat and solids; weigh it once and type the grams.`,
    }),
  };
}

/** Groups of what is poured, not heaped. */
const LIQUID = new Set(["dairy", "egg", "juice", "plant drink", "coconut", "alcohol", "sugar"]);

/** Least water in what pours, g per 100 g: between syrups and powders. */
const POURS = 15;

/** A density by fat and solids for a liquid whose own is asked for and not known, g/ml. */
function guessedDensity(ingredient: Ingredient, measure: string): number | undefined {
  const {density, portions = {}, group = "", composition} = ingredient;
  const volume = !["", "mg", "g", "kg", "oz", "lb"].includes(kitchenUnit(measure) ?? "");
  if (!volume || density !== undefined || Object.keys(portions).length > 0) return undefined;
  return LIQUID.has(group) && (composition.water ?? 0) >= POURS ? mixDensity(composition) : undefined;
}

function packOf(price: number, size: number, unit: string | undefined, line: string): Pack {
  if (size === 0) throw new InputError(line, "a pack of nothing", undefined, "say what one pack holds");
  return {price, grams: size * (unit === "kg" ? 1000 : 1)};
}

/** A mistake as a page says it where no file is loaded. */
function onPage(mistake: string): string {
  return mistake.replace(
    /(If not, )?add it to the pantry, or give its composition or label beside its name in a JSON file/i,
    (_, after: string | undefined) =>
      after ? "If not, take the nearest one on the shelf" : "Take the nearest one on the shelf",
  );
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
    .filter(({grams: weight}) => weight >= 0.05)
    .map(
      ({ingredient, grams: weight, price}) =>
        `${Number(weight.toFixed(weight >= 100 ? 0 : 1))} g ${ingredient}${price === undefined ? "" : ` @ ${price}`}`,
    )
    .join("\n");
}
