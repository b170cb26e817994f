import {quantityIn} from "../../pantry/quantities.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";

/**
 * Traits that no part of a composition tells: what kind of gum, emulsifier or milk protein there is, and how much fruit. The name of an
 * ingredient, or its group, does.
 */
export const INGREDIENT_TRAITS = [
  "casein",
  "thickeningGum",
  "gellingGum",
  "waterInOilEmulsifier",
  "fruit",
] as const;

/** One of {@link INGREDIENT_TRAITS}. */
export type IngredientTrait = (typeof INGREDIENT_TRAITS)[number];

/** True where a trait is one of the ingredients and no quantity of a composition. */
export function isIngredientTrait(name: string): name is IngredientTrait {
  return (INGREDIENT_TRAITS as readonly string[]).includes(name);
}

/** Casein of the protein of milk, g per g (from memory: about four fifths, the rest is whey protein). */
const CASEIN = 0.8;

const OF_WHEY = /\b(?:whey|wp[ci]|permeate|lactalbumin)\b/i;
const OF_CASEIN = /\bcasein(?:ate)?\b/i;

/** Gums that set to a gel: in milk, with its calcium, with acid and sugar, or as they cool. Common practice, no source. */
const GELS = /\b(?:agar|gellan|pectin|alginate|curdlan|carrageenan)\b/i;

/** The one carrageenan that only thickens. */
const THICKENS = /\blambda\b/i;

/** Gums of which a mix takes up many times as much before it thickens. Common practice, no source. */
const HARDLY_THICKENS = /\b(?:gum arabic|acacia gum|microcrystalline cellulose)\b/i;

/** Emulsifiers that keep water in fat, as coatings need, and not fat in water, as a mix does. */
const INVERSE = /\b(?:polyricinoleate|pgpr)\b/i;

/** Water below which fruit or juice is dried or boiled down, g per 100 g, and the solids of what it was. Common practice, no source. */
const [DRIED, FRESH_SOLIDS] = [60, 12.5];

/**
 * Amount of a trait that 100 g of an ingredient bring, g: casein, gum of a kind, emulsifier that keeps water in fat; fruit and
 * juice as they are, or, dried without added sugar, as what they were.
 */
export function traitIn({composition, ...ingredient}: Ingredient, trait: IngredientTrait): number {
  const {name, aliases = [], group, nutrients} = ingredient;
  const named = (words: RegExp) => [name, ...aliases].some((known) => words.test(known));
  const {milkProtein = 0, stabiliser = 0, gelatine = 0, emulsifier = 0, water = 0} = composition;
  const gels = () => named(GELS) && !named(THICKENS);
  switch (trait) {
    case "casein":
      return milkProtein === 0 || named(OF_WHEY) ? 0 : milkProtein * (named(OF_CASEIN) ? 1 : CASEIN);
    case "thickeningGum":
      return stabiliser === 0 || gels() || named(HARDLY_THICKENS) ? 0 : stabiliser;
    case "gellingGum":
      return gelatine + (stabiliser > 0 && gels() ? stabiliser : 0);
    case "waterInOilEmulsifier":
      return emulsifier > 0 && named(INVERSE) ? emulsifier : 0;
    case "fruit":
      if (group !== "fruit" && group !== "juice") return 0;
      return water < DRIED && nutrients?.addedSugars === 0
        ? (100 * quantityIn(composition, "totalSolids")) / FRESH_SOLIDS
        : 100;
  }
}
