import {folded} from "../../core/nearest.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";

/** Words of names that say how something was made, kept or packed, or what it looks like, and not what it tastes of. */
const OTHER = new Set(
  `fresh frozen dried dry freeze canned tinned bottled raw cooked roasted toasted stewed ground grated brewed instant whole pure
  blanched cooking crunchy powder flake paste puree pulp flesh juice nectar concentrate syrup extract essence zest peel leaf seed nut fruit liqueur cordial butter oil water
  cream milk drink jam candied sweetened unsweetened salted sweet sour dark light white black red green yellow pink in with
  without and of from the vol fat free low high natural`.split(/\s+/),
);

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
