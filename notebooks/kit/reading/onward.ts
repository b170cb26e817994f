import {html} from "htl";
import {recipeCsv} from "../../../lib/io/csv/recipe-csv.ts";
import {recipeJson} from "../../../lib/io/json/recipe-json.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {TYPED} from "../controls/source.ts";
import {downloads, fileName} from "../page/downloads.ts";
import {linkTo} from "../page/link-to.ts";
import {type CarriedRecipe, recipeHash} from "../words/recipe-address.ts";

/**
 * Next steps with a recipe: save it, and take it to the pages that go on from it.
 *
 * @param carried the recipe as a link carries it
 * @param own whether it is the open recipe, from which the other pages begin anyway
 */
export function readingOnward(recipe: Recipe, carried: CarriedRecipe, own: boolean): HTMLElement {
  const freezer = String(carried.freezer);
  const name = fileName(recipe.name);
  // The other pages begin with the open recipe: they need no word of it.
  const link: typeof linkTo = (page, words, state) => linkTo(page, words, own ? [] : state);
  return html`<div>
    ${downloads(
      [
        {label: "the recipe, JSON", name: `${name}.json`, text: () => recipeJson(recipe)},
        {label: "the recipe, CSV", name: `${name}.csv`, text: () => recipeCsv(recipe)},
      ],
      () => recipeHash(carried),
    )}
    <ul class="onward">
      ${link("batch-day", "Make it: batch day", [
        // As typed: that page knows the shelf's prices by itself.
        ["base", carried.text],
        ["pot", ""],
        ["share", "0"],
        ["name", recipe.name],
        ["named", ""],
        ["freezer", freezer],
      ])}
      ${link("replace-an-ingredient", "Replace something in it", [
        // As typed, too: there it can be kept in the book, and every line that asks something stays.
        ["recipe", TYPED],
        ["recipeFile", recipe.name],
        ["recipeFile", carried.text],
        ["freezer", freezer],
        ...(carried.overrun === undefined ? [] : [["overrun", String(carried.overrun)] as const]),
      ])}
    </ul>
  </div>`;
}
