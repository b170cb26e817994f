import {finite} from "../../../lib/core/numbers.ts";
import {makeProduct, type Product} from "../../../lib/kitchen/product/product.ts";
import {recipeMass} from "../../../lib/pantry/recipe.ts";

/** Below this an amount is weighed on a fine scale, to a tenth of the step, g. */
const FINE = 20;

/** A product whose ingredients weigh whole steps of a scale; what boils off stays the same share. */
export function onTheScale(product: Product, step: number): Product {
  finite(step, "The scale shows steps of, g", {min: 0.01, max: 100}, "g");
  const components = product.components.map((component) => {
    const lines = component.recipe.lines.map((line) => {
      const fine = line.grams < FINE ? step / 10 : step;
      return {...line, grams: Math.round(line.grams / fine) * fine};
    });
    const recipe = {...component.recipe, lines};
    return {
      ...component,
      recipe,
      grams: (component.grams * recipeMass(recipe)) / recipeMass(component.recipe),
    };
  });
  const grams = components.reduce((sum, component) => sum + component.grams, 0);
  return makeProduct(
    product.name,
    components.map((component) => ({...component, percent: (100 * component.grams) / grams})),
  );
}

/** The ingredient that rounding moves most, %. */
export function mostMoved(exact: Product, rounded: Product): {ingredient: string; percent: number} {
  const moves = exact.components.flatMap(({recipe}, i) =>
    recipe.lines.map(({ingredient, grams}, j) => ({
      ingredient: ingredient.name,
      percent: grams > 0 ? 100 * Math.abs(rounded.components[i]!.recipe.lines[j]!.grams / grams - 1) : 0,
    })),
  );
  return moves.reduce((most, move) => (move.percent > most.percent ? move : most));
}
