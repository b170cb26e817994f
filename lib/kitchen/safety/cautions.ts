import {expectShape} from "../../core/shape.ts";
import {degrees} from "../../core/format.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {recipeMass} from "../../pantry/recipe.ts";
import {brix} from "../sugar/brix.ts";
import type {Caution, CautionTopic} from "./caution.ts";
import {contentCautions} from "./content-cautions.ts";
import type {ProcessReport} from "../cooking/follow-process.ts";
import {allergenWords} from "../label/allergen-words.ts";
import {mixPairs} from "../cooking/mix-pairs.ts";
import {cookingMinutes} from "../cooking/cooked-first.ts";
import {isFreshDairy, isSourMilk} from "../cooking/dairy.ts";
import {COOLING, REFREEZING_LIMIT} from "../cooking/pasteurisation.ts";
import {productAllergens} from "../product/product-allergens.ts";
import {expectProduct, type Product, productLines} from "../product/product.ts";
import {boilingPoint} from "../sugar/sucrose.ts";

export type {Caution, CautionTopic} from "./caution.ts";

/** Strength from which a sauce sticks and burns the skin, and is taken as boiled, °Brix: common practice, no source. */
const STICKY = 55;

/**
 * Cautions for making and selling a product. The last is always there: follow your local code; this is not licensed advice.
 *
 * Raw milk cannot be told from bought pasteurised milk here, so all dairy itself (no chocolate or biscuit with milk) that goes
 * through no published pair of temperature and time is pointed out; egg too, unless it was bought pasteurised.
 *
 * @param process report on the process of the base; without it nothing counts as heated
 * @param freezer °C of the freezer, -40 to -5; -18 by default
 *
 * @example
 * ```ts
 * const pantry = includedPantry();
 * const lines = ["whole milk", "egg yolk", "sucrose"].map((name) => ({
 *   ingredient: findIngredient(pantry, name),
 *   grams: 200,
 * }));
 * cautionsFor(makeProduct("custard", [baseComponent({name: "custard", lines})])).map(({topic}) => topic); // => ["egg", "milk", "doses", "allergens", "cooling", "law"]
 * ```
 */
export function cautionsFor(product: Product, process?: ProcessReport, freezer = -18): Caution[] {
  expectProduct(product);
  if (process !== undefined)
    expectShape(
      process,
      {steps: "list", untreated: "list", unused: "list"},
      "process report",
      "give what followProcess(recipe, process) returned",
    );
  const unheated = (is: (ingredient: Ingredient) => boolean) => [
    ...new Set(
      product.components
        .filter((component) => component.churned)
        .flatMap(({recipe}) => recipe.lines)
        .filter(({ingredient, grams}) => grams > 0 && is(ingredient))
        .map(({ingredient}) => ingredient.name)
        .filter((name) => !process || process.untreated.includes(name) || process.unused.includes(name)),
    ),
  ];
  const cautions: Caution[] = [];
  const add = (topic: CautionTopic, text: string) => cautions.push({topic, text});
  const eggs = unheated(({allergens}) => Boolean(allergens?.includes("eggs")));
  if (eggs.length) {
    add(
      "egg",
      `${eggs.join(", ")}: goes through no published pair of temperature and time. Raw egg may carry salmonella: heat the mix to a published pair, or buy pasteurised egg. (The UK has hen eggs of its assurance schemes eaten raw since 2017, the severely ill apart; few other countries do.)`,
    );
  }
  for (const text of milkTexts(unheated, process)) add("milk", text);
  const plants = process?.heated ? unheatedPlants(product, process) : [];
  const unfit = plants.filter((one) => cookingMinutes(one) !== undefined).map(({name}) => name);
  if (unfit.length) add("unheated", `${unfit.join(", ")}: not fit to be eaten raw. Cook it first.`);
  for (const text of rawTexts(plants.filter(({name}) => !unfit.includes(name)))) add("unheated", text);
  for (const {recipe, composition, churned, grams: mass} of product.components) {
    const strength = brix(composition);
    if (churned || (strength < STICKY && mass >= recipeMass(recipe))) continue;
    const boils =
      strength <= 84 ? `boils at about ${boilingPoint(strength).toFixed(0)} °C` : "boils far above water";
    add(
      "hot sugar",
      `${recipe.name} ${boils} at the end, clings to the skin and burns: long sleeves, a deep pot, no children near.`,
    );
  }
  for (const caution of contentCautions(product, freezer)) cautions.push(caution);
  const allergens = allergenWords(product);
  add(
    "allergens",
    `${allergens.length ? `Contains ${allergens.join(", ")}. ` : ""}Only what the ingredients declare is known here: read their labels, and mind traces from tools, scoops and neighbouring tubs.`,
  );
  add("cooling", coolingText(product, process));
  add("law", "Follow your local code; this is not licensed advice.");
  return cautions;
}

/** What to mind of milk and what is made of it, where it goes through no published pair; sour milk goes in cold whatever the heat. */
function milkTexts(
  unheated: (is: (ingredient: Ingredient) => boolean) => string[],
  process: ProcessReport | undefined,
): string[] {
  const milks = unheated(isFreshDairy);
  if (!milks.length) return [];
  if (process && mixPairs(process).length > 0)
    return [
      `${milks.join(", ")}: what goes in cold is not pasteurised by this heat. Use only what was pasteurised when bought.`,
    ];
  const sour = unheated((one) => isFreshDairy(one) && isSourMilk(one));
  const sweet = milks.filter((name) => !sour.includes(name));
  return [
    ...(sweet.length
      ? [
          `${sweet.join(", ")}: use only what was pasteurised when bought, or heat the mix to a published pair.`,
        ]
      : []),
    ...(sour.length ? [`${sour.join(", ")}: goes in cold, so buy what was pasteurised.`] : []),
  ];
}

/** What to mind of plants that are eaten unheated: of whole ones, of juice, and of what was dried, tinned or brewed before. */
function rawTexts(plants: readonly Ingredient[]): string[] {
  const kinds: Record<"whole" | "juice" | "made", string[]> = {whole: [], juice: [], made: []};
  for (const {name, group, composition} of plants)
    kinds[
      group === "juice" || /\bjuice$/.test(name)
        ? "juice"
        : MADE.test(name) || (composition.water ?? 0) < DRIED
          ? "made"
          : "whole"
    ].push(name);
  return [
    ...(kinds.whole.length
      ? [
          `${kinds.whole.join(", ")}: not heated. Take what is fit to be eaten raw, wash and peel it well, and keep it cold.`,
        ]
      : []),
    ...(kinds.juice.length
      ? [
          `${kinds.juice.join(", ")}: not heated. Press it from washed fruit, or take juice that was pasteurised, and keep it cold.`,
        ]
      : []),
    ...(kinds.made.length
      ? [
          `${kinds.made.join(", ")}: not heated with the mix. Take what is fit to be eaten as it is, and keep it clean.`,
        ]
      : []),
  ];
}

/** Names of what was heated or preserved before it came, and water below which a plant is dried, g per 100 g. */
const MADE = /\b(?:brewed|espresso|canned|tinned|candied|syrup|jam|extract|paste|powder)\b/i;
const DRIED = 40;

/** Fruit, juice and flavourings that no step has made safe, except those with alcohol, which preserves itself. */
function unheatedPlants(product: Product, {untreated, unused}: ProcessReport): Ingredient[] {
  const plants = productLines(product).filter(
    ({ingredient: {name, group = "", composition}}) =>
      ["fruit", "juice", "flavour"].includes(group) &&
      !composition.alcohol &&
      (untreated.includes(name) || unused.includes(name)),
  );
  return plants.map(({ingredient}) => ingredient);
}

/** Text on cooling, by the former UK rule for ice cream with milk, which is good practice with any milk or egg. */
function coolingText(product: Product, process: ProcessReport | undefined): string {
  const [cold, thawed] = [COOLING.temperature, REFREEZING_LIMIT].map((limit) => degrees(limit));
  const tender = productAllergens(product).some((allergen) => allergen === "milk" || allergen === "eggs");
  const slow = process?.cooledInTime === false ? "The process cools too slowly. " : "";
  if (!tender) return `${slow}Keep the mix cold until it is frozen, and do not freeze again what has thawed.`;
  const heated = !process || process.heated;
  return heated
    ? `${slow}After heating, cool to ${cold} or below within ${COOLING.minutes} minutes and keep there until frozen. Heat again before selling what has been above ${thawed} after freezing. (A former UK rule, kept as guidance; your local code decides.)`
    : `Keep it at ${cold} or below until frozen. Heat before selling what has been above ${thawed} after freezing. (A former UK rule, kept as guidance; your local code decides.)`;
}
