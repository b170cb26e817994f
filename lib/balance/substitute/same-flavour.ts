import {folded} from "../../core/nearest.ts";
import {sum} from "../../core/numbers.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import type {RecipeLine} from "../../pantry/recipe.ts";
import {traitIn} from "./ingredient-traits.ts";

/** Words of names that say how something was made, kept or packed, or what it looks like, and not what it tastes of. */
const OTHER = new Set(
  `fresh frozen dried dry freeze canned tinned bottled raw cooked roasted toasted stewed ground grated brewed instant whole pure
  blanched cooking crunchy powder flake paste puree pulp flesh juice nectar concentrate syrup extract essence zest peel leaf seed nut fruit liqueur cordial butter oil water
  cream milk drink jam candied sweetened unsweetened salted sweet sour dark light white black red green yellow pink in with
  without and of from the vol fat free low high natural`.split(/\s+/),
);

/**
 * Groups of what a mix tastes of by how much of it there is. Of cocoa, spices, extracts and spirits a little of one does for much
 * of another.
 */
const BY_AMOUNT = new Set(["fruit", "juice", "vegetable", "nut"]);

/** Share of an amount below which what tastes of the same does not make up for it: our own choice. */
const ENOUGH = 0.5;

/**
 * True where a recipe still tastes of what an ingredient gave: where the ingredient itself is in it, or enough of what tastes alike.
 * Dried fruit counts as what it was.
 */
export function stillTastes({ingredient, grams}: RecipeLine, lines: readonly RecipeLine[]): boolean {
  if (lines.some((line) => line.ingredient.name === ingredient.name)) return true;
  const alike = lines.filter((line) => tasteAlike(ingredient, line.ingredient));
  if (alike.length === 0) return false;
  if (!byAmount(ingredient) || !alike.every((line) => byAmount(line.ingredient))) return true;
  return sum(alike.map(asFresh)) >= ENOUGH * asFresh({ingredient, grams});
}

function byAmount({group}: Ingredient): boolean {
  return group !== undefined && BY_AMOUNT.has(group);
}

/** Mass of what was dried as that of what it was, and of all else as it is, g. */
function asFresh({ingredient, grams}: RecipeLine): number {
  return (grams * (traitIn(ingredient, "fruit") || 100)) / 100;
}

/** True where two ingredients share a word that names their flavour: `strawberry` and `frozen strawberries`. */
export function tasteAlike(one: Ingredient, other: Ingredient): boolean {
  const words = new Set(flavourWords(one.name));
  return flavourWords(other.name).some((word) => words.has(word));
}

/** The words of a name that are left to name a flavour, in the singular. */
function flavourWords(name: string): string[] {
  return folded(name)
    .split(" ")
    .filter((word) => /^[^\d%]{3,}$/.test(word))
    .map((word) => word.replace(/ies$/, "y").replace(/(?<=[sxo]|[cs]h)es$|(?<=..[^su])s$/, ""))
    .filter((word) => !OTHER.has(word));
}
