import {html} from "htl";
import {recipeCsv} from "../../../lib/io/csv/recipe-csv.ts";
import {recipeJson} from "../../../lib/io/json/recipe-json.ts";
import type {Recipe} from "../../../lib/pantry/recipe.ts";
import {downloads, fileName} from "../page/downloads.ts";
import {linkTo} from "../page/link-to.ts";
import {recipeText} from "../words/recipe-text.ts";

/** Next steps with a recipe: save it, and take it to the pages that go on from it. */
export function readingOnward(recipe: Recipe, freezer: number): HTMLElement {
  const name = fileName(recipe.name);
  const text = recipeText(
    recipe.lines.map(({ingredient: {name: ingredient, price}, grams}) => ({
      ingredient,
      grams,
      ...(price !== undefined && {price}),
    })),
  );
  return html`<div>
    ${downloads([
      {label: "the recipe, JSON", name: `${name}.json`, text: () => recipeJson(recipe)},
      {label: "the recipe, CSV", name: `${name}.csv`, text: () => recipeCsv(recipe)},
    ])}
    <ul class="onward">
      ${linkTo("batch-day", "Make it: batch day", [
        ["base", text],
        ["pot", ""],
        ["share", "0"],
        ["name", recipe.name],
        ["named", ""],
        ["freezer", String(freezer)],
      ])}
      ${linkTo("replace-an-ingredient", "Replace something in it", [
        ["recipe", "own"],
        ["recipeFile", `${name}.json`],
        ["recipeFile", recipeJson(recipe)],
        ["freezer", String(freezer)],
      ])}
    </ul>
  </div>`;
}
