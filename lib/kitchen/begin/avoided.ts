import type {Allergen, Ingredient} from "../../pantry/ingredient.ts";
import {findIngredient, type Pantry} from "../../pantry/pantry.ts";
import {flavourOf, startingLimits} from "./starting-brief.ts";
import type {StartingPoint} from "./starting-points.ts";

/** What a cook may want nothing of. */
export const AVOIDED = ["milk", "eggs", "nuts", "gluten"] as const;
export type Avoided = (typeof AVOIDED)[number];

/** What counts as holding it: the allergens of an ingredient, and its group on the shelf. */
const TELLS: Readonly<Record<Avoided, {readonly allergens: readonly Allergen[]; readonly group?: string}>> = {
  milk: {allergens: ["milk"], group: "dairy"},
  eggs: {allergens: ["eggs"], group: "egg"},
  nuts: {allergens: ["nuts", "peanuts"], group: "nut"},
  gluten: {allergens: ["gluten"]},
};

/**
 * What a starting point holds of the things that a cook may avoid: that of any ingredient that may go in. Only what the pantry declares
 * is known: packs say more, and traces too.
 *
 * @param flavour ingredient for the flavour, by name; that of the point by default
 * @throws InputError for an ingredient that the pantry has not
 */
export function avoidedIn(point: StartingPoint, pantry: Pantry, flavour?: string): Avoided[] {
  const chosen = flavourOf(point, pantry, flavour);
  const all = [
    ...(chosen ? [chosen] : []),
    ...startingLimits(point.key).flatMap(({of, name}) =>
      of === "ingredient" ? [findIngredient(pantry, name)] : [],
    ),
  ];
  return AVOIDED.filter((one) => all.some((ingredient) => holds(ingredient, one)));
}

/** Whether an ingredient holds something that a cook may avoid. */
export function holds({allergens = [], group}: Ingredient, one: Avoided): boolean {
  const tells = TELLS[one];
  return (
    (tells.group !== undefined && group === tells.group) ||
    allergens.some((allergen) => tells.allergens.includes(allergen))
  );
}
