import type {Allergen, Ingredient} from "../../pantry/ingredient.ts";
import {productAllergens} from "../product/product-allergens.ts";
import {type Product, productLines} from "../product/product.ts";
import {customaryName, expectNames, type LabelName, ownLabel} from "./label-names.ts";

/** Kinds of an allergen that a label names, by the words that tell them: Annex II, points 1 and 8; further words from memory. */
const KINDS: Readonly<Partial<Record<Allergen, Readonly<Record<string, string>>>>> = {
  gluten: {
    wheat: "wheat|spelt|khorasan|kamut|durum|semolina|triticale",
    rye: "rye",
    barley: "barley",
    oats: "oats?",
  },
  nuts: {
    almonds: "almonds?|marzipan",
    hazelnuts: "hazelnuts?|filberts?|cob ?nuts?",
    walnuts: "walnuts?",
    cashews: "cashews?",
    "pecan nuts": "pecans?(?: nuts?)?",
    "Brazil nuts": "brazil nuts?",
    "pistachio nuts": "pistachios?(?: nuts?)?",
    "macadamia nuts": "macadamias?(?: nuts?)?|queensland nuts?",
  },
};

/** Words that name the other allergens: Annex II, the plurals from memory. */
const OTHERS: Readonly<Partial<Record<Allergen, string>>> = {
  crustaceans: "crustaceans?",
  eggs: "eggs?",
  fish: "fish",
  peanuts: "peanuts?",
  soya: "soy(?:a|beans?)?",
  milk: "milk",
  celery: "celery",
  mustard: "mustard",
  sesame: "sesame|tahini",
  sulphites: "sulphites?|sulphur dioxide",
  lupin: "lupin",
  molluscs: "molluscs?",
};

/** The words on a label that name an allergen themselves. */
export function namesOf(allergen: Allergen): string {
  return OTHERS[allergen] ?? Object.values(KINDS[allergen]!).join("|");
}

/** Word for gluten where no name tells the cereal: Annex II, point 1, asks for the cereal's own name. */
export const CEREAL_UNKNOWN = "gluten: say which cereal, wheat, rye, barley or oats";

/**
 * Word for nuts where no name tells the kind: Annex II, point 8, names eight. Coconut, chestnut and pine nut are not among
 * them; a pine nut is an allergen in the United States (FDA guidance on allergens, edition 5, read in two lists of it).
 */
export const NUT_UNKNOWN =
  "nuts: say which, almonds, hazelnuts, walnuts, cashews, pecan, Brazil, pistachio or macadamia nuts";

/** True for a word for an allergen that is only a question to the cook. */
export function isUnknown(word: string): boolean {
  return word === CEREAL_UNKNOWN || word === NUT_UNKNOWN;
}

/**
 * Words of a label for an allergen of an ingredient: the allergen itself, or all of its kinds that the label's name, the name on
 * the shelf or an alias tells; where none does, a question.
 *
 * @param printed the name with which the ingredient stands in the list
 */
export function kindsOf({name, aliases = []}: Ingredient, allergen: Allergen, printed: string): string[] {
  const kinds = KINDS[allergen];
  if (!kinds) return [allergen];
  const texts = [printed, name, ...aliases];
  const found = Object.entries(kinds).filter(([, words]) =>
    texts.some((text) => new RegExp(`\\b(?:${words})\\b`, "i").test(text)),
  );
  if (found.length) return found.map(([kind]) => kind);
  return [allergen === "gluten" ? CEREAL_UNKNOWN : NUT_UNKNOWN];
}

/**
 * The allergens of a product in the words of a label: gluten as its cereals and nuts as their kinds where the names of the
 * ingredients tell them, else {@link CEREAL_UNKNOWN} and {@link NUT_UNKNOWN}, beside the kinds that are known.
 *
 * Regulation (EU) No 1169/2011, Annex II. Only what an ingredient declares is an allergen. Wheat-based glucose syrup, dextrose and
 * maltodextrin, barley-based glucose syrup, fully refined soya oil, lactitol, and cereals, nuts and whey for distillates are exempt
 * there, and nothing here declares them unasked; soya lecithin is not exempt.
 *
 * @param names printed names of ingredients, by their name on the shelf: the cook's own name may tell the kind
 *
 * @example
 * ```ts
 * const names = ["whole milk", "roasted hazelnuts"];
 * const lines = names.map((name) => ({ingredient: findIngredient(includedPantry(), name), grams: 100}));
 * allergenWords(makeProduct("nut ice", [baseComponent({name: "nut ice", lines})])); // => ["milk", "hazelnuts"]
 * ```
 */
export function allergenWords(product: Product, names: Readonly<Record<string, LabelName>> = {}): string[] {
  expectNames(names);
  const lines = productLines(product).filter(({grams}) => grams > 0);
  return productAllergens(product).flatMap((allergen) => {
    const words = lines
      .filter(({ingredient}) => ingredient.allergens?.includes(allergen))
      .flatMap(({ingredient}) => kindsOf(ingredient, allergen, printedAs(ingredient, names)));
    return [...new Set(words)].sort();
  });
}

/** Major allergens of the US, by the words of this file; rye, barley, oats, celery and the like are not among them. */
const US_WORDS: Readonly<Record<string, string>> = {
  milk: "milk",
  eggs: "eggs",
  fish: "fish: say which species",
  crustaceans: "crustacean shellfish: say which species",
  wheat: "wheat",
  peanuts: "peanuts",
  soya: "soybeans",
  sesame: "sesame",
  [CEREAL_UNKNOWN]: "wheat, if that is the cereal",
  [NUT_UNKNOWN]: "tree nuts: say which",
  ...Object.fromEntries(Object.keys(KINDS.nuts!).map((kind) => [kind, kind])),
};

/**
 * The allergens of a product as a US label names them behind "Contains": the nine of 21 U.S.C. 321(qq), sesame among them since 2023
 * (FASTER Act), nuts by their kind, pine nuts too.
 *
 * @param names how ingredients are printed, by their name on the shelf
 *
 * @example
 * ```ts
 * const names = ["soya drink", "oat drink", "tahini"];
 * const lines = names.map((name) => ({ingredient: findIngredient(includedPantry(), name), grams: 100}));
 * usAllergenWords(makeProduct("ice", [baseComponent({name: "ice", lines})])); // => ["soybeans", "sesame"]
 * ```
 */
export function usAllergenWords(product: Product, names: Readonly<Record<string, LabelName>> = {}): string[] {
  const words = allergenWords(product, names);
  const pine = productLines(product).some(
    ({ingredient, grams}) =>
      grams > 0 && /\bpine ?nuts?\b/i.test([printedAs(ingredient, names), ingredient.name].join(" ")),
  );
  return [...words.flatMap((word) => US_WORDS[word] ?? []), ...(pine ? ["pine nuts"] : [])];
}

function printedAs(ingredient: Ingredient, names: Readonly<Record<string, LabelName>>): string {
  const {name = customaryName(ingredient.name), contains = ""} = ownLabel(names, ingredient.name);
  return `${name} ${contains}`;
}
