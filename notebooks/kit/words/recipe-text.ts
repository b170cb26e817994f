import type {Pack} from "../../../lib/kitchen/product/cost.ts";
import type {LabelName} from "../../../lib/kitchen/label/label-names.ts";
import {counts, readTypedRecipe} from "../../../lib/io/typed/read-typed.ts";
import type {TypedLine} from "../../../lib/io/typed/typed-line.ts";
import type {Ingredient} from "../../../lib/pantry/ingredient.ts";
import type {Pantry} from "../../../lib/pantry/pantry.ts";
import type {RecipeLine} from "../../../lib/pantry/recipe.ts";
import {mistakeOf} from "./mistakes.ts";

/** Something that the page must ask about a line; the rest of the recipe goes on without waiting for it. */
export interface Asked {
  /** The question, with what to type. */
  readonly text: string;
  /** Whether the line is left out until it is answered; otherwise it counts as `text` says. */
  readonly leftOut: boolean;
  /** The name that nobody knows, where that is why. */
  readonly unknown?: string;
  /** Ingredient of the line, where that is known: its allergens count even while its weight does not. */
  readonly ingredient?: Ingredient;
}

/** Prices that the cook has set on the shelf: by name, and the packs that they are for. */
interface Shelved {
  readonly priced: ReadonlySet<string>;
  readonly packs: Readonly<Record<string, Pack>>;
}

/** A recipe as a cook types it. */
export interface TypedRecipe {
  readonly lines: readonly RecipeLine[];
  /** Packs that some are bought in. */
  readonly packs: Readonly<Record<string, Pack>>;
  /** Ingredients whose price the cook has typed, here or on the shelf. */
  readonly own: ReadonlySet<string>;
  readonly asked: readonly Asked[];
  /** Ingredients of which a number alone was typed: each has the mass of one. */
  readonly counted: readonly Ingredient[];
  /** Names that the cook has for ingredients, where the shelf calls them otherwise. */
  readonly called: Readonly<Record<string, LabelName>>;
}

/**
 * Reads a recipe as the library's reader does, whatever its habits: see `readTypedRecipe`. A line that cannot be read is asked
 * about, and stops no other; what was taken for granted of one is told.
 *
 * @param shelf prices of the cook's shelf, which hold where a line says none
 * @param adapt changes an ingredient before it is weighed, e.g. the mass of one egg
 */
export async function readRecipeText(
  text: string,
  pantry: Pantry,
  shelf: Shelved = {priced: new Set(), packs: {}},
  adapt: (ingredient: Ingredient) => Ingredient = (ingredient) => ingredient,
): Promise<TypedRecipe> {
  const read = await readTypedRecipe(text, pantry, {adapt}).catch((error: unknown) => mistakeOf(error));
  if (typeof read === "string")
    return {
      lines: [],
      packs: {},
      own: shelf.priced,
      asked: [{text: read, leftOut: true}],
      counted: [],
      called: {},
    };
  const counted = new Map<string, Ingredient>();
  const called: Record<string, LabelName> = {};
  for (const line of read.lines) {
    if (line.status === "how much" && line.ingredient.unit !== undefined)
      counted.set(line.ingredient.name, line.ingredient);
    if (!counts(line)) continue;
    if (line.whole !== undefined) counted.set(line.ingredient.name, line.ingredient);
    if (line.called !== line.ingredient.name) called[line.ingredient.name] = {name: line.called};
  }
  const known = read.lines.filter(counts);
  const there = new Set(known.map(({ingredient}) => ingredient.name));
  const typed = new Set(
    known.flatMap(({ingredient, price}) => (price === undefined ? [] : [ingredient.name])),
  );
  return {
    lines: read.recipe.lines,
    packs: {
      ...Object.fromEntries(
        Object.entries(shelf.packs).filter(([name]) => there.has(name) && !typed.has(name)),
      ),
      ...Object.fromEntries(known.flatMap(({ingredient, pack}) => (pack ? [[ingredient.name, pack]] : []))),
    },
    own: new Set([...shelf.priced, ...typed]),
    asked: read.lines.flatMap(askedOf),
    counted: [...counted.values()],
    called,
  };
}

/** Questions and remarks on a line; of whole ones it has a box for the mass of one. */
function askedOf(line: TypedLine): Asked[] {
  if (line.status === "taken")
    return line.whole === undefined
      ? [{text: `${line.text}: ${line.taken.join("; ")}.`, leftOut: false, ingredient: line.ingredient}]
      : [];
  if (!("question" in line)) return [];
  const {text, question} = line;
  return [
    {
      text: `${text}: ${question.replace("(got ", "(it is ")}.`,
      leftOut: true,
      ...("ingredient" in line && {ingredient: line.ingredient}),
      ...(line.status === "unknown" && line.name.trim() && {unknown: line.name}),
    },
  ];
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
