import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {type ShownMix, styleOf, type WeighedMix} from "../page/mixes.ts";
import {weighedRecipes} from "../views/weighed.ts";

/** Style of the cook's own recipe: that of no mix beside it. */
const OWN = 4;

/** The open recipe as a mix beside those of a design that started from it; none beside another's. */
export function yours(
  recipe: Recipe | undefined,
  {name, freezer = -18}: BriefInput,
): readonly ShownMix<WeighedMix>[] {
  if (!recipe || recipe.name !== name) return [];
  return weighedRecipes([recipe], freezer).map((mix) => ({mix, label: "Yours now", style: styleOf(OWN)}));
}
