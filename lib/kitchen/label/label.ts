import {expectOptions, expectFlag, expectText, expectTexts, oneOf} from "../../core/shape.ts";
import {InputError} from "../../core/errors.ts";
import {nearestNames} from "../../core/nearest.ts";
import {sum} from "../../core/numbers.ts";
import type {Allergen, Ingredient} from "../../pantry/ingredient.ts";
import type {RecipeLine} from "../../pantry/recipe.ts";
import {goesBy} from "../../pantry/pantry.ts";
import {productAllergens} from "../product/product-allergens.ts";
import {expectProduct, type Product, productLines} from "../product/product.ts";
import {kindsOf, namesOf} from "./allergen-words.ts";
import {
  customaryName,
  expectNames,
  LIST_STYLES,
  type LabelName,
  type ListStyle,
  ownLabel,
} from "./label-names.ts";

/** A piece of the ingredient list; allergens are to be set apart, in bold for instance. */
export interface LabelText {
  readonly text: string;
  readonly emphasised: boolean;
}

/** Options for the writing of a list of ingredients. */
export interface ListOptions {
  /** Naming of additives, `EU` by default; `US` drops their class. */
  readonly style?: ListStyle;
  /** Leaves out added water of at most 5 % of the finished product, as Annex VII, Part A, point 1 allows; false by default. */
  readonly leaveOutWater?: boolean;
}

/** Added water that need not be listed, g per 100 g: Regulation (EU) No 1169/2011, Annex VII, Part A, point 1. */
const LITTLE_WATER = 5;

/**
 * The ingredient list of the finished product: in descending order of weight as used, a ripple or pieces as a compound
 * ingredient with its own list, the percentage behind what the name of the product promises, allergens set apart.
 *
 * By Regulation (EU) No 1169/2011, Articles 18 to 22 and Annexes II, VII and VIII: customary names and the classes of additives
 * (see `customaryName`), ingredients with the same printed name counted together, allergens by the name of cereal or nut, or a question
 * where none is known. Above it goes a heading with the word "ingredients". A powder and the water that it is stirred into may be listed
 * as the liquid (Annex VII, Part A, point 2), ingredients below 2 % in any order at the end (point 6): neither is done here. The rounding
 * of the percentage is our own choice, since the law has no rule for it. This is not licensed advice.
 *
 * @param product the base flat, every component that is not churned as a compound ingredient
 * @param named ingredients that the product's name promises (pear, rum), by name or alias: they get their percentage
 * @param names printed names of ingredients, by their name on the shelf
 * @throws InputError for a named ingredient that is not in the product, and options of another shape
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = [
 *   {ingredient: findIngredient(pantry, "sucrose"), grams: 200},
 *   {ingredient: findIngredient(pantry, "whole milk"), grams: 800},
 * ];
 * const product = makeProduct("milk ice", [baseComponent({name: "milk ice", lines})]);
 * ingredientList(product)
 *   .map(({text}) => text)
 *   .join(""); // => "whole milk, sugar"
 * ```
 */
export function ingredientList(
  product: Product,
  named: readonly string[] = [],
  names: Readonly<Record<string, LabelName>> = {},
  options: ListOptions = {},
): LabelText[] {
  expectTexts(named, "named", "give the names of ingredients");
  expectNames(names);
  expectOptions(options, ["style", "leaveOutWater"]);
  const {style = "EU", leaveOutWater = false} = options;
  oneOf(style, LIST_STYLES, "options.style", "way of naming");
  expectFlag(leaveOutWater, "options.leaveOutWater");
  expectProduct(product);
  const percentages = new Map(
    named.flatMap((name) =>
      namedLines(product, name).map(({ingredient, grams}) => [ingredient.name, grams] as const),
    ),
  );
  const declared = new Set(productAllergens(product));
  const entryOf = ({ingredient, grams}: RecipeLine): Entry => ({
    weight: grams,
    name: printedName(ingredient, ownLabel(names, ingredient.name), style),
    allergens: (ingredient.allergens ?? []).filter((allergen) => declared.has(allergen)),
    ingredient,
    share: percentages.get(ingredient.name),
  });
  const churned = productLines({
    name: product.name,
    components: product.components.filter((component) => component.churned),
  }).filter((line) => line.grams > 0);
  const water = sum(churned.filter(isWater).map(({grams}) => grams));
  const listed = leaveOutWater && water <= LITTLE_WATER ? churned.filter((line) => !isWater(line)) : churned;
  const entries = merged(listed.map(entryOf)).map((entry) => ({weight: entry.weight, text: printed(entry)}));
  for (const component of product.components) {
    if (component.churned || component.percent === 0) continue;
    const inside = merged(component.recipe.lines.filter(({grams}) => grams > 0).map(entryOf));
    const text = joined(inside.sort(heaviest).map(printed));
    entries.push({
      weight: component.percent,
      text: [plain(`${component.name} ${percent(component.percent)} (`), ...text, plain(")")],
    });
  }
  return joined(entries.sort(heaviest).map((entry) => entry.text));
}

/** An ingredient as it goes into the list. */
interface Entry {
  /** g. */
  readonly weight: number;
  readonly name: string;
  readonly allergens: readonly Allergen[];
  readonly ingredient: Ingredient;
  /** %, for an ingredient that the product's name promises. */
  readonly share: number | undefined;
}

/** An ingredient as it is printed, its own ingredients behind it. */
export function printedName({name}: Ingredient, label: LabelName, style: ListStyle): string {
  return `${label.name ?? customaryName(name, style)}${label.contains ? ` (${label.contains})` : ""}`;
}

/** Entries with ingredients of the same printed name and the same allergens counted together: two sugars are "sugar". */
function merged(entries: readonly Entry[]): Entry[] {
  const all = new Map<string, Entry>();
  for (const entry of entries) {
    const key = JSON.stringify([entry.name, entry.allergens]);
    const before = all.get(key);
    const share =
      before?.share === undefined && entry.share === undefined
        ? undefined
        : (before?.share ?? 0) + (entry.share ?? 0);
    all.set(key, before ? {...before, weight: before.weight + entry.weight, share} : entry);
  }
  return [...all.values()];
}

function heaviest(a: {readonly weight: number}, b: {readonly weight: number}): number {
  return b.weight - a.weight;
}

function isWater({ingredient}: RecipeLine): boolean {
  return ingredient.composition.water === 100;
}

/**
 * Quantity of an ingredient as the label must state it, g of it as used per 100 g of the finished product.
 *
 * Regulation (EU) No 1169/2011, Annex VIII: where cooking has driven off water, the quantity used is related to the
 * finished product, and may then exceed the quantity that is in it.
 *
 * @param name ingredient's name on the shelf, or another name that it goes by; of several that go by it the sum
 * @throws InputError when it is not in the product
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = [
 *   {ingredient: findIngredient(pantry, "plum"), grams: 300},
 *   {ingredient: findIngredient(pantry, "whole milk"), grams: 700},
 * ];
 * quidPercent(makeProduct("plum ice", [baseComponent({name: "plum ice", lines})]), "plum"); // => 30
 * ```
 */
export function quidPercent(product: Product, name: string): number {
  expectText(name, "name", "give the name of an ingredient");
  return sum(namedLines(product, name).map((line) => line.grams));
}

/** Lines of the product whose ingredient goes by a name, g per 100 g of it; an alias may belong to several ingredients. */
function namedLines(product: Product, name: string): RecipeLine[] {
  const all = productLines(product);
  const called = all.filter(({ingredient}) => ingredient.name === name);
  const lines = called.length ? called : all.filter(({ingredient}) => goesBy(ingredient, name));
  if (lines.length > 0) return lines;
  const near = nearestNames(
    name,
    all.map((line) => line.ingredient.name),
  );
  throw new InputError(
    `${product.name}: named ingredient`,
    "not in the product",
    name,
    near.length ? `did you mean ${near.join(" or ")}` : "name one of its ingredients",
  );
}

function printed({name, allergens, ingredient, share}: Entry): LabelText[] {
  const missing = allergens
    .filter((allergen) => !new RegExp(`\\b(?:${namesOf(allergen)})\\b`, "i").test(name))
    .flatMap((allergen) => kindsOf(ingredient, allergen, name));
  return [
    ...emphasised(name, allergens),
    ...(missing.length ? [plain(" ("), {text: missing.join(", "), emphasised: true}, plain(")")] : []),
    ...(share === undefined ? [] : [plain(` ${percent(share)}`)]),
  ];
}

/** The words of a name, those that name an allergen of the ingredient set apart. */
function emphasised(name: string, allergens: readonly Allergen[]): LabelText[] {
  if (allergens.length === 0) return [plain(name)];
  const pattern = new RegExp(`\\b(?:${allergens.map(namesOf).join("|")})\\b`, "gi");
  const pieces: LabelText[] = [];
  let end = 0;
  for (const match of name.matchAll(pattern)) {
    if (match.index > end) pieces.push(plain(name.slice(end, match.index)));
    pieces.push({text: match[0], emphasised: true});
    end = match.index + match[0].length;
  }
  if (end < name.length) pieces.push(plain(name.slice(end)));
  return pieces;
}

function joined(entries: readonly LabelText[][]): LabelText[] {
  return entries.flatMap((entry, i) => (i === 0 ? entry : [plain(", "), ...entry]));
}

function plain(text: string): LabelText {
  return {text, emphasised: false};
}

/** Whole per cent from 10 %, one decimal below; by weight above 100 %, as Annex VIII asks for. */
function percent(value: number): string {
  if (value > 100) return `${value.toFixed(0)} g per 100 g`;
  return `${value >= 9.95 ? value.toFixed(0) : value.toFixed(1)} %`;
}
