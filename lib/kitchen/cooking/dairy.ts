import {folded} from "../../core/nearest.ts";
import type {Ingredient} from "../../pantry/ingredient.ts";

/** Water from which dairy may hold living germs, g per 100 g: powders have up to 7, ghee up to 3 (the shelf's own tables). */
const MOIST = 10;

/** Dairy that is sterilised, or boiled down with sugar, as it is made (from memory). */
const BOILED =
  /\b(evaporated|condensed|dulce de leche|milk jam|confiture de lait|uht|long life|sterili[sz]ed)\b/;

/**
 * Whether an ingredient is dairy that may be raw: milk, cream, yoghurt, butter, cheese and the like. No chocolate, biscuit or spread that
 * holds milk, no powder, no tinned milk: they are heated as they are made. One of no group that declares milk counts.
 */
export function isFreshDairy({name, group = "dairy", allergens, composition}: Ingredient): boolean {
  return (
    group === "dairy" &&
    Boolean(allergens?.includes("milk")) &&
    (composition.water ?? 0) >= MOIST &&
    !BOILED.test(folded(name))
  );
}

/** Milk that is soured, mostly with what is alive in it; cream cheese, mascarpone and ricotta bear the heat. */
const SOUR =
  /\b(yog?h?urts?|skyr|buttermilk|kefir|soure?d? cream|cultured cream|creme fraiche|quark|topfen|fromage (blanc|frais)|petit suisse|labneh|smetana|ayran|lassi|cottage cheese|fresh (goat s )?cheese)\b/;

/**
 * Whether an ingredient is yoghurt, buttermilk, sour cream, quark or the like: above 60 °C or so it curdles, and what lives in it dies
 * (common practice, no source).
 */
export function isSourMilk(ingredient: Ingredient): boolean {
  return isFreshDairy(ingredient) && SOUR.test(folded(ingredient.name));
}
