import {InputError} from "../core/errors.ts";
import {finite, positive} from "../core/numbers.ts";
import {
  expectList,
  expectOptions,
  expectRecord,
  expectShape,
  expectText,
  expectTexts,
  oneOf,
} from "../core/shape.ts";
import {ALLERGENS, type Ingredient} from "./ingredient.ts";
import {NUTRIENTS, SAID_NUTRIENTS} from "./nutrient-keys.ts";
import {type Composition, PARTS} from "./parts.ts";
import {expectWhole} from "./whole.ts";

const KEYS: ReadonlySet<string> = new Set([...PARTS, "dextroseEquivalent"]);

/** Most of a part, g per 100 g: all there is, and what a sum of rounded figures may be too much. */
const MOST = 100.5;

/** Remainder that rounding may leave of a part that is used up, g per 100 g. */
const LEAST = -1e-9;

/**
 * Refuses anything but a composition: a key that is no part, a value that is no number from 0 to 100, glucose-syrup solids
 * without their dextrose equivalent. Sums are left to `readComposition`, so that a part can be asked about by itself.
 *
 * @throws InputError naming the part
 */
export function expectComposition(value: Composition, place = "composition"): void {
  if (typeof value !== "object" || value === null || Array.isArray(value)) throw noComposition(value, place);
  for (const key in value) {
    const grams: unknown = value[key as keyof Composition];
    if (typeof grams === "number" && grams >= LEAST && grams <= MOST && KEYS.has(key)) continue;
    if (!KEYS.has(key)) throw noComposition(value, place);
    if (grams === undefined) continue;
    finite(grams, `${place}.${key}`, {min: 0, max: 100}, key === "dextroseEquivalent" ? "" : "g per 100 g");
  }
  expectEquivalent(value.glucoseSyrupSolids, value.dextroseEquivalent, `${place}.dextroseEquivalent`);
}

/**
 * Refuses glucose-syrup solids without a dextrose equivalent: they freeze and taste by it.
 *
 * @param solids g, of which any above 0 ask for it
 * @param place where the equivalent belongs
 * @throws InputError naming the place
 */
export function expectEquivalent(
  solids: number | undefined,
  dextroseEquivalent: number | undefined,
  place: string,
): void {
  if (!(solids! > 0) || dextroseEquivalent !== undefined) return;
  throw new InputError(
    place,
    "missing for glucose-syrup solids",
    undefined,
    "give the DE from the syrup's label, e.g. 42",
    {code: "missing"},
  );
}

/**
 * Refuses a composition of nothing too: where heat is to flow, there must be something for it to flow through.
 *
 * @throws InputError naming the part, or a composition that holds nothing
 */
export function expectSomething(composition: Composition): void {
  expectComposition(composition);
  if (!PARTS.some((part) => composition[part]))
    throw new InputError("composition", "holds nothing", composition, "give g per 100 g by part, 100 in sum");
}

function noComposition(value: unknown, place: string): InputError {
  return new InputError(
    place,
    "not a composition",
    value,
    "give g per 100 g by part, e.g. an ingredient's composition or recipeComposition(recipe)",
    {code: "wrong type"},
  );
}

/** Numbers that an ingredient may have, each at least 0. */
const NUMBERS = ["price", "stock", "unit", "density"] as const;

/** Refuses anything but an ingredient: no name, no composition, and figures as {@link expectFigures}. */
export function expectIngredient(value: Ingredient): void {
  expectShape(
    value,
    {name: "text", composition: "object"},
    "ingredient",
    "give {name, composition}, e.g. from findIngredient",
  );
  expectFigures(value);
}

/** Refuses anything but a list of ingredients, as {@link expectIngredient} each, by its place in it. */
export function expectIngredients(value: readonly Ingredient[], place: string, advice: string): void {
  expectList(value, {name: "text", composition: "object"}, place, advice);
  for (const ingredient of value) expectFigures(ingredient);
}

/**
 * Refuses figures of an ingredient of the right shape that are no numbers from 0, parts that are not 100 g together, and allergens
 * that are none of the fourteen.
 */
function expectFigures(ingredient: Ingredient): void {
  const at = `${ingredient.name}: composition`;
  expectComposition(ingredient.composition, at);
  expectWhole(ingredient.composition, at);
  for (const key of NUMBERS) {
    const figure = ingredient[key];
    if (figure !== undefined) finite(figure, `${ingredient.name}: ${key}`, {min: 0});
  }
  const {name, aliases, portions, properties, group, allergens, nutrients} = ingredient;
  if (aliases !== undefined) expectTexts(aliases, `${name}: aliases`, "give a list of other names");
  if (portions !== undefined)
    expectNumbers(portions, `${name}: portions`, "give g by the portion's name", positive);
  if (properties !== undefined)
    expectNumbers(properties, `${name}: properties`, "give a number per 100 g by name", finite);
  if (nutrients !== undefined) expectNutrients(nutrients, name);
  if (group !== undefined) expectText(group, `${name}: group`);
  if (allergens !== undefined) expectAllergens(allergens, `${name}: allergens`);
}

/** Refuses anything but numbers by name, each of which passes. */
function expectNumbers(
  values: Readonly<Record<string, number>>,
  place: string,
  advice: string,
  check: (value: number, place: string) => number,
): void {
  expectRecord(values, place, advice);
  for (const [key, value] of Object.entries(values)) check(value, `${place}.${key}`);
}

/** Refuses an allergen that no label would show. */
function expectAllergens(allergens: NonNullable<Ingredient["allergens"]>, place: string): void {
  expectTexts(allergens, place, `use ${ALLERGENS.join(", ")}`);
  allergens.forEach((allergen, i) => oneOf(allergen, ALLERGENS, `${place}[${i}]`, "allergen"));
}

/** Refuses an unknown nutrient, and a figure that is no number from 0. */
function expectNutrients(nutrients: NonNullable<Ingredient["nutrients"]>, name: string): void {
  expectOptions(nutrients, SAID_NUTRIENTS, `${name}: nutrients`);
  for (const key of SAID_NUTRIENTS)
    if (nutrients[key] !== undefined)
      finite(nutrients[key], `${name}: nutrients.${key}`, {min: 0}, `${NUTRIENTS[key].unit} per 100 g`);
}
