import type {Ingredient} from "../../pantry/ingredient.ts";

/** Starch from which an ingredient is a starch, and cocoa butter from which it is a chocolate, g per 100 g. */
const [STARCHY, CHOCOLATE] = [50, 15] as const;

/** True for egg, and for what swells, sets or melts only when hot: starch, gelatine, locust bean gum and its like, chocolate. */
export function needsHeat(ingredient: Ingredient): boolean {
  const {starch = 0, gelatine = 0, cocoaButter = 0} = ingredient.composition;
  return (
    holdsEgg(ingredient) ||
    starch > STARCHY ||
    gelatine > 0 ||
    cocoaButter > CHOCOLATE ||
    /\b(?:locust|carob gum|carrageenan|agar|pectin|gellan)\b/i.test(ingredient.name)
  );
}

/** True for egg and what holds some. */
export function holdsEgg({group, allergens, composition}: Ingredient): boolean {
  return group === "egg" || Boolean(allergens?.includes("eggs") || composition.eggFat);
}
