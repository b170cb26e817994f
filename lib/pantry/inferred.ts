import {type Allergen, ALLERGENS, type Ingredient} from "./ingredient.ts";
import type {LABEL_RULES} from "./label-rules.ts";
import type {Composition} from "./parts.ts";

type IngredientClass = keyof typeof LABEL_RULES;

/** Facts that are evident of an ingredient from its figures alone. */
interface Evident {
  /** Its group on the shelf, which decides when it is heated and what may stand in for it. */
  readonly group?: string;
  readonly allergens: readonly Allergen[];
}

const dairy: Evident = {group: "dairy", allergens: ["milk"]};
const egg: Evident = {group: "egg", allergens: ["eggs"]};
const fruit: Evident = {group: "fruit", allergens: []};
const sugar: Evident = {group: "sugar", allergens: []};

/**
 * Facts that a class of labels brings besides its figures: common practice, no source, and only such as hold for nearly every
 * pack of the class. A plant drink may be of soya, nuts or oats: its pack says it. An oat or rice drink counts as one of oats unless
 * its name says rice. Wine counts as sulphited: how much of that the finished food has is `productAllergens` to say. No glucose
 * syrup, dextrose or maltodextrin is ever taken for wheat, of which Annex II exempts them.
 */
const OF_CLASS: Readonly<Record<IngredientClass, Evident>> = {
  dairy,
  whey: dairy,
  "fermented dairy": dairy,
  "lactose-free dairy": dairy,
  "sweetened dairy": dairy,
  cheese: dairy,
  egg,
  "sugared egg": egg,
  "plant drink": {group: "plant drink", allergens: []},
  "oat or rice drink": {group: "plant drink", allergens: []},
  coconut: {group: "coconut", allergens: []},
  fruit,
  "dried fruit": fruit,
  jam: fruit,
  "cocoa powder": {group: "cocoa", allergens: []},
  "dark chocolate": {group: "cocoa", allergens: []},
  "milk chocolate": {group: "cocoa", allergens: ["milk"]},
  "white chocolate": {group: "cocoa", allergens: ["milk"]},
  nut: {group: "nut", allergens: ["nuts"]},
  sugar,
  syrup: sugar,
  honey: sugar,
  "glucose syrup": sugar,
  spirit: {group: "alcohol", allergens: []},
  "cream liqueur": {group: "alcohol", allergens: ["milk"]},
  wine: {group: "alcohol", allergens: ["sulphites"]},
  starch: {group: "starch", allergens: []},
  oil: {group: "fat", allergens: []},
  biscuit: {group: "inclusion", allergens: ["gluten"]},
};

/** Share of the solids above which what comes from milk, or egg, makes an ingredient dairy, or egg. */
const MOSTLY = {dairy: 0.85, egg: 0.6};

/**
 * Facts that are evident from a composition: parts of milk are milk, lactose included (Regulation (EU) 1169/2011, Annex II), and egg
 * fat is egg.
 */
function evidentOf(composition: Composition): Evident {
  const of = (...parts: (keyof Composition)[]) =>
    parts.reduce((sum, part) => sum + (composition[part] ?? 0), 0);
  const solids = 100 - of("water", "alcohol");
  const milk = of("milkFat", "milkProtein", "lactose", "milkSalts");
  const group =
    composition.milkProtein && milk >= MOSTLY.dairy * solids
      ? "dairy"
      : composition.eggFat && of("eggFat", "otherProtein") >= MOSTLY.egg * solids
        ? "egg"
        : undefined;
  return {
    ...(group && {group}),
    allergens: [...(composition.eggFat ? (["eggs"] as const) : []), ...(milk > 0 ? (["milk"] as const) : [])],
  };
}

/** Allergens that are certain wherever they are evident; the other ones of a class give way to what the pack declares. */
const CERTAIN: readonly Allergen[] = ["milk", "eggs"];

/**
 * An ingredient with the group and the allergens that are evident of it: a group only where it has none, allergens beside those
 * that it declares. Nothing is taken away; what is not evident must be declared.
 *
 * @param ingredientClass the class that its label was read by; without one the composition tells
 */
export function withInferred(ingredient: Ingredient, ingredientClass?: IngredientClass): Ingredient {
  const {group, allergens: evident} = ingredientClass
    ? OF_CLASS[ingredientClass]
    : evidentOf(ingredient.composition);
  const grain = ingredientClass === "oat or rice drink" && !/\brice\b/i.test(ingredient.name);
  const allergens = grain ? (["gluten"] as const) : evident;
  const declared = ingredient.allergens;
  const added = declared ? allergens.filter((allergen) => CERTAIN.includes(allergen)) : allergens;
  const all = new Set([...(declared ?? []), ...added]);
  return {
    ...ingredient,
    ...(group !== undefined && ingredient.group === undefined && {group}),
    ...(all.size > (declared?.length ?? 0) && {allergens: ALLERGENS.filter((allergen) => all.has(allergen))}),
  };
}
