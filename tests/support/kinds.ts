import type {IngredientTrait} from "../../lib/balance/substitute/ingredient-traits.ts";
import type {Ingredient} from "../../lib/pantry/ingredient.ts";
import type {Recipe} from "../../lib/pantry/recipe.ts";

/** The included gums, emulsifiers and milk proteins of a kind, by name. Common practice, no source. */
const NAMES = {
  whey: `sweet whey powder; acid whey powder; whey protein concentrate 35 %; whey protein concentrate 80 %; sweet whey, liquid;
    acid whey, liquid; whey protein isolate 90 %; whey permeate powder; demineralised whey powder 40 %;
    demineralised whey powder 90 %`,
  casein: "sodium caseinate; micellar casein",
  gels: `agar; gellan gum; pectin; low-methoxyl pectin; sodium alginate; carrageenan; kappa carrageenan; iota carrageenan`,
  weak: "gum arabic; microcrystalline cellulose",
  inverse: "polyglycerol polyricinoleate",
};

const is = (kind: keyof typeof NAMES, {name}: Ingredient) => NAMES[kind].split(/;\s+/).includes(name);

/** g per 100 g of an included ingredient, written down anew; dried fruit apart, which nothing here replaces. */
const IN: Readonly<Record<IngredientTrait, (ingredient: Ingredient) => number>> = {
  casein: (of) => (is("whey", of) ? 0 : (of.composition.milkProtein ?? 0) * (is("casein", of) ? 1 : 0.8)),
  thickeningGum: (of) => (is("gels", of) || is("weak", of) ? 0 : (of.composition.stabiliser ?? 0)),
  gellingGum: (of) =>
    (of.composition.gelatine ?? 0) + (is("gels", of) ? (of.composition.stabiliser ?? 0) : 0),
  waterInOilEmulsifier: (of) => (is("inverse", of) ? (of.composition.emulsifier ?? 0) : 0),
  fruit: ({group}) => (group === "fruit" || group === "juice" ? 100 : 0),
};

/** Amount of a kind of gum, emulsifier, milk protein or of fruit in a recipe, g per 100 g. */
export function kindIn(what: IngredientTrait, {lines}: Recipe): number {
  const mass = lines.reduce((sum, {grams}) => sum + grams, 0);
  return lines.reduce((sum, {ingredient, grams}) => sum + (grams * IN[what](ingredient)) / mass, 0);
}

/** The same of 100 g of an ingredient. */
export const kindOf = (what: IngredientTrait, ingredient: Ingredient) => IN[what](ingredient);
