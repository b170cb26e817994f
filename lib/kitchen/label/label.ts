import {expectRecord, expectText, expectTexts} from "../../core/shape.ts";
import {InputError} from "../../core/errors.ts";
import {nearestNames} from "../../core/nearest.ts";
import {sum} from "../../core/numbers.ts";
import type {Allergen, Ingredient} from "../../pantry/ingredient.ts";
import type {RecipeLine} from "../../pantry/recipe.ts";
import {goesBy} from "../../pantry/pantry.ts";
import {expectProduct, type Product, productAllergens, productLines} from "../product/product.ts";

/** A piece of the ingredient list; allergens are to be set apart, in bold for instance. */
export interface LabelText {
  readonly text: string;
  readonly emphasised: boolean;
}

/** How an ingredient is to be printed. */
export interface LabelName {
  /** Legal or customary name, where it is not the name on the shelf. */
  readonly name?: string;
  /** Its own ingredients, when it is a compound one (chocolate, biscuit), as its label prints them. */
  readonly contains?: string;
}

/** Words on a label that name an allergen themselves: Regulation (EU) No 1169/2011, Annex II, the plurals and kinds from memory. */
const WORDS: Readonly<Record<Allergen, RegExp>> = {
  gluten: /\b(wheat|spelt|khorasan|kamut|durum|semolina|triticale|rye|barley|oats?)\b/i,
  crustaceans: /\b(crustaceans?)\b/i,
  eggs: /\beggs?\b/i,
  fish: /\bfish\b/i,
  peanuts: /\bpeanuts?\b/i,
  soya: /\bsoy(a|beans?)\b/i,
  milk: /\bmilk\b/i,
  nuts: /\b(almond|hazelnut|walnut|cashew|pecan|brazil nut|pistachio|macadamia)s?\b/i,
  celery: /\bcelery\b/i,
  mustard: /\bmustard\b/i,
  sesame: /\bsesame\b/i,
  sulphites: /\b(sulphites?|sulphur dioxide)\b/i,
  lupin: /\blupin\b/i,
  molluscs: /\bmolluscs?\b/i,
};

/**
 * The ingredient list of the finished product: in descending order of weight as used, a ripple or pieces as a compound
 * ingredient with its own list, the percentage behind what the name of the product promises, allergens set apart.
 *
 * By Regulation (EU) No 1169/2011, Articles 18, 19, 21 and 22 and Annexes VII and VIII. The names of categories ("emulsifier:
 * ...") and what need not be listed are for the user to see to, in `names`. This is not licensed advice.
 *
 * @param product the base flat, every component that is not churned as a compound ingredient
 * @param named ingredients that the product's name promises (pear, rum), by name or alias: they get their percentage
 * @param names how to print ingredients, by their name on the shelf
 * @throws InputError for a named ingredient that is not in the product
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
 *   .join(""); // => "whole milk, sucrose"
 * ```
 */
export function ingredientList(
  product: Product,
  named: readonly string[] = [],
  names: Readonly<Record<string, LabelName>> = {},
): LabelText[] {
  expectTexts(named, "named", "give the names of ingredients");
  expectRecord(names, "names", "give {name, contains} by the ingredient's name");
  expectProduct(product);
  const percentages = new Map(
    named.flatMap((name) =>
      namedLines(product, name).map(({ingredient, grams}) => [ingredient.name, grams] as const),
    ),
  );
  const base = product.components.filter((component) => component.churned);
  const entries: {weight: number; text: LabelText[]}[] = productLines({name: product.name, components: base})
    .filter((line) => line.grams > 0)
    .map(({ingredient, grams}) => ({
      weight: grams,
      text: printed(ingredient, ownName(names, ingredient.name), percentages.get(ingredient.name)),
    }));
  for (const component of product.components) {
    if (component.churned || component.percent === 0) continue;
    const inside = descending(component.recipe.lines).map(({ingredient}) =>
      printed(ingredient, ownName(names, ingredient.name), percentages.get(ingredient.name)),
    );
    entries.push({
      weight: component.percent,
      text: [plain(`${component.name} ${percent(component.percent)} (`), ...joined(inside), plain(")")],
    });
  }
  return joined(entries.sort((a, b) => b.weight - a.weight).map((entry) => entry.text));
}

/**
 * Quantity of an ingredient as the label must state it, g of it as used per 100 g of the finished product.
 *
 * Regulation (EU) No 1169/2011, Annex VIII: where cooking has driven off water, the quantity used is set against the
 * finished product, and may then exceed what is in it.
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

/** What goes by a name, g per 100 g of the product; an alias may be of several. */
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

/** What stands for gluten where no name says of which cereal it is: Annex II, point 1, wants the cereal's own name. */
export const CEREAL_UNKNOWN = "gluten: say which cereal, wheat, rye, barley or oats";

/**
 * The allergens of a product in the words of a label: gluten as its cereals, where the names of the ingredients tell them,
 * else {@link CEREAL_UNKNOWN}, beside those that are told.
 *
 * Regulation (EU) No 1169/2011, Annex II, point 1.
 *
 * @example
 * ```ts
 * const lines = [{ingredient: findIngredient(includedPantry(), "whole milk"), grams: 1000}];
 * allergenWords(makeProduct("milk ice", [baseComponent({name: "milk ice", lines})])); // => ["milk"]
 * ```
 */
export function allergenWords(product: Product): string[] {
  const holders = productLines(product)
    .filter(({ingredient, grams}) => grams > 0 && ingredient.allergens?.includes("gluten"))
    .map(({ingredient}) => cerealOf(ingredient) ?? CEREAL_UNKNOWN);
  return productAllergens(product).flatMap((allergen) =>
    allergen === "gluten" ? [...new Set(holders)].sort() : [allergen],
  );
}

/** The cereal that an ingredient's name, or one of its other names, tells. */
function cerealOf({name, aliases = []}: Ingredient): string | undefined {
  const [found] = [name, ...aliases].flatMap((known) => WORDS.gluten.exec(known)?.[0] ?? []);
  return found?.toLowerCase().replace(/^oat$/, "oats");
}

function descending(lines: readonly RecipeLine[]): RecipeLine[] {
  return lines.filter((line) => line.grams > 0).sort((a, b) => b.grams - a.grams);
}

function printed(ingredient: Ingredient, label: LabelName, share: number | undefined): LabelText[] {
  const name = `${label.name ?? ingredient.name}${label.contains ? ` (${label.contains})` : ""}`;
  const missing = (ingredient.allergens ?? [])
    .filter((allergen) => !WORDS[allergen].test(name))
    .map((allergen) => (allergen === "gluten" ? (cerealOf(ingredient) ?? CEREAL_UNKNOWN) : allergen));
  return [
    ...emphasised(name, ingredient.allergens ?? []),
    ...(missing.length ? [plain(" ("), {text: missing.join(", "), emphasised: true}, plain(")")] : []),
    ...(share === undefined ? [] : [plain(` ${percent(share)}`)]),
  ];
}

/** The words of a name, those that name an allergen of the ingredient set apart. */
function emphasised(name: string, allergens: readonly Allergen[]): LabelText[] {
  if (allergens.length === 0) return [plain(name)];
  const pattern = new RegExp(allergens.map((allergen) => `(?:${WORDS[allergen].source})`).join("|"), "gi");
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

function ownName(names: Readonly<Record<string, LabelName>>, name: string): LabelName {
  return Object.hasOwn(names, name) ? names[name]! : {};
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
