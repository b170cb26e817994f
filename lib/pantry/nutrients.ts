import {oneOf} from "../core/shape.ts";
import {energyOf, labelFigures} from "./energy.ts";
import {expectIngredient} from "./expect.ts";
import type {Ingredient} from "./ingredient.ts";
import {NUTRIENT_KEYS, type NutrientKey, type SaidNutrient} from "./nutrient-keys.ts";
import type {Composition} from "./parts.ts";
import {quantityIn} from "./quantities.ts";

/** g of salt per mg of sodium: Regulation (EU) 1169/2011, Annex I. */
const SALT_PER_MG = 2.5 / 1000;

/** mg of sodium in 1 g of sodium chloride: 22.990 of 58.443 g/mol (IUPAC, standard atomic weights). */
const SODIUM_PER_SALT = (1000 * 22.99) / 58.443;

/**
 * A nutrient of an ingredient, per 100 g of it in the unit of `NUTRIENTS`; `undefined` where it is not known.
 *
 * An amount that the ingredient does not give is known where its composition leaves no doubt: without fat there are no fatty acids,
 * without sugars no added ones, and water, isolated sugars, sugar alcohols, alcohol, acids and salt have no minerals but their own.
 * Energy is calculated from the composition by the factors of Regulation (EU) No 1169/2011, Annex XIV, and salt is sodium x 2.5 (Annex I).
 *
 * @throws InputError for an unknown nutrient, with the nearest known one
 *
 * @example
 * ```ts
 * const butter = findIngredient(includedPantry(), "unsalted butter");
 * nutrientOf(butter, "cholesterol"); // => 215
 * nutrientOf({name: "syrup", composition: {water: 40, sucrose: 60}}, "kilocalories"); // => 240
 * ```
 */
export function nutrientOf(ingredient: Ingredient, key: NutrientKey): number | undefined {
  expectIngredient(ingredient);
  return nutrientIn(ingredient, oneOf(key, NUTRIENT_KEYS, "nutrient", "nutrient"));
}

/** As {@link nutrientOf}, of a key that was checked before. */
export function nutrientIn(ingredient: Ingredient, key: NutrientKey): number | undefined {
  const {composition, nutrients, properties} = ingredient;
  switch (key) {
    case "kilojoules":
    case "kilocalories":
      return energyOf(composition, key);
    case "carbohydrate":
      return labelFigures(composition).carbohydrate;
    case "dietaryFibre":
      return labelFigures(composition).fibre;
    case "saltEquivalent": {
      const sodium = nutrientIn(ingredient, "sodium");
      return sodium === undefined ? undefined : sodium * SALT_PER_MG;
    }
    default:
      return nutrients?.[key] ?? properties?.[key] ?? evident(composition, key);
  }
}

/** Amount of a nutrient that follows from a composition alone. */
function evident(composition: Composition, key: SaidNutrient): number | undefined {
  switch (key) {
    case "saturates":
    case "monounsaturates":
    case "polyunsaturates":
    case "trans":
      return labelFigures(composition).fat === 0 ? 0 : undefined;
    case "addedSugars": {
      const sugars = quantityIn(composition, "totalSugars");
      return sugars === 0 ? 0 : isPure(composition) ? sugars - (composition.allulose ?? 0) : undefined;
    }
    case "sodium":
      return hasNoMinerals(composition) ? (composition.salt ?? 0) * SODIUM_PER_SALT : undefined;
    default:
      return hasNoMinerals(composition) ? 0 : undefined;
  }
}

/** Remainder of 100 g that the rounding of a composition's figures may leave, g. */
const ROUNDED = 0.05;

/** True for pure substances. Syrups of starch are none: what they are made with leaves its minerals in them. */
function hasNoMinerals(composition: Composition): boolean {
  return !composition.glucoseSyrupSolids && isPure(composition);
}

/** True for a composition of nothing but water, isolated sugars, syrups, sugar alcohols, alcohol, acids and salt. */
function isPure(composition: Composition): boolean {
  const {water = 0, lactose = 0, alcohol = 0, organicAcids = 0, salt = 0} = composition;
  const sweet = quantityIn(composition, "sugars") + quantityIn(composition, "polyols");
  return water + lactose + alcohol + organicAcids + salt + sweet >= 100 - ROUNDED;
}
