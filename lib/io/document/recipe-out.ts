import {quantityOf} from "../../pantry/quantities.ts";
import {type Recipe, recipeComposition, recipeMass} from "../../pantry/recipe.ts";
import {type Tables, tablesHtml, tablesMarkdown} from "../text/tables.ts";
import {decimal, grams} from "../../core/format.ts";
import {fullName} from "../text/plain-name.ts";

/**
 * A recipe as Markdown (CommonMark with GitHub's tables), everything escaped: its lines, and the composition of the mix.
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "sucrose"), grams: 90}];
 * recipeMarkdown({name: "syrup", lines}).split("\n")[0]; // => "# syrup"
 * ```
 */
export function recipeMarkdown(recipe: Recipe): string {
  return tablesMarkdown(recipeTables(recipe));
}

/**
 * A recipe as a whole HTML document: no script, no outside file, everything escaped.
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "sucrose"), grams: 90}];
 * recipeHtml({name: "syrup", lines}).slice(0, 15); // => "<!doctype html>"
 * ```
 */
export function recipeHtml(recipe: Recipe): string {
  return tablesHtml(recipeTables(recipe));
}

/** Quantities on a recipe's card, g per 100 g. */
const TOLD = ["fat", "msnf", "sugars", "glucose", "totalSolids"] as const;

function recipeTables(recipe: Recipe): Tables {
  const mass = recipeMass(recipe);
  const composition = recipeComposition(recipe);
  return {
    title: recipe.name,
    sections: [
      {
        heading: "Ingredients",
        sentences: [`${grams(mass)} g`],
        columns: ["Ingredient", "g", "%"],
        rows: recipe.lines.map(({ingredient, grams: g}) => [
          ingredient.name,
          grams(g),
          mass > 0 ? decimal((100 * g) / mass, 2) : "",
        ]),
      },
      {
        heading: "The mix, in 100 g",
        columns: ["Quantity", "%"],
        rows: TOLD.map((quantity) => [fullName(quantity), decimal(quantityOf(composition, quantity), 1)]),
      },
    ],
  };
}
