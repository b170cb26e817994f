import type {Allergen, Ingredient} from "../../pantry/ingredient.ts";
import {findIngredient, type Pantry} from "../../pantry/pantry.ts";
import {flavourOf, startingLimits} from "./starting-brief.ts";
import type {StartingPoint} from "./starting-points.ts";

/** Things that a cook may want to avoid. */
export const AVOIDED = ["milk", "eggs", "nuts", "gluten"] as const;
export type Avoided = (typeof AVOIDED)[number];

/** Marks of an ingredient that holds it: allergens, and the group on the shelf. */
const TELLS: Readonly<Record<Avoided, {readonly allergens: readonly Allergen[]; readonly group?: string}>> = {
  milk: {allergens: ["milk"], group: "dairy"},
  eggs: {allergens: ["eggs"], group: "egg"},
  nuts: {allergens: ["nuts", "peanuts"], group: "nut"},
  gluten: {allergens: ["gluten"]},
};

/**
 * The things that a cook may avoid and a starting point can hold, by any ingredient that may go in. Only allergens that the pantry
 * declares are known: packs say more, traces among it.
 *
 * @param flavour ingredient for the flavour, by name; that of the point by default
 * @throws InputError for an ingredient that the pantry does not have
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

/** True for an ingredient that holds the thing to avoid. */
export function holds({allergens = [], group}: Ingredient, one: Avoided): boolean {
  const tells = TELLS[one];
  return (
    (tells.group !== undefined && group === tells.group) ||
    allergens.some((allergen) => tells.allergens.includes(allergen))
  );
}
