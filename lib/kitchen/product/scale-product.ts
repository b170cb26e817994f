import {InputError} from "../../core/errors.ts";
import {finite} from "../../core/numbers.ts";
import {mixDensity} from "../size/density.ts";
import {expectProduct, type Product, productDensity} from "./product.ts";
import {equalRuns, expectScaleTo, gramsForTubs, type Machine, mixGrams, type ScaleTo} from "../size/scale.ts";

/** A product made larger or smaller. */
export interface ScaledProduct {
  /** The same product, with its recipes scaled: each component's `grams` is its mass in the batch. */
  readonly product: Product;
  /** Mass of the finished product, g. */
  readonly grams: number;
  /** Factor on the base's recipe, and so on amounts in its process. */
  readonly baseFactor: number;
  /** Mass of the churned mix, g. */
  readonly mixGrams: number;
  /** Volume of the churned mix, ml. */
  readonly mixMillilitres: number;
  readonly runs: number;
  /** Mix in one run, g. */
  readonly gramsPerRun: number;
}

/**
 * Scales a product with one churned base: grams and tubs mean the finished product, ripple included; a volume of mix and
 * runs of a machine mean the base.
 *
 * @param to as for `scale`
 * @throws InputError as `scale`, and for a product that has not exactly one churned component
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 800}];
 * const product = makeProduct("milk ice", [baseComponent({name: "milk ice", lines})]);
 * scaleProduct(product, {tubs: 10, tubMillilitres: 500, overrun: 30}).grams; // => 3962
 * ```
 */
export function scaleProduct(product: Product, to: ScaleTo, machine?: Machine): ScaledProduct {
  expectProduct(product);
  expectScaleTo(to);
  const churned = product.components.filter((component) => component.churned);
  const base = churned[0];
  if (!base || churned.length > 1 || base.percent <= 0) {
    throw new InputError(
      product.name,
      "not exactly one churned base",
      churned.length,
      "mix the bases into one recipe",
    );
  }
  const density = mixDensity(base.composition);
  const baseGrams = baseMass(product, to, base.percent / 100, density);
  const grams = (baseGrams / base.percent) * 100;
  const components = product.components.map((component) => {
    const mass = (grams * component.percent) / 100;
    const factor = mass / component.grams;
    const lines = component.recipe.lines.map((line) => ({...line, grams: line.grams * factor}));
    return {...component, grams: mass, recipe: {...component.recipe, lines}};
  });
  return {
    product: {...product, components},
    grams,
    baseFactor: baseGrams / base.grams,
    mixGrams: baseGrams,
    mixMillilitres: baseGrams / density,
    ...equalRuns(baseGrams, density, "machine" in to ? to.machine : machine),
  };
}

/** Mass of the base for a size of the product, g. */
function baseMass(product: Product, to: ScaleTo, share: number, density: number): number {
  if ("grams" in to) return finite(to.grams, "grams", {min: 1}, "g") * share;
  if ("tubs" in to) return gramsForTubs(to, productDensity(product, to.overrun)) * share;
  return mixGrams(to, density);
}
