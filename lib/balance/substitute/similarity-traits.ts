import {coefficientOf} from "../measure/of-subject.ts";
import type {Subject} from "../measure/measures.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";
import {isIngredientTrait, type IngredientTrait, traitIn} from "./ingredient-traits.ts";

/** The things about a frozen mix that a substitution tries to keep, by the names under which they can be weighed. */
export const SIMILARITY_TRAITS = [
  "firmness",
  "freezingPoint",
  "sweetness",
  "fat",
  "totalSolids",
  "lactose",
  "protein",
  "casein",
  "eggYolkSolids",
  "polyols",
  "starch",
  "fibre",
  "stabiliser",
  "thickeningGum",
  "gellingGum",
  "gelatine",
  "emulsifier",
  "waterInOilEmulsifier",
  "salt",
  "alcohol",
  "organicAcids",
  "fruit",
  "cost",
] as const;

/** One of the things that a substitution tries to keep. */
export type SimilarityTrait = (typeof SIMILARITY_TRAITS)[number];

/** Weights of a substitution: how much one unit of change counts. */
export type Weights = Readonly<
  Record<SimilarityTrait | "moved" | "newIngredient" | "newAllergen" | "lostFlavour", number>
>;

/**
 * Weights of one unit of change. They are judgements, not measurements (common practice, no source), made so
 * that a change of about 1 is one that an eater may just notice:
 *
 * - `firmness` per point in the freezer (7 are twice as hard), `freezingPoint` per °C;
 * - `sweetness` per point (sucrose = 100), of some 15 in a mix: a tenth of that is about what can be told apart;
 * - `fat` and `totalSolids` per g/100 g: body; `lactose` per g/100 g: sandiness; `protein`, `eggYolkSolids`, `starch` and
 *   `fibre` per g/100 g: body; `polyols` per g/100 g: the gut;
 * - `casein` per g/100 g, beside `protein`: what whipping and melting of milk rest on, and whey has none of;
 * - `thickeningGum` and `gellingGum` per g/100 g, beside `stabiliser`: a gum that sets is no thickener, so that the wrong kind is
 *   noticed as much as none; `gelatine` besides, for it alone melts in the mouth;
 * - `waterInOilEmulsifier` per g/100 g: it keeps water in fat, which a mix is not;
 * - `fruit` per g/100 g of fruit and juice: how much it tastes of them;
 * - `stabiliser`, `emulsifier`, `salt`, `alcohol` and `organicAcids` per g/100 g: little of them does much;
 * - `cost` per money per kg: with money near that of a euro, pound or dollar;
 * - `moved` per g/100 g that changes hands in the recipe: so that nothing is moved for nothing;
 * - `newIngredient` for each ingredient that the recipe did not have: one more to weigh;
 * - `newAllergen` for each allergen that the recipe did not have;
 * - `lostFlavour` for each ingredient that gave the flavour, where too little that tastes of the same is left: frozen strawberries
 *   are strawberries, kiwis are not.
 */
export const SUBSTITUTION_WEIGHTS: Weights = {
  firmness: 1,
  freezingPoint: 4,
  sweetness: 0.7,
  fat: 1,
  totalSolids: 0.5,
  lactose: 0.5,
  protein: 0.7,
  casein: 0.7,
  eggYolkSolids: 0.7,
  polyols: 1,
  starch: 1,
  fibre: 0.5,
  stabiliser: 6,
  thickeningGum: 6,
  gellingGum: 6,
  gelatine: 5,
  emulsifier: 5,
  waterInOilEmulsifier: 20,
  salt: 15,
  alcohol: 3,
  organicAcids: 5,
  fruit: 0.2,
  cost: 0.3,
  moved: 0.05,
  newIngredient: 0.3,
  newAllergen: 5,
  lostFlavour: 3,
};

/** Units of the changes, beside their weights. */
export const TRAIT_UNITS: Readonly<Record<SimilarityTrait, string>> = {
  firmness: "points",
  freezingPoint: "°C",
  sweetness: "(sucrose = 100)",
  fat: "%",
  totalSolids: "%",
  lactose: "%",
  protein: "%",
  casein: "%",
  eggYolkSolids: "%",
  polyols: "%",
  starch: "%",
  fibre: "%",
  stabiliser: "%",
  thickeningGum: "%",
  gellingGum: "%",
  gelatine: "%",
  emulsifier: "%",
  waterInOilEmulsifier: "%",
  salt: "%",
  alcohol: "%",
  organicAcids: "%",
  fruit: "%",
  cost: "per kg",
};

/** The subject of a trait that a mix tells, for a freezer at a temperature, °C. */
export function traitSubject(name: Exclude<SimilarityTrait, IngredientTrait>, freezer: number): Subject {
  if (name === "firmness") return {kind: "firmness", at: freezer};
  if (name === "cost" || name === "freezingPoint") return {kind: name};
  return {kind: "quantity", quantity: name};
}

/** Amount of a trait in an ingredient, per 100 g; a mix has the mean by mass, but for firmness and the freezing point. */
export function traitOf(name: SimilarityTrait, ingredient: Ingredient, freezer: number): number {
  return isIngredientTrait(name)
    ? traitIn(ingredient, name)
    : coefficientOf(traitSubject(name, freezer), ingredient);
}
