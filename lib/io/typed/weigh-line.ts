import {InputError} from "../../core/errors.ts";
import {decimal, grams as gramsText} from "../../core/format.ts";
import {mixDensity} from "../../kitchen/size/density.ts";
import {gramsOf} from "../../kitchen/size/measures.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {plainCount, type TypedAmount} from "./amount.ts";
import {LEAF} from "./own-weight.ts";
import {type EggGrades, eggOfSize} from "./egg.ts";

/** Mass of an amount with the assumptions made, or the question to ask. */
export type Weighed =
  | {readonly grams: number; readonly taken: readonly string[]; readonly whole?: number}
  | {readonly question: string};

/** Groups of ingredients that are poured, not heaped. */
const LIQUID = new Set(["dairy", "egg", "juice", "plant drink", "coconut", "alcohol", "sugar"]);

/** Least water in an ingredient that pours, g per 100 g: between syrups and powders. */
const POURS = 15;

/** Largest bare number that counts whole ones; a larger one is grams. */
const MOST_COUNTED = 60;

/** Least bare number that is grams for an ingredient that is not counted. */
const LEAST_GRAMS = 5;

/** Groups of ingredients that come in pieces. */
const PIECES = new Set(["fruit", "nut", "vegetable", "inclusion"]);

/** Largest number before a plural that means pieces and not grams: `6 blood oranges`. */
const MOST_PIECES = 24;

/**
 * Mass of an amount of an ingredient, g.
 *
 * @param written the line, for the size of eggs
 */
export async function weighLine(
  ingredient: Ingredient,
  amount: TypedAmount,
  written: string,
  grades: EggGrades,
): Promise<Weighed> {
  const {count, unit, pack, taken} = amount;
  // An impossible mass of one is a mistake even where the line does not need it.
  const impossible = ingredient.unit === undefined ? undefined : await mistakeIn(ingredient);
  if (impossible !== undefined) return {question: impossible};
  if (pack !== undefined) return packWeight(ingredient, count, pack, taken);
  if (unit === undefined) return countWeight(ingredient, amount, written, grades);
  const poured = guessedDensity(ingredient);
  try {
    return {grams: await gramsOf(ingredient, `${plainCount(count)} ${unit}`), taken};
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    if (poured === undefined || !/density unknown/.test(error.problem))
      return {
        question: `what does that much ${ingredient.name} weigh? Nobody has said: weigh it once, and type the grams`,
      };
    const weight = await gramsOf({...ingredient, density: poured}, `${plainCount(count)} ${unit}`);
    return {
      grams: weight,
      taken: [
        ...taken,
        `taken as ${gramsText(weight)} g, ${decimal(poured, 2)} g a ml by its fat and solids`,
      ],
    };
  }
}

/** Mistake in the mass of one of an ingredient, if any. */
async function mistakeIn(ingredient: Ingredient): Promise<string | undefined> {
  try {
    await gramsOf(ingredient, "1");
    return undefined;
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}

/** Whole ones, or a bare number. */
function countWeight(
  ingredient: Ingredient,
  {count, taken}: TypedAmount,
  written: string,
  grades: EggGrades,
): Weighed {
  const {unit, name} = ingredient;
  const sized = eggOfSize(ingredient, written, grades);
  if (sized && count <= MOST_COUNTED) return {grams: count * sized.grams, taken: [...taken, sized.taken]};
  if (unit !== undefined && count <= MOST_COUNTED)
    return {
      grams: count * unit,
      whole: count,
      taken: [...taken, oneWeighs(name, unit)],
    };
  if (
    count >= LEAST_GRAMS &&
    !(count <= MOST_PIECES && PIECES.has(ingredient.group ?? "") && ofPieces(written))
  )
    return {grams: count, taken: [...taken, `${decimal(count, 0)} taken as grams`]};
  return {
    question:
      count === 1
        ? `what does one ${name} weigh? Type it in grams`
        : `what do ${plainCount(count)} of them weigh (${name})? Type it in grams`,
  };
}

/** True for a line of pieces: the number first, then the plural of a word. */
function ofPieces(written: string): boolean {
  return /^[^\p{L}\d]*\d+\s+[^,(]*[^\Ws]s(?=\s*(?:[,(]|$))/u.test(written);
}

/** The mass of one in words; juice is counted by its fruit: `one lemon taken as 48 g of juice`. */
function oneWeighs(name: string, unit: number): string {
  const [, fruit, juice] = /^(.+) (juice)$/.exec(name) ?? [];
  return `one ${fruit ?? name} taken as ${decimal(unit, 0)} g${juice ? ` of ${juice}` : ""}`;
}

/** Mass of packs whose size is customary; the size of any other is asked for. */
function packWeight(ingredient: Ingredient, count: number, pack: string, taken: readonly string[]): Weighed {
  const leaf = /^(?:leaf|leaves|sheets?)$/.test(pack) && /gelatin/i.test(ingredient.name);
  if (leaf) return {grams: LEAF * count, taken: [...taken, `a leaf taken as ${LEAF} g`]};
  const portion = Object.entries(ingredient.portions ?? {}).find(([name]) => name === pack.replace(/s$/, ""));
  if (portion) return {grams: count * portion[1], taken};
  return {
    question: `how much is in one ${pack.replace(/(?<=[^s])s$/, "")}? Type it as “${plainCount(count)} x 250 g ${ingredient.name}”`,
  };
}

/** A density by fat and solids for a liquid whose own is not known, g/ml. */
function guessedDensity({density, portions = {}, group = "", composition}: Ingredient): number | undefined {
  if (density !== undefined || Object.keys(portions).length > 0) return undefined;
  return LIQUID.has(group) && (composition.water ?? 0) >= POURS ? mixDensity(composition) : undefined;
}
