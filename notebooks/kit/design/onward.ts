import {html} from "htl";
import type {BriefInput} from "../../../lib/balance/brief/brief-schema.ts";
import {recipeCsv} from "../../../lib/io/csv/recipe-csv.ts";
import {recipeJson} from "../../../lib/io/json/recipe-json.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import type {OpenRecipe} from "../keep/open-recipe.ts";
import {downloads, fileName} from "../page/downloads.ts";
import {keepInBook} from "../page/keep-in-book.ts";
import {linkTo} from "../page/link-to.ts";
import {withOwnPrices} from "../words/price-origin.ts";
import {recipeText} from "../words/recipe-text.ts";

/**
 * Next steps with a mix once it is there: save it, and take it to the pages that go on from it.
 *
 * @param asked with whatever prices it was worked out at
 * @param own names whose price is the cook's own
 */
export function designOnward(
  brief: BriefInput,
  asked: Recipe,
  own: {readonly has: (name: string) => boolean},
  open: OpenRecipe,
): HTMLElement {
  const name = fileName(asked.name);
  // Invented prices stay on this page, those of the shelf are on the next one too.
  const recipe = withOwnPrices(asked, own);
  const text = recipeText(
    recipe.lines.map(({ingredient: {name: ingredient, price}, grams}) => ({
      ingredient,
      grams,
      ...(price !== undefined && {price}),
    })),
  );
  const {freezer = -18, overrun} = brief;
  const kept = {name: recipe.name, text, freezer, ...(overrun !== undefined && {overrun})};
  return html`<div>
    ${keepInBook(open, kept)}
    ${downloads([
      {label: "the recipe, JSON", name: `${name}.json`, text: () => recipeJson(recipe)},
      {label: "the recipe, CSV", name: `${name}.csv`, text: () => recipeCsv(recipe)},
    ])}
    <ul class="onward">
      ${linkTo("batch-day", "Make it: batch day", [
        ["base", text],
        ["pot", ""],
        ["share", "0"],
        ["freezer", String(freezer)],
      ])}
      ${linkTo("replace-an-ingredient", "Replace something in it", [
        ["recipe", "own"],
        ["recipeFile", `${name}.json`],
        ["recipeFile", recipeJson(recipe)],
      ])}
      ${linkTo("explore-trade-offs", "Explore its trade-offs", [
        ["brief", "own"],
        ["briefFile", `${name}.json`],
        ["briefFile", JSON.stringify(brief)],
      ])}
    </ul>
  </div>`;
}
