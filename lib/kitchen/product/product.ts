import {InputError} from "../../core/errors.ts";
import {finite, sum} from "../../core/numbers.ts";
import {expectList, expectShape, expectText} from "../../core/shape.ts";
import {expectComposition} from "../../pantry/expect.ts";
import {blend} from "../../pantry/mix.ts";
import type {Composition} from "../../pantry/parts.ts";
import {
  expectRecipe,
  type Recipe,
  recipeComposition,
  type RecipeLine,
  recipeMass,
} from "../../pantry/recipe.ts";
import type {Cooked} from "../cooking/cook.ts";
import {mixDensity} from "../size/density.ts";
import {finishedDensity} from "../size/overrun.ts";

/** One component of a finished product: the base, a ripple, pieces. */
export interface Component {
  readonly name: string;
  /** Ingredients as bought, g. */
  readonly recipe: Recipe;
  /** As eaten, g per 100 g. */
  readonly composition: Composition;
  /** Yield of the recipe, g: less than its ingredients when it is boiled down or sieved. */
  readonly grams: number;
  /** g per 100 g of the product. */
  readonly percent: number;
  /** True where it is churned and holds air. */
  readonly churned: boolean;
}

/** Product as it is sold: a base, and components that are layered or folded into it. */
export interface Product {
  readonly name: string;
  readonly components: readonly Component[];
}

/**
 * The churned base as a component: the recipe as mixed.
 *
 * @param percent its share of the product, % by mass; all of it by default
 * @throws InputError for anything but a recipe, and a share outside 0 to 100
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 1000}];
 * baseComponent({name: "milk ice", lines}, 85).percent; // => 85
 * ```
 */
export function baseComponent(recipe: Recipe, percent = 100): Component {
  expectRecipe(recipe);
  finite(percent, "percent", {min: 0, max: 100}, "%");
  return {
    name: recipe.name,
    recipe,
    composition: recipeComposition(recipe),
    grams: recipeMass(recipe),
    percent,
    churned: true,
  };
}

/**
 * A ripple or pieces as a component: not churned; as mixed, or as cooked when `cooked` is given.
 *
 * @param percent its share of the product, % by mass
 * @throws InputError for anything but a recipe and a cooked sauce, and a share outside 0 to 100
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const syrup = {
 *   name: "syrup",
 *   lines: ["water", "sucrose"].map((name) => ({ingredient: findIngredient(pantry, name), grams: 500})),
 * };
 * rippleComponent(syrup, 15, cookDown(syrup, {brix: 65})); // => {name: "syrup", percent: 15, grams: 769}
 * ```
 */
export function rippleComponent(recipe: Recipe, percent: number, cooked?: Cooked): Component {
  expectRecipe(recipe);
  finite(percent, "percent", {min: 0, max: 100}, "%");
  if (cooked !== undefined)
    expectShape(
      cooked,
      {composition: "object", grams: "number"},
      "cooked sauce",
      "give what cookDown(recipe, to) returns",
    );
  if (cooked !== undefined) {
    expectComposition(cooked.composition);
    finite(cooked.grams, "cooked.grams", {min: 0}, "g");
  }
  const {composition, grams: mass} = cooked ?? {
    composition: recipeComposition(recipe),
    grams: recipeMass(recipe),
  };
  return {name: recipe.name, recipe, composition, grams: mass, percent, churned: false};
}

/** Refuses anything but a component, and one that is empty or has no share of the product. */
function expectComponent(component: Component, product: string): void {
  expectShape(
    component,
    {name: "text", recipe: "object", composition: "object"},
    "component",
    "make it with baseComponent or rippleComponent",
  );
  expectRecipe(component.recipe);
  expectComposition(component.composition);
  finite(component.percent, `${product}: ${component.name}: percent`, {min: 0, max: 100}, "%");
  finite(component.grams, `${product}: ${component.name}: grams`, {min: 0.001}, "g");
}

/** Refuses anything but a product. */
export function expectProduct(value: Product): void {
  expectShape(
    value,
    {name: "text", components: "list"},
    "product",
    "make it with makeProduct(name, components)",
  );
  for (const component of value.components) expectComponent(component, value.name);
}

/**
 * A product from its components.
 *
 * @throws InputError when there is none, a component is empty, or the percentages do not sum to 100 within 0.01
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const milk = {name: "milk ice", lines: [{ingredient: findIngredient(pantry, "whole milk"), grams: 1000}]};
 * const nuts = {name: "nuts", lines: [{ingredient: findIngredient(pantry, "hazelnut"), grams: 100}]};
 * const product = makeProduct("nutty milk", [baseComponent(milk, 90), rippleComponent(nuts, 10)]);
 * product.components.map(({name, percent}) => `${percent} % ${name}`); // => ["90 % milk ice", "10 % nuts"]
 * ```
 */
export function makeProduct(name: string, components: readonly Component[]): Product {
  expectText(name, "name", "give the product's name");
  expectList(
    components,
    {recipe: "object", composition: "object"},
    "components",
    "make each with baseComponent or rippleComponent",
  );
  for (const component of components) expectComponent(component, name);
  const total = sum(components.map((component) => component.percent));
  if (Math.abs(total - 100) > 0.01) {
    throw new InputError(
      name,
      "the components do not sum to 100 %",
      total,
      "give every component its share of the tub",
    );
  }
  return {name, components};
}

/**
 * Composition of the finished product, g per 100 g.
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "sucrose"), grams: 100}];
 * productComposition(makeProduct("sugar", [baseComponent({name: "sugar", lines})])); // => {sucrose: 100}
 * ```
 */
export function productComposition(product: Product): Composition {
  expectProduct(product);
  return blend(product.components.map(({composition, percent}) => ({composition, mass: percent})));
}

/**
 * Ingredients for so much of the product, g, each once, in the order of first use.
 *
 * They may weigh more than the product, since anything boiled off or sieved out must be bought too.
 *
 * @param grams mass of the finished product, g; 100 by default
 * @throws InputError for anything but a product, and a mass that is no number from 0
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 800}];
 * productLines(makeProduct("milk ice", [baseComponent({name: "milk ice", lines})]), 250)[0]?.grams; // => 250
 * ```
 */
export function productLines(product: Product, grams = 100): RecipeLine[] {
  expectProduct(product);
  finite(grams, "grams", {min: 0}, "g");
  const lines = new Map<string, RecipeLine>();
  for (const {recipe, grams: mass, percent} of product.components) {
    for (const line of recipe.lines) {
      const before = lines.get(line.ingredient.name)?.grams ?? 0;
      const taken = (line.grams / mass) * (percent / 100) * grams;
      lines.set(line.ingredient.name, {ingredient: line.ingredient, grams: before + taken});
    }
  }
  return [...lines.values()];
}

/**
 * Density of the finished product, g/ml: the churned components blown up by the overrun, the others without air.
 *
 * @param overrun % of the churned mix's volume, 0 to 300
 * @throws InputError for an overrun outside its range, or a product without a churned component
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 1000}];
 * productDensity(makeProduct("milk ice", [baseComponent({name: "milk ice", lines})]), 50); // => 0.69
 * ```
 */
export function productDensity(product: Product, overrun: number): number {
  expectProduct(product);
  const churned = product.components.filter((component) => component.churned);
  if (sum(churned.map((component) => component.percent)) <= 0) {
    throw new InputError(product.name, "nothing in it is churned", undefined, "add the base");
  }
  const mix = blend(churned.map(({composition, percent}) => ({composition, mass: percent})));
  const pieces = product.components
    .filter((component) => !component.churned)
    .map(({composition, percent}) => ({density: mixDensity(composition), percent}));
  return finishedDensity(mixDensity(mix), overrun, pieces);
}
